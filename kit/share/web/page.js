// The page that is sent: the same sliders and charts as on screen, with no Python, no server and no network behind them.
//
// The numbers are Python's (kit/share/page_data.py); here they are only multiplied, added and drawn. Words, rounding and
// drawings are Python's own functions, translated (kit/share/javascript): `python` holds them. `mount` is stage.js.

/** Work out a setting: what a serving holds, how sure that is, and what each ingredient brings. */
export function worked_out(data, setting) {
  const { servings, meaning, rows } = setting;
  const scale = meaning === "make more" ? servings / data.servings : 1;
  const options = rows.map(({ option }, at) => data.rows[at].options[option]);
  const grams = rows.map((row) => row.grams * scale);
  const brings = options.map(({ per_100g }, at) =>
    per_100g.map((value) => (grams[at] === 0 ? 0 : value === null ? NaN : (grams[at] * value) / (100 * servings))),
  );
  const columns = data.nutrients.map((_, at) => brings.map((row) => row[at]));
  const total = columns.map((values) => values.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : value), 0));
  const half = columns.map((values, at) => data.z90 * Math.sqrt(values.reduce((sum, value, row) => {
    const [u, v] = [options[row].amount_sd, options[row].content_sd[at]];
    return sum + (Number.isNaN(value) ? 0 : value ** 2 * (u ** 2 + v ** 2 + u ** 2 * v ** 2));
  }, 0)));
  const at_least = columns.map((values) => data.open > 0 || values.some(Number.isNaN));
  const may_be_lost = columns.map((values, at) => {
    const unsure = values.reduce((sum, value, row) => sum + (!options[row].may_lose || Number.isNaN(value) ? 0 : value), 0);
    return data.nutrients[at].taken && unsure > data.a_little * total[at];
  });
  const lost = columns.map((values, at) => values.reduce((sum, value, row) => {
    const taken = options[row].may_lose ? options[row].may_lose[at] : 0;
    return sum + (Number.isNaN(value) ? 0 : value * taken);
  }, 0));
  return {
    options,
    grams,
    brings,
    total,
    low: total.map((value, at) => Math.max(0, value - Math.hypot(half[at], lost[at]))),
    high: total.map((value, at) => value + half[at]),
    at_least,
    up_to: may_be_lost.map((lost, at) => lost && !at_least[at]),
  };
}

/** Shares of energy by the general factors; unknown where an amount is missing or there is no energy. */
export function energy_shares(data, numbers) {
  const sources = Object.entries(data.energy).map(([name, factor]) => {
    const at = place(data, name);
    return [name, numbers.at_least[at] ? NaN : numbers.total[at] * factor];
  });
  const whole = sources.reduce((sum, [, kcal]) => sum + kcal, 0);
  return new Map(sources.map(([name, kcal]) => [name, whole > 0 ? kcal / whole : NaN]));
}

/** The setting of the recipe as written. */
export function as_written(data) {
  return {
    ...{ servings: data.servings, meaning: "make more", system: data.system, source_of: data.shown.sources_of[0] },
    rows: data.rows.map(({ options }) => ({ option: 0, grams: options[0].grams })),
  };
}

/** A setting with another food in a row: as much of it as there was of the other, in the proportion of their amounts. */
export function with_food(data, setting, at, option) {
  const { options } = data.rows[at];
  const row = setting.rows[at];
  const was = options[row.option].grams;
  const grams = (was ? row.grams / was : 0) * options[option].grams;
  return with_row(setting, at, { option, grams });
}

export const with_amount = (setting, at, grams) => with_row(setting, at, { ...setting.rows[at], grams });

function with_row(setting, at, row) {
  return { ...setting, rows: setting.rows.map((old, place) => (place === at ? row : old)) };
}

/** The amounts that a row's slider runs through, each as its words and its grams in the pot as written. */
export function amounts(data, setting, at) {
  const option = data.rows[at].options[setting.rows[at].option];
  const made = setting.meaning === "make more" ? setting.servings : data.servings;
  return option.amounts[setting.system][String(made)];
}

/** Where on its slider a row stands. */
export function position(steps, grams) {
  const away = (step) => Math.abs(step[1] - grams);
  return steps.reduce((best, step, at) => (away(step) < away(steps[best]) ? at : best), 0);
}

