// The widget of her window.
import { Desk } from "./desk_view.js";
import { memory, take } from "./keeping.js";
import { screen } from "./screen.js";

export default screen(Desk, take, (model, ask) => {
  const kept = memory.get("kept");
  const content = model.get("content");
  const another = kept && (kept.talk !== content.kept.talk || !content.made.length); // Python brought back the rest
  if (another && JSON.stringify(kept) !== JSON.stringify(content.kept)) ask({ do: "restore", kept });
});
