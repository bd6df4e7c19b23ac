// The stage: every chart on screen and the large read-out, changed together.
//
// `mount` draws and needs only an element, plotly and the content, so that a page without Python draws with it too.
// The default export at the end is the widget around it, for a notebook.
//
// How it draws was chosen by measuring: four charts of a dish of twelve ingredients, all changed at once, 2 cores, headless
// Chromium, medians of 41 changes, in milliseconds of script / until painted:
//   four figures: react 30/34, restyle of the arrays that changed 26/31, update 28/33, redraw 27/31, animate 52 until painted;
//   one figure with subplots: react 18/25, restyle 18/24; staticPlot or not made no difference beyond the noise.
// One figure would be 7 ms faster, but could not fold into one column on a phone nor give each chart a text of its own, and
// draws all when one changes. Hence several figures, restyled. More was won by letting plotly measure nothing: fixed margins
// and ranges, and tick labels that it may not hide (kit/show/marks.py). tests/bench compares the whole with plotly's widgets.

const FULL_WIDTH = 560; // width of a chart from which its texts stand in full size [px]
const SMALLEST = 0.68; // what texts shrink to on a phone
const LEAST_PART = 0.8; // of its own height that a chart needs
const READ_OUT = 90; // height of the read-out [px]
const HEADING = 36; // height that a title takes inside a figure; on the stage it stands above the drawing [px]

/**
 * Draw content into an element.
 *
 * content: {columns: [[name, ...], ...], figures: {name: {data, layout}}, read_out: [{label, value, before}]}
 * plotly: the library, or a promise of it; the read-out does not wait for it.
 * Returns {update(changes), remove()}; changes: {figures: {name: {drawing} | {traces, alternative}}, read_out}.
 */
export function mount(element, plotly, content) {
  const root = add(element, "section", "talk-stage");
  const readOut = add(root, "div", "talk-read-out");
  readOut.setAttribute("role", "status");
  readOut.setAttribute("aria-live", "polite");
  const columns = add(root, "div", "talk-columns");
  const charts = new Map();
  for (const names of content.columns) {
    const column = add(columns, "div", "talk-column");
    for (const name of names) charts.set(name, new Chart(column, name, content.figures[name]));
  }
  showReadOut(readOut, content.read_out);

  let library = null;
  let newReadOut = null;
  let frame = 0; // a frame that has been drawn in already
  let waiting = false;

  // At most one drawing a frame: at once when this frame has none yet, else in the next one, whatever came in until then.
  // Charts whose texts are small may be low, too.
  const measure = () => {
    for (const chart of charts.values()) chart.box.style.setProperty("--least-height", `${chart.leastDrawing()}px`);
    const heights = content.columns.map((names) => names.reduce((sum, name) => sum + charts.get(name).least(), READ_OUT));
    root.style.setProperty("--least-height", `${Math.max(...heights)}px`);
  };
  measure();
  const draw = () => {
    frame = requestAnimationFrame(() => {
      frame = 0;
      if (waiting) draw();
    });
    waiting = false;
    if (newReadOut) showReadOut(readOut, newReadOut);
    newReadOut = null;
    if (!library) return;
    measure();
    for (const chart of charts.values()) chart.draw(library);
  };
  const schedule = () => {
    if (frame) waiting = true;
    else draw();
  };
  const sizes = new ResizeObserver(() => {
    for (const chart of charts.values()) chart.fit();
    schedule();
  });
  for (const chart of charts.values()) sizes.observe(chart.place);
  Promise.resolve(plotly).then((loaded) => {
    library = loaded;
    schedule();
  });

  return {
    update(changes) {
      for (const [name, change] of Object.entries(changes.figures ?? {})) charts.get(name).change(change);
      newReadOut = changes.read_out ?? newReadOut;
      schedule();
    },
    remove() {
      cancelAnimationFrame(frame);
      const drawn = library;
      library = null;
      sizes.disconnect();
      if (drawn) for (const chart of charts.values()) drawn.purge(chart.place);
      root.remove();
    },
  };
}

/** Merge changes into content, so that a view that opens later draws what the others show. */
export function merge(content, changes) {
  for (const [name, change] of Object.entries(changes.figures ?? {})) {
    const figure = content.figures[name];
    if (change.drawing) content.figures[name] = change.drawing;
    for (const [at, values] of Object.entries(change.traces ?? {})) Object.assign(figure.data[at], values);
    if (change.alternative !== undefined) figure.layout.meta = { ...figure.layout.meta, alternative: change.alternative };
  }
  if (changes.read_out) content.read_out = changes.read_out;
}

/** One chart: what it should show, what of that is not drawn yet, and the place it is drawn in. */
class Chart {
  constructor(column, name, figure) {
    this.box = add(column, "figure", "talk-chart");
    this.box.dataset.chart = name;
    this.heading = add(this.box, "figcaption", "talk-heading");
    this.place = add(this.box, "div", "talk-drawing");
    this.place.setAttribute("role", "img");
    this.take(figure);
  }

  take(figure) {
    this.figure = structuredClone(figure); // plotly writes into what it is given, and another view draws the same
    this.whole = true;
    this.traces = {}; // changes that wait for the next frame; a newer one replaces an older one, which is never drawn
    this.label(figure.layout.meta?.alternative);
    setText(this.heading, figure.layout.title?.text ?? "");
    this.natural = Math.max(0, (figure.layout.height ?? 400) - HEADING);
    this.box.style.setProperty("--natural-height", this.natural);
  }

  scale() {
    return Math.min(1, Math.max(SMALLEST, this.place.clientWidth / FULL_WIDTH));
  }

