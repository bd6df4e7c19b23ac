// Her window as it is drawn: what she moves, what she says next, what they see; and how their window opens.
import { isOpen } from "./audience.js";
import { pressed } from "./desk_keys.js";
import { add, fill, options, setText, surface } from "./dom.js";
import { memory } from "./keeping.js";
import { savePicture } from "./picture.js";
import { library } from "./plotly.js";
import { sliders } from "./sliders.js";
import { clock, speaking } from "./speaking.js";
import { Theirs } from "./theirs.js";

const BLANK = { kind: "blank" };
const OF_A_TALK = ["talks", "talk", "questions", "plan", "serving"]; // what another talk changes, told where it differs

export class Desk {
  constructor(element, model, ask) {
    Object.assign(this, { model, ask, blank: false });
    this.root = surface(element, "talk-desk");
    this.root.dataset.talkLook = memory.get("look") ?? "light";
    this.root.dataset.mode = memory.get("mode") ?? "shared";
    this.build();
    this.keys = (event) => pressed(this, event);
    this.theirs = new Theirs(this.box, model, { key: this.keys, closed: () => this.closed() });
    this.refresh();
    this.root.addEventListener("keydown", this.keys);
    if (!document.querySelector(".jp-NotebookPanel")) document.body.addEventListener("keydown", this.keys);
    void isOpen().then((open) => open && !this.theirs.other && this.root.isConnected && this.openTheirs());
  }

  /** What Python has told. The model may take another object for it, when a page asks for all states anew. */
  get content() {
    return this.model.get("content");
  }

  get scene() {
    return this.theirs.scene;
  }

  build() {
    const header = add(this.root, "header", "talk-head");
    this.title = add(header, "b", "talk-title");
    this.talks = this.choice(header, "Talk", (name) => {
      this.ask({ do: "talk", name });
      this.speaking.go(0);
    });
    this.talks.classList.add("talk-talks"); // where there are several, the chooser is the title
    this.about = add(header, "span", "talk-about");
    this.measures = this.choice(header, "Measures", (system) => this.ask({ do: "measures", system }));
    this.button(header, "Light / dark", "L", () => this.turn());
    this.modes = this.button(header, "My script", "S", () => this.mode());
    this.opener = this.button(header, "Open their window", "W", () => this.openTheirs(true));
    this.opener.classList.add("talk-first");

    const controls = add(this.root, "div", "talk-col talk-controls-col");
    this.serving = add(controls, "p", "talk-soft");
    this.sliders = sliders(controls, this.ask);

    const script = add(this.root, "div", "talk-col talk-script-col");
    this.speaking = speaking(script, (place) => memory.set("place", place));
    this.speaking.go(memory.get("place") ?? 0);

    const see = add(this.root, "div", "talk-col talk-see-col");
    see.dataset.withoutPython = "";
    this.seen = add(see, "p", "talk-soft talk-seen", "");
    this.seen.setAttribute("role", "status");
    this.box = add(see, "div", "talk-preview");
    this.names = add(see, "div", "talk-choices talk-names");
    this.more = add(see, "div", "talk-choices talk-more");
    this.pictures = add(see, "div", "talk-choices");
    for (const kind of ["svg", "png"]) this.button(this.pictures, `Save as ${kind.toUpperCase()}`, "", () => this.save(kind));

    const asks = add(this.root, "div", "talk-col talk-ask-col");
    this.questions = add(asks, "div", "talk-choices");
    const form = add(asks, "div", "talk-line");
    this.line = add(form, "input");
    Object.assign(this.line, { type: "text", placeholder: "What if? Such as: half the salt", autocomplete: "off" });
    this.line.setAttribute("aria-label", "What if");
    const tries = () => {
      this.tried = this.line.value;
      if (this.tried.trim()) this.ask({ do: "try", line: this.tried });
    };
    this.line.onkeydown = ({ key }) => {
      if (key === "Enter") tries(); // a form would not hear it: JupyterLab holds it back
    };
    this.button(form, "Try it", "", tries);
    this.fault = add(asks, "div", "talk-fault");
    this.fault.setAttribute("role", "alert");
    this.made = add(asks, "div", "talk-choices talk-made");
    this.turned = add(asks, "p", "talk-soft");

    const footer = add(this.root, "footer", "talk-foot");
    footer.dataset.withoutPython = "";
    const store = { get: () => memory.get("clock"), set: (run) => memory.set("clock", run) };
    this.clock = clock(footer, store);
    // The line stays hers while Python is silent: what she types then is sent when it is back.
    this.movable = [controls, this.questions, this.fault, this.made, this.talks, this.measures, this.more];
  }

