// The keys of her window, which theirs hears too.

/** Do what a key stands for, unless she is writing or the browser means something by it. */
export function pressed(desk, event) {
  if (event.talkDone || event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.target.matches?.("input[type=text], select, textarea, [contenteditable=true]")) return;
  const act = meaning(desk, event.key.length === 1 ? event.key.toLowerCase() : event.key);
  if (!act) return;
  event.talkDone = true; // it rises to the body, where the same keys are heard
  event.preventDefault();
  act();
}

function meaning(desk, key) {
  const { names } = desk.content;
  const gone = desk.root.classList.contains("talk-gone");
  if (/^[1-9]$/.test(key) && names[key - 1]) return () => desk.choose(names[key - 1][0]);
  return {
    b: () => desk.cover(),
    n: () => desk.speaking.move(1),
    PageDown: () => desk.speaking.move(1),
    p: () => desk.speaking.move(-1),
    PageUp: () => desk.speaking.move(-1),
    l: () => desk.turn(),
    s: () => desk.mode(),
    w: () => desk.openTheirs(true),
    q: () => desk.line.focus(),
    r: gone ? null : () => desk.ask({ do: "as_written" }),
    z: gone ? null : () => desk.ask({ do: "undo" }),
  }[key];
}
