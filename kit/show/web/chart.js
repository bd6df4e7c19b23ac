// One chart: a drawing from kit/show/charts.py with its title and sentence, drawn by plotly, changed by what changed.
//
// How it draws was chosen by measuring: four charts of a dish of twelve ingredients, all changed at once, 2 cores, headless
// Chromium, medians of 41 changes, in milliseconds of script / until painted: four figures: react 30/34, restyle of the
// arrays that changed 26/31, update 28/33, redraw 27/31, animate 52 until painted; one figure with subplots: react 18/25,
// restyle 18/24. One figure could not fold into one column on a phone nor give each chart a text of its own, and draws all
// when one changes. More was won by letting plotly measure nothing: fixed margins and ranges (kit/show/marks.py).
//
// Most moves need none of that: what plotly drew is moved (moving.js), 2 to 4 ms for all charts in place of 60 to 70.
import { add, setText } from "./dom.js";
import { movable, moved } from "./moving.js";

const FULL_WIDTH = 560; // width of a chart from which its texts stand in full size [px]
const SMALLEST = 0.66; // what texts shrink to on a phone
const PHONE = 0.75; // scale below which a drawing is as narrow as on a phone
const TIGHT = 0.88; // of the room beside a drawing, on a phone
const PHONE_SIDE = 0.085; // of the width that stays free at each side there
const LEAST_PART = 0.8; // of its own height that a chart needs
const HEADING = 36; // height that a title takes inside a figure; here it stands above the drawing [px]
const COLOURS = ["paper", "ink", "soft", "line", "band", "act"]; // those that are others in the dark
const STILL = { staticPlot: true, displayModeBar: false, responsive: false, typesetMath: false };

/**
 * scale: how many times as large texts and marks are drawn; by default as the width allows.
 * captions: whether title and sentence stand around the drawing.
 */
export class Chart {
  constructor(parent, name, figure, { scale = null, captions = true } = {}) {
    this.fixed = scale;
    this.drawn = false;
    this.box = add(parent, "figure", "talk-chart");
    this.box.dataset.chart = name;
    this.heading = captions ? add(this.box, "figcaption", "talk-heading") : null;
    this.place = add(this.box, "div", "talk-drawing");
    this.place.setAttribute("role", "img");
    this.sentence = captions ? add(this.box, "p", "talk-sentence") : null;
    this.take(figure);
  }

  take(figure) {
    this.figure = structuredClone(figure); // plotly writes into what it is given, and another view draws the same
    this.whole = true;
    this.changes = {}; // values that wait for the next frame; a newer one replaces an older one, which is never drawn
    this.label(figure.layout.meta ?? {});
    if (this.heading) setText(this.heading, figure.layout.title?.text ?? "");
    this.natural = Math.max(0, (figure.layout.height ?? 400) - HEADING);
    this.box.style.setProperty("--natural-height", this.natural);
  }

  label({ alternative, sentence }) {
    if (alternative !== undefined) this.place.setAttribute("aria-label", alternative);
    if (sentence !== undefined && this.sentence) setText(this.sentence, sentence);
  }

  change({ drawing, traces, meta }) {
    if (drawing) this.take(drawing);
    for (const [at, values] of Object.entries(traces ?? {})) {
      const flat = flattened(values);
      putInto(this.figure.data[at], flat);
      this.changes[at] = { ...this.changes[at], ...flat };
      if (Object.keys(flat).some((key) => key.endsWith("size"))) this.whole = true; // sizes are scaled with the whole
    }
    if (meta) {
      this.figure.layout.meta = { ...this.figure.layout.meta, ...meta };
      this.label(meta);
    }
  }

  get scale() {
    this.room ??= this.place.clientWidth;
    return this.fixed ?? Math.min(1, Math.max(SMALLEST, this.room / FULL_WIDTH));
  }

  leastDrawing() {
    return this.natural * LEAST_PART * this.scale;
  }

  /** Height that the chart needs with its words. */
  least() {
    return this.leastDrawing() + 2 * HEADING;
  }

  fit() {
    const { clientWidth, clientHeight } = this.place;
    this.room = clientWidth;
    if (clientWidth !== this.width || clientHeight !== this.height) this.whole = true;
  }

  draw(plotly) {
    if (this.whole) this.drawWhole(plotly);
    else if (Object.keys(this.changes).length) this.drawChanges(plotly);
    this.changes = {};
  }

  drawChanges(plotly) {
    const { data } = this.figure;
    if (moved(this.place, this.elements, data, this.changes, this.colours)) {
      for (const [at, flat] of Object.entries(this.changes)) this.ahead[at] = { ...this.ahead[at], ...flat };
      return;
    }
    for (const [at, flat] of Object.entries(this.ahead)) this.changes[at] = { ...flat, ...this.changes[at] };
    plotly.restyle(this.place, ...restyling(painted(structuredClone(this.changes), this.colours)));
    this.stand(data);
  }

