// The widget around the stage, for a notebook.
import { add } from "./dom.js";
import { savePicture } from "./picture.js";
import { library, takeScript } from "./plotly.js";
import { merge, mount } from "./stage.js";

export default () => {
  const views = new Set();
  return {
    initialize({ model }) {
      model.on("msg:custom", (message, buffers) => {
        if (message.answer === "plotly") {
          takeScript(model, buffers[0]);
          return;
        }
        merge(model.get("content"), message.changes);
        for (const view of views) view.update(message.changes);
      });
      library(model);
    },
    render({ model, el }) {
      const view = mount(el, library(model), model.get("content"));
      views.add(view);
      const { under_a_picture: lines } = model.get("content");
      if (lines) for (const chart of view.charts.values()) addSaving(model, chart, lines);
      return () => {
        views.delete(view);
        view.remove();
      };
    },
  };
};

/** Buttons that keep a chart as a picture. */
function addSaving(model, chart, lines) {
  const row = add(chart.box, "div", "talk-save");
  for (const kind of ["png", "svg"]) {
    const button = add(row, "button", "", `Save as ${kind.toUpperCase()}`);
    button.type = "button";
    button.setAttribute("aria-label", `Save "${chart.words.title}" as ${kind.toUpperCase()}`);
    button.onclick = async () => {
      const face = model.get("_css").split("\n")[0];
      await savePicture(await library(model), chart, { title: chart.words.title, lines, face, kind });
    };
  }
}
