// The widget of the rehearsal: messages to and from Python, and the views that show what it tells.
import { asking } from "./asking.js";
import { library, takeScript } from "./plotly.js";
import { Rehearsal } from "./rehearse_view.js";

export default () => {
  const views = new Set();
  let ask = () => {};
  return {
    initialize({ model }) {
      model.on("msg:custom", (message, buffers) => {
        if (message.answer === "plotly") takeScript(model, buffers[0]);
      });
      ask = asking(model, {
        change(changes) {
          takeIn(model.get("content"), changes);
          for (const view of views) view.show(changes);
        },
        python(answers) {
          for (const view of views) view.python(answers);
        },
      });
    },
    render({ model, el }) {
      const view = new Rehearsal(el, model.get("content"), library(model), (message) => ask(message));
      views.add(view);
      return () => {
        views.delete(view);
        view.remove();
      };
    },
  };
};

/** Take changes into the content, so that a view that opens later shows what the others do. */
function takeIn(content, { some_rows: rows = [], some_said: said = [], ...changes }) {
  Object.assign(content, changes);
  content.rows = content.rows.map((row) => rows.find(({ at }) => at === row.at) ?? row);
  content.said = content.said.map((one) => said.find(({ id }) => id === one.id) ?? one);
}