  drawWhole(plotly) {
    const { clientWidth: width, clientHeight: height } = this.place;
    if (!width || !height) return; // not on the page yet; who watches sizes calls again
    Object.assign(this, { width, height, room: width, whole: false, drawn: true, colours: coloursOf(this.place) });
    const { data, layout } = scaled(painted(structuredClone(this.figure), this.colours), this.scale);
    const top = (this.figure.layout.margin?.t ?? HEADING) - HEADING;
    const margin = { ...this.sides(layout.margin), t: Math.max(8, top * this.scale) };
    plotly.react(this.place, data, { ...layout, title: undefined, width, height, margin, autosize: false }, STILL);
    this.stand(this.figure.data);
  }

  /** Room at the sides: on a phone no more than the words need there, and enough for those that stand inside. */
  sides(margin) {
    if (this.scale > PHONE) return margin;
    const least = PHONE_SIDE * this.width;
    return { ...margin, l: Math.max(least, TIGHT * margin.l), r: Math.max(least, TIGHT * margin.r) };
  }

  /** Note what plotly has drawn; changes that are moved from here on are not known to it. */
  stand(data) {
    this.ahead = {};
    this.elements = movable(this.place, data);
  }

  leave(plotly) {
    plotly?.purge(this.place);
    this.box.remove();
  }

  /** Title, sentence and key of what is shown, for whoever sets them elsewhere. */
  get words() {
    return { title: this.figure.layout.title?.text ?? "", ...this.figure.layout.meta };
  }
}

/** Turn {textfont: {color: [...]}} into {"textfont.color": [...]}, as Plotly.restyle takes it. */
function flattened(values, before = "") {
  return Object.entries(values).reduce((flat, [key, value]) => {
    const isGroup = value !== null && typeof value === "object" && !Array.isArray(value);
    return isGroup ? { ...flat, ...flattened(value, `${before}${key}.`) } : { ...flat, [before + key]: value };
  }, {});
}

function putInto(trace, flat) {
  for (const [path, value] of Object.entries(flat)) {
    const keys = path.split(".");
    const last = keys.pop();
    keys.reduce((node, key) => (node[key] ??= {}), trace)[last] = value;
  }
}

/** Merge a change into a figure that is not drawn here. */
export function mergeFigure(figure, { drawing, traces, meta }) {
  const merged = drawing ?? figure;
  for (const [at, values] of Object.entries(traces ?? {})) putInto(merged.data[at], flattened(values));
  if (meta) merged.layout.meta = { ...merged.layout.meta, ...meta };
  return merged;
}

/** Turn {trace: {key: value}} into what Plotly.restyle takes; what a trace does not change stays undefined. */
function restyling(changes) {
  const places = Object.keys(changes).map(Number);
  const values = {};
  for (const key of new Set(places.flatMap((at) => Object.keys(changes[at])))) {
    values[key] = places.map((at) => changes[at][key]);
  }
  return [values, places];
}

/** Shrink or enlarge every font, marker, line and margin of a figure. */
function scaled(figure, scale) {
  if (scale === 1) return figure;
  const shrink = (node, key) => {
    for (const [name, value] of Object.entries(node)) {
      if (value && typeof value === "object") shrink(value, name);
      else if (typeof value !== "number") continue;
      else if (name === "size" || key === "margin" || name === "ticklabelstandoff") node[name] = value * scale;
      else if ((name === "width" && key === "line") || name === "zerolinewidth") node[name] = value * Math.max(1, scale * 0.75);
    }
  };
  shrink(figure, "");
  return figure;
}

/** Return what turns a light colour, as Python draws in, into that of the look around a place. */
function coloursOf(place) {
  const here = coloursAt(place);
  const dark = new Map(lightColours(place.ownerDocument).map((colour, at) => [colour, here[at]]));
  return (colour) => dark.get(colour) ?? colour;
}

function painted(node, colours) {
  for (const [name, value] of Object.entries(node)) {
    if (typeof value === "string") node[name] = colours(value);
    else if (value && typeof value === "object") painted(value, colours);
  }
  return node;
}

function coloursAt(element) {
  const style = element.ownerDocument.defaultView.getComputedStyle(element);
  return COLOURS.map((name) => style.getPropertyValue(`--talk-${name}`).trim());
}

function lightColours(page) {
  if (!page.talkLight) {
    const probe = add(page.body, "i");
    probe.dataset.talkLook = "light";
    page.talkLight = coloursAt(probe);
    probe.remove();
  }
  return page.talkLight;
}
