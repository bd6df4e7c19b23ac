// A notebook full-window, under Voila. Its kernel lives as long as its page: Voila ends it when the page is left,
// and where it has gone the page is loaded anew.

import { ask, followTitle, hideToken, notebookName } from "./page.js";
import { listen, LOST } from "./heartbeat.js";

export async function begin(app) {
  hideToken();
  followTitle(notebookName(location.pathname));
  const { kernel } = await app.widgetManagerPromise.promise;
  const path = `api/kernels/${kernel.id}`;
  addEventListener("pageshow", (event) => event.persisted && location.reload());
  const lose = listen({
    kernel: () => kernel,
    look: async () => {
      if ((await ask(path)).status === 404) location.reload();
    },
    mend: async () => location.reload(),
  });
  kernel.statusChanged.connect((_kernel, status) => LOST.includes(status) && lose());
}
