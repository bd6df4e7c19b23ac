// The widget around the stage, for a notebook.
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
      return () => {
        views.delete(view);
        view.remove();
      };
    },
  };
};
