// The widget of her window: messages to and from Python, and the views that show what it tells.
import { asking } from "./asking.js";
import { Desk } from "./desk_view.js";
import { memory, take } from "./keeping.js";
import { library, takeScript } from "./plotly.js";

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
          take(model.get("content"), changes);
          for (const view of views) changes.talks ? view.refresh() : view.show(changes);
        },
        python(answers) {
          for (const view of views) view.python(answers);
        },
      });
      library(model);
      const kept = memory.get("kept");
      const content = model.get("content");
      const another = kept && (kept.talk !== content.kept.talk || !content.made.length); // Python brought back the rest
      if (another && JSON.stringify(kept) !== JSON.stringify(content.kept)) ask({ do: "restore", kept });
    },
    render({ model, el }) {
      const view = new Desk(el, model, (message) => ask(message));
      views.add(view);
      return () => {
        views.delete(view);
        view.remove();
      };
    },
  };
};
