/**
 * What of the stock counts for which drawer: every piece once, as in `bench/shelf_stock.py`. First come the
 * pieces of the part that is bought for a drawer, and of parts that serve all of its places. Of what is left,
 * a part that serves some of the places is used up there first.
 */

import { isSet, yearlyOf } from "./shelf_choice.js";
import { leastUnits } from "./shelf_levels.js";
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
 * The same with parts that are used up first at some of the places: each at all that it serves.
 * @param {Filled} filled
 * @param {Stock} own
 * @param {Map<string, number>} spare what is used up here is taken out
 * @param {Items} items
 * @param {Terms} terms
 * @returns {Stock}
 */
function withSpares({ item, choices }, own, spare, items, terms) {
  if (isSet(item, items)) return own;
  const { most, largestMean } = rules().spares;
  let rest = choices;
  /** @type {Map<string, import("./shelf_levels.js").Spare>} */
  const aside = new Map();
  const ordered = [...spare].sort(([a, has], [b, its]) => its - has || (a < b ? -1 : 1));
  for (const [part, count] of ordered) {
    const served = rest.filter((choice) => part !== item && isServed(choice, part));
    const aYear = exactSum(served.map(yearlyOf));
    if (!aYear || aside.size >= most || aYear * coverYears(terms) > largestMean) continue;
    spare.delete(part);
    aside.set(part, { count, aYear });
    rest = rest.filter((choice) => !served.includes(choice));
  }
  if (!aside.size) return own;
  const aYear = new Map([[item, exactSum(rest.map(yearlyOf))]]);
  const load = { ...own.load, aYear, spares: [...aside.values()] };
  return { ...own, load, spares: new Map([...aside].map(([part, { count }]) => [part, count])) };
}

/**
 * @param {Choice} choice
 * @param {string} part
 */
function isServed({ items, asked }, part) {
  return items.includes(part) || asked.every((each) => each.part === part);
}
