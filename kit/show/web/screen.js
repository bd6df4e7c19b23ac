// What every screen of hers does: messages to and from Python, and the views that show what it tells.
import { asking } from "./asking.js";
import { library, takeScript } from "./plotly.js";

/**
 * Returns the widget of a screen.
 *
 * View is made of (element, model, ask) and has told(changes), python(answers) and remove(). `take` puts changes into the
 * content before the views hear of them, so that one that opens later shows the same. `begin` is called once, with
 * (model, ask). A view takes the content of the model each time: the model may get another object, when a page asks anew.
 */
export function screen(View, take, begin = () => {}) {
  return () => {
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
            for (const view of views) view.told(changes);
          },
          python(answers) {
            for (const view of views) view.python(answers);
          },
        });
        begin(model, ask);
        library(model);
      },
      render({ model, el }) {
        const view = new View(el, model, (message) => ask(message));
        views.add(view);
        return () => {
          views.delete(view);
          view.remove();
        };
      },
    };
  };
}