  leastDrawing() {
    return this.natural * LEAST_PART * this.scale();
  }

  /** Height that the chart needs with its heading. */
  least() {
    return this.leastDrawing() + HEADING;
  }

  label(sentence) {
    if (sentence !== undefined) this.place.setAttribute("aria-label", sentence);
  }

  change({ drawing, traces, alternative }) {
    if (drawing) this.take(drawing);
    for (const [at, values] of Object.entries(traces ?? {})) {
      Object.assign(this.figure.data[at], values);
      this.traces[at] = { ...this.traces[at], ...values };
      if (Object.values(values).some(isGroup)) this.whole = true; // may hold sizes, which are scaled with the whole
    }
    this.label(alternative);
  }

  fit() {
    const { clientWidth, clientHeight } = this.place;
    if (clientWidth !== this.width || clientHeight !== this.height) this.whole = true;
  }

  draw(plotly) {
    if (this.whole) this.drawWhole(plotly);
    else if (Object.keys(this.traces).length) {
      const [values, places] = restyling(this.traces);
      plotly.restyle(this.place, values, places);
    }
    this.traces = {};
  }

  drawWhole(plotly) {
    const { clientWidth: width, clientHeight: height } = this.place;
    if (!width || !height) return; // not on the page yet; the size observer calls again
    Object.assign(this, { width, height, whole: false });
    const scale = this.scale();
    const { data, layout } = scaled(structuredClone(this.figure), scale);
    const margin = { ...layout.margin, t: Math.max(8, (layout.margin?.t ?? HEADING) - HEADING * scale) };
    const here = { ...layout, title: undefined, width, height, margin, autosize: false };
    plotly.react(this.place, data, here, { staticPlot: true, displayModeBar: false, responsive: false });
  }
}

/** Turn {trace: {key: value}} into what Plotly.restyle takes; what a trace does not change stays undefined. */
function restyling(traces) {
  const places = Object.keys(traces).map(Number);
  const values = {};
  for (const key of new Set(places.flatMap((at) => Object.keys(traces[at])))) {
    values[key] = places.map((at) => traces[at][key]);
  }
  return [values, places];
}

/** Shrink every font, marker and margin of a figure, for a small screen. */
function scaled(figure, scale) {
  if (scale === 1) return figure;
  const shrink = (node, key) => {
    for (const [name, value] of Object.entries(node)) {
      if (value && typeof value === "object") shrink(value, name);
      else if (typeof value === "number" && (name === "size" || key === "margin")) node[name] = value * scale;
    }
  };
  shrink(figure, "");
  return figure;
}

function showReadOut(list, numbers) {
  while (list.children.length > numbers.length) list.lastChild.remove();
  numbers.forEach(({ label, value, before }, at) => {
    let box = list.children[at];
    if (!box) {
      box = add(list, "div", "talk-number");
      for (const part of ["label", "value", "before"]) add(box, "span", `talk-${part}`);
    }
    [label, value, before ? `was ${before}` : ""].forEach((text, place) => setText(box.children[place], text));
  });
}

function isGroup(value) {
  return value !== null && typeof value === "object" && !Array.isArray(value);
}

function setText(node, text) {
  if (node.textContent !== text) node.textContent = text; // an unchanged text is not read out again
}

function add(parent, tag, name) {
  const node = document.createElement(tag);
  node.className = name;
  parent.append(node);
  return node;
}

// ---- in a notebook

const SHARED = Symbol.for("nutrition-talk-kit.plotly"); // one library for the page, however many stages it has
const PATIENCE = 5000; // after which a second stage asks too, should the kernel of the first be gone [ms]

/** Return a promise of plotly: the page's own when it is the same version, else the script that Python sends. */
function library(model) {
  const version = model.get("plotly_version");
  if (window.Plotly?.version === version) return window.Plotly;
  const shared = (window[SHARED] ??= {});
  shared[version] ??= Promise.withResolvers ? Promise.withResolvers() : resolvers();
  const asked = shared[version].asked;
  if (!shared[version].ready && (!asked || Date.now() - asked > PATIENCE)) {
    shared[version].asked = Date.now();
    model.send({ ask: "plotly" });
  }
  return shared[version].promise;
}

function resolvers() {
  const parts = {};
  parts.promise = new Promise((resolve, reject) => Object.assign(parts, { resolve, reject }));
  return parts;
}

/** Run plotly's script where no module loader of the page (AMD in Voila) sees it; what the page had stays in place. */
function run(script, version) {
  const waiting = window[SHARED][version];
  const before = window.Plotly;
  const element = document.createElement("script");
  // A script element is compiled off the main thread, which `new Function` is not.
  element.src = URL.createObjectURL(
    new Blob(["(function (define, module, exports) {", script, "\n}).call(window);"], { type: "text/javascript" }),
  );
  element.onload = () => {
    waiting.ready = true;
    waiting.resolve(window.Plotly);
    if (before) window.Plotly = before;
    URL.revokeObjectURL(element.src);
    element.remove();
  };
  element.onerror = () => waiting.reject(new Error("plotly's script did not run"));
  document.head.append(element);
}

export default () => {
  const views = new Set();
  return {
    initialize({ model }) {
      model.on("msg:custom", (message, buffers) => {
        if (message.answer === "plotly") {
          if (!window[SHARED][model.get("plotly_version")].ready) run(buffers[0], model.get("plotly_version"));
          return;
        }
        merge(model.get("content"), message.changes);
        for (const view of views) view.update(message.changes);
      });
      library(model);
    },
    render({ model, el }) {
      const view = mount(el, library(model), model.get("content"));
      views.add(view);
      return () => {
        views.delete(view);
        view.remove();
      };
    },
  };
};
