/** Whether barrels and the bores they sit in are about as wide, and barrels reach through the rim. */

import { mm } from "./draft_number.js";
import { partOf } from "./draft_rule_parts.js";
import { byAddress, fittedLines } from "./draft_where.js";
import { runs } from "./draft_words.js";

/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_settle.js").Hole} Hole */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {import("./draft_written.js").Path} Path */

/** @type {Rule} */
export function barrelInBore(settled, { parts, limits }) {
  const { frame } = settled;
  /** @type {Map<string, Path>} */
  const paths = new Map(fittedLines(settled).flatMap(({ path, kept }) => kept.map((at) => [at, path])));
  for (const { holes, entry } of frame.strips) for (const at of holes) paths.set(at, ["strips", entry, "part"]);
  const { loose_mm: loose, tight_mm: tight } = limits;
  const wrong = frame.holes.flatMap(({ address, bore, part: id }) => {
    const barrel = partOf(parts, id)?.barrel ?? null;
    const path = paths.get(address);
    if (!path || barrel === null || bore === null) return [];
    return -tight <= bore - barrel && bore - barrel <= loose ? [] : [{ address, path, id, barrel, bore }];
  });
  return grouped(wrong, ({ path, id, barrel, bore }) => [path, id, barrel, bore]).map((group) => {
    const { path, id, barrel, bore } = group[0];
    const fault = bore > barrel ? "falls out of" : "cannot enter";
    return {
      path,
      message: `${id} has a barrel of ${mm(barrel)} and ${fault} a bore of ${mm(bore)}.`,
      hole: runs(group.map(({ address }) => address)),
      expected: `a barrel from ${mm(bore - loose)} to ${mm(bore + tight)}`,
    };
  });
}

/** @type {Rule} */
export function barrelThroughRim(settled, { parts, limits }) {
  const { frame } = settled;
  const holes = byAddress(frame);
  return fittedLines(settled).flatMap(({ path, part: id, kept }) => {
    const part = partOf(parts, id);
    const lengths = part?.length;
    if (!lengths?.length || ["strip", "set"].includes(part.kind)) return [];
    const wrong = kept.flatMap((address) => {
      const hole = holes.get(address);
      const depth = hole?.depth ?? null;
      if (!hole || depth === null) return [];
      const reach = reachOf(holes, frame, hole, lengths);
      return depth - limits.short_mm <= reach && reach <= depth + limits.proud_mm ? [] : [{ address, reach, depth }];
    });
    return grouped(wrong, ({ reach, depth }) => [reach, depth]).map((group) => {
      const { reach, depth } = group[0];
      return {
        path,
        message: `${id} reaches ${mm(reach)} under its flange; the rim is ${mm(depth)} deep.`,
        hole: runs(group.map(({ address }) => address)),
        tip:
          reach < depth
            ? "A barrel that is too short lets the string cut on the frame."
            : "Is this the length of a barrel, or of something else?",
      };
    });
  });
}

/**
 * The post that sits in a hole: the long one of an uneven twin in the deeper of its two holes.
 * @param {Map<string, Hole>} holes
 * @param {DraftFrame} frame
 * @param {Hole} hole
 * @param {number[]} lengths
 */
function reachOf(holes, { twins }, { twin, depth }, lengths) {
  if (twin === null) return lengths[0];
  const deepest = Math.max(...twins[twin].holes.map((at) => holes.get(at)?.depth ?? 0));
  return (depth ?? 0) >= deepest ? Math.max(...lengths) : Math.min(...lengths);
}

/**
 * Items with the same key together, in the order in which they first come.
 * @template T
 * @param {T[]} items
 * @param {(item: T) => unknown} key
 * @returns {T[][]}
 */
export function grouped(items, key) {
  /** @type {Map<string, T[]>} */
  const groups = new Map();
  for (const item of items) {
    const name = JSON.stringify(key(item));
    groups.set(name, [...(groups.get(name) ?? []), item]);
  }
  return [...groups.values()];
}
