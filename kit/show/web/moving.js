// What plotly drew, moved: bars, marks, lines and words of a chart take new numbers where they stand.
//
// plotly's restyle works out the defaults of every trace and draws the whole chart again, 15 to 25 ms for one of ours on a
// slow machine. A drag changes lengths, places and words only; those are attributes of elements that stand there already.
// That is done here alone where plotly's picture is known to follow these rules: after each whole drawing every
// element is compared with what the rules say of it, and a trace in which one differs is left to plotly.

const LAYERS = ".barlayer > .trace, .scatterlayer > .trace";
const KEYS = new Set(["x", "y", "text", "textfont.color"]);
const AS_GOOD_AS = 0.03; // [px]; plotly rounds to 0.01
const NUMBERS = /-?\d+(?:\.\d+)?/g;
const MARKUP = /[<&$\n]/; // what plotly may set in several parts

/** Return for each trace the elements that stand for its points, null where plotly has to draw. */
export function movable(place, data) {
  const groups = new Map();
  for (const group of place.querySelectorAll(LAYERS)) groups.set(group.__data__?.[0]?.trace?.index, group);
  return data.map((trace, at) => {
    const rule = ruleOf(trace);
    const group = groups.get(at);
    if (!rule || !group || !place._fullLayout?.xaxis) return null;
    const elements = [...group.querySelectorAll(rule.elements)];
    const wanted = rule.wanted(trace, scales(place));
    return wanted && wanted.length === elements.length && wanted.every((one, i) => stands(elements[i], one)) ? elements : null;
  });
}

/**
 * Move what stands for changed traces, and return whether that could be done; if not, nothing is touched.
 *
 * changes: {trace: {key: value}}, which `data` holds already; colours: from a colour of the data to that of the page.
 */
export function moved(place, elements, data, changes, colours) {
  const axes = scales(place);
  const moves = [];
  for (const [at, changed] of Object.entries(changes)) {
    if (!elements[at] || !Object.keys(changed).every((key) => KEYS.has(key))) return false;
    const wanted = ruleOf(data[at]).wanted(data[at], axes);
    if (wanted?.length !== elements[at].length) return false;
    moves.push([elements[at], wanted, "textfont.color" in changed]);
  }
  for (const [nodes, wanted, coloured] of moves) nodes.forEach((node, i) => put(node, wanted[i], coloured, colours));
  return true;
}

function ruleOf({ type, mode, fill, orientation, xaxis = "x" }) {
  if (xaxis !== "x") return null;
  if (type === "bar") return orientation === "h" ? RULES.bar : null;
  return type === "scatter" && !fill ? RULES[mode] : null;
}

/** For each kind of trace: where its elements are, and what each is to have; null where that cannot be said. */
const RULES = {
  bar: {
    elements: ".point > path",
    wanted: ({ x, y, width }, { across, down }) =>
      y.map((row, at) => {
        const [top, end] = [down(row - width / 2), across(x[at])];
        return { d: x[at] ? `M${across(0)},${top}V${down(row + width / 2)}H${end}V${top}Z` : "M0,0Z" };
      }),
  },
  markers: {
    elements: ".points > .point",
    wanted: (trace, { across, down }) => points(trace).map(([x, y]) => ({ transform: `translate(${across(x)},${down(y)})` })),
  },
  lines: {
    elements: ".lines > .js-line",
    wanted: ({ x, y }, { across, down }) => {
      const lines = [[]];
      x.forEach((value, at) => {
        if (!known(value) || !known(y[at])) lines.push([]);
        else lines.at(-1).push(`${across(value)},${down(y[at])}`);
      });
      return lines.filter((line) => line.length).map((line) => ({ d: `M${line.join("L")}` }));
    },
  },
  text: {
    elements: ".textpoint > text",
    wanted: (trace, { across, down }) => {
      const colour = trace.textfont?.color;
      const told = points(trace).filter(([, , at]) => trace.text[at]);
      if (told.some(([, , at]) => MARKUP.test(trace.text[at]))) return null;
      return told.map(([x, y, at]) => ({
        x: across(x),
        y: down(y),
        text: trace.text[at],
        colour: Array.isArray(colour) ? colour[at] : colour,
      }));
    },
  },
};

const known = (value) => typeof value === "number" && Number.isFinite(value);

function points({ x, y }) {
  return x.flatMap((value, at) => (known(value) && known(y[at]) ? [[value, y[at], at]] : []));
}

/** From numbers to places in the picture, as its axes stand. */
function scales(place) {
  const { xaxis, yaxis } = place._fullLayout;
  const on = (axis, from, to) => (value) => round((axis._length * (value - from)) / (to - from));
  return { across: on(xaxis, xaxis.range[0], xaxis.range[1]), down: on(yaxis, yaxis.range[1], yaxis.range[0]) };
}

const round = (value) => Math.round(value * 100) / 100 || 0;

function stands(node, { text, colour, ...attributes }) {
  if (text !== undefined && (node.textContent !== text || node.childElementCount)) return false;
  return Object.entries(attributes).every(([name, value]) => same(node.getAttribute(name) ?? "", String(value)));
}

function same(there, wanted) {
  if (there.replace(NUMBERS, "#") !== wanted.replace(NUMBERS, "#")) return false;
  const numbers = wanted.match(NUMBERS) ?? [];
  return (there.match(NUMBERS) ?? []).every((number, at) => Math.abs(number - numbers[at]) <= AS_GOOD_AS);
}

function put(node, { text, colour, ...attributes }, coloured, colours) {
  for (const [name, value] of Object.entries(attributes)) {
    const words = String(value);
    if (node.getAttribute(name) !== words) node.setAttribute(name, words);
  }
  if (text !== undefined && node.textContent !== text) {
    node.textContent = text;
    node.setAttribute("data-unformatted", text);
  }
  if (coloured && colour !== undefined) node.style.fill = colours(colour);
}
