// What her window holds: the content that Python told, and in the page's own store what a reload must bring back.
import { mergeFigure } from "./chart.js";

const KEPT = "talk-kit-desk";

export const memory = {
  all: () => JSON.parse(sessionStorage.getItem(KEPT) ?? "{}"),
  get: (name) => memory.all()[name],
  set: (name, value) => sessionStorage.setItem(KEPT, JSON.stringify({ ...memory.all(), [name]: value })),
};

/** Take changes into the content, so that a view that opens later shows what the others do. */
export function take(content, { scene, figure, of, others, some_rows: some, ...changes }) {
  Object.assign(content, changes);
  if (some) content.rows = content.rows.map((row) => some.find(({ at }) => at === row.at) ?? row);
  const shown = content.scenes[of ?? content.shown]; // she may have chosen another meanwhile
  if (others) Object.assign(content.scenes, others);
  else if (scene) content.scenes = { ...(changes.shown && !changes.made && !changes.talk ? content.scenes : {}), [of]: scene };
  else if (figure && shown) {
    const whole = mergeFigure(shown.figure, figure);
    const { sentence, key } = whole.layout.meta;
    content.scenes = { [of]: { ...shown, sentence, footer: key, figure: whole } };
  } else if (changes.made || changes.system) content.scenes = { [content.shown]: shown }; // the others are of another dish
}

