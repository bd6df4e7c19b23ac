// The plan as a small table beside its text: a cell changes its line of the text.
import { add } from "./dom.js";
import { button } from "./told.js";

const CELLS = [
  ["hands", "Minutes of work"],
  ["talked", "Minutes of talk"],
  ["title", "Step"],
  ["pots", "Pots that go on"],
  ["needs", "Needs"],
];

export function planTable(parent, ask) {
  const details = add(parent, "details", "talk-plan-table");
  add(details, "summary", "", "The plan as a table");
  const table = add(add(details, "div", "talk-scrolls"), "table");
  table.setAttribute("aria-label", "The plan, a step a row");
  const head = add(add(table, "thead"), "tr");
  for (const [, label] of CELLS) add(head, "th", "", label).scope = "col";
  add(add(head, "th"), "span", "talk-unseen", "Take away");
  const body = add(table, "tbody");
  const more = button(details, "Add a step", () => ask({ do: "plan_add", by: "plan" }));

  const make = (at) => {
    const row = add(body, "tr");
    const cells = new Map();
    for (const [cell, label] of CELLS) {
      const entry = add(add(row, "td", `talk-cell-${cell}`), "input", "talk-entry");
      Object.assign(entry, { type: "text", autocomplete: "off" });
      entry.setAttribute("aria-label", `${label}, step ${at + 1}`);
      entry.onchange = () => ask({ do: "plan_cell", at: `${row.dataset.place}-${cell}`, place: Number(row.dataset.place), cell, value: entry.value, by: "plan" });
      cells.set(cell, entry);
    }
    button(add(row, "td"), "✕", () => ask({ do: "plan_remove", place: Number(row.dataset.place), by: "plan" })).setAttribute("aria-label", `Take step ${at + 1} away`);
    return { row, cells };
  };
  const made = [];
  return {
    show(rows) {
      while (made.length > rows.length) {
        const { row } = made.pop();
        if (row.contains(document.activeElement)) more.focus();
        row.remove();
      }
      rows.forEach((given, at) => {
        made[at] ??= make(at);
        made[at].row.dataset.place = given.place;
        for (const [cell, entry] of made[at].cells) {
          if (document.activeElement !== entry || entry.dataset.of !== given[cell]) entry.value = given[cell];
          entry.dataset.of = given[cell];
          entry.disabled = Boolean(given.problem);
        }
      });
      table.hidden = !rows.length;
    },
  };
}
