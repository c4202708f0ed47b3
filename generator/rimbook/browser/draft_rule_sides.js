/** Whether bores, rim depths and parts are the same on both sides, where the left side mirrors the right. */

import { mm } from "./draft_number.js";
import { byAddress, fittedLines } from "./draft_where.js";

/** @typedef {import("./draft_settle.js").Hole} Hole */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {import("./draft_where.js").Settled} Settled */
/** @typedef {import("./draft_written.js").Path} Path */

/** @type {Rule} */
export function sidesAgree(settled) {
  const { frame } = settled;
  if (!frame.mirrored) return [];
  const holes = byAddress(frame);
  const pairs = frame.holes
    .filter(({ side }) => side === "R")
    .map((right) => ({ right, left: holes.get(`L${right.number}`) ?? right }));
  return kinds(settled).flatMap(({ path, what, value }) => {
    const wrong = pairs.filter(
      // Where the bores differ already, the parts may follow them.
      ({ right, left }) => value(right) !== value(left) && (what !== "part" || right.bore === left.bore),
    );
    if (!wrong.length) return [];
    const { right, left } = wrong[0];
    const [one, other] = [right.address, left.address];
    const more = wrong.length > 1 ? `, and so do ${wrong.length - 1} more` : "";
    return {
      path,
      message: `The left side mirrors the right, but ${one} and ${other} differ in ${what}${more}.`,
      hole: one,
      found: `${one} ${value(right)}, ${other} ${value(left)}`,
      tip: `Write ${right.number} for both sides. If they do differ, say so with a walk under left.`,
    };
  });
}

/**
 * What is compared, and where it is written.
 * @param {Settled} settled
 * @returns {{path: Path, what: string, value: (hole: Hole) => string}[]}
 */
function kinds(settled) {
  const length = (/** @type {number | null} */ value) => (value === null ? "unknown" : mm(value));
  return [
    { path: ["bore_mm"], what: "bore", value: ({ bore }) => length(bore) },
    { path: ["rim_depth_mm"], what: "rim depth", value: ({ depth }) => length(depth) },
    {
      path: partPath(settled),
      what: "part",
      value: ({ part, strip }) => `${part ?? "unknown"}${strip === null ? "" : " as a strip"}`,
    },
  ];
}

/**
 * @param {Settled} settled
 * @returns {Path}
 */
function partPath(settled) {
  const sided = fittedLines(settled).find(({ key }) => /^[RL]/.test(key));
  return sided?.path ?? (settled.frame.strips.length ? ["strips"] : ["fitted"]);
}
