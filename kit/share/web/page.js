// The page that is sent: the same sliders and charts as on screen, with no Python, no server and no network behind them.
//
// The numbers are Python's; here they are only multiplied, added (page_numbers.js) and drawn (page_drawings.js). Words,
// rounding and drawings are Python's own functions, translated (kit/share/javascript): `python` holds them.
import { add, setText } from "../../show/web/dom.js";
import { mount } from "../../show/web/stage.js";
import { drawings } from "./page_drawings.js";
import { allergens, place, share_of_day, spoken, worked_out } from "./page_numbers.js";
import { row_controls } from "./page_rows.js";
import { as_written } from "./page_setting.js";

/** Fill the page in: controls, read-out, charts and table, all of which follow one setting. */
export function begin(page, python, data, plotly) {
  const written = worked_out(data, as_written(data));
  let setting = as_written(data);
  let numbers = written;
  let drawn = drawings(python, data, numbers, written, setting.source_of);
  const find = (name) => page.querySelector(`[data-talk="${name}"]`);
  const rows = row_controls(find("rows"), data, () => setting, set);
  const view = mount(find("charts"), plotly, {
    columns: data.shown.columns,
    figures: Object.fromEntries(Object.entries(drawn).map(([name, drawing]) => [name, python.plain(drawing)])),
    read_out: [],
  });

  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const wear = (look) => {
    if (page.dataset.talkLook === look) return;
    page.dataset.talkLook = look;
    view.repaint();
  };
  const asTheSystem = () => wear(dark.matches ? "dark" : "light");
  dark.addEventListener("change", asTheSystem);
  window.addEventListener("beforeprint", () => wear("light"));
  window.addEventListener("afterprint", asTheSystem);
  asTheSystem();

  function set(changed) {
    setting = changed;
    numbers = worked_out(data, setting);
    const after = drawings(python, data, numbers, written, setting.source_of);
    const figures = {};
    for (const [name, drawing] of Object.entries(after)) {
      const change = python.plain(python.difference(drawn[name], drawing));
      if (Object.keys(change).length) figures[name] = change;
    }
    drawn = after;
    view.update({ figures });
    show();
  }

  function show() {
    data.shown.read_aloud.forEach((name, at) => {
      const box = find("read-out").children[at];
      const [now, before] = [numbers, written].map((of) => spoken(python, data, of, name));
      const same = String(now) === String(before);
      setText(box.querySelector("b"), now[1]);
      setText(box.querySelector(".unit"), now[2]);
      setText(box.querySelector("small"), same ? "" : `was ${before[1]}`);
      box.classList.toggle("changed", !same);
    });
    setText(find("allergens"), allergens(python, data, numbers).join(". ") || find("allergens").dataset.none);
    rows.show();
    data.nutrients.forEach(({ id, unit, decimals }, at) => {
      const cells = find("table")?.querySelector(`[data-nutrient="${id}"]`)?.children;
      if (!cells) return;
      const { total, low, high, at_least, up_to } = numbers;
      const bound = at_least[at] ? "at least " : up_to[at] ? "up to " : "";
      setText(cells[1], `${bound}${python.number(total[at], decimals)} ${unit}`);
      setText(cells[2], python.span(low[at], high[at]));
      const share = share_of_day(python, data, numbers, at);
      setText(cells[3], Number.isNaN(share) ? "" : python.percent(share));
    });
    find("servings").value = String(setting.servings);
    setText(find("hint"), find("hint").dataset[setting.meaning === "make more" ? "more" : "out"]);
    for (const choice of page.querySelectorAll("[data-talk-choice]")) {
      const [name, value] = choice.dataset.talkChoice.split("=");
      choice.setAttribute("aria-pressed", String(setting[name] === value));
    }
    find("reset").disabled = JSON.stringify(setting.rows) === JSON.stringify(as_written(data).rows) &&
      setting.servings === data.servings;
  }

  const servings = find("servings");
  for (const choice of data.choices) add(servings, "option", "", String(choice));
  servings.addEventListener("change", () => set({ ...setting, servings: Number(servings.value) }));
  const sources = find("source");
  for (const name of data.shown.sources_of) {
    Object.assign(add(sources, "option"), { value: name, textContent: data.nutrients[place(data, name)].short });
  }
  sources.addEventListener("change", () => set({ ...setting, source_of: sources.value }));
  for (const choice of page.querySelectorAll("[data-talk-choice]")) {
    const [name, value] = choice.dataset.talkChoice.split("=");
    choice.addEventListener("click", () => set({ ...setting, [name]: value }));
  }
  find("reset").addEventListener("click", () => set({ ...setting, ...pick(as_written(data), ["rows", "servings"]) }));
  for (const [at, asked] of data.questions.entries()) {
    const tries = page.querySelector(`[data-talk-question="${at}"]`);
    if (!asked || !tries) continue;
    tries.hidden = false;
    tries.addEventListener("click", () => {
      const { servings: many, meaning, foods, grams } = asked;
      const tried = foods.map((option, row) => ({ option, grams: grams[row] }));
      set({ ...setting, servings: many, meaning, rows: tried });
      find("read-out").scrollIntoView({ block: "nearest" });
    });
  }
  page.classList.add("talk-works"); // what only a working page has is shown now
  show();
  return { set, setting: () => setting, numbers: () => numbers, drawn: () => drawn };
}

const pick = (from, names) => Object.fromEntries(names.map((name) => [name, from[name]]));
