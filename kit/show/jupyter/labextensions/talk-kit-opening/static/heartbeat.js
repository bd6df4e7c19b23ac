// Whether Python answers. When it does not, the page says so and lets nothing be moved that could not follow.

const BEAT = 300; // between an answer and the next question [ms]
const PATIENCE = 1500; // after which silence is noticed [ms]
export const LOST = ["autorestarting", "restarting", "dead", "terminating"]; // states of a kernel that forgets
const LOOK = 2000; // between looks whether a silent kernel is there at all [ms]
const GONE = "talk-python-gone"; // on the page, while Python does not answer
const WORDS = "Python does not answer. What you see stays as it was; sliders and buttons wait until it does.";

/**
 * Ask Python whether it is there, again and again.
 *
 * kernel(): the kernel's connection at present; look(): called while it is silent, to see whether it is there at all;
 * mend(): called when a kernel answers after one was lost, to bring back what that one knew.
 * Returns lose(): what the kernel knew is lost. The window hears the event "talk-python", its detail whether Python answers.
 */
export function listen({ kernel, look, mend }) {
  let asked = 0; // when the question was put that has not been answered [ms]
  let answered = Date.now();
  let looked = 0;
  let number = 0;
  let lost = false;
  let busy = false;
  const once = async (task) => {
    busy = true;
    await task().catch(() => {}); // tried again at the next beat
    busy = false;
  };
  const ask = async () => {
    const mine = (number += 1);
    asked = Date.now();
    try {
      await kernel().requestKernelInfo();
    } catch {
      return; // the connection is being made anew; the next question tells
    }
    if (mine !== number) return; // an answer to a question that was given up
    asked = 0;
    answered = Date.now();
    if (lost) {
      await once(async () => {
        await mend();
        lost = false;
      });
    }
    if (!lost) show(true);
  };
  setInterval(() => {
    if (busy || document.hidden) return; // a hidden page's clock stands still
    const now = Date.now();
    const silent = asked && now - asked > PATIENCE;
    if (silent) show(false);
    if (isGone() && asked && now - looked > LOOK) {
      looked = now;
      void once(look);
    }
    if (silent || (!asked && now - answered > BEAT)) void ask();
  }, 100);
  return () => {
    lost = true;
    show(false);
  };
}

export const isGone = () => document.documentElement.classList.contains(GONE);

function show(answers) {
  if (answers !== isGone()) return;
  document.documentElement.classList.toggle(GONE, !answers);
  note().hidden = answers;
  for (const control of controls()) control.inert = !answers;
  window.dispatchEvent(new CustomEvent("talk-python", { detail: answers }));
}

/** Widgets that are moved or pressed: those that hold no others. What works without Python says so. */
function controls() {
  const widgets = document.querySelectorAll(".widget-box > *, .jp-OutputArea-output > *");
  const others = ".widget-box, .widget-html, :has(.widget-box, .talk-stage, [data-without-python])";
  return [...widgets].filter((widget) => !widget.matches(others) && !widget.closest("[data-without-python]"));
}

function note() {
  let place = document.querySelector(".talk-python-note");
  if (!place) {
    place = document.createElement("p");
    place.className = "talk-python-note";
    place.setAttribute("role", "status");
    place.hidden = true;
    document.body.append(place);
    place.textContent = WORDS;
  }
  return place;
}
