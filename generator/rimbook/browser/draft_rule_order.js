/** Whether strings and measured places follow one another along the walk. */

import { mm } from "./draft_number.js";
import { halvesOf, numberOfString, tally, walkOf } from "./draft_tally.js";
import { ofPlace, onWalk } from "./draft_where.js";

/** @typedef {import("./draft_settle.js").Hole} Hole */
/** @typedef {import("./draft_tally.js").Tally} Tally */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {{hole: Hole, string: string}} Passing */

/** @type {Rule} */
export function walkInOrder({ frame }, { limits }) {
  return halvesOf(frame).flatMap((side) => {
    const right = [...tally(frame, side).values()].filter(({ seen, wanted }) => seen.length === wanted);
    const wrong = sequences(right).flatMap(({ passes, end }) =>
      pairs(passes.sort(byHole))
        .filter(([before, after]) => !isInOrder(before, after, end))
        .map(([before, after]) => ({ before, after, end })),
    );
    return wrong.slice(0, limits.most_told["walk-in-order"]).map(({ before, after, end }) => ({
      path: onWalk(frame, after.hole.address),
      message:
        `${after.string} comes after ${before.string} ${end}: ${before.hole.address} has ${before.string} ` +
        `and ${after.hole.address} has ${after.string}.`,
      hole: after.hole.address,
      expected: `${after.string} before ${before.string}`,
    }));
  });
}

/** @type {Rule} */
export function placesIncrease({ frame }) {
  return halvesOf(frame).flatMap((side) =>
    pairs(walkOf(frame, side).filter(({ place }) => place !== null)).flatMap(([before, after]) => {
      const [low, high] = [before.place ?? 0, after.place ?? 0];
      if (low < high) return [];
      return {
        path: ofPlace(frame, after.address),
        message: `${after.address} is measured at ${mm(high)}, but ${before.address} before it at ${mm(low)}.`,
        hole: after.address,
        expected: `more than ${mm(low)}`,
        tip: "Places are measured along the rim from the middle of the head.",
      };
    }),
  );
}

/**
 * @param {Tally[]} lines
 * @returns {{passes: Passing[], end: string}[]}
 */
function sequences(lines) {
  const mains = lines.filter(({ string }) => string.startsWith("m"));
  const crosses = lines.filter(({ string }) => string.startsWith("c"));
  const at = (/** @type {Tally[]} */ strings, /** @type {number} */ index) =>
    strings.map(({ seen, string }) => ({ hole: seen[index], string }));
  return [
    { passes: at(mains, 0), end: "at the head" },
    { passes: at(mains, 1), end: "at the throat" },
    { passes: at(crosses, 0), end: "on the way down" },
  ];
}

/**
 * @param {Passing} one
 * @param {Passing} other
 */
function byHole(one, other) {
  return one.hole.number - other.hole.number || numberOfString(one.string) - numberOfString(other.string);
}

/**
 * @param {Passing} before
 * @param {Passing} after
 * @param {string} end
 */
function isInOrder(before, after, end) {
  if (before.hole === after.hole) return true;
  const rises = numberOfString(after.string) > numberOfString(before.string);
  return end === "at the throat" ? !rises : rises;
}

/**
 * @template T
 * @param {T[]} items
 * @returns {[T, T][]} neighbours
 */
export function pairs(items) {
  return items.slice(1).map((item, index) => [items[index], item]);
}
