// What a serving holds: a table beside two charts, the three weights, the checks on demand, and what to say for safety.
import { add, setText } from "./dom.js";
import { library } from "./plotly.js";
import { mount } from "./stage.js";

const SHORT = 18; // signs of a cell that is kept on one line

export function servingPart(parent, model) {
  const title = add(parent, "h3");
  const nothing = add(parent, "p", "talk-help");
  const open = add(parent, "p", "talk-still-open");
  const beside = add(parent, "div", "talk-table-and-charts");
  const serving = valuesTable(add(beside, "div", "talk-scrolls"), "What a serving holds");
  const drawn = add(beside, "div", "talk-charts");
  const rest = add(parent, "div");
  add(rest, "h3", "", "For safety");
  add(rest, "p", "talk-help", "Local food-safety codes and licensed practice come first. General education, not individual advice.");
  const cautions = valuesTable(add(rest, "div", "talk-scrolls"), "What to say for safety");
  add(rest, "h3", "", "As bought, edible, as eaten");
  const weights = valuesTable(add(rest, "div", "talk-scrolls"), "The three weights of each ingredient");
  const details = add(rest, "details");
  const summary = add(details, "summary");
  add(details, "p", "talk-help", "Energy against 4, 9 and 4 kcal for a gram of protein, fat and carbohydrate, and the parts of 100 g against 100 g. A failed check is a reason to look, and the reason is often known.");
  const checks = valuesTable(add(details, "div", "talk-scrolls"), "Checks of the dish and its foods");
  let stage = null;

  const draw = (charts) => {
    const names = Object.keys(charts);
    if (!names.length) return;
    if (!stage) stage = mount(drawn, library(model), { columns: [names], figures: charts, read_out: [] });
    else stage.update({ figures: Object.fromEntries(names.map((name) => [name, { drawing: charts[name] }])) });
  };
  let last = "";
  return {
    show(content, charts) {
      setText(title, content.title);
      setText(nothing, content.nothing);
      nothing.hidden = !content.nothing;
      beside.hidden = rest.hidden = title.hidden = Boolean(content.nothing);
      setText(open, content.open);
      open.hidden = !content.open;
      if (content.nothing) return;
      serving(content.tables.serving);
      cautions(content.tables.cautions);
      weights(content.tables.weights);
      checks(content.tables.checks);
      setText(summary, `Checks of the figures: ${content.checked}`);
      const now = JSON.stringify(charts);
      if (now !== last) draw(charts);
      last = now;
    },
    remove() {
      stage?.remove();
    },
  };
}

/** A table of texts; returns what puts other columns and rows into it. */
function valuesTable(parent, label) {
  const table = add(parent, "table", "talk-values");
  table.setAttribute("aria-label", label);
  parent.tabIndex = 0; // so that a keyboard can scroll it
  parent.setAttribute("role", "region");
  parent.setAttribute("aria-label", label);
  let last = "";
  return ({ columns, rows }) => {
    const now = JSON.stringify([columns, rows]);
    if (now === last) return;
    last = now;
    table.replaceChildren();
    const head = add(add(table, "thead"), "tr");
    for (const name of columns) add(head, "th", "", name).scope = "col";
    const body = add(table, "tbody");
    for (const cells of rows) {
      const row = add(body, "tr");
      cells.forEach((text, at) => {
        const cell = add(row, at ? "td" : "th", text.length <= SHORT ? "talk-short" : "", text);
        if (!at) cell.scope = "row";
      });
    }
  };
}
