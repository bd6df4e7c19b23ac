// What is said of the talk as a whole: one labelled field each, with a line of help, and what is wrong beside it.
import { newLines } from "./answered.js";
import { add } from "./dom.js";
import { choose, labelled, told } from "./told.js";

export function fieldsForm(parent, ask, regions) {
  const grid = add(parent, "div", "talk-fields");
  const made = new Map();
  const mark = Math.random().toString(36).slice(2);

  const make = ({ key, label, help, kind }) => {
    const tag = { choice: "select", long: "textarea" }[kind] ?? "input";
    const field = labelled(grid, { label, help, tag, id: `talk-field-${key}-${mark}` });
    if (kind === "number") field.inputMode = "decimal";
    if (kind === "long") {
      field.rows = 3;
      newLines(field);
    }
    field.parentElement.classList.toggle("talk-wide", kind === "long" || kind === "line");
    const by = `field-${key}`;
    regions.set(by, told(field.parentElement));
    field.onchange = () => ask({ do: "field", at: key, value: field.value, by });
    return field;
  };
  return {
    show(fields) {
      for (const given of fields) {
        if (!made.has(given.key)) made.set(given.key, make(given));
        const field = made.get(given.key);
        if (given.kind === "choice") choose(field, given.options, given.value);
        else if (document.activeElement !== field || field.dataset.of !== given.value) field.value = given.value;
        field.dataset.of = given.value;
      }
    },
  };
}
