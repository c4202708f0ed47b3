/** Where in a draft a hole, a strip or a fitted part was written. */

import { address, placeOf, selector, sideOf, span } from "./draft_address.js";
import { readNumber } from "./draft_number.js";

/** @typedef {import("./draft_problem.js").Finding} Finding */
/** @typedef {import("./draft_problem.js").Given} Given */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_settle.js").Hole} Hole */
/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {import("./draft_written.js").Path} Path */

/**
 * A draft and the frame that it means: what a rule looks at.
 * @typedef {object} Settled
 * @property {Draft} draft
 * @property {DraftFrame} frame
 */

/** @typedef {(settled: Settled, given: Given) => Omit<Finding, "rule">[]} Rule */

/**
 * @param {DraftFrame} frame
 * @param {string} hole
 * @returns {Path} the word of the walk that stands for it
 */
export function onWalk(frame, hole) {
  return [...sidePath(frame, hole), "walk", placeOf(hole) - 1];
}

/**
 * @param {DraftFrame} frame
 * @param {string} hole
 * @returns {Path} its measured place
 */
export function ofPlace(frame, hole) {
  return [...sidePath(frame, hole), "places_mm", placeOf(hole) - 1];
}

/**
 * @param {DraftFrame} frame
 * @param {string} hole
 * @returns {Path}
 */
function sidePath({ mirrored }, hole) {
  return sideOf(hole) === "L" && !mirrored ? ["left"] : [];
}

/**
 * A line under `fitted`: the drilled holes it names, and those that no later line and no strip takes from it.
 * @typedef {object} Line
 * @property {string} key
 * @property {string | null} part
 * @property {string[]} named
 * @property {string[]} kept
 * @property {Path} path
 */

/**
 * The lines under `fitted` in the order in which they rule: default, bores, holes.
 * @param {Settled} settled
 * @returns {Line[]}
 */
export function fittedLines({ draft, frame }) {
  const rank = (/** @type {string} */ key) => (key === "default" ? 0 : key.startsWith("bore ") ? 1 : 2);
  /** @type {[string, string][]} */
  const ranked = [...(draft.fitted ?? [])].sort(([one], [other]) => rank(one) - rank(other));
  const lines = ranked.map(([key, part]) => ({
    key,
    part: part === "unknown" ? null : part,
    holes: named(frame, key).filter(({ drilled }) => drilled),
  }));
  const last = new Map(lines.flatMap(({ key, holes }) => holes.map((hole) => [hole.address, key])));
  return lines.map(({ key, part, holes }) => ({
    key,
    part,
    named: holes.map((hole) => hole.address),
    kept: holes.filter((hole) => last.get(hole.address) === key && hole.strip === null).map((hole) => hole.address),
    path: ["fitted", key],
  }));
}

/**
 * @param {DraftFrame} frame
 * @param {string} key of `fitted`
 * @returns {Hole[]} clockwise
 */
function named({ holes }, key) {
  if (key === "default") return holes;
  if (key.startsWith("bore ")) {
    const bore = readNumber(key.slice("bore ".length));
    return holes.filter((hole) => hole.bore === bore);
  }
  const found = selector(key);
  if (found) {
    const { sides, first, last } = found;
    return holes.filter(({ side, number }) => sides.includes(side) && first <= number && number <= last);
  }
  const [start, end] = key.split("-").map((word) => holes.findIndex((hole) => hole.address === address(word)));
  return span(holes, start, end);
}

/**
 * @param {DraftFrame} frame
 * @returns {Map<string, Hole>} by address
 */
export function byAddress({ holes }) {
  return new Map(holes.map((hole) => [hole.address, hole]));
}
