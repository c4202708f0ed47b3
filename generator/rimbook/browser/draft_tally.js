/** The passes of each string on each half of a walk, counted. */

import { SIDES } from "./draft_address.js";

/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_settle.js").Hole} Hole */

/**
 * The holes in which one string passes on one half, in order of the walk, and how many it needs.
 * @typedef {object} Tally
 * @property {Side} side
 * @property {string} string such as `m3`
 * @property {Hole[]} seen
 * @property {number} wanted
 */

/**
 * @param {DraftFrame} frame
 * @returns {readonly Side[]} the sides worth looking at: one where the left is only the mirror image
 */
export function halvesOf({ mirrored }) {
  return mirrored ? ["R"] : SIDES;
}

/**
 * @param {DraftFrame} frame
 * @param {Side} side
 * @returns {Hole[]} of one half, from the middle of the head to the middle of the throat
 */
export function walkOf({ holes }, side) {
  return holes.filter((hole) => hole.side === side).sort((one, other) => one.number - other.number);
}

/**
 * Every string that is wanted or seen on a half: mains first, by number.
 * @param {DraftFrame} frame
 * @param {Side} side
 * @returns {Map<string, Tally>}
 */
export function tally(frame, side) {
  /** @type {Map<string, Tally>} */
  const found = new Map();
  const add = (/** @type {string} */ string, /** @type {number} */ wanted) => {
    const line = { side, string, seen: [], wanted };
    found.set(string, line);
    return line;
  };
  for (let number = 1; number <= Math.floor(frame.mains / 2); number++) add(`m${number}`, 2);
  for (let number = 1; number <= frame.crosses; number++) add(`c${number}`, 1);
  for (const hole of walkOf(frame, side)) {
    for (const string of hole.passes) (found.get(string) ?? add(string, 0)).seen.push(hole);
  }
  const order = (/** @type {string} */ string) => Number(string.startsWith("c")) * 1000 + numberOfString(string);
  return new Map([...found].sort(([one], [other]) => order(one) - order(other)));
}

/** @param {string} string such as `m3` */
export function numberOfString(string) {
  return Number(string.slice(1));
}
