/** Whether each main passes twice on a half of the rim, and each cross once. */

import { halvesOf, numberOfString, tally, walkOf } from "./draft_tally.js";
import { onWalk } from "./draft_where.js";
import { counted, listed } from "./draft_words.js";

/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_settle.js").Hole} Hole */
/** @typedef {import("./draft_tally.js").Tally} Tally */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {ReturnType<Rule>[number]} Told */

/** How often there are too few, and the usual too many. */
const TIMES = ["nowhere", "only once", "twice"];

/** @type {Rule} */
export function stringsOnEachHalf({ frame }, { limits }) {
  if (frame.mains % 2) return [];
  const most = limits.most_told["strings-on-each-half"];
  return halvesOf(frame).flatMap((side) => {
    const tallies = tally(frame, side);
    const wrong = [...tallies.values()].filter(({ seen, wanted }) => seen.length !== wanted);
    const told = wrong.slice(0, most).map((line) => finding(frame, line, tallies));
    if (wrong.length <= most) return told;
    const rest = wrong.slice(most).map(({ string }) => string);
    const message = `On ${half(frame, side)} the same goes for ${listed(rest, 12)}.`;
    return [...told, { path: walkPath(frame, side), message }];
  });
}

/**
 * @param {DraftFrame} frame
 * @param {Tally} line
 * @param {Map<string, Tally>} tallies
 * @returns {Told}
 */
function finding(frame, line, tallies) {
  if (!line.wanted) return beyond(frame, line);
  return line.seen.length < line.wanted ? missing(frame, line, tallies) : tooOften(frame, line, tallies);
}

/**
 * @param {DraftFrame} frame
 * @param {Tally} line
 * @param {Map<string, Tally>} tallies
 * @returns {Told}
 */
function missing(frame, line, tallies) {
  const { string, seen, side } = line;
  const at = seen.length ? `, at ${seen[0].address}` : "";
  const message = `${string} passes ${TIMES[seen.length]} on ${half(frame, side)}${at}; ${needs(line)}.`;
  const gap = gapOf(frame, line, tallies);
  if (!gap.length) return { path: walkPath(frame, side), message };
  const free = freeHole(frame, gap);
  const hole = free ?? gap[0].hole.address;
  const between = listed(gap.map((each) => `${each.hole.address} (${each.string})`));
  const beside = `${gap.length > 1 ? "between" : "beside"} ${between}`;
  return { path: onWalk(frame, hole), message, hole, nearest: free ? `${free}, which has no string` : beside };
}

/**
 * The only hole without a string between two neighbours, if there is one.
 * @param {DraftFrame} frame
 * @param {{hole: Hole}[]} gap
 * @returns {string | null}
 */
function freeHole(frame, gap) {
  const [start, end] = [gap[0].hole, gap[gap.length - 1].hole];
  const free = frame.holes.filter(
    ({ side, number, drilled, passes }) =>
      drilled && !passes.length && side === start.side && start.number < number && number < end.number,
  );
  return free.length === 1 ? free[0].address : null;
}

/**
 * @param {DraftFrame} frame
 * @param {Tally} line
 * @param {Map<string, Tally>} tallies
 * @returns {Told}
 */
function tooOften(frame, line, tallies) {
  const { string, seen, side } = line;
  const near = [...tallies.values()].find(
    (other) =>
      other.seen.length < other.wanted &&
      other.string[0] === string[0] &&
      Math.abs(numberOfString(other.string) - numberOfString(string)) === 1,
  );
  const times = TIMES[seen.length] ?? `${seen.length} times`;
  const hole = seen[seen.length - 1].address;
  const at = listed(seen.map((each) => each.address));
  return {
    path: onWalk(frame, hole),
    message: `${string} passes ${times} on ${half(frame, side)}, at ${at}; ${needs(line)}.`,
    hole,
    nearest: near ? `${near.string}, which is missing` : null,
  };
}

/**
 * @param {DraftFrame} frame
 * @param {Tally} line
 * @returns {Told}
 */
function beyond(frame, { string, seen, side }) {
  const [kind] = string;
  const isMain = kind === "m";
  const last = isMain ? Math.floor(frame.mains / 2) : frame.crosses;
  const name = isMain ? counted(frame.mains, "main") : counted(frame.crosses, "cross");
  const hole = seen[0].address;
  return {
    path: onWalk(frame, hole),
    message: `${string} passes on ${half(frame, side)}, but ${name} are ${kind}1 to ${kind}${last} on a half.`,
    hole,
    tip: `If the walk is right, ${isMain ? "mains" : "crosses"} is too small.`,
  };
}

/**
 * The holes of the neighbouring strings between which a missing pass belongs.
 * @param {DraftFrame} frame
 * @param {Tally} line
 * @param {Map<string, Tally>} tallies
 * @returns {{hole: Hole, string: string}[]}
 */
function gapOf(frame, { string, seen, side }, tallies) {
  const [kind] = string;
  const middle = walkOf(frame, side).length / 2;
  const isAtThroat = kind === "m" && seen.length > 0 && seen[0].number <= middle;
  const neighbours = [-1, 1].flatMap((step) => {
    const other = `${kind}${numberOfString(string) + step}`;
    const holes = tallies.get(other)?.seen ?? [];
    const here = kind === "m" ? holes.filter(({ number }) => number > middle === isAtThroat) : holes;
    return here.slice(0, 1).map((hole) => ({ hole, string: other }));
  });
  return neighbours.sort((one, other) => one.hole.number - other.hole.number);
}

/** @param {Tally} line */
function needs({ wanted }) {
  return wanted === 2 ? "a main passes twice" : "a cross passes once";
}

/**
 * @param {DraftFrame} frame
 * @param {Side} side
 */
function half({ mirrored }, side) {
  if (mirrored) return "each half";
  return side === "R" ? "the right half" : "the left half";
}

/**
 * @param {DraftFrame} frame
 * @param {Side} side
 */
function walkPath({ mirrored }, side) {
  return side === "L" && !mirrored ? ["left", "walk"] : ["walk"];
}
