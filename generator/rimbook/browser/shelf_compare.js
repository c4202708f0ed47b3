/** What pooling saves, and what each further per cent of service costs, as in `bench/shelf_compare.py`. */

import { byFrame, byPart } from "./shelf_drawers.js";
import { levels } from "./shelf_levels.js";
import { exactSum } from "./shelf_sum.js";

/** @typedef {import("./shelf_drawers.js").Filled} Filled */
/** @typedef {import("./shelf_plan.js").ShelfPlan} ShelfPlan */
/** @typedef {import("./shelf_terms.js").Terms} Terms */

/** What one unit of an item costs in the currency's smallest unit, or null where no price is known.
 * @typedef {(item: string) => number | null} Worth
 */

/**
 * How large a shelf is: drawers, those of which something is kept, units in all when it is full. `shortAYear`
 * are pieces asked for and not there. `worth` is what the units cost, of `unpriced` drawers without.
 * @typedef {object} Size
 * @property {number} drawers
 * @property {number} kept
 * @property {number} units
 * @property {number} shortAYear
 * @property {number} worth
 * @property {number} unpriced
 */

/**
 * @param {readonly Filled[]} filled
 * @param {Terms} terms
 * @param {Worth} worth
 * @returns {Size}
 */
function sizeOf(filled, terms, worth) {
  const found = filled.map(({ item, load }) => ({ price: worth(item), ...levels(load, terms) }));
  return {
    drawers: found.length,
    kept: found.filter(({ upTo }) => upTo > 0).length,
    units: found.reduce((sum, { upTo }) => sum + upTo, 0),
    shortAYear: exactSum(found.map(({ shortAYear }) => shortAYear)),
    worth: exactSum(found.map(({ price, upTo }) => (price ?? 0) * upTo)),
    unpriced: found.filter(({ price, upTo }) => price === null && upTo > 0).length,
  };
}

/**
 * The same demand in three shelves: each frame its own parts, each part one drawer, fewest drawers.
 * @param {ShelfPlan} plan
 * @param {Worth} [worth]
 * @returns {{byFrame: Size, byPart: Size, pooled: Size}}
 */
export function compared({ choices, drawers, items, terms }, worth = () => null) {
  return {
    byFrame: sizeOf(byFrame(choices, items), terms, worth),
    byPart: sizeOf(byPart(choices, items), terms, worth),
    pooled: sizeOf(drawers.map(({ filled }) => filled), terms, worth),
  };
}

/**
 * How the shelf grows with the service level, its drawers as they are.
 * @param {ShelfPlan} plan
 * @param {Worth} worth
 * @param {readonly number[]} services
 * @returns {{service: number, byPart: Size, pooled: Size}[]}
 */
export function curve({ choices, drawers, items, terms }, worth, services) {
  const apart = byPart(choices, items);
  const own = drawers.map(({ filled }) => filled);
  return services.map((service) => ({
    service,
    byPart: sizeOf(apart, { ...terms, service }, worth),
    pooled: sizeOf(own, { ...terms, service }, worth),
  }));
}
