// The stage: several charts and the large read-out, changed together.
//
// `mount` draws. It needs an element, plotly and the content, and no kernel: a page without Python draws with it too.
//
//   const view = mount(element, window.Plotly, {
//     columns: [["shares"], ["day"]],                       // names of charts, in the columns of a wide screen
//     figures: { shares: { data, layout }, day: {...} },    // from kit.show.views.drawings, as JSON
//     read_out: [{ label: "Energy", value: "about 430 calories", before: "" }],
//   });
//   view.update({ figures: { shares: { drawing } }, read_out });  // whole drawings, or { traces, meta } that changed
//   view.repaint();                                           // after the page has become light or dark
//   view.remove();
//
// plotly may be a promise; the read-out does not wait for it. The styles are tokens.css and stage.css, with the typeface:
// kit.show.look.style("stage"). A dark page sets data-talk-look="dark" on an element around it.
import { Chart, mergeFigure } from "./chart.js";
import { add, fill, framed, setText } from "./dom.js";

const READ_OUT = 90; // height of the read-out [px]
const NEAR = "25% 0px"; // how far outside the window a chart still follows at once, for the next turn of a wheel

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
  // Charts whose texts are small may be low, too.
  const measure = () => {
    if (![...charts.values()].some((chart) => chart.whole)) return; // their sizes have not changed
    for (const chart of charts.values()) chart.box.style.setProperty("--least-height", `${chart.leastDrawing()}px`);
    const heights = content.columns.map((names) => names.reduce((sum, name) => sum + charts.get(name).least(), READ_OUT));
    root.style.setProperty("--least-height", `${Math.max(...heights)}px`);
  };
  measure();
  const far = new Set(); // charts that nobody sees where the page stands: they are drawn once, and again when they come near
  const draw = (all = false) => {
    if (newReadOut) showReadOut(readOut, newReadOut);
    newReadOut = null;
    if (!library) return;
    measure();
    for (const chart of charts.values()) if (all || !chart.drawn || !far.has(chart.box)) chart.draw(library);
  };
  const schedule = framed(window, draw);
  const nearness = new IntersectionObserver((entries) => {
    for (const { target, isIntersecting } of entries) {
      if (isIntersecting) far.delete(target);
      else far.add(target);
    }
    schedule();
  }, { rootMargin: NEAR });
  for (const chart of charts.values()) nearness.observe(chart.box);
  const drawAll = () => draw(true);
  window.addEventListener("beforeprint", drawAll);
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
    charts,
    update(changes) {
      for (const [name, change] of Object.entries(changes.figures ?? {})) charts.get(name).change(change);
      newReadOut = changes.read_out ?? newReadOut;
      schedule();
    },
    repaint() {
      for (const chart of charts.values()) chart.whole = true;
      schedule();
    },
    remove() {
      schedule.stop();
      const drawn = library;
      library = null;
      sizes.disconnect();
      nearness.disconnect();
      window.removeEventListener("beforeprint", drawAll);
      if (drawn) for (const chart of charts.values()) drawn.purge(chart.place);
      root.remove();
    },
  };
}

/** Merge changes into content, so that a view that opens later draws what the others show. */
export function merge(content, changes) {
  for (const [name, change] of Object.entries(changes.figures ?? {})) {
    content.figures[name] = mergeFigure(content.figures[name], change);
  }
  if (changes.read_out) content.read_out = changes.read_out;
}

function showReadOut(list, numbers) {
  const make = (parent) => {
    const box = add(parent, "div", "talk-number");
    for (const part of ["label", "value", "before"]) add(box, "span", `talk-${part}`);
    return box;
  };
  fill(list, numbers, make, (box, { label, value, before }) => {
    [label, value, before ? `was ${before}` : ""].forEach((text, place) => setText(box.children[place], text));
  });
}
