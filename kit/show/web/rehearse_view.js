// The rehearsal as it is drawn: script, plan, clock, practice and cautions below one choice of the talk.
import { practiceCards } from "./cards.js";
import { add, fill, options, setText, surface } from "./dom.js";
import { judgedList } from "./judged.js";
import { library } from "./plotly.js";
import { sliders } from "./sliders.js";
import { clock } from "./speaking.js";
import { mount } from "./stage.js";

const SECTIONS = [
  ["script", "The script", "Every sentence against the recipe and the published rule for its wording, a careful speaker's standard: a talk is not a label. Move a slider, and each is checked again."],
  ["plan", "The plan on the day", "Solid bars are steps, as long as the words or the work, whichever is longer; hatched bars are pots. The upright mark at a pot is the latest moment to start it so that nothing waits."],
  ["clock", "Against the clock", "Speak the talk through, and press the button at the end of each step."],
  ["cards", "The numbers by heart", "One sentence at a time with its number hidden. Missed ones come up more often; what was known is kept for the next time."],
  ["safety", "For safety", "General education, not individual advice; local food-safety codes and licensed practice come first."],
];

export class Rehearsal {
  constructor(element, model, ask) {
    Object.assign(this, { model, ask });
    this.root = surface(element, "talk-rehearse");
    this.head();
    const parts = Object.fromEntries(SECTIONS.map((section) => [section[0], this.section(...section)]));
    this.script(parts.script);
    this.planned(parts.plan, library(model));
    this.timing(parts.clock);
    this.cards = practiceCards(parts.cards, ask);
    this.cautions = add(parts.safety, "div", "talk-safety");
    this.look = () => document.visibilityState === "visible" && ask({ do: "look" });
    window.addEventListener("focus", this.look);
    this.told(this.content);
  }

  get content() {
    return this.model.get("content");
  }

  head() {
    const head = add(this.root, "header", "talk-head");
    this.title = add(head, "b", "talk-title");
    this.about = add(head, "span", "talk-soft talk-about");
    this.talks = this.chooser(head, "Talk", (name) => this.ask({ do: "talk", name }));
    this.measures = this.chooser(head, "Measures", (system) => this.ask({ do: "measures", system }));
    const nav = add(this.root, "nav", "talk-choices talk-jumps");
    nav.setAttribute("aria-label", "Parts of the rehearsal");
    for (const [name, title] of SECTIONS) {
      const button = add(nav, "button", "talk-button talk-quiet", title);
      button.onclick = () => this.go(name);
    }
    this.ships = add(this.root, "p", "talk-soft");
    this.fault = add(this.root, "p", "talk-problem");
    this.fault.setAttribute("role", "alert");
    this.conflict = add(this.root, "div", "talk-conflict");
    this.conflict.setAttribute("role", "alert");
    this.mend = add(this.root, "ul", "talk-told");
    const note = add(this.root, "div", "talk-note");
    this.noted = add(note, "p");
    this.noted.setAttribute("role", "status");
    this.back = add(note, "button", "talk-button", "Undo");
    this.back.onclick = () => this.ask({ do: "take_back" });
    const close = add(note, "button", "talk-button talk-quiet", "✕");
    close.setAttribute("aria-label", "Close this note");
    close.onclick = () => (note.hidden = true);
    this.note = note;
  }

  chooser(parent, label, tell) {
    const choice = add(parent, "select");
    choice.setAttribute("aria-label", label);
    choice.onchange = () => tell(choice.value);
    return choice;
  }

  section(name, title, words) {
    const section = add(this.root, "section", "talk-section");
    section.dataset.part = name;
    const heading = add(section, "h2", "", title);
    heading.tabIndex = -1;
    add(section, "p", "talk-soft", words);
    return section;
  }

  go(name) {
    const heading = this.root.querySelector(`[data-part="${name}"] h2`);
    heading.focus({ preventScroll: true });
    heading.parentElement.scrollIntoView({ block: "start" });
  }

  script(section) {
    const columns = add(section, "div", "talk-two");
    const dish = add(columns, "div", "talk-dish");
    this.dish = dish;
    this.made = add(dish, "div", "talk-choices talk-made");
    this.sliders = sliders(dish, this.ask);
    const said = add(columns, "div", "talk-said-col");
    this.counted = add(said, "p", "talk-counted");
    this.counted.setAttribute("role", "status");
    this.judged = judgedList(add(said, "div"), this.ask);
  }

  planned(section, plotly) {
    this.sentence = add(section, "p", "talk-counted");
    this.wrong = add(section, "ul", "talk-told");
    this.advice = add(section, "ul", "talk-advice");
    const chart = add(section, "div", "talk-chart-box");
    this.chart = mount(chart, plotly, { columns: [["plan"]], figures: { plan: this.content.plan.figure }, read_out: [] });
    this.chartBox = chart;
  }

  timing(section) {
    section.dataset.withoutPython = "";
    const line = add(section, "div", "talk-foot");
    const store = { get: () => this.content.run, set: (run) => this.ask({ do: "clock", run }) };
    this.clock = clock(line, store);
    const table = add(section, "table", "talk-timed");
    add(table, "caption", "talk-soft", "Each step: as planned, and as it went");
    const head = add(add(table, "thead"), "tr");
    for (const name of ["Step", "Planned", "Actual", "Difference"]) add(head, "th", "", name).scope = "col";
    this.timed = add(table, "tbody");
    this.table = table;
  }

