/** Addresses of holes, such as `R9`, and the short forms in which a map names several at once. */

/** @typedef {"R" | "L"} Side */

/** @type {readonly Side[]} */
export const SIDES = ["R", "L"];

const SELECTOR = /^([RL]?)([1-9][0-9]{0,3})(?:-([RL]?)([1-9][0-9]{0,3}))?$/;

/**
 * `9` and `9-13` on both sides, `R9`, `R9-R13` on one.
 * @typedef {object} Selector
 * @property {readonly Side[]} sides
 * @property {number} first
 * @property {number} last
 */

/**
 * @param {unknown} word
 * @returns {Selector | null} null where it is none
 */
export function selector(word) {
  const match = typeof word === "boolean" ? null : SELECTOR.exec(String(word));
  if (!match) return null;
  const [, side, first, otherSide, last] = match;
  if (last !== undefined && otherSide !== side) return null;
  const sides = SIDES.filter((known) => !side || known === side);
  return { sides, first: Number(first), last: Number(last ?? first) };
}

/**
 * @param {unknown} word
 * @returns {string | null} the word, where it is one hole with its side
 */
export function address(word) {
  const found = selector(word);
  return found && found.sides.length === 1 && !String(word).includes("-") ? String(word) : null;
}

/**
 * @param {string} address
 * @returns {Side}
 */
export function sideOf(address) {
  return address[0] === "R" ? "R" : "L";
}

/** @param {string} address */
export function placeOf(address) {
  return Number(address.slice(1));
}

/**
 * All addresses of a frame with so many places a side: R1 … Rn, Lm … L1.
 * @param {Record<Side, number>} counts
 * @returns {string[]}
 */
export function clockwise({ R, L }) {
  const right = Array.from({ length: R }, (_, index) => `R${index + 1}`);
  const left = Array.from({ length: L }, (_, index) => `L${L - index}`);
  return [...right, ...left];
}

/**
 * The places from the first clockwise to the last, both counted.
 * @template T
 * @param {readonly T[]} ring
 * @param {number} start
 * @param {number} end
 * @returns {T[]}
 */
export function span(ring, start, end) {
  return start <= end ? ring.slice(start, end + 1) : [...ring.slice(start), ...ring.slice(0, end + 1)];
}
