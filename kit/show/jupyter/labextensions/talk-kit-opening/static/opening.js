// The frame around the kit's notebooks: one quiet document that runs by itself once it is open. Loaded by JupyterLab and by
// Voila as a prebuilt extension, without a build: this script is what they ask for, the modules beside it do the work.
(() => {
  const here = document.currentScript.src;
  const beside = (name) => import(new URL(name, here));
  let shared = {};
  let freshKernel = Promise.resolve();

  if (location.pathname.includes("/doc/tree/")) {
    // JupyterLab enters its one document in the history again and again, and going back would lead nowhere.
    history.pushState = history.replaceState.bind(history);
    document.documentElement.classList.add("talk-frame-coming"); // its bars are not shown while they are being put away
  }

  // JupyterLab begins when the page has loaded, and never where it has loaded before JupyterLab listens, as on a slow machine.
  const listen = window.addEventListener;
  window.addEventListener = function (type, listener, ...rest) {
    if (type === "load" && document.readyState === "complete") setTimeout(listener);
    else listen.call(this ?? window, type, listener, ...rest);
  };

  /** Return a module that the page has loaded already, such as the one that names what plugins provide. */
  async function ofThePage(name) {
    const versions = Object.values(shared[name] ?? {});
    return versions.length ? (await versions[0].get())() : null;
  }

  async function plugins() {
    const plugin = {
      id: "talk-kit-opening:plugin",
      autoStart: true,
      // JupyterLab opens the document once every extension is active: not before its kernel is there, but before we begin.
      activate: async (app) => {
        await freshKernel.catch(() => {}); // JupyterLab starts one itself then
        void begin(app);
      },
    };
    const token = (await ofThePage("@jupyterlab/application"))?.IConnectionLost;
    if (!token) return [plugin];
    // The heartbeat says calmly that the server is gone; no box over the charts does.
    const quiet = { id: "talk-kit-opening:quiet", provides: token, autoStart: true, activate: () => async () => {} };
    return [plugin, quiet];
  }

  async function begin(app) {
    const inLab = Boolean(app.shell.currentChanged);
    (await beside(inLab ? "document.js" : "full_window.js")).begin(app);
  }

  const modules = { "./extension": async () => ({ __esModule: true, default: await plugins() }) };
  window._JUPYTERLAB = window._JUPYTERLAB ?? {};
  window._JUPYTERLAB["talk-kit-opening"] = {
    init: async (scope) => {
      shared = scope;
      void beside("page.js").then((module) => module.dress());
      freshKernel = beside("document.js").then((module) => module.freshKernel());
    },
    get: async (name) => {
      if (!modules[name]) throw new Error(`talk-kit-opening has no module ${name}`);
      const loaded = await modules[name]();
      return () => loaded;
    },
  };
})();
