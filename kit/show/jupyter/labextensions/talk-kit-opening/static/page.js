// What the page knows of its server, and its title; alike in JupyterLab and in Voila.

const settings = JSON.parse(document.getElementById("jupyter-config-data").textContent);

/** Return an address on the page's own server. */
export function address(path) {
  return new URL(settings.baseUrl + path, location.href).href;
}

/** Ask the server, with the right to ask; a page that is being left may ask too. */
export function ask(path, method = "GET", content) {
  const headers = { Authorization: `token ${settings.token}` };
  return fetch(address(path), { method, keepalive: true, headers, body: content && JSON.stringify(content) });
}

/** Give the page the frame's style sheet. */
export function dress() {
  const style = document.createElement("link");
  Object.assign(style, { rel: "stylesheet", href: address("talk-kit/frame.css") });
  document.head.append(style);
}

/** Take the token out of the address bar, which a shared screen shows; the page has its cookie by now. */
export function hideToken() {
  const bare = new URL(location.href);
  if (!bare.searchParams.has("token")) return;
  bare.searchParams.delete("token");
  history.replaceState(history.state, "", bare);
}

/** Keep the page's title that of the talk: the text of whatever is marked as it, or else the notebook's own. */
export function followTitle(otherwise) {
  const take = () => {
    const title = document.querySelector(".talk-title")?.textContent.trim() || otherwise;
    if (document.title !== title) document.title = title;
    for (const place of document.querySelectorAll(".talk-frame-title")) {
      if (place.textContent !== title) place.textContent = title;
    }
  };
  let waiting = false;
  new MutationObserver(() => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      take();
    });
  }).observe(document, { subtree: true, childList: true, characterData: true });
  take();
}

/** "3_on_screen.ipynb" as people read it: "3 On screen". */
export function notebookName(path) {
  const words = path.split("/").pop().replace(/\.ipynb$/, "").replaceAll("_", " ");
  return words.replace(/^(\d+ )?(.)/, (_all, number = "", first) => number + first.toUpperCase());
}
