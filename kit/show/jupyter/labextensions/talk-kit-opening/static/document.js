// A notebook as one quiet document, in JupyterLab: the list of notebooks above it, its code hidden but there, and running
// by itself whenever it is opened.

import { address, ask, followTitle, hideToken, notebookName } from "./page.js";
import { listen, LOST } from "./heartbeat.js";

const RUN = "run_when_opened"; // in a notebook's metadata, under talk_kit
const AROUND = ["jp-menu-panel", "jp-top-panel", "jp-top-bar", "jp-header-panel", "jp-bottom-panel"];
const CODE = "talk-shows-code";

/**
 * See that a kernel of its own awaits the document, before JupyterLab looks for one: it starts while the rest is loaded.
 *
 * A kernel that an earlier view of the page has left is ended first: what it still holds belongs to charts that are gone.
 */
export async function freshKernel() {
  const path = documentPath();
  if (!path?.endsWith(".ipynb")) return;
  const sessions = await (await ask("api/sessions")).json();
  const left = sessions.find((session) => session.path === path && session.kernel?.connections === 0);
  if (left) await ask(`api/sessions/${left.id}`, "DELETE");
  const kernel = { name: "python3" };
  await ask("api/sessions", "POST", { path, name: path, type: "notebook", kernel });
}

function documentPath() {
  const found = location.pathname.match(/\/doc\/tree\/(.+)$/);
  return found && decodeURIComponent(found[1]);
}

export async function begin(app) {
  await app.restored;
  hideToken();
  const panel = await opened(app);
  await panel?.context.ready;
  const ours = panel?.context.model.getMetadata?.("talk_kit"); // none in a text file, or a notebook of somebody else's
  if (ours) {
    quieten(app, panel);
    await addHead(panel, ours);
    followTitle(notebookName(panel.context.path));
  }
  document.documentElement.classList.remove("talk-frame-coming");
  if (ours?.[RUN]) await keepRunning(app, panel);
}

/** The document that the address names, once it is there; null where a box tells that there is none. */
async function opened(app) {
  while (!document.querySelector(".jp-Dialog")) {
    const widget = app.shell.currentWidget;
    if (widget?.context) return widget;
    await wait(100);
  }
  return null;
}

const wait = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));

/** Take away what belongs to programming; the keys that edit a notebook work only while its code is shown. */
function quieten(app, panel) {
  document.documentElement.classList.add("talk-frame");
  for (const widget of app.shell.layout.widgets) if (AROUND.includes(widget.id)) widget.hide();
  for (const side of ["left", "right"]) {
    if (app.shell.isSideTabBarVisible(side)) app.shell.toggleSideTabBarVisibility(side);
  }
  app.shell.collapseLeft();
  app.shell.collapseRight();
  panel.toolbar.hide();
  const isOurs = (event) => event.ctrlKey || event.metaKey || event.altKey || event.key === "Tab";
  const silence = (event) => {
    const inNotebook = event.target.closest?.(".jp-Notebook") ?? event.target === document.body;
    if (inNotebook && !showsCode() && !isOurs(event)) event.stopPropagation();
  };
  // On the way down a key would never reach the widget it is meant for.
  addEventListener("keydown", (event) => !event.target.closest?.(".jp-OutputArea") && silence(event), true);
  Object.defineProperty(panel, "_autorestarting", { get: () => true, set: () => {} }); // no box about it; we run anew
}

const showsCode = () => document.documentElement.classList.contains(CODE);

/** The line above the document: its title, the notebooks, and the code for who wants to see it. */
async function addHead(panel, ours) {
  const head = document.createElement("header");
  head.className = "talk-frame-head";
  const title = add(head, "span", "talk-frame-title");
  title.textContent = notebookName(panel.context.path);
  const list = add(head, "nav", "talk-frame-list");
  list.setAttribute("aria-label", "Notebooks");
  for (const path of await notebooks()) {
    const link = add(list, "a");
    link.href = address(`doc/tree/${encodeURIComponent(path)}`);
    link.textContent = notebookName(path);
    if (path === panel.context.path) link.setAttribute("aria-current", "page");
  }
  if (ours.full_window) {
    const whole = add(head, "a", "talk-frame-whole");
    whole.href = address(`voila/render/${encodeURIComponent(panel.context.path)}`);
    whole.textContent = "Full window";
  }
  const code = add(head, "button", "talk-frame-code");
  code.type = "button";
  const show = (shown) => {
    document.documentElement.classList.toggle(CODE, shown);
    code.setAttribute("aria-pressed", String(shown));
    code.textContent = shown ? "Hide the code" : "Show the code";
    panel.content.widgets.forEach((cell) => shown && cell.inputHidden && (cell.inputHidden = false));
  };
  code.addEventListener("click", () => show(!showsCode()));
  show(false);
  document.body.prepend(head);
  dispatchEvent(new Event("resize"));
  keepEdits(panel);
}

async function notebooks() {
  const folder = await (await ask("api/contents/?type=directory")).json();
  const names = folder.content.map((entry) => entry.path).filter((path) => /^\d_.*\.ipynb$/.test(path));
  return names.sort();
}

function add(parent, tag, name = "") {
  const node = document.createElement(tag);
  node.className = name;
  parent.append(node);
  return node;
}

/** Store the code when she has changed it, and only then: running a notebook changes nothing in her folder. */
function keepEdits(panel) {
  const code = () => JSON.stringify(panel.content.widgets.map((cell) => cell.model.sharedModel.getSource()));
  let kept = code();
  setInterval(async () => {
    const now = code();
    if (now === kept || !panel.context.isReady) return;
    kept = now;
    await panel.context.save().catch(() => (kept = ""));
  }, 2000);
}

/** Run the notebook now, and again whenever its kernel is another one. */
async function keepRunning(app, panel) {
  const session = panel.sessionContext;
  const scrolled = panel.content.outerNode ?? panel.content.node;
  const run = async () => {
    const place = scrolled.scrollTop;
    await app.commands.execute("notebook:run-all-cells");
    panel.content.activeCellIndex = 0;
    scrolled.scrollTop = place;
  };
  await session.ready;
  await run();
  const lose = listen({
    kernel: () => session.session.kernel,
    look: async () => {
      if ((await ask(`api/kernels/${session.session.kernel.id}`)).status !== 404) return;
      lose();
      await session.changeKernel({ name: "python3" }); // it was ended while the page slept
    },
    mend: run,
  });
  session.statusChanged.connect((_session, status) => LOST.includes(status) && lose());
}
