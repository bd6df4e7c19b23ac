// The words of Python that translated functions use (kit/share/javascript): a dict is a Map, a set a Set, a tuple or list an
// array, None null. Nothing in here knows about food.

const truth = (value) =>
  value instanceof Map || value instanceof Set
    ? value.size > 0
    : Array.isArray(value) || typeof value === "string"
      ? value.length > 0
      : typeof value === "number"
        ? value !== 0 // NaN is true
        : Boolean(value);
const both = (first, second) => (truth(first) ? second() : first);
const either = (first, second) => (truth(first) ? first : second());
const same = (a, b) => (a ?? null) === (b ?? null);

/** Everything that Python can go through, as an array: of a dict its keys, of a text its characters. */
function list(value) {
  if (Array.isArray(value)) return value;
  if (value instanceof Map) return [...value.keys()];
  return [...value];
}

function equal(a, b) {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((held, at) => equal(held, b[at]));
  if (a instanceof Map && b instanceof Map) {
    return a.size === b.size && [...a].every(([key, held]) => b.has(key) && equal(held, b.get(key)));
  }
  if (a instanceof Set && b instanceof Set) return a.size === b.size && [...a].every((held) => b.has(held));
  return same(a, b);
}

/** Compare as Python orders: lists item by item, texts by code point. Below 0, 0, or above; NaN is never below or above. */
function order(a, b) {
  if (Array.isArray(a)) {
    for (let at = 0; at < Math.min(a.length, b.length); at += 1) {
      if (!equal(a[at], b[at])) return order(a[at], b[at]);
    }
    return a.length - b.length;
  }
  return a < b ? -1 : a > b ? 1 : 0;
}

function holds(container, wanted) {
  if (typeof container === "string") return container.includes(wanted);
  if (container instanceof Map || container instanceof Set) return container.has(wanted);
  return container.some((held) => equal(held, wanted));
}

function item(container, key) {
  if (container instanceof Map) {
    if (!container.has(key)) throw new Error(`no ${key}`);
    return container.get(key);
  }
  const held = container.at(key);
  if (held === undefined) throw new Error(`nothing at ${key}`);
  return held;
}

/** A list whose middle is gathered into one, so that `*rest, last` can be taken apart. */
function gathered(value, before, after) {
  const all = list(value);
  return [...all.slice(0, before), all.slice(before, all.length - after), ...all.slice(all.length - after)];
}

function put(container, key, value) {
  if (container instanceof Map) container.set(key, value);
  else container[key < 0 ? container.length + key : key] = value;
}

const slice = (value, from, to) => value.slice(from ?? 0, to ?? value.length);
const add = (a, b) => (Array.isArray(a) ? [...a, ...b] : a + b);
const modulo = (a, b) => ((a % b) + b) % b;
const floordiv = (a, b) => Math.floor(a / b);
const union = (a, b) => (a instanceof Map ? new Map([...a, ...b]) : new Set([...a, ...b]));

function times(a, b) {
  if (typeof a === "string") return a.repeat(Math.max(0, b));
  if (Array.isArray(a)) return Array.from({ length: Math.max(0, b) }, () => a).flat();
  return a * b;
}

// ---- numbers as text

/** A number with a fixed count of decimals, halves to the even digit where they are exact, as Python writes it. */
function fixed(value, decimals) {
  const text = Math.abs(value) < 1e21 ? value.toFixed(decimals) : String(value);
  // A half is exact only where the number has that few binary digits; toFixed takes it away from zero.
  if (!Number.isInteger(value * 2 ** (decimals + 1)) || Math.abs((value * 10 ** decimals) % 1) !== 0.5) return text;
  const below = Math.floor(value * 10 ** decimals);
  return ((below % 2 === 0 ? below : below + 1) / 10 ** decimals).toFixed(decimals);
}

function format(value, spec) {
  if (spec === "") return typeof value === "string" ? value : text(value);
  const [, sign, comma, decimals] = /^(\+?)(,?)\.(\d+)f$/.exec(spec) ?? [];
  if (decimals === undefined) throw new Error(`no format ${spec}`);
  const [whole, rest] = fixed(value, Number(decimals)).split(".");
  const grouped = comma ? whole.replace(/\B(?=(\d{3})+(?!\d))/g, ",") : whole;
  return `${sign && value >= 0 ? "+" : ""}${grouped}${rest === undefined ? "" : `.${rest}`}`;
}

const text = (value) => (value === null ? "None" : value === true ? "True" : value === false ? "False" : String(value));
const joined = (parts) => parts.join("");

// ---- what comes with Python

class Named {
  constructor(values) {
    Object.assign(this, values);
  }
}
const named = (values) => new Named(values);
const splitNamed = (given) => (given.at(-1) instanceof Named ? [given.slice(0, -1), given.at(-1)] : [given, {}]);

function best(given, better) {
  const [values, { key = (value) => value, default$: otherwise }] = splitNamed(given);
  const among = values.length === 1 ? list(values[0]) : values;
  if (!among.length) {
    if (otherwise === undefined) throw new Error("nothing to choose from");
    return otherwise;
  }
  return among.reduce((found, value) => (better(order(key(value), key(found))) ? value : found));
}

const py_max = (...given) => best(given, (compared) => compared > 0);
const py_min = (...given) => best(given, (compared) => compared < 0);
const py_sorted = (values, { key = (value) => value, reverse = false } = {}) =>
  [...list(values)].sort((a, b) => (reverse ? -1 : 1) * order(key(a), key(b)));
