/** Many holes in few words. */

import { listed } from "./words.js";

/** A row as short as this is told hole by hole. */
const SHORT = 2;

/**
 * Things that are alike, in the order in which the first of each kind came.
 * @template Of
 * @param {readonly Of[]} all
 * @param {(one: Of) => string} key
 * @returns {[string, Of[]][]}
 */
export function grouped(all, key) {
  /** @type {Map<string, Of[]>} */
  const groups = new Map();
  for (const one of all) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return [...groups];
}

/**
 * Holes in the order of the rim; neighbours on one side as `R3 to R9`.
 * @param {readonly string[]} order all holes clockwise
 * @param {readonly string[]} addresses
 */
export function rowsOf(order, addresses) {
  const wanted = new Set(addresses);
  /** @type {string[][]} */
  const rows = [];
  order.forEach((address, at) => {
    if (!wanted.has(address)) return;
    const before = order[at - 1];
    if (before && wanted.has(before) && before[0] === address[0]) rows[rows.length - 1].push(address);
    else rows.push([address]);
  });
  return listed(rows.flatMap((row) => (row.length > SHORT ? [`${row[0]} to ${row[row.length - 1]}`] : row)));
}
