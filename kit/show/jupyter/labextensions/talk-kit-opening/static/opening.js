// Runs a notebook of the kit once it is open, so that nobody has to know which button runs a cell.
// Loaded by JupyterLab as a prebuilt extension; only a notebook whose metadata say so is run, and only once a page.
(() => {
  const plugin = {
    id: "talk-kit-opening:plugin",
    autoStart: true,
    // Not awaited: JupyterLab is restored only after every extension is active.
    activate: (app) => void app.restored.then(() => watch(app)),
  };

  async function watch(app) {
    const started = new Set();
    const runWhenReady = async (panel) => {
      const context = panel?.content?.model && panel.context;
      if (!context || started.has(context.path)) return;
      await context.ready;
      if (started.has(context.path) || !panel.content.model.getMetadata("talk_kit")?.run_when_opened) return;
      started.add(context.path);
      app.shell.collapseLeft?.(); // the whole width for the charts
      await panel.sessionContext.ready;
      await app.commands.execute("notebook:run-all-cells");
      panel.content.activeCellIndex = 0;
      await panel.content.scrollToItem?.(0, "start");
    };
    app.shell.currentChanged?.connect((_shell, change) => runWhenReady(change.newValue));
    // The notebook that the address names may be open before we are; its model comes a moment after its panel.
    for (let tries = 0; tries < 100 && !started.size; tries += 1) {
      await runWhenReady(app.shell.currentWidget);
      await new Promise((done) => setTimeout(done, 200));
    }
  }

  const modules = { "./extension": () => () => ({ __esModule: true, default: plugin }) };
  window._JUPYTERLAB = window._JUPYTERLAB ?? {};
  window._JUPYTERLAB["talk-kit-opening"] = {
    init: async () => {},
    get: async (name) => modules[name]?.() ?? Promise.reject(new Error(`talk-kit-opening has no module ${name}`)),
  };
})();
