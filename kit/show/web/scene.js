// A scene: what the audience sees, one thing at a time, drawn on 1920 x 1080 and fitted to whatever room it has.
//
// `Scene` needs an element, plotly (or a promise of it) and what kit/show/scenes.py returns; no kernel, no controls:
//
//   const scene = new Scene(element, plotly);
//   scene.frame({ title, aside, series });
//   scene.show("numbers", { kind: "numbers", numbers: [...], footer });
//
// A change of the same scene is put into what stands there; another scene takes its place with a short, calm movement.
import { Chart } from "./chart.js";
import { add, fill, framed, setText } from "./dom.js";

const WIDTH = 1920;
const HEIGHT = 1080;
const SIZES = [50, 46, 42, 39, 36]; // of the lines of a list, the first that fits [px]
const LARGE = 2; // how many times as large as in a notebook charts are drawn: their smallest text is 36 px then

export class Scene {
  constructor(element, plotly, { drawn = () => {} } = {}) {
    this.view = element.ownerDocument.defaultView;
    this.drawn = drawn; // called after every change, for whoever mirrors the scene
    this.fitted = add(element, "div", "talk-fitted");
    this.canvas = add(this.fitted, "section", "talk-scene");
    const header = add(this.canvas, "header");
    this.title = add(header, "b");
    this.aside = add(header, "span");
    this.body = add(this.canvas, "div", "talk-scene-body");
    this.body.setAttribute("aria-live", "polite");
    const footer = add(this.canvas, "footer");
    this.note = add(footer, "span");
    this.series = add(footer, "span");
    this.sizes = new this.view.ResizeObserver(() => {
      this.fit();
      this.chart?.fit(); // its room is another one when the words above it take another line
      if (this.chart?.whole) this.schedule();
    });
    this.sizes.observe(this.fitted);
    this.schedule = framed(this.view, () => this.draw());
    Promise.resolve(plotly).then((loaded) => {
      this.plotly = loaded;
      this.schedule();
    });
  }

  /** Fit the picture to its room, the whole of it, in the middle. */
  fit() {
    const { clientWidth, clientHeight } = this.fitted;
    const scale = Math.min(clientWidth / WIDTH, (clientHeight || Infinity) / HEIGHT);
    if (!scale || !Number.isFinite(scale)) return;
    const [left, top] = [(clientWidth - WIDTH * scale) / 2, (clientHeight - HEIGHT * scale) / 2];
    this.canvas.style.transform = `translate(${left}px, ${top}px) scale(${scale})`;
  }

  frame({ title, aside, series }) {
    setText(this.title, title);
    setText(this.aside, aside);
    setText(this.series, series);
    this.schedule();
  }

  show(name, content) {
    this.content = content;
    if (name !== this.name || content.kind !== this.kind) {
      Object.assign(this, { name, kind: content.kind, part: null });
      this.chart?.leave(this.plotly);
      if (this.chart) this.sizes.unobserve(this.chart.place);
      this.chart = null;
      this.body.replaceChildren();
      this.canvas.dataset.kind = content.kind;
      this.part = PARTS[content.kind]?.(this.body, this);
      this.body.classList.remove("talk-comes");
      void this.body.offsetWidth; // so that the movement begins anew
      this.body.classList.add("talk-comes");
    }
    this.part?.(content);
    setText(this.note, content.footer ?? "");
    this.schedule();
  }

  /** A change of the chart that stands there, as kit.show.stage.difference returns it. */
  change(change) {
    this.chart?.change(change);
    this.part?.words?.(this.chart.words);
    this.schedule();
  }

  repaint() {
    if (this.chart) this.chart.whole = true;
    this.schedule();
  }

  draw() {
    if (this.plotly && this.chart) this.chart.draw(this.plotly);
    this.drawn(this.canvas);
  }

  remove() {
    this.schedule.stop();
    this.sizes.disconnect();
    this.chart?.leave(this.plotly);
    this.fitted.remove();
  }
}

/** Set the largest of a few sizes in which two columns hold everything; three columns where even the smallest does not. */
function fitColumns(columns) {
  columns.style.columnCount = 2;
  const fits = (size) => {
    columns.style.fontSize = `${size}px`;
    return columns.scrollWidth <= columns.clientWidth + 1 && columns.scrollHeight <= columns.clientHeight + 1;
  };
  if (!SIZES.some(fits)) columns.style.columnCount = 3;
}

/** For each kind: builds what it needs into the body and returns the function that puts a content in. */
const PARTS = {
  blank: () => () => {},

  numbers(body) {
    const grid = add(body, "div", "talk-numbers");
    const make = (parent) => {
      const box = add(parent, "div");
      for (const name of ["talk-label", "talk-figure", "talk-was"]) add(box, "div", name);
      add(box.children[1], "span", "talk-large");
      add(box.children[1], "span", "talk-unit");
      return box;
    };
    return ({ numbers }) => {
      grid.dataset.count = numbers.length;
      fill(grid, numbers, make, (box, { label, value, unit, was }) => {
        setText(box.children[0], label);
        setText(box.children[1].children[0], value);
        setText(box.children[1].children[1], unit);
        setText(box.children[2], was);
        box.classList.toggle("talk-long", value.length > 7);
        box.classList.toggle("talk-changed", Boolean(was));
      });
    };
  },

  chart(body, scene) {
    const sentence = add(body, "p", "talk-sentence-large");
    const place = add(body, "div", "talk-chart-large");
    const put = ({ sentence: text, figure }) => {
      setText(sentence, text);
      if (scene.chart) scene.chart.take(figure);
      else {
        scene.chart = new Chart(place, scene.name, figure, { scale: LARGE, captions: false });
        scene.sizes.observe(scene.chart.place);
      }
    };
    put.words = (words) => {
      setText(sentence, words.sentence ?? "");
      setText(scene.note, words.key ?? "");
    };
    return put;
  },

  change(body) {
    const asks = add(body, "p", "talk-sentence-large");
    const grid = add(body, "div", "talk-changes");
    const answer = add(body, "p", "talk-answer");
    const make = (parent) => {
      const row = add(parent, "div", "talk-change-row");
      for (const name of ["talk-label", "talk-before", "talk-arrow", "talk-now", "talk-by"]) add(row, "span", name);
      row.children[2].textContent = "→";
      add(row.children[3], "b");
      add(row.children[3], "i");
      return row;
    };
    return ({ sentence, rows, answer: text }) => {
      setText(asks, sentence);
      setText(answer, text ?? "");
      grid.dataset.count = rows.length;
      fill(grid, rows, make, (row, { label, before, value, unit, by, same }) => {
        setText(row.children[0], label);
        setText(row.children[1], before);
        setText(row.children[3].children[0], value);
        setText(row.children[3].children[1], unit);
        setText(row.children[4], by);
        row.classList.toggle("talk-same", Boolean(same));
        row.children[1].classList.toggle("talk-long", before.length > 16); // "three quarters of a gram"
        row.children[3].classList.toggle("talk-long", value.length > 7);
      });
    };
  },

  list(body) {
    const sentence = add(body, "p", "talk-sentence-large");
    const columns = add(body, "div", "talk-lists");
    const make = (parent) => {
      const box = add(parent, "section");
      add(box, "h3");
      add(box, "ul");
      return box;
    };
    return ({ sentence: text, groups }) => {
      setText(sentence, text);
      fill(columns, groups, make, (box, { heading, lines: told }) => {
        setText(box.children[0], heading);
        fill(box.children[1], told, (list) => add(list, "li"), setText);
      });
      fitColumns(columns);
    };
  },
};