  button(parent, text, key, act) {
    const button = add(parent, "button", "talk-button");
    button.type = "button";
    add(button, "span", "", text);
    if (key) add(button, "kbd", "", key);
    button.onclick = act;
    return button;
  }

  choice(parent, label, tell) {
    const choice = add(parent, "select", "talk-choice");
    choice.setAttribute("aria-label", label);
    choice.onchange = () => tell(choice.value);
    return choice;
  }

  // ---- what Python tells

  refresh() {
    const content = this.content;
    options(this.talks, content.talks, content.talk);
    this.title.hidden = !this.talks.hidden;
    options(this.measures, content.measures, content.system);
    setText(this.serving, content.serving);
    this.clock.show(content.plan);
    fill(this.questions, content.questions, (box) => this.button(box, "", "", null), (button, { asks, tries, answer }) => {
      setText(button.firstChild, asks);
      button.onclick = () => this.ask(tries ? { do: "try", line: tries, asks, answer } : { do: "say", asks, answer });
    });
    this.show(content);
  }

  told(changes) {
    if (OF_A_TALK.some((name) => changes[name] !== undefined)) this.refresh();
    else this.show(changes);
  }

  /** Show changes; `content` has them already. */
  show(changes) {
    const content = this.content;
    if (changes.rows) this.sliders.show(changes.rows);
    if (changes.some_rows) this.sliders.some(changes.some_rows);
    if (changes.servings) this.sliders.servings(changes.servings);
    if (changes.system) this.measures.value = changes.system;
    if (changes.script) this.speaking.show(changes.script);
    if (changes.frame) {
      setText(this.title, changes.frame.title);
      setText(this.about, changes.frame.contains);
      this.scene.frame(changes.frame);
    }
    // What was answered goes from the line; what she has typed since stays.
    if ((changes.made || changes.shown || changes.scene) && this.line.value === this.tried) this.line.value = "";
    if (changes.made || changes.allergens !== undefined) this.showMade();
    if (changes.turned !== undefined) setText(this.turned, changes.turned);
    if (changes.fault !== undefined) this.showFault(changes.fault);
    if (changes.shown || changes.scene || changes.scenes) this.showScene();
    else if (changes.figure && changes.of === content.shown && !this.blank) this.scene.change(changes.figure);
    if (changes.shown || changes.numbers || changes.source_of) this.showChoices();
    if (changes.kept) memory.set("kept", content.kept);
  }

  showScene() {
    const { shown, scenes } = this.content;
    if (this.blank) this.scene.show("blank", BLANK);
    else if (scenes[shown]) this.scene.show(shown, scenes[shown]);
    this.pictures.hidden = scenes[shown]?.kind !== "chart";
    this.root.toggleAttribute("data-blank", this.blank);
  }

  showChoices() {
    const { names, shown, numbers, numbers_of, source_of, sources_of } = this.content;
    const make = (box) => this.button(box, "", " ", null);
    fill(this.names, [...names, ["blank", "Blank"]], make, (button, [name, text], at) => {
      setText(button.children[0], text);
      setText(button.children[1], name === "blank" ? "B" : at < 9 ? String(at + 1) : "");
      button.setAttribute("aria-pressed", name === "blank" ? this.blank : !this.blank && name === shown);
      button.onclick = () => (name === "blank" ? this.cover() : this.choose(name));
    });
    const offered = shown === "numbers" ? numbers_of : shown === "sources" ? sources_of : [];
    const chosen = shown === "numbers" ? numbers : [source_of];
    fill(this.more, offered, (box) => add(box, "button", "talk-button talk-quiet"), (button, [name, text]) => {
      const on = chosen.includes(name);
      setText(button, text);
      button.setAttribute("aria-pressed", on);
      button.onclick = () => {
        if (shown === "sources") this.ask({ do: "source", name });
        else this.ask({ do: "number", name, shown: !on });
      };
    });
  }

