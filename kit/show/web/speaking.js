// What she says: the next sentence large with its verdict, those after it, and the clock with the plan on the day.
import { add, fill, setText } from "./dom.js";

const AFTER = 3; // sentences shown after the next one

/** Returns {show(sentences), move(by), place, go(place)}. */
export function speaking(parent, changed) {
  const next = add(parent, "div", "talk-next");
  const count = add(next, "span", "talk-soft");
  const says = add(next, "p");
  const judged = add(next, "div", "talk-judged");
  const buttons = add(next, "div", "talk-choices");
  const back = add(buttons, "button", "talk-button", "Back");
  const on = add(buttons, "button", "talk-button", "Next");
  add(back, "kbd", "", "P");
  add(on, "kbd", "", "N");
  const after = add(parent, "div", "talk-after");
  const counts = add(parent, "p", "talk-soft talk-counts");
  next.setAttribute("aria-live", "polite");
  let sentences = [];
  let place = 0;

  const draw = () => {
    const here = sentences[place];
    setText(count, here ? `Next, ${place + 1} of ${sentences.length}` : "No sentence yet");
    setText(says, here?.say ?? "");
    judged.replaceChildren();
    if (here) judge(judged, here);
    next.dataset.verdict = here?.kind ?? "none";
    [back.disabled, on.disabled] = [place <= 0, place >= sentences.length - 1];
    const make = (box) => {
      const one = add(box, "div", "talk-said");
      for (const name of ["talk-verdict", "talk-say", "talk-soft"]) add(one, "span", name);
      return one;
    };
    fill(after, sentences.slice(place + 1, place + 1 + AFTER), make, (box, { sign, verdict, say, kind, because }) => {
      box.dataset.verdict = kind;
      setText(box.children[0], `${sign} ${verdict}`);
      setText(box.children[1], say);
      setText(box.children[2], kind === "holds" || kind === "none" ? "" : because);
    });
    const off = sentences.filter(({ kind }) => kind === "off").length;
    const ask = sentences.filter(({ kind }) => kind === "ask").length;
    const told = [off ? `${off} off` : "", ask ? `${ask} cannot be told` : ""].filter(Boolean).join(", ");
    setText(counts, told ? `Of ${sentences.length} sentences: ${told}.` : "");
  };
  const judge = (box, { sign, verdict, because, instead }) => {
    add(box, "span", "talk-verdict", `${sign} ${verdict}`);
    if (because) add(box, "span", "talk-soft", because);
    if (instead) add(box, "p", "talk-instead", `Say instead: ${instead}`);
  };
  const go = (to) => {
    place = Math.min(Math.max(0, to), Math.max(0, sentences.length - 1));
    draw();
    changed(place);
  };
  back.onclick = () => go(place - 1);
  on.onclick = () => go(place + 1);
  return {
    show(given) {
      sentences = given;
      place = Math.min(place, Math.max(0, sentences.length - 1));
      draw();
    },
    go,
    move: (by) => go(place + by),
  };
}

/** The clock of the day: what step it is, how long it has, which pot is ready when. Times are kept by `store`. */
export function clock(parent, store) {
  const time = add(parent, "span", "talk-clock");
  const words = add(parent, "span", "talk-soft talk-step-words");
  const track = add(parent, "div", "talk-track");
  const done = add(parent, "button", "talk-button");
  const back = add(parent, "button", "talk-button talk-quiet", "Not done yet");
  const again = add(parent, "button", "talk-button talk-quiet", "Clock to 0:00");
  let plan = { steps: [], pots: [] };
  let run = store.get() ?? { began: 0, ends: [] };

  const minutes = () => (run.began ? (Date.now() - run.began) / 60000 : 0);
  const draw = () => {
    const { steps, pots } = plan;
    const over = run.ends.length >= steps.length;
    const now = over && steps.length ? run.ends[steps.length - 1] : minutes();
    const at = steps[run.ends.length];
    setText(time, shown(now));
    const left = at ? at.end - now : 0;
    const pot = pots.filter(({ start, ready }) => start <= now && ready > now).sort((a, b) => a.ready - b.ready)[0];
    const parts = [
      at ? at.title : steps.length ? "All steps are done" : "No plan yet",
      run.began && at ? (left >= 0 ? `${shown(left)} left` : `${shown(-left)} over`) : "",
      run.began && pot ? `${pot.name} ready at ${shown(pot.ready)}` : "",
    ];
    setText(words, parts.filter(Boolean).join(" · "));
    setText(done, !run.began ? "Start the clock" : "Step done");
    done.disabled = !steps.length || over;
    again.hidden = !run.began;
    back.hidden = !run.ends.length;
    fill(track, steps, (box) => add(box, "i"), (bar, step, place) => {
      bar.style.flexGrow = Math.max(0.4, step.end - step.start);
      bar.title = step.title;
      bar.className = place < run.ends.length ? "talk-done" : place === run.ends.length && run.began ? "talk-here" : "";
    });
  };
  const keep = () => {
    store.set(run);
    draw();
  };
  done.onclick = () => {
    if (run.began) run = { ...run, ends: [...run.ends, minutes()] };
    else run = { began: Date.now(), ends: [] };
    keep();
  };
  back.onclick = () => {
    run = { ...run, ends: run.ends.slice(0, -1) };
    keep();
  };
  again.onclick = () => {
    run = { began: 0, ends: [] };
    keep();
  };
  const ticking = setInterval(draw, 1000);
  return {
    show(given) {
      plan = given;
      draw();
    },
    take(given) {
      run = given;
      draw();
    },
    stop: () => clearInterval(ticking),
  };
}

function shown(minutes) {
  const seconds = Math.round(Math.abs(minutes) * 60);
  return `${minutes < 0 && seconds ? "-" : ""}${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}
