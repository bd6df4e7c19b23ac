// Her writing desk as it is drawn, in reading order: the talk, 1 paste, 2 settle, 3 write, 4 save, 5 what a serving holds.
import { answered } from "./answered.js";
import { add, fill, setText } from "./dom.js";
import { fieldsForm } from "./fields_form.js";
import { labelForm } from "./label_form.js";
import { planTable } from "./plan_table.js";
import { settleTable } from "./settle_table.js";
import { servingPart } from "./serving_part.js";
import { talkBar } from "./talk_bar.js";
import { button, told } from "./told.js";

const RECIPE = "Turkey chili\nServes 6\n\n1 lb ground turkey\n2 cans (15 oz) black beans, drained and rinsed\n1 large onion, chopped";
const SCRIPT = "# Beans\nA bowl has {protein} and {fiber}.\nThe beans bring most of the fiber.";
const PLAN = "2 min: welcome; pot of chili 35 min\n10 min talk: what a bowl holds\n3 min: fill the bowls; needs pot of chili";
const QUESTIONS = "Can I leave out the beans? = leave out the beans\nYes. It has less fiber then.";
const BOXES = {
  script: ["Script", "A sentence a line. A line with # in front begins a part. {protein} becomes the number.", SCRIPT],
  plan: ["Plan", "A step a line: minutes, what you do, then the pots that go on, and those it needs.", PLAN],
  questions: ["Questions", "A question a line, behind = what to try on screen, your answer on the line below.", QUESTIONS],
};

export class WritingView {
  constructor(element, model, ask) {
    Object.assign(this, { model, ask, boxes: {} });
    this.root = add(element, "section", "talk-writing");
    this.root.setAttribute("aria-label", "Writing desk");
    // JupyterLab would take keys for its cells, unless the very element says that it may not.
    this.root.addEventListener("focusin", ({ target }) => (target.dataset.lmSuppressShortcuts = "true"));
    this.root.addEventListener("keydown", (event) => this.key(event));
    this.regions = new Map();
    this.build();
    this.write();
    this.told(this.content);
  }

  /** What Python has told. The model may take another object for it, when a page asks for all states anew. */
  get content() {
    return this.model.get("content");
  }

  build() {
    this.bar = talkBar(this.root, (message) => this.ask(message), this.regions);
    const paste = this.section("1", "The recipe", "Paste a recipe or a whole page, or write it: the title, “Serves 6”, and one ingredient a line. A text with the headings Script, Plan and Questions is taken apart.");
    this.box(paste, "recipe", "Recipe", "The title, how many it serves, and one ingredient a line.", RECIPE, 9);
    const settle = this.section("2", "Settle what is unclear", "One row a food. Choose another food, or write the grams that you weighed.");
    this.faults = add(settle, "ul", "talk-faults");
    this.settle = settleTable(settle, (message) => this.ask(message), this.regions);
    const write = this.section("3", "Write the talk", "Each sentence is checked against the dish and the published rule for its wording, as you type.");
    for (const [part, [label, help, example]] of Object.entries(BOXES)) {
      add(write, "h3", "", label);
      add(write, "p", "talk-help", help);
      this.box(write, part, label, help, example, 4);
      if (part === "plan") this.plan = planTable(write, (message) => this.ask(message));
    }
    add(write, "h3", "", "The talk as a whole");
    this.fields = fieldsForm(write, (message) => this.ask(message), this.regions);
    this.save = this.section("4", "Save", "");
    this.buildSave();
    this.serving = servingPart(this.section("5", "What a serving holds", ""), this.model);
    this.onward(add(this.root, "p", "talk-onward"));
    this.labels = labelForm(this.root, (message) => this.ask(message), this.regions);
  }

  section(number, title, help) {
    const section = add(this.root, "section", "talk-step-of-five");
    const heading = add(section, "h2", "");
    add(heading, "span", "talk-numeral", number);
    heading.append(` ${title}`);
    heading.id = `talk-writing-${number}-${this.model.model_id ?? ""}`;
    section.setAttribute("aria-labelledby", heading.id);
    if (help) add(section, "p", "talk-help", help);
    return section;
  }

  box(parent, part, label, help, example, rows) {
    const tell = (text, pasted) => {
      this.content.texts[part] = text;
      this.ask({ do: "text", at: part, text, pasted });
    };
    this.boxes[part] = answered(parent, { label, help, rows, tell, act: (message) => this.ask({ ...message, by: part }) });
    this.boxes[part].area.placeholder = example;
    this.regions.set(part, told(parent));
  }

  buildSave() {
    const line = add(this.save, "div", "talk-line-of-buttons");
    button(line, "Save the talk", () => this.ask({ do: "save", by: "save" }), "talk-first");
    this.regions.set("save", told(line));
    this.conflict = add(this.save, "div", "talk-line-of-buttons");
    const ways = [
      ["Keep mine; the other goes to the bin", { do: "save", over: true }],
      ["Save mine beside it", { do: "beside" }],
      ["Open the other; mine stays as a draft", { do: "theirs" }],
    ];
    for (const [text, message] of ways) button(this.conflict, text, () => this.ask({ ...message, by: "save" }));
    this.onward(add(this.save, "p", "talk-onward"));
  }

  onward(place) {
    for (const [file, text] of this.content.links) {
      const link = add(place, "a", "", text);
      link.href = new URL(file, location.href).href;
    }
    add(place, "span", "talk-help", "They show what is saved.");
  }

  write() {
    for (const [part, box] of Object.entries(this.boxes)) box.write(this.content.texts[part]);
  }

  /** Show changes; `content` has them already. */
  told(changes) {
    if (changes.texts) this.write();
    for (const [part, box] of Object.entries(this.boxes)) if (changes[part]) box.put(changes[part]);
    this.bar.show(changes, this.content);
    if (changes.faults) fill(this.faults, changes.faults, (list) => add(list, "li"), setText);
    if (changes.settle) this.settle.show(changes.settle);
    if (changes.found) this.settle.found(changes.found);
    if (changes.plan_rows) this.plan.show(changes.plan_rows);
    if (changes.fields) this.fields.show(changes.fields);
    if (changes.serving || changes.charts) this.serving.show(this.content.serving, this.content.charts);
    if (changes.labels || "typed" in changes) this.labels.show(this.content, changes);
    if ("told" in changes) this.tell(changes.told);
    if ("conflict" in changes || changes === this.content) this.conflict.hidden = !this.content.conflict;
  }

  tell(said) {
    for (const [name, place] of this.regions) {
      const here = said?.by === name;
      setText(place, here ? said.text : "");
      place.classList.toggle("talk-wrong", Boolean(here && said.wrong));
    }
    this.labels.told(said);
  }

  key(event) {
    if ((event.ctrlKey || event.metaKey) && event.key === "s") {
      event.preventDefault();
      event.stopPropagation();
      this.ask({ do: "save", by: "save" });
    }
  }

  python(answers) {
    this.root.inert = !answers;
  }

  remove() {
    for (const box of Object.values(this.boxes)) box.remove();
    this.serving.remove();
    this.root.remove();
  }
}
