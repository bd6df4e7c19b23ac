// A setting of the page: how many servings, in which measures, and of each row which food and how many grams. It is a
// value: every change returns a new one.

/** The setting of the recipe as written. */
export function as_written(data) {
  return {
    ...{ servings: data.servings, meaning: "make more", system: data.system, source_of: data.shown.sources_of[0] },
    rows: data.rows.map(({ options }) => ({ option: 0, grams: options[0].grams })),
  };
}

/** A setting with another food in a row: as much of it as there was of the other, in the proportion of their amounts. */
export function with_food(data, setting, at, option) {
  const { options } = data.rows[at];
  const row = setting.rows[at];
  const was = options[row.option].grams;
  const grams = (was ? row.grams / was : 0) * options[option].grams;
  return with_row(setting, at, { option, grams });
}

export const with_amount = (setting, at, grams) => with_row(setting, at, { ...setting.rows[at], grams });

function with_row(setting, at, row) {
  return { ...setting, rows: setting.rows.map((old, place) => (place === at ? row : old)) };
}

/** The amounts that a row's slider runs through, each as its words and its grams in the pot as written. */
export function amounts(data, setting, at) {
  const option = data.rows[at].options[setting.rows[at].option];
  const made = setting.meaning === "make more" ? setting.servings : data.servings;
  return option.amounts[setting.system][String(made)];
}

/** Where on its slider a row stands. */
export function position(steps, grams) {
  const away = (step) => Math.abs(step[1] - grams);
  return steps.reduce((best, step, at) => (away(step) < away(steps[best]) ? at : best), 0);
}
