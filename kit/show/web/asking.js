// Messages to Python: one at a time, newest last, so that a drag never piles up behind itself.
//
// What she did is heard in its order and once. Only of what tells where something stands a newer message takes the place
// of an older one, and only right behind it: between them she may have done what is to come after the one, before the other.

const SILENCE = 2000; // after which Python counts as gone [ms]
const QUIET = 350; // without a message, after which the scenes that are not shown are asked for [ms]
const STANDS = new Set(["move", "servings", "show", "text", "find", "look", "clock"]);

/**
 * ask(message) sends, or waits for the answer to the one before.
 * `on.change(changes)` gets what Python sends back, `on.python(answers)` hears when Python is gone and when it is back.
 */
export function asking(model, on) {
  const page = String(Math.random()).slice(2);
  let number = 0;
  let open = null; // the message that has not been answered
  let waiting = [];
  let answers = true;
  let rest = 0;
  let timer = 0;

  const python = (does) => {
    if (does !== answers) on.python((answers = does));
  };
  const send = (message) => {
    open = { ...message, page, number: (number += 1) };
    tell();
  };
  const tell = () => {
    clearTimeout(timer);
    timer = setTimeout(() => open && python(false), SILENCE);
    try {
      model.send(open);
    } catch {
      python(false); // the kernel is gone with its comm, as while a page is being left
    }
  };
  const next = () => {
    open = null;
    clearTimeout(timer);
    if (waiting.length) send(waiting.shift());
    else {
      clearTimeout(rest);
      rest = setTimeout(() => !open && answers && send({ do: "rest" }), QUIET);
    }
  };
  model.on("msg:custom", (message) => {
    if (!message.changes) return;
    on.change(message.changes);
    if (open && message.done >= open.number) {
      const wasRest = open.do === "rest";
      python(true);
      if (wasRest && !waiting.length) {
        open = null;
        clearTimeout(timer);
      } else next();
    }
  });
  window.addEventListener("talk-python", ({ detail }) => {
    python(detail);
    if (detail && open) tell(); // what a kernel that was away may not have heard; it does nothing twice
  });

  return function ask(message) {
    clearTimeout(rest);
    if (!open) {
      send(message);
      return;
    }
    const last = waiting.at(-1);
    const newer = last && STANDS.has(message.do) && last.do === message.do && last.at === message.at;
    if (newer) waiting[waiting.length - 1] = { ...last, ...message };
    else waiting.push(message);
  };
}
