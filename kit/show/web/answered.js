// A box of plain text with an answer beside each of its lines, in place, as she types.
//
//   const box = answered(parent, { label: "Script", help: "A sentence a line.", rows: 8, tell, act });
//   box.put(answers);         // what Python answers; each stands level with its line
//   box.write(text);          // another text: another talk was opened
//   box.text                  // what she has written
//
// `tell(text, pasted)` hears every change; `act(message)` what she chose in an answer. An answer is
//
//   { place: 2, kind: "off", sign: "✗", said: "off", text: "It has 7 grams.",          // the line, and what is answered
//     acts: [{ label: "Say this instead", detail: "...", replace: { from, to } },       // words that take the place of hers
//            { label: "...", send: { do: "..." } }],                                     // or a message to Python
//     choices: [{ label: "Which beans?", options: [[value, text]], send: { do: "pin" } }] }  // sent with `value`
//
// kind: "holds", "off", "ask", "plain" or "none". What needs her is shown whole; the rest takes the room of its line, and is
// shown whole while she is in that line; "none" is left out where there is no room level with its line. Pure text in, pure
// text out. The styles are answered.css.
import { add, setText } from "./dom.js";

const SPOKEN_AFTER = 900; // ms without a key, after which a screen reader is told the answer to the line

/** Let Enter begin a new line of a text: JupyterLab holds the key back, so that none would come of it. */
export function newLines(area) {
  area.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    document.execCommand("insertText", false, "\n");
  });
}

