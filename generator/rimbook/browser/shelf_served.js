/** Which places of a group each item serves, as sets of bits; items that are never wanted are left out. */

import { addBit, sizeOf } from "./shelf_bits.js";

/**
 * Items with their places, those that serve most first.
 * @param {readonly number[]} places
 * @param {readonly (readonly string[])[]} options of all places
 * @param {(item: string) => string | null} form
 * @returns {[string, bigint][]}
 */
export function servedBy(places, options, form) {
  return withoutLesser(coversOf(places, options), form);
}

/**
 * The places that each item serves, in order of id.
 * @param {readonly number[]} places
 * @param {readonly (readonly string[])[]} options
 * @returns {[string, bigint][]}
 */
function coversOf(places, options) {
  /** @type {Map<string, bigint>} */
  const covers = new Map();
  places.forEach((place, bit) => {
    for (const item of options[place]) addBit(covers, item, bit);
  });
  return [...covers].sort(([a], [b]) => (a < b ? -1 : 1));
}

/**
 * Without items that serve no more than another of their form: in a least cover that one takes its place. Both
 * are never in it, since one of them could go.
 * @param {[string, bigint][]} covers in order of id
 * @param {(item: string) => string | null} form
 */
function withoutLesser(covers, form) {
  const ordered = covers.map(([name, covered]) => ({ name, covered, count: sizeOf(covered) }));
  ordered.sort((a, b) => b.count - a.count);
  /** @type {[string, bigint][]} */
  const kept = [];
  for (const { name, covered } of ordered) {
    const isLesser = kept.some(([other, its]) => (covered & ~its) === 0n && form(name) === form(other));
    if (!isLesser) kept.push([name, covered]);
  }
  return kept;
}
