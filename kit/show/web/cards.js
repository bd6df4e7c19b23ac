// Practice: one sentence at a time with its number hidden; she marks herself.
import { add, setText } from "./dom.js";

/** Returns {show(card)}; `act` is told {do: "reveal"} and {do: "mark", knew}. */
export function practiceCards(parent, act) {
  const says = add(parent, "p", "talk-card");
  says.setAttribute("role", "status");
  const buttons = add(parent, "div", "talk-choices");
  const reveal = add(buttons, "button", "talk-button talk-first", "Show the number");
  const knew = add(buttons, "button", "talk-button", "✓ I knew it");
  const missed = add(buttons, "button", "talk-button", "✗ I missed it");
  const known = add(parent, "p", "talk-soft");
  const told = add(parent, "p", "talk-problem");
  reveal.onclick = () => act({ do: "reveal" });
  knew.onclick = () => act({ do: "mark", knew: true });
  missed.onclick = () => act({ do: "mark", knew: false });
  return {
    show(card) {
      const had = [reveal, knew, missed].includes(document.activeElement);
      setText(says, card.text);
      reveal.hidden = !card.hidden || card.none;
      knew.hidden = missed.hidden = card.hidden || card.none;
      setText(known, card.known);
      setText(told, card.told);
      if (had) (reveal.hidden ? knew : reveal).focus(); // the next thing to press
    },
  };
}
