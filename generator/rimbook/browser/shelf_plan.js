/**
 * The plan of a shelf: what to keep, what to order today and why, what cannot be planned. The same as
 * `bench/shelf_plan.py`, for frames that a reader picked. `takeRules()` of `shelf_terms.js` comes first.
 */

import { choicesOf } from "./shelf_choice.js";
import { demand } from "./shelf_demand.js";
import { pooled } from "./shelf_drawers.js";
import { lasts, leastUnits, levels } from "./shelf_levels.js";
import { sharedOut } from "./shelf_stock.js";
import { exactSum } from "./shelf_sum.js";
import { coverYears, leadYears } from "./shelf_terms.js";

/** @typedef {import("./shelf_choice.js").Choice} Choice */
/** @typedef {import("./shelf_demand.js").Item} Item */
/** @typedef {import("./shelf_demand.js").ShelfFrame} ShelfFrame */
/** @typedef {import("./shelf_demand.js").Unplanned} Unplanned */
/** @typedef {import("./shelf_drawers.js").Filled} Filled */
/** @typedef {import("./shelf_levels.js").Levels} Levels */
/** @typedef {import("./shelf_stock.js").Stock} Stock */
/** @typedef {import("./shelf_terms.js").Terms} Terms */

/**
 * What a drawer lacks, in units. `urgent`: it cannot wait for the next review. `before` and `after`: the chance
 * that it lasts until the next order arrives, without and with this one.
 * @typedef {{units: number, urgent: boolean, before: number, after: number}} Order
 */

/**
 * One drawer of the shelf; `aYear` in pieces. `order` is null where nothing is lacking.
 * @typedef {{item: string, aYear: number, filled: Filled, levels: Levels, stock: Stock, order: Order | null}} Drawer
 */

/**
 * `idle` is stock that no drawer counts, by part. `fewest` and `least`: whether it is proven that no fewer
 * drawers would do, and that as many hold no less.
 * @typedef {object} ShelfPlan
 * @property {Terms} terms
 * @property {Drawer[]} drawers in order of id
 * @property {Unplanned[]} unplanned
 * @property {Choice[]} choices
 * @property {Record<string, number>} idle
 * @property {Record<string, Item>} items by id
 * @property {ReadonlyMap<string, number>} stock all that lies on the shelf, by part
 * @property {boolean} fewest
 * @property {boolean} least
 */

/**
 * Plans a shelf. Throws RangeError for terms that no shelf can be planned by: ask `canBePlanned` first.
 * @param {readonly ShelfFrame[]} frames
 * @param {Terms} terms
 * @param {Readonly<Record<string, number>>} stock pieces by part
 * @returns {ShelfPlan}
 */
export function planShelf(frames, terms, stock) {
  const items = itemsOf(frames);
  const found = demand(frames, terms);
  const { filled, fewest, least } = pooled(choicesOf(found.asked, items), items, terms);
  const { unplanned } = found;
  const pieces = new Map(Object.entries(stock));
  return stocked({ terms, drawers: [], unplanned, choices: [], idle: {}, items, stock: pieces, fewest, least }, filled);
}

/**
 * The same shelf with these drawers.
 * @param {ShelfPlan} plan
 * @param {readonly Filled[]} filled
 * @returns {ShelfPlan}
 */
export function stocked(plan, filled) {
  const { terms } = plan;
  const { held, idle } = sharedOut(filled, plan.stock, plan.items, terms);
  const drawers = filled.map((each, at) => ({
    item: each.item,
    aYear: exactSum(each.load.aYear.values()),
    filled: each,
    levels: levels(each.load, terms),
    stock: held[at],
    order: orderOf(held[at], terms),
  }));
  return { ...plan, drawers, choices: filled.flatMap(({ choices }) => choices), idle: Object.fromEntries(idle) };
}

/**
 * What a drawer lacks today, or null.
 * @param {Stock} stock
 * @param {Terms} terms
 * @returns {Order | null}
 */
export function orderOf({ units, load }, terms) {
  const cover = coverYears(terms);
  const lacking = leastUnits(load, cover, terms.service) - units;
  if (lacking <= 0) return null;
  return {
    units: lacking,
    urgent: leastUnits(load, leadYears(terms), terms.service) > units,
    before: lasts(units, load, cover),
    after: lasts(units + lacking, load, cover),
  };
}

/**
 * All that the cards say of parts; a card that says no more than the name is no match for one that does.
 * @param {readonly ShelfFrame[]} frames
 * @returns {Record<string, Item>}
 */
function itemsOf(frames) {
  /** @type {Map<string, Item>} */
  const found = new Map();
  for (const { shelf } of frames) {
    for (const [id, item] of Object.entries(shelf.items)) {
      if (!found.get(id)?.kind) found.set(id, item);
    }
  }
  return Object.fromEntries(found);
}