const place = (data, name) => data.nutrients.findIndex(({ id }) => id === name);

/** What a serving holds as it can be said, in three parts: how it is meant, the number, the unit. */
export function spoken(python, data, numbers, name) {
  const at = place(data, name);
  const { unit, decimals } = data.nutrients[at];
  const { total, low, high, at_least, up_to } = numbers;
  return python.spoken_parts(total[at], low[at], high[at], unit, decimals, at_least[at], up_to[at]);
}

/** Every chart of a setting, beside the recipe as written. */
export function drawings(python, data, now, written, source_of) {
  const ranges = new Map(Object.entries(data.ranges));
  const [here, there] = [energy_shares(data, now), energy_shares(data, written)];
  const source = place(data, source_of);
  const { name, unit, decimals } = data.nutrients[source];
  const of_a_day = data.shown.of_a_day.map((id) => place(data, id)).filter((at) => data.nutrients[at].kind);
  const days = (numbers) => new Map(of_a_day.map((at) => [data.nutrients[at].short, share_of_day(python, data, numbers, at)]));
  const named = (keep) => new Set(of_a_day.filter(keep).map((at) => data.nutrients[at].short));
  const column = (numbers) => numbers.brings.map((row) => row[source]);
  return {
    shares: python.energy_shares(here, ranges, there),
    balance: python.balance(here, ranges, there),
    sources: python.sources(
      ...[now.options.map((option) => option.name), column(now), name, unit, column(written), decimals],
      ...[python.colour(source_of), now.options.map((option) => option.said)],
    ),
    day: python.share_of_day(
      ...[days(now), named((at) => data.nutrients[at].kind === "limit"), days(written), named((at) => now.at_least[at])],
    ),
  };
}

/** A serving's share of a day; that of protein, where the rules count its quality, only where that is sure. */
function share_of_day(python, data, numbers, at) {
  const { id, day } = data.nutrients[at];
  const share = day === null ? NaN : numbers.total[at] / day;
  if (id !== "protein" || !data.protein_by_quality) return share;
  const brings = numbers.brings.map((row) => row[at] || 0);
  return python.protein_share(share, python.least_score(brings, numbers.options.map((option) => option.protein_score)), 1);
}

/** What a serving holds of the listed allergens, a sentence each, and the foods whose package has to be read. */
export function allergens(python, data, numbers) {
  const used = numbers.options.filter((_, at) => numbers.grams[at] > 0);
  const told = data.allergens
    .map(([id, name]) => [name, used.filter((option) => option.allergens.includes(id)).map((option) => option.said)])
    .filter(([, foods]) => foods.length)
    .map(([name, foods]) => python.allergen_sentence(name, [...new Set(foods)]));
  const unknown = [...new Set(used.filter((option) => option.unknown).map((option) => option.said))];
  return unknown.length ? [...told, python.check_the_package(unknown)] : told;
}

// ---- the page itself

