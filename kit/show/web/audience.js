// The audience window: a second window without controls, opened by the page itself, which draws into it directly.
//
// It stands alone: a small script of its own fits the picture to its size and hides the cursor, so that when her page is
// reloaded or gone the last picture stays. A page that comes back finds it by its name and takes it on.
import { add } from "./dom.js";
import { Scene } from "./scene.js";

const NAME = "talk-kit-audience";
const CHANNEL = "talk-kit-audience";
const LOOK = 400; // between looks whether it is still open [ms]
const WAIT = 5000; // for a window that is open already to answer, on a machine that has much to do [ms]
const OWN = `
  const fit = () => {
    const scene = document.querySelector(".talk-scene");
    if (!scene) return;
    const scale = Math.min(innerWidth / 1920, innerHeight / 1080);
    scene.style.transform = "translate(" + (innerWidth - 1920 * scale) / 2 + "px, " + (innerHeight - 1080 * scale) / 2
      + "px) scale(" + scale + ")";
  };
  addEventListener("resize", fit);
  const channel = new BroadcastChannel("${CHANNEL}");
  channel.onmessage = ({ data }) => data === "who is there" && channel.postMessage("I am");
`;

/** Return the audience's window, opened now or open already; null when the browser does not let it open. */
export function openWindow() {
  return window.open("", NAME, "popup,width=1280,height=720");
}

/** Return a promise of whether an audience window of an earlier page is open. */
export function isOpen() {
  return new Promise((resolve) => {
    const channel = new BroadcastChannel(CHANNEL);
    const answer = (is) => {
      channel.close();
      resolve(is);
    };
    channel.onmessage = ({ data }) => data === "I am" && answer(true);
    channel.postMessage("who is there");
    setTimeout(() => answer(false), WAIT);
  });
}

/** Draw into the window: returns the scene there. `closed` is called once it is gone. */
export function audience(other, { css, library, title, drawn, closed, key }) {
  const page = other.document;
  page.title = title;
  page.documentElement.lang = "en";
  if (!page.head.querySelector("script")) add(page.head, "script").textContent = OWN;
  page.head.querySelector("style")?.remove();
  add(page.head, "style").textContent = css;
  page.body.replaceChildren();
  const root = add(page.body, "main", "talk-audience");
  root.setAttribute("aria-label", "What the audience sees");
  const ready = other.document.fonts.load("600 40px Figtree").then(() => library);
  const scene = new Scene(root, ready, { drawn });
  page.addEventListener("keydown", key);
  const watch = setInterval(() => {
    if (!other.closed) return;
    clearInterval(watch);
    closed();
  }, LOOK);
  scene.window = other;
  return scene;
}
