/**
 * What of the stock counts for which drawer: every piece once, as in `bench/shelf_stock.py`. First come the
 * pieces of the part that is bought for a drawer, and of parts that serve all of its places. Of what is left,
 * a part that serves some of the places is used up there first. Where several do, that which serves fewer
 * places comes first at them.
 */

import { isSet, yearlyOf } from "./shelf_choice.js";
import { lasts, leastUnits } from "./shelf_levels.js";
import { exactSum } from "./shelf_sum.js";
import { coverYears, rules } from "./shelf_terms.js";

/** @typedef {import("./shelf_choice.js").Choice} Choice */
/** @typedef {import("./shelf_choice.js").Items} Items */
/** @typedef {import("./shelf_drawers.js").Filled} Filled */
/** @typedef {import("./shelf_levels.js").Load} Load */
/** @typedef {import("./shelf_terms.js").Terms} Terms */

/**
 * What lies in a drawer. `units`: whole units, of these `others` under the id of other parts that serve all its
 * places. `loose`: pieces out of opened sets. `spares`: pieces of parts that serve some of its places and are
 * used up there first. `load`: what is asked of the drawer until they are used up.
 * @typedef {object} Stock
 * @property {number} units
 * @property {Load} load
 * @property {ReadonlyMap<string, number>} others by id, as the next two
 * @property {ReadonlyMap<string, number>} loose
 * @property {ReadonlyMap<string, number>} spares
 */

/**
 * The stock of each drawer, and what no drawer counts.
 * @param {readonly Filled[]} filled
 * @param {ReadonlyMap<string, number>} stock
 * @param {Items} items
 * @param {Terms} terms
 * @returns {{held: Stock[], idle: Map<string, number>}}
 */
export function sharedOut(filled, stock, items, terms) {
  const left = new Map([...stock].filter(([, count]) => count));
  const bought = new Set(filled.map(({ item }) => item));
  const whole = filled.map((each) => wholeUnits(each, left, bought, items));
  const spare = new Map(left);
  filled.forEach((each, at) => {
    const surplus = whole[at].units - leastUnits(each.load, coverYears(terms), terms.service);
    if (surplus > 0 && !isSet(each.item, items) && !whole[at].others.size) spare.set(each.item, surplus);
  });
  const held = filled.map((each, at) => withSpares(each, whole[at], spare, items, terms));
  for (const own of held) {
    for (const part of own.spares.keys()) left.delete(part);
  }
  return { held, idle: left };
}

/**
 * @param {Filled} filled
 * @param {Map<string, number>} left what this drawer counts is taken out
 * @param {ReadonlySet<string>} bought
 * @param {Items} items
 * @returns {Stock}
 */
function wholeUnits({ item, choices, load }, left, bought, items) {
  const take = (/** @type {string} */ part) => {
    const count = left.get(part) ?? 0;
    left.delete(part);
    return count;
  };
  const takeAll = (/** @type {string[]} */ parts) =>
    new Map(parts.filter((part) => left.has(part)).map((part) => [part, take(part)]));
  const own = take(item);
  /** @type {Map<string, number>} */
  const none = new Map();
  if (isSet(item, items)) {
    const loose = takeAll([...load.aYear.keys()]);
    return { units: own, load: { ...load, loose }, others: none, loose, spares: none };
  }
  const able = choices[0].items.filter((each) => choices.every((choice) => choice.items.includes(each)));
  const others = takeAll(able.filter((each) => !bought.has(each)).sort());
  const units = [...others.values()].reduce((sum, count) => sum + count, own);
  return { units, load, others, loose: none, spares: none };
}

/**
 * Spares by part, and places where they are used up first.
 * @typedef {{counts: ReadonlyMap<string, number>, places: readonly Choice[]}} Aside
 */

/**
 * Spares of which each also serves the places of those before it: what these lack comes out of it.
 * @typedef {readonly Aside[]} Row
 */

/**
 * What is used up where, and the places that are left to the drawer.
 * @typedef {{rows: readonly Row[], rest: readonly Choice[]}} Way
 */

/**
 * The same with parts that are used up first at some of the places.
 * @param {Filled} filled
 * @param {Stock} own
 * @param {Map<string, number>} spare what is used up here is taken out
 * @param {Items} items
 * @param {Terms} terms
 * @returns {Stock}
 */