  showMade() {
    const { made, allergens } = this.content;
    this.made.replaceChildren();
    if (!made.length) return;
    add(this.made, "b", "", "Changed");
    made.forEach((words, place) => {
      const button = this.button(this.made, words, "", () => this.ask({ do: "undo", place, words }));
      button.classList.add("talk-undo");
      button.setAttribute("aria-label", `Undo: ${words}`);
      add(button, "kbd", "", "✕");
    });
    this.button(this.made, "As written", "R", () => this.ask({ do: "as_written" }));
    if (allergens) add(this.made, "b", "talk-allergens", allergens);
  }

  showFault(fault) {
    this.fault.replaceChildren();
    if (!fault) return;
    add(this.fault, "p", "", fault.text);
    for (const line of fault.choices) this.button(this.fault, line, "", () => this.ask({ do: "try", line }));
  }

  python(answers) {
    this.root.classList.toggle("talk-gone", !answers);
    if (!answers) this.under = this.root.contains(document.activeElement) ? document.activeElement : null;
    for (const part of this.movable) part.inert = !answers;
    if (answers && document.activeElement === document.body) this.under?.focus(); // what is inert loses her keys
    this.tellSeen();
  }

  tellSeen(text) {
    const gone = this.root.classList.contains("talk-gone");
    const theirs = this.theirs.other ? "They see, in their window" : "They see, when you share this window";
    setText(this.seen, gone ? "They keep the last picture." : text ?? theirs);
  }

  // ---- what she does

  choose(name) {
    this.blank = false;
    if (this.content.scenes[name]) {
      this.content.shown = name;
      this.showScene();
      this.showChoices();
    }
    this.ask({ do: "show", name });
  }

  cover() {
    this.blank = !this.blank;
    this.showScene();
    this.showChoices();
  }

  turn() {
    const look = this.root.dataset.talkLook === "dark" ? "light" : "dark";
    this.root.dataset.talkLook = look;
    memory.set("look", look);
    this.theirs.wear(look);
    this.scene.repaint();
  }

  mode(mode = this.root.dataset.mode === "shared" ? "speaker" : "shared") {
    this.root.dataset.mode = mode;
    memory.set("mode", mode);
    setText(this.modes.firstChild, mode === "shared" ? "My script" : "Larger picture");
    this.scene.fit();
  }

  async save(kind) {
    const face = this.model.get("_css").split("\n")[0];
    const { title, series, figures } = this.content.frame;
    const lines = [[title, series].filter(Boolean).join(" · "), figures];
    const name = this.content.names.find(([key]) => key === this.content.shown)[1];
    const chart = this.scene.chart;
    if (chart) await savePicture(await library(this.model), chart, { title: chart.words.title || name, lines, face, kind });
  }

  // ---- their window

  openTheirs(asked = false) {
    const how = this.theirs.open(this.root.dataset.talkLook, this.content.frame.title);
    if (how === "refused") {
      this.tellSeen("The browser did not open their window: allow pop-ups for this page, then press again.");
    } else if (how === "there" && asked) {
      this.theirs.other.focus();
    } else {
      this.drawAnew();
      if (asked) this.mode("speaker");
      this.tellSeen();
    }
  }

  closed() {
    this.drawAnew();
    this.tellSeen("Their window is closed. Press W to open it again.");
  }

  drawAnew() {
    this.scene.frame(this.content.frame);
    this.showScene();
  }

  remove() {
    document.body.removeEventListener("keydown", this.keys);
    this.clock.stop();
    this.scene.sizes.disconnect();
    this.theirs.room.disconnect();
    this.root.remove();
  }
}
