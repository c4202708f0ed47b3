/**
 * Which packs to order so that enough comes: the least left over, or the least to pay. The unbounded covering
 * knapsack, worked out piece by piece, as in `bench/shelf_packs.py`.
 */

import { decimals } from "./millimetres.js";
import { rules } from "./shelf_terms.js";

/** A way to bring so many pieces: to pay, brought, packs, the size of the last pack.
 * @typedef {[number, number, number, number]} Way
 */

/**
 * The packs, the largest first, each with its number, that bring at least so many pieces. With prices: of
 * those the cheapest, then the least left over; a size without a price is not bought. Without: the least left
 * over, then the fewest packs. Throws where nothing is sold.
 * @param {number} pieces
 * @param {readonly number[]} sizes
 * @param {Readonly<Record<number, number>> | null} [prices] by size
 * @returns {[number, number][]}
 */
export function packsFor(pieces, sizes, prices = null) {
  const cost = (/** @type {number} */ size) => (prices === null ? 0 : prices[size]);
  const sold = [...new Set(sizes)].filter((size) => size > 0 && cost(size) !== undefined).sort((a, b) => a - b);
  const largest = sold.at(-1);
  if (largest === undefined) throw new Error("There is no pack to order.");
  if (pieces <= 0) return [];
  const bulk = Math.floor(Math.max(0, pieces - rules().packs.mostPieces) / largest);
  let rest = pieces - bulk * largest;
  /** @type {Map<number, number>} */
  const found = new Map(bulk ? [[largest, bulk]] : []);
  /** @type {Way[]} */
  const best = [[0, 0, 0, 0]];
  for (let wanted = 1; wanted <= rest; wanted++) {
    /** @type {Way | null} */
    let least = null;
    for (const size of sold) {
      const [paid, brought, count] = best[Math.max(0, wanted - size)];
      /** @type {Way} */
      const way = [toMillionths(paid + cost(size)), brought + size, count + 1, size];
      if (least === null || isLess(way, least)) least = way;
    }
    if (least) best.push(least);
  }
  while (rest > 0) {
    const size = best[rest][3];
    found.set(size, (found.get(size) ?? 0) + 1);
    rest -= size;
  }
  return [...found].sort(([a], [b]) => b - a);
}

/** @param {number} paid without what fractions have lost on the way */
function toMillionths(paid) {
  return Number.isInteger(paid) ? paid : Number(decimals(paid, 6));
}

/**
 * @param {Way} one
 * @param {Way} other
 */
function isLess(one, other) {
  const at = one.findIndex((each, place) => each !== other[place]);
  return at >= 0 && one[at] < other[at];
}
