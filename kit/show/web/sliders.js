// The controls of the dish: for every ingredient −, a slider, + and its amount, which can be typed too.
import { add, fill, setText } from "./dom.js";

const IN_HAND = 300; // [ms] so long behind a move a slider stays where her hand has put it

/** Returns {show(rows), some(rows), servings(servings)}; every move is told to `ask`. */
export function sliders(parent, ask) {
  const top = add(parent, "div", "talk-servings");
  const list = add(parent, "div", "talk-rows");
  const byPlace = new Map();
  let serving = null;
  let meanings = null;

  const show = (rows) => {
    const kept = document.activeElement?.dataset?.control;
    list.replaceChildren();
    byPlace.clear();
    let part = "";
    for (const row of rows) {
      if (row.part && row.part !== part) add(list, "h3", "", row.part);
      part = row.part;
      byPlace.set(row.at, ingredient(list, row, ask));
    }
    if (kept) list.querySelector(`[data-control="${kept}"]`)?.focus();
  };
  const some = (rows) => {
    for (const row of rows) byPlace.get(row.at)?.put(row);
  };
  const servings = (given) => {
    if (!serving) {
      const tell = (place) => ask({ do: "servings", value: serving.now.values[place] });
      const type = (text) => ask({ do: "servings", value: Number(text.replace(",", ".")) || 0 });
      serving = row(top, { label: "Servings", control: "servings", tell, type });
      meanings = add(top, "div", "talk-choices");
      meanings.setAttribute("role", "group");
      meanings.setAttribute("aria-label", "Other servings");
    }
    serving.put(given);
    const make = (box) => add(box, "button", "talk-button");
    fill(meanings, given.meanings, make, (button, [meaning, text]) => {
      setText(button, text);
      button.setAttribute("aria-pressed", meaning === given.meaning);
      button.onclick = () => ask({ do: "servings", value: given.values[given.place], meaning });
    });
  };
  return { show, some, servings };
}

function ingredient(parent, first, ask) {
  const { at } = first;
  const made = row(parent, {
    label: first.name,
    title: first.full,
    control: `amount-${at}`,
    foods: first.foods,
    tell: (place, label) => ask({ do: "move", at, place, label }),
    type: (text) => ask({ do: "type", at, text }),
    swap: (food) => ask({ do: "swap", at, food }),
  });
  made.put(first);
  return made;
}

/** Put foods into a chooser, and the one that is there. */
function offer(choice, { foods, food }) {
  fill(choice, foods, (box) => add(box, "option"), (option, [key, text]) => {
    option.value = key;
    setText(option, text);
  });
  choice.value = food;
}

/** One row. `put` shows what Python says, but for a slider that is under her hand. */
function row(parent, { label, title = "", control, foods = [], tell, type, swap }) {
  const box = add(parent, "div", "talk-row");
  const name = add(box, foods.length ? "select" : "span", "talk-name");
  if (foods.length) {
    name.onchange = () => swap(name.value);
    name.setAttribute("aria-label", `Food in the place of ${label}`);
  } else setText(name, label);
  name.title = title;
  const button = (text, words, by) => {
    const made = add(box, "button", "talk-step", text);
    made.setAttribute("aria-label", `${words}: ${label}`);
    made.onclick = () => move(Number(slide.value) + by);
    return made;
  };
  const less = button("−", "Less", -1);
  const slide = add(box, "input", "talk-slide");
  Object.assign(slide, { type: "range", min: 0, step: 1 });
  slide.dataset.control = control;
  slide.setAttribute("aria-label", label);
  const more = button("+", "More", 1);
  const amount = add(box, "input", "talk-amount");
  Object.assign(amount, { type: "text", autocomplete: "off", spellcheck: false });
  amount.setAttribute("aria-label", `Amount of ${label}`);
  let typing = false;
  let moving = 0;
  let resting = 0;
  let chosen = "";

  const name_ = (place) => {
    const text = made.now.steps[place] ?? "";
    if (!typing) amount.value = text;
    slide.setAttribute("aria-valuetext", text);
    slide.style.setProperty("--at", `${(100 * place) / Math.max(1, made.now.steps.length - 1)}%`);
    less.disabled = place <= 0;
    more.disabled = place >= made.now.steps.length - 1;
  };
  const move = (place) => {
    const within = Math.min(Math.max(place, 0), made.now.steps.length - 1);
    slide.value = within;
    moving = Date.now();
    clearTimeout(resting);
    chosen = made.now.steps[within];
    name_(within);
    tell(within, chosen);
  };
  slide.oninput = () => move(Number(slide.value));
  amount.onfocus = () => {
    typing = true;
    amount.select();
  };
  const finish = () => {
    if (!typing) return;
    typing = false;
    if (amount.value.trim() !== made.now.steps[made.now.place]) type(amount.value);
    else name_(made.now.place);
  };
  amount.onblur = finish;
  amount.onkeydown = (event) => {
    if (event.key === "Enter") amount.blur();
    if (event.key !== "Escape") return;
    typing = false;
    name_(made.now.place);
    amount.blur();
  };

  const call = (given) => {
    setText(name, given.name); // a typed what-if has put another food in its place
    name.title = given.full;
    slide.setAttribute("aria-label", given.name);
    amount.setAttribute("aria-label", `Amount of ${given.name}`);
  };

  const rest = () => {
    moving = 0;
    made.put(made.now);
  };

  const made = {
    now: null,
    put(given) {
      made.now = given;
      box.classList.toggle("talk-row-changed", Boolean(given.changed));
      if (foods.length) offer(name, given);
      else if (given.name && given.name !== name.textContent) call(given);
      slide.max = given.steps.length - 1;
      const under = document.activeElement === slide && Date.now() - moving < IN_HAND;
      const hers = under ? given.steps.indexOf(chosen) : -1; // where that amount stands among the steps as they are now
      slide.value = hers < 0 ? given.place : hers;
      name_(Number(slide.value));
      clearTimeout(resting);
      if (hers >= 0 && hers !== given.place) resting = setTimeout(rest, IN_HAND); // an undo right behind a move
    },
  };
  return made;
}
