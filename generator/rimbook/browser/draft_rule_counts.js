/** Whether mains come in pairs, and passes less holes are the shared holes. */

import { halvesOf, tally } from "./draft_tally.js";
import { counted, listed } from "./draft_words.js";

/** @typedef {import("./draft_tally.js").Tally} Tally */
/** @typedef {import("./draft_where.js").Rule} Rule */

/** @type {Rule} */
export function evenMains({ frame: { mains } }) {
  if (mains % 2 === 0) return [];
  return [
    {
      path: ["mains"],
      message: `${mains} mains cannot be shared out over two equal halves.`,
      nearest: `${mains - 1} or ${mains + 1}`,
      tip: "Count the mains of the whole frame, left and right of the centre line.",
    },
  ];
}

/** @type {Rule} */
export function passesAddUp({ frame }) {
  const { mains, crosses, mirrored, holes } = frame;
  if (mains % 2) return [];
  const passes = holes.reduce((sum, hole) => sum + hole.passes.length, 0);
  const strung = holes.filter((hole) => hole.passes.length).length;
  const shared = holes.filter((hole) => hole.passes.length > 1).length;
  const wanted = 2 * mains + 2 * crosses;
  if (wanted - strung === shared) return [];
  const tallies = halvesOf(frame).flatMap((side) => [...tally(frame, side).values()]);
  return [
    {
      path: ["walk"],
      message:
        `${mains} mains and ${crosses} crosses pass ${wanted} times; in ${counted(strung, "hole")} with string ` +
        `${wanted - strung} would be shared, but the walk shares ${shared}.`,
      found: counted(passes, "pass"),
      expected: counted(wanted, "pass"),
      tip: which(tallies, mirrored),
    },
  ];
}

/**
 * @param {Tally[]} tallies
 * @param {boolean} mirrored
 */
function which(tallies, mirrored) {
  const names = (/** @type {Tally[]} */ found) =>
    listed(found.map(({ string, side }) => (mirrored ? string : `${string} (${side})`)));
  const short = tallies.filter(({ seen, wanted }) => seen.length < wanted);
  const extra = tallies.filter(({ seen, wanted }) => seen.length > wanted);
  const words = [
    ...(short.length ? [`missing: ${names(short)}`] : []),
    ...(extra.length ? [`too often: ${names(extra)}`] : []),
  ].join("; ");
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${mirrored ? " on each half" : ""}.`;
}
