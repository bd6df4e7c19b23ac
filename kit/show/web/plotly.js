// plotly's script: once a page, from the kernel, whatever number of widgets the page has.

const SHARED = "talkKitPlotly";
const PATIENCE = 5000; // after which a second widget asks too, should the kernel of the first be gone [ms]

/** Return a promise of plotly: the page's own when it is the same version, else the script that Python sends. */
export function library(model) {
  const version = model.get("plotly_version");
  if (window.Plotly?.version === version) return Promise.resolve(window.Plotly);
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
  runIn(window, script).then((loaded) => {
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
  return script ? runIn(other, script) : window.Plotly;
}

/** Run plotly's script where no module loader of the page (AMD in Voila) sees it; what the page had stays in place. */
function runIn(view, script) {
  const before = view.Plotly;
  const element = view.document.createElement("script");
  // A script element is compiled off the main thread, which `new Function` is not.
  const parts = ["(function (define, module, exports) {", script, "\n}).call(window);"];
  element.src = URL.createObjectURL(new Blob(parts, { type: "text/javascript" }));
  return new Promise((resolve, reject) => {
    element.onload = () => {
      const loaded = view.Plotly;
      if (before) view.Plotly = before;
      URL.revokeObjectURL(element.src);
      element.remove();
      resolve(loaded);
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
