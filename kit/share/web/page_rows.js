// The controls of the page's rows: of each a food to choose where there are several, less, a slider, more, and its amount.
import { add, setText } from "../../show/web/dom.js";
import { amounts, position, with_amount, with_food } from "./page_setting.js";

/** Returns {show()}, which puts the setting in; `setting` tells the one that holds, `set` takes another. */
export function row_controls(list, data, setting, set) {
  const all = by_part(data.rows).map(([row, at, heading]) => {
    if (heading) add(list, "h3", "part", heading);
    return one_row(add(list, "div", "row"), data, at, setting, set);
  });
  return { show: () => all.forEach((row) => row.show()) };
}

function one_row(box, data, at, setting, set) {
  const row = data.rows[at];
  const name = add(box, row.options.length > 1 ? "select" : "span", "name");
  const less = button(box, "−", () => step(-1));
  const slider = add(box, "input", "slider");
  const more = button(box, "+", () => step(1));
  const words = add(box, "output", "amount");
  slider.type = "range";
  slider.min = "0";
  if (name.tagName === "SELECT") {
    for (const option of row.options) add(name, "option", "", option.name);
    name.setAttribute("aria-label", `Food in the place of ${row.options[0].name}`);
    name.addEventListener("change", () => set(with_food(data, setting(), at, name.selectedIndex)));
  }
  const step = (by) => {
    const steps = amounts(data, setting(), at);
    const to = Math.min(steps.length - 1, Math.max(0, position(steps, setting().rows[at].grams) + by));
    set(with_amount(setting(), at, steps[to][1]));
  };
  slider.addEventListener("input", () =>
    set(with_amount(setting(), at, amounts(data, setting(), at)[Number(slider.value)][1])),
  );
  return {
    show() {
      const now = setting();
      const { option, grams } = now.rows[at];
      const food = row.options[option];
      const steps = amounts(data, now, at);
      const here = position(steps, grams);
      const near = Math.abs(steps[here][1] - grams) <= 0.005 * grams;
      const said = `${near ? "" : "about "}${steps[here][0]}`;
      if (name.tagName === "SELECT") name.selectedIndex = option;
      else setText(name, food.name);
      slider.max = String(steps.length - 1);
      slider.value = String(here);
      slider.setAttribute("aria-label", food.name);
      slider.setAttribute("aria-valuetext", said);
      less.setAttribute("aria-label", `Less ${food.said}`);
      more.setAttribute("aria-label", `More ${food.said}`);
      setText(words, said);
      box.classList.toggle("changed", option !== 0 || grams !== row.options[0].grams);
    },
  };
}

/** Rows by the parts of the recipe, each with its place and, where a part begins, its heading. */
function by_part(rows) {
  const parts = [...new Set(rows.map((row) => row.part))];
  const placed = rows.map((row, at) => [row, at]);
  return parts.flatMap((part) =>
    placed.filter(([row]) => row.part === part).map(([row, at], first) => [row, at, first === 0 ? part : ""]),
  );
}

function button(parent, sign, pressed) {
  const node = add(parent, "button", "step", sign);
  node.type = "button";
  node.addEventListener("click", pressed);
  return node;
}