export function answered(parent, { label, help = "", rows = 6, tell, act }) {
  const box = add(parent, "div", "talk-answered");
  const written = add(box, "div", "talk-written");
  const mirror = add(written, "div", "talk-mirror");
  mirror.setAttribute("aria-hidden", "true");
  const area = add(written, "textarea", "talk-area");
  area.setAttribute("aria-label", help ? `${label}. ${help}` : label);
  area.autocapitalize = "off";
  area.style.setProperty("--rows", rows);
  const list = add(box, "ol", "talk-answers");
  list.setAttribute("aria-label", `Answers to ${label.toLowerCase()}`);
  const spoken = add(box, "span", "talk-unseen");
  spoken.setAttribute("aria-live", "polite");
  let answers = [];
  let here = -1;
  let timer = 0;

  // ---- where things stand

  const lines = () => area.value.split("\n");
  const reflect = () => {
    const texts = lines();
    while (mirror.children.length > texts.length) mirror.lastElementChild.remove();
    texts.forEach((text, at) => {
      const line = mirror.children[at] ?? add(mirror, "div", "talk-mirrored");
      setText(line, text || "\u200b");
    });
  };
  const level = () => {
    const tops = [...mirror.children].map((line) => [line.offsetTop, line.offsetHeight]);
    const height = parseFloat(getComputedStyle(area).lineHeight) || 28;
    const items = [...list.children];
    items.forEach((item, at) => {
      const [, tall] = tops[answers[at].place] ?? [0, height];
      const sharing = answers.filter(({ place }) => place === answers[at].place).length;
      item.style.setProperty("--lines", Math.max(1, Math.round(tall / height / sharing)));
    });
    for (const item of items) item.classList.remove("talk-pushed");
    const heights = items.map((item) => item.offsetHeight);
    let free = 0;
    items.forEach((item, at) => {
      const { place, kind } = answers[at];
      const line = tops[place]?.[0] ?? free;
      const top = Math.max(free, line);
      const pushed = top > line + height / 2 && kind === "none" && place !== here;
      item.classList.toggle("talk-pushed", pushed);
      if (pushed) return;
      item.style.top = `${top}px`;
      free = top + heights[at];
    });
    list.style.minHeight = `${free}px`;
  };
  const mark = () => {
    const kinds = new Map();
    for (const { place, kind } of answers) if (!["holds", "plain", "none"].includes(kind)) kinds.set(place, kind);
    [...mirror.children].forEach((line, at) => {
      line.dataset.kind = kinds.get(at) ?? "";
      line.classList.toggle("talk-here", at === here);
    });
    [...list.children].forEach((item, at) => item.classList.toggle("talk-here", answers[at].place === here));
  };
  const show = () => {
    reflect();
    mark();
    level();
  };
  const caret = () => {
    const at = area.value.slice(0, area.selectionStart).split("\n").length - 1;
    if (at === here) return;
    here = at;
    mark();
    level();
  };

  // ---- what she does

  let pasted = false;
  area.addEventListener("paste", () => (pasted = true));
  area.addEventListener("input", () => {
    reflect();
    caret();
    tell(area.value, pasted);
    pasted = false;
    clearTimeout(timer);
    timer = setTimeout(speak, SPOKEN_AFTER);
  });
  newLines(area);
  for (const name of ["keyup", "click", "focus"]) area.addEventListener(name, caret);
  area.addEventListener("blur", () => {
    here = -1;
    show();
  });
  const speak = () => {
    const found = answers.filter(({ place }) => place === here);
    setText(spoken, found.map(({ said, text }) => [said, text].filter(Boolean).join(": ")).join("; "));
  };
  const replace = (place, { from, to }) => {
    const texts = lines();
    const line = texts[place] ?? "";
    const start = texts.slice(0, place).join("\n").length + (place ? 1 : 0);
    const at = from && line.includes(from) ? line.indexOf(from) : 0;
    const long = from && line.includes(from) ? from.length : line.length;
    area.focus();
    area.setSelectionRange(start + at, start + at + long);
    // With her own undo, where the browser can.
    if (!document.execCommand("insertText", false, to)) {
      area.setRangeText(to, start + at, start + at + long, "end");
      area.dispatchEvent(new Event("input"));
    }
  };

  // ---- what is answered

  const item = (answer, at) => {
    const made = add(list, "li", "talk-answer");
    made.dataset.kind = answer.kind;
    made.classList.toggle("talk-brief", !answer.text && !answer.acts?.length);
    add(made, "span", "talk-unseen", `Line ${answer.place + 1}: `);
    add(made, "span", "talk-of", lines()[answer.place] ?? "");
    const words = add(made, "p", "talk-words");
    if (answer.said) {
      const said = add(words, "b", "talk-said");
      if (answer.sign) add(said, "span", "", `${answer.sign} `).setAttribute("aria-hidden", "true");
      said.append(answer.said);
      if (answer.text) words.append(" ");
    }
    if (answer.text) words.append(answer.text);
    const doing = add(made, "div", "talk-doing");
    (answer.acts ?? []).forEach((one, which) => {
      const button = add(doing, "button", "talk-button", one.label);
      button.type = "button";
      button.dataset.key = `${at}-act-${which}`;
      if (one.detail) add(doing, "span", "talk-detail", one.detail);
      button.onclick = () => (one.replace ? replace(answer.place, one.replace) : act(one.send));
    });
    (answer.choices ?? []).forEach((choice, which) => {
      const select = add(doing, "select", "talk-choice");
      select.setAttribute("aria-label", choice.label);
      select.dataset.key = `${at}-choice-${which}`;
      Object.assign(add(select, "option", "", choice.label), { value: "" });
      for (const [value, text] of choice.options) Object.assign(add(select, "option", "", text), { value });
      select.onchange = () => {
        const [value] = choice.options.find(([key]) => key === select.value) ?? [];
        if (value === undefined) return;
        if (choice.replace) replace(answer.place, { from: "", to: value });
        else act({ ...choice.send, value });
      };
    });
    return made;
  };
  const put = (given) => {
    const same = JSON.stringify(given) === JSON.stringify(answers);
    const focused = list.contains(document.activeElement) ? document.activeElement : null;
    const line = focused ? answers[[...list.children].indexOf(focused.closest("li"))]?.place : -1;
    if (!same) {
      answers = given;
      list.replaceChildren();
      answers.forEach(item);
    }
    show();
    if (same || !focused) return;
    const again = list.querySelector(`[data-key="${focused.dataset.key}"]`);
    if (again) again.focus();
    else goTo(line);
  };
  const goTo = (line) => {
    const end = lines().slice(0, line + 1).join("\n").length;
    area.focus();
    area.setSelectionRange(end, end);
    caret();
  };
  const sizes = new ResizeObserver(() => level());
  sizes.observe(written);
  reflect();

  return {
    box,
    area,
    put,
    goTo,
    get text() {
      return area.value;
    },
    write(text) {
      if (area.value === text) return;
      const at = area.selectionStart;
      area.value = text;
      if (document.activeElement === area) area.setSelectionRange(at, at);
      show();
    },
    remove() {
      clearTimeout(timer);
      sizes.disconnect();
      box.remove();
    },
  };
}
