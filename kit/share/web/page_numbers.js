// What a serving holds in a setting: Python's numbers (kit/share/page_data.py), here only multiplied and added.

/** Work out a setting: what a serving holds, how sure that is, and what each ingredient brings. */
export function worked_out(data, setting) {
  const { servings, meaning, rows } = setting;
  const scale = meaning === "make more" ? servings / data.servings : 1;
  const options = rows.map(({ option }, at) => data.rows[at].options[option]);
  const grams = rows.map((row) => row.grams * scale);
  const brings = options.map(({ per_100g }, at) =>
    per_100g.map((value) => (grams[at] === 0 ? 0 : value === null ? NaN : (grams[at] * value) / (100 * servings))),
  );
  const columns = data.nutrients.map((_, at) => brings.map((row) => row[at]));
  const total = columns.map((values) => values.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : value), 0));
  const half = columns.map((values, at) => data.z90 * Math.sqrt(values.reduce((sum, value, row) => {
    const [u, v] = [options[row].amount_sd, options[row].content_sd[at]];
    return sum + (Number.isNaN(value) ? 0 : value ** 2 * (u ** 2 + v ** 2 + u ** 2 * v ** 2));
  }, 0)));
  const at_least = columns.map((values) => data.open > 0 || values.some(Number.isNaN));
  const may_be_lost = columns.map((values, at) => {
    const unsure = values.reduce((sum, value, row) => sum + (!options[row].may_lose || Number.isNaN(value) ? 0 : value), 0);
    return data.nutrients[at].taken && unsure > data.a_little * total[at];
  });
  const lost = columns.map((values, at) => values.reduce((sum, value, row) => {
    const taken = options[row].may_lose ? options[row].may_lose[at] : 0;
    return sum + (Number.isNaN(value) ? 0 : value * taken);
  }, 0));
  return {
    options,
    grams,
    brings,
    total,
    low: total.map((value, at) => Math.max(0, value - Math.hypot(half[at], lost[at]))),
    high: total.map((value, at) => value + half[at]),
    at_least,
    up_to: may_be_lost.map((lost, at) => lost && !at_least[at]),
  };
}

/** Shares of energy by the general factors; unknown where an amount is missing or there is no energy. */
export function energy_shares(data, numbers) {
  const sources = Object.entries(data.energy).map(([name, factor]) => {
    const at = place(data, name);
    return [name, numbers.at_least[at] ? NaN : numbers.total[at] * factor];
  });
  const whole = sources.reduce((sum, [, kcal]) => sum + kcal, 0);
  return new Map(sources.map(([name, kcal]) => [name, whole > 0 ? kcal / whole : NaN]));
}

/** Where a nutrient stands among the others. */
export const place = (data, name) => data.nutrients.findIndex(({ id }) => id === name);

/** What a serving holds as it can be said, in three parts: how it is meant, the number, the unit. */
export function spoken(python, data, numbers, name) {
  const at = place(data, name);
  const { unit, decimals } = data.nutrients[at];
  const { total, low, high, at_least, up_to } = numbers;
  return python.spoken_parts(total[at], low[at], high[at], unit, decimals, at_least[at], up_to[at]);
}

/** A serving's share of a day; that of protein, where the rules count its quality, only where that is sure. */
export function share_of_day(python, data, numbers, at) {
  const { id, day } = data.nutrients[at];
  const share = day === null ? NaN : numbers.total[at] / day;
  if (id !== "protein" || !data.protein_by_quality) return share;
  const brings = numbers.brings.map((row) => row[at] || 0);
  return python.protein_share(share, python.least_score(brings, numbers.options.map((option) => option.protein_score)), 1);
}

/** What a serving holds of the listed allergens, a sentence each, and the foods whose package has to be read. */
export function allergens(python, data, numbers) {
  const used = numbers.options.filter((_, at) => numbers.grams[at] > 0);
  const told = data.allergens
    .map(([id, name]) => [name, used.filter((option) => option.allergens.includes(id)).map((option) => option.said)])
    .filter(([, foods]) => foods.length)
    .map(([name, foods]) => python.allergen_sentence(name, [...new Set(foods)]));
  const unknown = [...new Set(used.filter((option) => option.unknown).map((option) => option.said))];
  return unknown.length ? [...told, python.check_the_package(unknown)] : told;
}
