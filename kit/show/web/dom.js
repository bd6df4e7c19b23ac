// Small helpers that every module here uses. Text goes in as text, never as markup.

export function add(parent, tag, name = "", text = "") {
  const element = parent.ownerDocument.createElement(tag);
  if (name) element.className = name;
  if (text) element.textContent = text;
  parent.append(element);
  return element;
}

export function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** Make the children of an element as many as the items, and fill each in place: what stays the same is not touched. */
export function fill(parent, items, make, put) {
  while (parent.children.length > items.length) parent.lastElementChild.remove();
  items.forEach((item, at) => put(parent.children[at] ?? make(parent), item, at));
}

/** At most one drawing a frame: at once when this frame has none yet, else in the next one, whatever came in until then. */
export function framed(view, draw) {
  let frame = 0;
  let waiting = false;
  const now = () => {
    waiting = false;
    frame = view.requestAnimationFrame(() => {
      frame = 0;
      if (waiting) now();
    });
    draw();
  };
  const schedule = () => {
    if (frame) waiting = true;
    else now();
  };
  schedule.stop = () => view.cancelAnimationFrame(frame);
  return schedule;
}

/** The root of a screen of hers, which keeps its keys to itself. */
export function surface(parent, name) {
  const root = add(parent, "section", `talk-surface ${name}`);
  root.tabIndex = -1;
  // JupyterLab would take B, R, Enter and the arrows for its cells, unless the very element says that it may not.
  const keep = ({ target }) => (target.dataset.lmSuppressShortcuts = "true");
  root.addEventListener("focusin", keep);
  keep({ target: root });
  return root;
}

/** Put pairs of value and text into a chooser, and the one that is chosen. */
export function options(choice, offered, chosen) {
  const make = (box) => add(box, "option");
  fill(choice, offered, make, (option, [value, text]) => {
    option.value = value;
    setText(option, text);
  });
  choice.value = chosen;
  choice.hidden = offered.length < 2;
}
