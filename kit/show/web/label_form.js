// A food from its package label: the form, and the list of those that are kept, each to be corrected or deleted.
import { add, setText } from "./dom.js";
import { button, choose, labelled, told } from "./told.js";

export function labelForm(parent, ask, regions) {
  const details = add(parent, "details", "talk-label-form");
  add(details, "summary", "", "A food from its package label");
  add(details, "p", "talk-help", "Type the label as the package prints it; then write the food's name in a recipe. Lines that are not printed stay empty.");
  const mark = Math.random().toString(36).slice(2);
  const field = (box, key, label, help = "", tag = "input") => labelled(box, { label, help, tag, id: `talk-label-${key}-${mark}` });
  const grid = add(details, "div", "talk-fields");
  const fields = {
    name: field(grid, "name", "Name of the food", "as you write it in a recipe"),
    serving: field(grid, "serving", "Serving", "as printed, with its grams: 2/3 cup (55 g)"),
    contains: field(grid, "contains", "Contains (allergens)", "as printed: wheat, milk. Empty: check the package"),
    origin: field(grid, "origin", "Made of", "", "select"),
    vegetarian: field(grid, "vegetarian", "Vegetarian", "", "select"),
  };
  const lines = add(details, "fieldset", "talk-fields talk-label-lines");
  add(lines, "legend", "", "What a serving holds, as printed");
  const amounts = new Map();
  const row = add(details, "div", "talk-line-of-buttons");
  const keep = button(row, "Keep this food", () => send(), "talk-first");
  const stop = button(row, "Leave it as it was", () => clear());
  regions.set("label", told(row));
  const back = button(row, "Put it back", () => ask({ do: "label_back", key: back.dataset.of, by: "label" }));
  back.hidden = true;
  const heading = add(details, "h3", "", "Foods that you keep");
  const list = add(details, "ul", "talk-kept");
  let correcting = "";

  const send = () => {
    const typed = Object.fromEntries(Object.entries(fields).map(([key, entry]) => [key, entry.value]));
    typed.amounts = Object.fromEntries([...amounts].map(([key, entry]) => [key, entry.value]));
    ask({ do: "label", label: typed, key: correcting, by: "label" });
  };
  const put = (typed) => {
    for (const [key, entry] of Object.entries(fields)) entry.value = typed[key] ?? "";
    for (const [key, entry] of amounts) entry.value = typed.amounts?.[key] ?? "";
    setText(keep, correcting ? "Keep the correction" : "Keep this food");
    stop.hidden = !correcting;
  };
  const clear = () => {
    correcting = "";
    put({});
  };
  const showList = (labels) => {
    const had = list.contains(document.activeElement);
    list.replaceChildren();
    heading.hidden = !labels.length;
    for (const { key, name, typed } of labels) {
      const item = add(list, "li", "talk-line-of-buttons");
      add(item, "span", "", name);
      const correct = button(item, "Correct", () => {
        correcting = key;
        put(typed);
        fields.name.focus();
      });
      const bin = button(item, "Delete", () => ask({ do: "label_delete", key, by: "label" }));
      for (const one of [correct, bin]) one.setAttribute("aria-label", `${one.textContent} ${name}`);
    }
    if (had) keep.focus();
  };
  let made = false;
  return {
    show(content, changes) {
      const { lines: names, origins, vegetarian } = content.label_form;
      if (!made) for (const [key, label] of names) amounts.set(key, field(lines, key, label));
      made = true;
      choose(fields.origin, origins, fields.origin.value);
      choose(fields.vegetarian, vegetarian, fields.vegetarian.value);
      if (changes.labels) showList(content.labels);
      if ("typed" in changes) clear();
      if (changes === content) put({});
    },
    told(said) {
      back.hidden = !said?.back;
      if (said?.back) back.dataset.of = said.back;
    },
  };
}
