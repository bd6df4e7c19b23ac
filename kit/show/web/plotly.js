// plotly's script: once a page, whatever number of widgets the page has. The full-window page loads it from its server while
// the kernel is starting (its template notes it as window.talkKitComing); any other page asks the kernel for it.

const SHARED = "talkKitPlotly";
const PATIENCE = 5000; // after which a second widget asks too, should the kernel of the first be gone [ms]

/** Return a promise of plotly: the page's own when it is the same version, else the script that Python sends. */
export function library(model) {
  const version = model.get("plotly_version");
  const isHere = () => window.Plotly?.version === version;
  if (isHere()) return Promise.resolve(window.Plotly);
  if (!window.talkKitComing) return fromKernel(model, version);
  return window.talkKitComing.done.then(() => (isHere() ? window.Plotly : fromKernel(model, version)));
}

function fromKernel(model, version) {
  const shared = (window[SHARED] ??= {});
  shared[version] ??= resolvers();
  const asked = shared[version].asked;
  if (!shared[version].ready && (!asked || Date.now() - asked > PATIENCE)) {
    shared[version].asked = Date.now();
    model.send({ ask: "plotly" });
  }
  return shared[version].promise;
}

/** Take the script that Python sent. */
export function takeScript(model, script) {
  const version = model.get("plotly_version");
  const shared = (window[SHARED] ??= {});
  shared[version] ??= resolvers();
  if (shared[version].ready) return;
  shared[version].script = script;
  runText(window, script).then((loaded) => {
    shared[version].ready = true;
    shared[version].resolve(loaded);
  }, shared[version].reject);
}

/** Return a promise of plotly in another window: it draws with the window that it was loaded in. */
export async function libraryIn(other, model) {
  const version = model.get("plotly_version");
  if (other.Plotly?.version === version) return other.Plotly;
  await library(model);
  const script = window[SHARED]?.[version]?.script;
  if (script) return runText(other, script);
  const { address } = window.talkKitComing ?? {};
  return address ? run(other, address).catch(() => window.Plotly) : window.Plotly;
}

/** Run plotly's script where no module loader of the page (AMD in Voila) sees it; what the page had stays in place. */
async function runText(view, script) {
  // A script element is compiled off the main thread, which `new Function` is not.
  const parts = ["(function (define, module, exports) {", script, "\n}).call(window);"];
  const address = URL.createObjectURL(new Blob(parts, { type: "text/javascript" }));
  const before = view.Plotly;
  try {
    return await run(view, address);
  } finally {
    if (before) view.Plotly = before;
    URL.revokeObjectURL(address);
  }
}

function run(view, address) {
  const element = view.document.createElement("script");
  element.src = address;
  return new Promise((resolve, reject) => {
    element.onload = () => {
      element.remove();
      resolve(view.Plotly);
    };
    element.onerror = () => reject(new Error("plotly's script did not run"));
    view.document.head.append(element);
  });
}

function resolvers() {
  const parts = {};
  parts.promise = new Promise((resolve, reject) => Object.assign(parts, { resolve, reject }));
  return parts;
}