/** Fill the page in: controls, read-out, charts and table, all of which follow one setting. */
export function begin(page, python, data, mount, plotly) {
  const written = worked_out(data, as_written(data));
  let setting = as_written(data);
  let numbers = written;
  let drawn = drawings(python, data, numbers, written, setting.source_of);
  const find = (name) => page.querySelector(`[data-talk="${name}"]`);
  const rows = new Map(by_part(data.rows).map(([row, at, heading]) => [at, row_controls(row, at, heading)]));
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
      write(box.querySelector("b"), now[1]);
      write(box.querySelector(".unit"), now[2]);
      write(box.querySelector("small"), same ? "" : `was ${before[1]}`);
      box.classList.toggle("changed", !same);
    });
    write(find("allergens"), allergens(python, data, numbers).join("; ") || find("allergens").dataset.none);
    for (const row of rows.values()) row.show();
    data.nutrients.forEach(({ id, unit, decimals }, at) => {
      const cells = find("table")?.querySelector(`[data-nutrient="${id}"]`)?.children;
      if (!cells) return;
      const { total, low, high, at_least, up_to } = numbers;
      const bound = at_least[at] ? "at least " : up_to[at] ? "up to " : "";
      write(cells[1], `${bound}${python.number(total[at], decimals)} ${unit}`);
      write(cells[2], python.span(low[at], high[at]));
      const share = share_of_day(python, data, numbers, at);
      write(cells[3], Number.isNaN(share) ? "" : python.percent(share));
    });
    find("servings").value = String(setting.servings);
    write(find("hint"), find("hint").dataset[setting.meaning === "make more" ? "more" : "out"]);
    for (const choice of page.querySelectorAll("[data-talk-choice]")) {
      const [name, value] = choice.dataset.talkChoice.split("=");
      choice.setAttribute("aria-pressed", String(setting[name] === value));
    }
    find("reset").disabled = JSON.stringify(setting.rows) === JSON.stringify(as_written(data).rows) &&
      setting.servings === data.servings;
  }

  /** The controls of one row: a food to choose where there are several, less, a slider, more, and the amount in words. */
  function row_controls(row, at, heading) {
    const list = find("rows");
    if (heading) element(list, "h3", "part").textContent = heading;
    const box = element(list, "div", "row");
    const name = row.options.length > 1 ? element(box, "select", "name") : element(box, "span", "name");
    const less = button(box, "−", () => step(-1));
    const slider = element(box, "input", "slider");
    const more = button(box, "+", () => step(1));
    const words = element(box, "output", "amount");
    slider.type = "range";
    slider.min = "0";
    if (name.tagName === "SELECT") {
      for (const option of row.options) element(name, "option").textContent = option.name;
      name.setAttribute("aria-label", `Food in the place of ${row.options[0].name}`);
      name.addEventListener("change", () => set(with_food(data, setting, at, name.selectedIndex)));
    }
    const step = (by) => {
      const steps = amounts(data, setting, at);
      const to = Math.min(steps.length - 1, Math.max(0, position(steps, setting.rows[at].grams) + by));
      set(with_amount(setting, at, steps[to][1]));
    };
    slider.addEventListener("input", () =>
      set(with_amount(setting, at, amounts(data, setting, at)[Number(slider.value)][1])),
    );
    return {
      show() {
        const option = row.options[setting.rows[at].option];
        const steps = amounts(data, setting, at);
        const here = position(steps, setting.rows[at].grams);
        const near = Math.abs(steps[here][1] - setting.rows[at].grams) <= 0.005 * setting.rows[at].grams;
        const said = `${near ? "" : "about "}${steps[here][0]}`;
        if (name.tagName === "SELECT") name.selectedIndex = setting.rows[at].option;
        else write(name, option.name);
        slider.max = String(steps.length - 1);
        slider.value = String(here);
        slider.setAttribute("aria-label", option.name);
        slider.setAttribute("aria-valuetext", said);
        less.setAttribute("aria-label", `Less ${option.said}`);
        more.setAttribute("aria-label", `More ${option.said}`);
        write(words, said);
        const as = row.options[0];
        box.classList.toggle("changed", setting.rows[at].option !== 0 || setting.rows[at].grams !== as.grams);
      },
    };
  }

  const servings = find("servings");
  for (const choice of data.choices) element(servings, "option").textContent = String(choice);
  servings.addEventListener("change", () => set({ ...setting, servings: Number(servings.value) }));
  const sources = find("source");
  for (const name of data.shown.sources_of) {
    Object.assign(element(sources, "option"), { value: name, textContent: data.nutrients[place(data, name)].short });
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

/** Rows by the parts of the recipe, each with its place and, where a part begins, its heading. */
function by_part(rows) {
  const parts = [...new Set(rows.map((row) => row.part))];
  const placed = rows.map((row, at) => [row, at]);
  return parts.flatMap((part) =>
    placed.filter(([row]) => row.part === part).map(([row, at], first) => [row, at, first === 0 ? part : ""]),
  );
}

const pick = (from, names) => Object.fromEntries(names.map((name) => [name, from[name]]));

function write(node, words) {
  if (node.textContent !== words) node.textContent = words; // an unchanged text is not read out again
}

function element(parent, tag, name = "") {
  const node = document.createElement(tag);
  node.className = name;
  parent.append(node);
  return node;
}

function button(parent, sign, pressed) {
  const node = element(parent, "button", "step");
  node.type = "button";
  node.textContent = sign;
  node.addEventListener("click", pressed);
  return node;
}
