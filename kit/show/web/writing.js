// The widget of her writing desk: messages to and from Python, and the views that show what it tells.
import { asking } from "./asking.js";
import { library, takeScript } from "./plotly.js";
import { WritingView } from "./writing_view.js";

const HERE = "talk-kit-writing"; // in the page's own store: which window this is, and which talk it had open

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
          Object.assign(model.get("content"), changes);
          if (changes.opened) remember({ opened: changes.opened });
          for (const view of views) view.show(changes);
        },
        python(answers) {
          for (const view of views) view.python(answers);
        },
      });
      const kept = JSON.parse(sessionStorage.getItem(HERE) ?? "{}");
      const id = kept.id ?? String(Math.random()).slice(2);
      remember({ id });
      ask({ do: "window", id, opened: kept.opened ?? "" });
      library(model);
    },
    render({ model, el }) {
      const view = new WritingView(el, model, (message) => ask(message));
      views.add(view);
      return () => {
        views.delete(view);
        view.remove();
      };
    },
  };
};

function remember(what) {
  const kept = JSON.parse(sessionStorage.getItem(HERE) ?? "{}");
  sessionStorage.setItem(HERE, JSON.stringify({ ...kept, ...what }));
}