  // ---- what Python tells

  /** Show changes; `content` has them already. */
  told(changes) {
    const { content } = this;
    const had = this.root.contains(document.activeElement) ? document.activeElement : null;
    const near = had?.closest("[tabindex='-1']");
    if (changes.talks || changes.fault) options(this.talks, content.talks, content.talk);
    if (changes.system || changes.measures) options(this.measures, content.measures, content.system);
    if (changes.frame) {
      setText(this.title, content.frame.title);
      setText(this.about, content.frame.aside);
    }
    if (changes.rows) this.sliders.show(changes.rows);
    if (changes.some_rows) this.sliders.some(changes.some_rows);
    if (changes.servings) this.sliders.servings(changes.servings);
    if (changes.said) this.judged.show(changes.said);
    if (changes.some_said) this.judged.some(changes.some_said);
    if (changes.counted !== undefined || changes.no_sentences !== undefined) {
      setText(this.counted, content.no_sentences || content.counted);
    }
    if (changes.made || changes.said) {
      this.showMade();
      this.judged.settling(!content.made.length);
    }
    if (changes.plan) this.showPlan(changes.plan);
    if (changes.run && changes.plan) this.clock.take(content.run);
    if (changes.timed) this.showTimed(changes.timed);
    if (changes.card) this.cards.show(changes.card);
    if (changes.safety) this.showSafety(changes.safety);
    this.showTold(changes);
    const active = document.activeElement;
    if (had && (!this.root.contains(active) || active.disabled || !active.offsetParent)) {
      (near?.isConnected && near.offsetParent ? near : this.root).focus({ preventScroll: true });
    }
  }

  showTold(changes) {
    if (changes.ships !== undefined) {
      setText(this.ships, changes.ships ? "This talk ships with the kit. The first change that you keep makes a copy that is yours." : "");
    }
    if (changes.told) lines(this.mend, changes.told);
    if (changes.fault !== undefined) setText(this.fault, changes.fault?.text ?? "");
    if (changes.note !== undefined) {
      this.note.hidden = !changes.note;
      setText(this.noted, changes.note?.text ?? "");
      this.back.hidden = !changes.note?.undo;
    }
    if (changes.conflict !== undefined) this.showConflict(changes.conflict);
  }

  showConflict(conflict) {
    this.conflict.replaceChildren();
    if (!conflict) return;
    add(this.conflict, "p", "", conflict.text);
    const box = add(this.conflict, "div", "talk-choices");
    const offers = [["theirs", "Show the other one"], ["both", "Keep both: mine as a new talk"], ["mine", "Keep mine: the other one goes into the bin"]];
    for (const [keep, text] of offers) {
      add(box, "button", "talk-button", text).onclick = () => this.ask({ do: "conflict", keep });
    }
    box.firstChild.focus();
  }

  showMade() {
    const { made } = this.content;
    this.made.replaceChildren();
    if (!made.length) return;
    add(this.made, "b", "", "Changed");
    made.forEach((words, place) => {
      const button = add(this.made, "button", "talk-button talk-undo", words);
      add(button, "kbd", "", "✕");
      button.setAttribute("aria-label", `Undo: ${words}`);
      button.onclick = () => this.ask({ do: "undo", place, words });
    });
    add(this.made, "button", "talk-button", "As written").onclick = () => this.ask({ do: "as_written" });
  }

  showPlan(plan) {
    setText(this.sentence, plan.sentence);
    lines(this.wrong, plan.faults);
    lines(this.advice, plan.advice);
    this.chartBox.hidden = this.table.hidden = !plan.steps.length;
    this.chart.update({ figures: { plan: { drawing: plan.figure } } });
    this.clock.show(plan);
  }

  showTimed(rows) {
    const make = (body) => {
      const row = add(body, "tr");
      const first = add(row, "th");
      first.scope = "row";
      add(first, "span");
      add(first, "p", "talk-words");
      for (let at = 0; at < 3; at += 1) add(row, "td");
      return row;
    };
    fill(this.timed, rows, make, (row, { title, say, planned, actual, difference, now }) => {
      row.classList.toggle("talk-now", now);
      setText(row.children[0].firstChild, title);
      setText(row.children[0].lastChild, say);
      [planned, actual, difference].forEach((text, at) => setText(row.children[at + 1], text));
    });
  }

  showSafety(groups) {
    const make = (box) => {
      const group = add(box, "div");
      add(group, "h3");
      add(group, "ul");
      return group;
    };
    fill(this.cautions, groups, make, ({ children: [heading, list] }, { heading: words, lines: told }) => {
      setText(heading, words);
      const line = (box) => {
        const one = add(box, "li");
        add(one, "span");
        add(one, "span", "talk-soft");
        return one;
      };
      fill(list, told, line, ({ children: [what, why] }, { say, why: reason }) => {
        setText(what, say);
        setText(why, reason ? ` ${reason}` : "");
      });
    });
  }

  python(answers) {
    this.root.classList.toggle("talk-gone", !answers);
    for (const part of [this.dish, this.talks, this.measures]) part.inert = !answers;
  }

  remove() {
    window.removeEventListener("focus", this.look);
    this.clock.stop();
    this.chart.remove();
    this.root.remove();
  }
}

function lines(list, texts) {
  fill(list, texts, (box) => add(box, "li"), (one, text) => setText(one, text));
  list.hidden = !texts.length;
}
