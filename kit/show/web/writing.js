// The widget of her writing desk.
import { screen } from "./screen.js";
import { WritingView } from "./writing_view.js";

const HERE = "talk-kit-writing"; // in the page's own store: which window this is, and which talk it had open

export default screen(
  WritingView,
  (content, changes) => {
    Object.assign(content, changes);
    if (changes.opened) remember({ opened: changes.opened });
  },
  (_model, ask) => {
    const kept = JSON.parse(sessionStorage.getItem(HERE) ?? "{}");
    const id = kept.id ?? String(Math.random()).slice(2);
    remember({ id });
    ask({ do: "window", id, opened: kept.opened ?? "" });
  },
);

function remember(what) {
  const kept = JSON.parse(sessionStorage.getItem(HERE) ?? "{}");
  sessionStorage.setItem(HERE, JSON.stringify({ ...kept, ...what }));
}
