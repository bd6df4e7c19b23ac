// What is said, each with its verdict: the words of a claim marked, the findings on demand, and what can be done about it.
import { add, fill, setText } from "./dom.js";

/**
 * Returns {show(said), some(said), settling(may)}. `act` is told {do: "instead", id} and {do: "pin", id, word, key};
 * while it `may` not be settled, nothing is offered.
 */
export function judgedList(parent, act) {
  const byId = new Map();
  let outline = "";
  const some = (said) => said.forEach((one) => byId.get(one.id)?.put(one));
  const show = (said) => {
    const now = JSON.stringify(said.map((one) => [one.id, one.group, one.heading, one.pins]));
    if (now === outline) {
      some(said);
      return;
    }
    outline = now;
    parent.replaceChildren();
    byId.clear();
    let [group, heading, list] = ["", "", null];
    for (const one of said) {
      if (one.group !== group) add(parent, "h3", "talk-group", one.group);
      const named = one.group ? "" : one.heading; // a step and a question are named at their own words
      if (named && named !== heading) add(parent, "h3", "talk-part", named);
      if (!list || one.group !== group || named !== heading) list = add(parent, "ol", "talk-judged-list");
      [group, heading] = [one.group, named];
      byId.set(one.id, entry(list, one, act));
    }
  };
  return {
    show,
    some,
    settling(may) {
      parent.toggleAttribute("data-settles", may);
      for (const one of byId.values()) one.settling(may);
    },
  };
}

function entry(list, first, act) {
  const box = add(list, "li", "talk-judged-one");
  Object.assign(box, { tabIndex: -1, id: `talk-${first.id}` });
  const verdict = add(box, "span", "talk-verdict");
  const body = add(box, "div");
  const of = add(body, "p", "talk-soft talk-of");
  const says = add(body, "p", "talk-say");
  const because = add(body, "p", "talk-soft talk-because");
  const hers = add(body, "p", "talk-hers");
  const instead = add(body, "div", "talk-instead-line");
  const better = add(instead, "p");
  const take = add(instead, "button", "talk-button", "Say this instead");
  const later = add(instead, "p", "talk-soft", "It holds for the dish as it is set. Put the recipe back as written to take it over.");
  const choices = add(body, "div");
  const details = add(body, "details", "talk-claims");
  add(details, "summary", "", "Claim by claim");
  const claims = add(details, "ul");
  let now = null;

  const made = {
    put(one) {
      const before = now;
      now = one;
      box.dataset.verdict = one.kind;
      setText(verdict, `${one.sign} ${one.verdict}`);
      setText(of, one.group ? one.heading : "");
      marked(says, one.pieces);
      setText(because, one.because);
      setText(hers, one.hers ? `On your own word: ${one.hers}` : "");
      instead.hidden = !one.instead;
      setText(better, `Say instead: ${one.instead}`);
      take.setAttribute("aria-label", `Say this instead: ${one.instead}`);
      if (JSON.stringify(before?.choices) !== JSON.stringify(one.choices)) showChoices(choices, one, act);
      details.hidden = one.claims.length < 2; // the reason above says all of a single one
      fill(claims, one.claims, claim, ({ children: [what, why], dataset }, given) => {
        dataset.verdict = given.kind;
        setText(what, `${given.sign} ${given.words}`);
        setText(why, ` (${given.about}): ${given.verdict}. ${given.because}`);
      });
    },
    settling(may) {
      take.hidden = !may;
      later.hidden = may;
      for (const button of choices.querySelectorAll("button")) button.disabled = !may;
    },
  };
  take.onclick = () => act({ do: "instead", id: now.id, at: now.id });
  made.put(first);
  made.settling(true);
  return made;
}

function claim(list) {
  const one = add(list, "li");
  add(one, "b", "talk-verdict");
  add(one, "span");
  return one;
}

/** A sentence with the words that carry a claim marked by what was found of them. */
function marked(line, pieces) {
  if (line.dataset.pieces === JSON.stringify(pieces)) return;
  line.dataset.pieces = JSON.stringify(pieces);
  line.replaceChildren();
  for (const [text, kind] of pieces) {
    if (kind) add(line, "mark", "", text).dataset.verdict = kind;
    else line.append(text);
  }
}

/** For each word that could mean several things a button a meaning; where it cannot be pinned, the meanings. */
function showChoices(parent, one, act) {
  parent.replaceChildren();
  for (const { word, options } of one.choices) {
    const line = add(parent, "div", "talk-choices");
    line.setAttribute("role", "group");
    line.setAttribute("aria-label", `Which ${word}?`);
    add(line, "span", "", `Which “${word}”?`);
    for (const [key, name] of options) {
      if (one.pins) {
        const button = add(line, "button", "talk-button", name);
        button.onclick = () => act({ do: "pin", id: one.id, word, key, at: `${one.id} ${word}` });
      } else add(line, "b", "", name);
    }
    if (!one.pins) add(line, "span", "talk-soft", "Write the one that you mean.");
  }
}
