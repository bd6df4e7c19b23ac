// The charts of the page, drawn by Python's own functions.
import { energy_shares, place, share_of_day } from "./page_numbers.js";

/** Every chart of a setting, beside the recipe as written. */
export function drawings(python, data, now, written, source_of) {
  const ranges = new Map(Object.entries(data.ranges));
  const [here, there] = [energy_shares(data, now), energy_shares(data, written)];
  const source = place(data, source_of);
  const { name, unit, decimals } = data.nutrients[source];
  const of_a_day = data.shown.of_a_day.map((id) => place(data, id)).filter((at) => data.nutrients[at].kind);
  const days = (numbers) => new Map(of_a_day.map((at) => [data.nutrients[at].short, share_of_day(python, data, numbers, at)]));
  const named = (keep) => new Set(of_a_day.filter(keep).map((at) => data.nutrients[at].short));
  const column = (numbers) => numbers.brings.map((row) => row[source]);
  return {
    shares: python.energy_shares(here, ranges, there),
    balance: python.balance(here, ranges, there),
    sources: python.sources(
      ...[now.options.map((option) => option.name), column(now), name, unit, column(written), decimals],
      ...[python.colour(source_of), now.options.map((option) => option.said)],
    ),
    day: python.share_of_day(
      ...[days(now), named((at) => data.nutrients[at].kind === "limit"), days(written), named((at) => now.at_least[at])],
    ),
  };
}
