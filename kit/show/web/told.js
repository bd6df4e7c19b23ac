// A place beside a button or a field where its answer appears.
import { add } from "./dom.js";

export function told(parent) {
  const place = add(parent, "p", "talk-told");
  place.setAttribute("role", "status");
  return place;
}

/** A button of the desk. */
export function button(parent, text, act, name = "") {
  const made = add(parent, "button", `talk-button ${name}`.trim(), text);
  made.type = "button";
  made.onclick = act;
  return made;
}

/** A label above a field, and its line of help below; returns the field. */
export function labelled(parent, { label, help = "", tag = "input", id }) {
  const box = add(parent, "div", "talk-field");
  const name = add(box, "label", "", label);
  const field = add(box, tag, "talk-entry");
  field.id = id;
  name.htmlFor = id;
  if (tag === "input") Object.assign(field, { type: "text", autocomplete: "off" });
  if (help) {
    const words = add(box, "span", "talk-help", help);
    words.id = `${id}-help`;
    field.setAttribute("aria-describedby", words.id);
  }
  return field;
}

/** Put options into a select, and what is chosen; nothing is touched that stays the same. */
export function choose(select, options, value) {
  const given = JSON.stringify(options);
  if (select.dataset.options !== given) {
    select.dataset.options = given;
    select.replaceChildren();
    for (const [key, text] of options) Object.assign(add(select, "option", "", text), { value: key });
  }
  select.value = value;
}
