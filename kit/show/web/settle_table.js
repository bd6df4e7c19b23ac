// One clear row a food: as written, the food it is read as, its grams and their range, how it is cooked.
import { add, setText } from "./dom.js";
import { button, choose, told } from "./told.js";

const ANOTHER = "another"; // of the foods to choose from: one that is to be looked for
const AS_READ = "as-read";

export function settleTable(parent, ask, regions) {
  const how = button(parent, "Show how each line was read", () => {
    const shown = table.classList.toggle("talk-shows-how");
    how.setAttribute("aria-pressed", String(shown));
  });
  how.setAttribute("aria-pressed", "false");
  const table = add(parent, "table", "talk-settle-table");
  table.setAttribute("aria-label", "How each line was read");
  const head = add(add(table, "thead"), "tr");
  for (const name of ["As written", "Food", "Grams", "Range", "Cooked"]) add(head, "th", "", name).scope = "col";
  const body = add(table, "tbody");
  const nothing = add(parent, "p", "talk-help", "Nothing to settle yet: write the recipe above.");
  regions.set("settle", told(parent));
  let rows = new Map();
  let shape = "";

  const show = (groups) => {
    const one = groups.length === 1 && !groups[0].part;
    table.hidden = how.hidden = !groups.length;
    nothing.hidden = Boolean(groups.length);
    const now = JSON.stringify(groups.map(({ part, rows: of }) => [part, of.map(({ at, which }) => [at, which])]));
    if (now !== shape) {
      const kept = body.contains(document.activeElement) ? document.activeElement.dataset.key : null;
      shape = now;
      rows = new Map();
      body.replaceChildren();
      for (const group of groups) {
        rows.set(`part-${group.part}`, part(body, group, one, ask));
        for (const row of group.rows) rows.set(`${row.at}-${row.which}`, food(body, row, ask));
      }
      if (kept) body.querySelector(`[data-key="${CSS.escape(kept)}"]`)?.focus();
    }
    for (const group of groups) {
      rows.get(`part-${group.part}`).put(group);
      for (const row of group.rows) rows.get(`${row.at}-${row.which}`).put(row);
    }
  };
  return {
    show,
    found({ row, foods }) {
      rows.get(row)?.found(foods);
    },
  };
}

function part(parent, { part: name }, one, ask) {
  const row = add(parent, "tr", "talk-part-row");
  const heading = add(row, "th", "", name || (one ? "The whole recipe" : "Without a part"));
  Object.assign(heading, { scope: "rowgroup", colSpan: 3 });
  const cell = add(row, "td");
  cell.colSpan = 2;
  const way = add(cell, "select", "talk-entry");
  way.dataset.key = `part-${name}`;
  way.setAttribute("aria-label", `How ${name || "the recipe"} is cooked`);
  way.onchange = () => ask({ do: "cook", at: name, part: name, value: way.value, by: "settle" });
  return {
    put(group) {
      choose(way, group.ways, group.way);
    },
  };
}

function food(parent, { at, which }, ask) {
  const key = `${at}-${which}`;
  const row = add(parent, "tr");
  const line = add(row, "th", "talk-as-written");
  line.scope = "row";
  const written = add(line, "span");
  const how = add(line, "span", "talk-how");
  const chosen = add(row, "td");
  const select = add(chosen, "select", "talk-entry");
  select.dataset.key = `food-${key}`;
  const search = add(chosen, "div", "talk-search");
  search.hidden = true;
  const words = add(search, "input", "talk-entry");
  Object.assign(words, { type: "search", autocomplete: "off", placeholder: "part of its name" });
  const matches = add(search, "div", "talk-line-of-buttons");
  const weighing = add(row, "td", "talk-grams");
  const grams = add(weighing, "input", "talk-entry");
  Object.assign(grams, { type: "text", inputMode: "decimal", autocomplete: "off" });
  grams.dataset.key = `grams-${key}`;
  const range = add(row, "td");
  const way = add(row, "td");
  const problem = add(chosen, "p", "talk-problem");
  let now = {};

  const settle = (food_) => ask({ do: "choose", at, which, value: food_, by: "settle" });
  select.onchange = () => {
    search.hidden = select.value !== ANOTHER;
    if (select.value === ANOTHER) words.focus();
    else if (select.value) settle(select.value === AS_READ ? "" : select.value);
  };
  words.oninput = () => ask({ do: "find", at: key, row: key, words: words.value, by: "settle" });
  grams.onchange = () => ask({ do: "grams", at, which, value: grams.value, by: "settle" });
  grams.onkeydown = (event) => {
    if (event.key === "Enter") grams.onchange();
  };
  const again = button(weighing, "As read", () => {
    grams.focus();
    ask({ do: "grams", at, which, value: "", by: "settle" });
  });

  return {
    put(given) {
      now = given;
      row.classList.toggle("talk-open-row", now.open);
      setText(written, now.line || "the same line");
      const name = now.line || "the same line";
      const first = now.food ? [] : [["", "choose a food"]];
      const back = now.chosen ? [[AS_READ, "as the line says"]] : [];
      if (search.hidden || select.value !== ANOTHER) choose(select, [...first, ...now.foods, ...back, [ANOTHER, "another food ..."]], now.food);
      select.setAttribute("aria-label", `Food of ${name}`);
      words.setAttribute("aria-label", `Look for a food for ${name}`);
      grams.setAttribute("aria-label", `Grams of ${name}`);
      again.setAttribute("aria-label", `Grams of ${name} as read`);
      if (document.activeElement !== grams || grams.dataset.of !== now.grams) grams.value = now.grams;
      grams.dataset.of = now.grams;
      again.hidden = !now.weighed;
      setText(range, now.weighed ? "weighed" : now.range);
      setText(way, now.way);
      way.title = now.way_because;
      setText(how, now.how);
      setText(problem, now.problem);
      problem.hidden = !now.problem;
    },
    found(foods) {
      matches.replaceChildren();
      for (const [value, text] of foods) {
        button(matches, text, () => {
          search.hidden = true;
          choose(select, [[value, text], ...now.foods, [ANOTHER, "another food ..."]], value);
          select.focus();
          settle(value);
        });
      }
      if (!foods.length && words.value.trim()) add(matches, "span", "talk-help", "No food of that name.");
    },
  };
}
