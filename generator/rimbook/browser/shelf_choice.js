/**
 * Places that the same things serve, so that they come out of one drawer. What may be kept for a place the
 * build has worked out (`bench/shelf_choice.py`); here alike places are put together.
 */

import { exactSum } from "./shelf_sum.js";

/** @typedef {import("./shelf_demand.js").Asked} Asked */
/** @typedef {import("./shelf_demand.js").Item} Item */
/** @typedef {Readonly<Record<string, Item>>} Items what there is to know of parts, by id */

/**
 * Places with the same items. `part` is named where one of these is a set: it is what the set is opened for.
 * @typedef {object} Choice
 * @property {readonly string[]} items ids of things that are sold, the best first
 * @property {string | null} part
 * @property {Asked[]} asked
 */

/**
 * The choices of all places.
 * @param {readonly Asked[]} asked
 * @param {Items} items
 * @returns {Choice[]}
 */
export function choicesOf(asked, items) {
  /** @type {Map<string, Choice>} */
  const found = new Map();
  for (const each of asked) {
    const part = each.items.some((item) => isSet(item, items)) ? each.part : null;
    const key = `${[...each.items].sort().join(" ")}|${part ?? ""}`;
    const own = found.get(key);
    if (own) own.asked.push(each);
    else found.set(key, { items: each.items, part, asked: [each] });
  }
  return [...found.values()];
}

/**
 * Pieces a year.
 * @param {Choice} choice
 */
export function yearlyOf({ asked }) {
  return exactSum(asked.map(({ aYear }) => aYear));
}

/**
 * @param {string} item
 * @param {Items} items
 */
export function isSet(item, items) {
  return items[item]?.kind === "set";
}