const py_sum = (values) => list(values).reduce((total, value) => total + Number(value), 0);
const py_any = (values) => list(values).some(truth);
const py_all = (values) => list(values).every(truth);
const py_len = (value) => value.size ?? value.length;
const py_abs = Math.abs;
const py_bool = truth;
const py_float = Number;
const py_int = Math.trunc;
const py_str = text;
const py_list = (values = []) => [...list(values)];
const py_tuple = py_list;
const py_set = (values = []) => new Set(list(values));
const py_dict = (values = []) => new Map(values);
const KINDS = new Map([
  [py_dict, (value) => value instanceof Map],
  [py_set, (value) => value instanceof Set],
  [py_list, Array.isArray],
  [py_str, (value) => typeof value === "string"],
  [py_float, (value) => typeof value === "number"],
]);
const py_isinstance = (value, kind) => KINDS.get(kind)(value);
const py_reversed = (values) => [...list(values)].reverse();
const py_enumerate = (values, { start = 0 } = {}) => list(values).map((value, at) => [at + start, value]);
const py_zip = (...lists) => {
  const all = lists.map(list);
  return all[0].slice(0, Math.min(...all.map((one) => one.length))).map((_, at) => all.map((one) => one[at]));
};
const py_map = (change, ...lists) => py_zip(...lists).map((values) => change(...values));
const py_filter = (keeps, values) => list(values).filter((value) => truth(keeps === null ? value : keeps(value)));
const py_pairwise = (values) => list(values).slice(1).map((value, at) => [list(values)[at], value]);

function py_range(from, to, step = 1) {
  const [start, end] = to === undefined ? [0, from] : [from, to];
  return Array.from({ length: Math.max(0, Math.ceil((end - start) / step)) }, (_, at) => start + at * step);
}

function py_next(values, otherwise) {
  const [first = otherwise] = list(values);
  if (first === undefined) throw new Error("nothing comes next");
  return first;
}

function py_round(value, decimals = 0) {
  if (!Number.isFinite(value)) return value;
  return decimals < 0 ? Math.round(value / 10 ** -decimals) * 10 ** -decimals : Number(fixed(value, decimals)) + 0;
}

const math = {
  ...{ isnan: Number.isNaN, isfinite: Number.isFinite, floor: Math.floor, ceil: Math.ceil, sqrt: Math.sqrt },
  ...{ log10: Math.log10, inf: Infinity, nan: NaN, pi: Math.PI },
  dist: (a, b) => Math.hypot(...a.map((value, at) => value - b[at])),
};

const html = {
  escape(value, { quote = true } = {}) {
    const safe = value.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
    return quote ? safe.replaceAll('"', "&quot;").replaceAll("'", "&#x27;") : safe;
  },
};

const stripped = (value, signs, left, right) => {
  let [from, to] = [0, value.length];
  const strips = (sign) => (signs === undefined ? sign.trim() === "" : signs.includes(sign));
  while (left && from < to && strips(value[from])) from += 1;
  while (right && to > from && strips(value[to - 1])) to -= 1;
  return value.slice(from, to);
};

const OF_TEXT = {
  capitalize: (value) => value.slice(0, 1).toUpperCase() + value.slice(1).toLowerCase(),
  lower: (value) => value.toLowerCase(),
  upper: (value) => value.toUpperCase(),
  strip: (value, signs) => stripped(value, signs, true, true),
  lstrip: (value, signs) => stripped(value, signs, true, false),
  rstrip: (value, signs) => stripped(value, signs, false, true),
  replace: (value, old, other) => value.replaceAll(old, other),
  join: (value, parts) => list(parts).join(value),
  split: (value, at) => (at === undefined ? value.trim().split(/\s+/) : value.split(at)),
  rsplit: (value, at, most) => {
    const parts = value.split(at);
    return parts.length <= most ? parts : [parts.slice(0, -most).join(at), ...parts.slice(-most)];
  },
  startswith: (value, start) => value.startsWith(start),
  endswith: (value, end) => value.endsWith(end),
  removesuffix: (value, end) => (end && value.endsWith(end) ? value.slice(0, -end.length) : value),
  translate: (value, table) => [...value].map((sign) => table.get(sign.codePointAt(0)) ?? sign).join(""),
};

const OF_DICT = {
  items: (value) => [...value],
  keys: (value) => [...value.keys()],
  values: (value) => [...value.values()],
  setdefault: (value, key, otherwise = null) => value.has(key) ? value.get(key) : value.set(key, otherwise).get(key),
  get: (value, key, otherwise = null) => (value.has(key) ? value.get(key) : otherwise),
};

const OF_LIST = {
  append: (value, added) => void value.push(added),
  extend: (value, added) => void value.push(...list(added)),
  index: (value, wanted) => value.findIndex((held) => equal(held, wanted)),
  count: (value, wanted) => value.filter((held) => equal(held, wanted)).length,
};

function method(value, name, ...given) {
  const of = typeof value === "string" ? OF_TEXT : value instanceof Map ? OF_DICT : OF_LIST;
  if (!of[name]) throw new Error(`no ${name}`);
  return of[name](value, ...given);
}

/** What a translated function returned, as the rest of a page takes it: a dict as an object. */
function plain(value) {
  if (value instanceof Map) return Object.fromEntries([...value].map(([key, held]) => [key, plain(held)]));
  return Array.isArray(value) ? value.map(plain) : value;
}
