// Messages to Python: one at a time, newest last, so that a drag never piles up behind itself.

const SILENCE = 2000; // after which Python counts as gone [ms]
const QUIET = 350; // without a message, after which the scenes that are not shown are asked for [ms]

/**
 * ask(message) sends, or waits for the answer to the one before; a waiting message that sets the same thing is replaced.
 * `on.change(changes)` gets what Python sends back, `on.python(answers)` hears when Python is gone and when it is back.
 */
export function asking(model, on) {
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
    open = { ...message, number: (number += 1) };
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
    if (detail && open) send(open); // what a kernel that was away has not heard
  });

  return function ask(message) {
    clearTimeout(rest);
    if (!open) {
      send(message);
      return;
    }
    const same = waiting.findIndex((other) => other.do === message.do && other.at === message.at && message.do !== "try");
    if (same >= 0) waiting[same] = message;
    else waiting.push(message);
  };
}
