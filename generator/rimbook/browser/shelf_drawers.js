/** From choices to drawers: each with what it serves, and what is asked of it, as in `bench/shelf_drawers.py`. */

import { isSet } from "./shelf_choice.js";
import { leastUnits } from "./shelf_levels.js";
import { pool } from "./shelf_pool.js";
import { exactSum } from "./shelf_sum.js";
import { coverYears } from "./shelf_terms.js";

/** @typedef {import("./shelf_choice.js").Choice} Choice */
/** @typedef {import("./shelf_choice.js").Items} Items */
/** @typedef {import("./shelf_demand.js").Asked} Asked */
/** @typedef {import("./shelf_levels.js").Load} Load */
/** @typedef {import("./shelf_terms.js").Terms} Terms */

/**
 * One drawer: the id of what is bought for it, the choices it serves, and what they ask of it; `asked` are all
 * its places.
 * @typedef {{item: string, choices: Choice[], load: Load, asked: Asked[]}} Filled
 */

/**
 * @param {string} item
 * @param {Choice[]} choices
 * @param {Items} items
 * @returns {Filled}
 */
export function filledWith(item, choices, items) {
  const asked = choices.flatMap((choice) => choice.asked);
  return { item, choices, load: loadOf(item, asked, items), asked };
}

/**
 * What some places ask of a drawer: of a set, each part that it is opened for by itself.
 * @param {string} item
 * @param {readonly Asked[]} asked
 * @param {Items} items
 * @returns {Load}
 */
export function loadOf(item, asked, items) {
  const beside = { loose: new Map(), spares: [] };
  if (!isSet(item, items)) {
    const yearly = exactSum(asked.map(({ aYear }) => aYear));
    return { aYear: new Map([[item, yearly]]), aUnit: new Map([[item, 1]]), ...beside };
  }
  /** @type {Map<string, number>} */
  const aYear = new Map();
  for (const each of asked) aYear.set(each.part, (aYear.get(each.part) ?? 0) + each.aYear);
  const contains = items[item].contains ?? {};
  return { aYear, aUnit: new Map([...aYear.keys()].map((part) => [part, contains[part] ?? 1])), ...beside };
}

/**
 * The fewest drawers, and of those the ones that hold least, in order of id; and whether that is proven.
 * @param {readonly Choice[]} choices
 * @param {Items} items
 * @param {Terms} terms
 * @returns {{filled: Filled[], fewest: boolean, least: boolean}}
 */
export function pooled(choices, items, terms) {
  const years = coverYears(terms);
  const form = (/** @type {string} */ item) => (isSet(item, items) ? item : null);
  const found = pool(
    choices.map((choice) => choice.items),
    (item, places) => {
      const asked = places.flatMap((place) => choices[place].asked);
      return leastUnits(loadOf(item, asked, items), years, terms.service);
    },
    form,
  );
  /** @type {Map<string, Choice[]>} */
  const dealt = new Map();
  choices.forEach((choice, at) => {
    const item = found.items[at];
    dealt.set(item, [...(dealt.get(item) ?? []), choice]);
  });
  const taken = new Set(dealt.keys());
  const filled = [...dealt].sort(byFirst).map(([item, own]) => {
    const best = bestOf(item, own, taken, form);
    taken.add(best);
    return filledWith(best, own, items);
  });
  return { filled: filled.sort((a, b) => (a.item < b.item ? -1 : 1)), fewest: found.fewest, least: found.least };
}

/**
 * A drawer for every part that the maps name, shared by the frames that take it.
 * @param {readonly Choice[]} choices
 * @param {Items} items
 */
export function byPart(choices, items) {
  return grouped(choices, items, () => "");
}

/**
 * A drawer for every part of every frame, shared by none.
 * @param {readonly Choice[]} choices
 * @param {Items} items
 */
export function byFrame(choices, items) {
  return grouped(choices, items, ({ frame }) => frame);
}

/**
 * @param {readonly Choice[]} choices
 * @param {Items} items
 * @param {(asked: Asked) => string} apart
 * @returns {Filled[]}
 */
function grouped(choices, items, apart) {
  /** @type {Map<string, {item: string, own: Choice[]}>} */
  const found = new Map();
  for (const choice of choices) {
    for (const each of choice.asked) {
      const item = ownItem(each, choice, items);
      const key = `${item} ${apart(each)}`; // a space stands before all that an id is made of
      const group = found.get(key) ?? { item, own: [] };
      group.own.push({ ...choice, asked: [each] });
      found.set(key, group);
    }
  }
  return [...found].sort(byFirst).map(([, { item, own }]) => filledWith(item, own, items));
}

/**
 * The part on the map, or the set it comes in, or where neither is sold, the best that serves.
 * @param {Asked} asked
 * @param {Choice} choice
 * @param {Items} items
 */
function ownItem(asked, choice, items) {
  if (choice.items.includes(asked.part)) return asked.part;
  return choice.items.find((item) => isSet(item, items)) ?? choice.items[0];
}

/**
 * Of all that serve every place of a drawer the one that most maps name, then the best in the ranking.
 * @param {string} item
 * @param {readonly Choice[]} own
 * @param {ReadonlySet<string>} taken
 * @param {(item: string) => string | null} form
 */
function bestOf(item, own, taken, form) {
  /** @type {Map<string, number>} */
  const named = new Map();
  for (const { part, aYear } of own.flatMap((choice) => choice.asked)) named.set(part, (named.get(part) ?? 0) + aYear);
  const able = own[0].items
    .filter((each) => own.every((choice) => choice.items.includes(each)))
    .filter((each) => form(each) === form(item) && (each === item || !taken.has(each)))
    .map((each) => ({
      each,
      named: named.get(each) ?? 0,
      rank: own.reduce((sum, choice) => sum + choice.items.indexOf(each), 0),
    }));
  able.sort((a, b) => b.named - a.named || a.rank - b.rank || (a.each < b.each ? -1 : 1));
  return able[0].each;
}

/**
 * @param {readonly [string, unknown]} one
 * @param {readonly [string, unknown]} other
 */
function byFirst([one], [other]) {
  return one < other ? -1 : 1;
}