function withSpares(filled, own, spare, items, terms) {
  if (isSet(filled.item, items)) return own;
  const years = coverYears(terms);
  const chance = (/** @type {Way} */ way) => lasts(own.units, loadOf(filled, way), years);
  /** @type {Way} */
  let now = { rows: [], rest: filled.choices };
  let used = 0;
  const ordered = [...spare].sort(([a, has], [b, its]) => its - has || (a < b ? -1 : 1));
  for (const [part, count] of ordered) {
    if (part === filled.item || used >= rules().spares.most) continue;
    const ways = waysOf(now, part, count, years);
    if (!ways.length) continue;
    now = likeliest(ways, chance);
    used++;
    spare.delete(part);
  }
  if (!now.rows.length) return own;
  const spares = new Map(now.rows.flat().flatMap(({ counts }) => [...counts]));
  return { ...own, load: loadOf(filled, now), spares };
}

/**
 * Where a further part may be used up: at places that are left, or together with others.
 * @param {Way} now
 * @param {string} part
 * @param {number} count
 * @param {number} years
 * @returns {Way[]}
 */
function waysOf({ rows, rest }, part, count, years) {
  let served = servedBy(part, rest);
  const mean = askedAYear(served) * years;
  if (mean <= 0 || mean > rules().spares.largestMean) served = [];
  const own = { counts: new Map([[part, count]]), places: served };
  const ways = served.length ? [{ rows: [...rows, [own]], rest: without(rest, served) }] : [];
  rows.forEach((row, at) => {
    if (row.every(({ places }) => servedBy(part, places).length === places.length)) {
      const longer = served.length ? [...row, own] : withMore(row, row.length - 1, own);
      ways.push({ rows: rows.with(at, longer), rest: without(rest, served) });
    } else {
      const inside = within(row, part, count);
      if (inside) ways.push({ rows: rows.with(at, inside), rest: [...rest] });
    }
  });
  return ways;
}

/**
 * A row with a further part that does not serve all of it: before those that serve more.
 * @param {Row} row
 * @param {string} part
 * @param {number} count
 * @returns {Row | null} null where it does not serve the first places
 */
function within(row, part, count) {
  const at = row.findIndex(({ places }) => servedBy(part, places).length < places.length);
  const { counts, places } = row[at];
  const served = servedBy(part, places);
  const own = { counts: new Map([[part, count]]), places: served };
  if (served.length) return [...row.slice(0, at), own, { counts, places: without(places, served) }, ...row.slice(at + 1)];
  return at ? withMore(row, at - 1, own) : null;
}

/**
 * A row in which one place has further spares.
 * @param {Row} row
 * @param {number} at
 * @param {Aside} more
 * @returns {Row}
 */
function withMore(row, at, more) {
  const { counts, places } = row[at];
  return row.with(at, { counts: new Map([...counts, ...more.counts]), places });
}

/**
 * The way with the best chance; of equal ones the first.
 * @param {readonly Way[]} ways
 * @param {(way: Way) => number} chance
 */
function likeliest(ways, chance) {
  if (ways.length === 1) return ways[0];
  const chances = ways.map(chance);
  return ways[chances.indexOf(Math.max(...chances))];
}

/**
 * @param {Filled} filled
 * @param {Way} way
 * @returns {Load}
 */
function loadOf({ item, load }, { rows, rest }) {
  const spares = rows.map((row) =>
    row.map(({ counts, places }) => ({
      count: [...counts.values()].reduce((sum, count) => sum + count, 0),
      aYear: askedAYear(places),
    })),
  );
  return { ...load, aYear: new Map([[item, askedAYear(rest)]]), spares };
}

/**
 * @param {string} part
 * @param {readonly Choice[]} places
 */
function servedBy(part, places) {
  return places.filter(({ items, asked }) => items.includes(part) || asked.every((each) => each.part === part));
}

/**
 * @param {readonly Choice[]} places
 * @param {readonly Choice[]} others
 */
function without(places, others) {
  return places.filter((choice) => !others.includes(choice));
}

/** @param {readonly Choice[]} places */
function askedAYear(places) {
  return exactSum(places.map(yearlyOf));
}
