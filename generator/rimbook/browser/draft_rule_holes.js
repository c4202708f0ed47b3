/** Whether two-post parts fill two holes, and strips cover holes of their own, one barrel each. */

import { partOf } from "./draft_rule_parts.js";
import { shown } from "./draft_text.js";
import { byAddress, fittedLines } from "./draft_where.js";
import { counted, runs } from "./draft_words.js";

/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {ReturnType<Rule>[number]} Told */

const SWAPPED = "A strip is read clockwise from the first hole to the last; are the two swapped?";

/** @type {Rule} */
export function twinHoles(settled, { parts, limits }) {
  const holes = byAddress(settled.frame);
  return fittedLines(settled).flatMap(({ path, part: id, kept }) => {
    const part = partOf(parts, id);
    if (!part?.kind.startsWith("twin-")) return [];
    const isWhole = (/** @type {string[]} */ pair) => pair.every((at) => holes.get(at)?.drilled);
    const twins = settled.frame.twins.filter((twin) => twin.part === id && isWhole(twin.holes));
    const whole = new Set(twins.flatMap((twin) => twin.holes));
    const alone = kept.filter((at) => !whole.has(at));
    if (!alone.length) return [];
    const message = `${id} is ${limits.kinds[part.kind]}; of these holes none has a neighbour to share it with: `;
    return {
      path,
      message: `${message}${runs(alone)}.`,
      hole: alone[0],
      found: counted(alone.length, "single hole"),
      expected: "a run of two, as R7-R8",
      isKey: true,
    };
  });
}

/** @type {Rule} */
export function stripHoles({ frame }, { limits }) {
  const drilled = frame.holes.filter((hole) => hole.drilled).length;
  /** @type {Map<string, string>} */
  const taken = new Map();
  return frame.strips.flatMap(({ name, holes, entry }) => {
    const path = ["strips", entry, "holes"];
    const who = `The strip ${shown(name)}`;
    /** @type {Told[]} */
    const told = [];
    const both = holes.filter((at) => taken.has(at));
    if (both.length) {
      const message = `${who} covers ${runs(both)}, which ${shown(taken.get(both[0]))} covers too.`;
      told.push({ path, message, hole: both[0], tip: "One hole takes one barrel." });
    }
    if (!holes.length) told.push({ path, message: `${who} covers no drilled hole.` });
    if (holes.length > limits.most_of_rim * drilled) {
      const message = `${who} covers ${holes.length} of ${counted(drilled, "hole")}.`;
      told.push({ path, message, severity: "warning", tip: SWAPPED });
    }
    for (const at of holes) taken.set(at, name);
    return told;
  });
}

/** @type {Rule} */
export function stripPosts({ frame }, { parts }) {
  const drilled = frame.holes.filter((hole) => hole.drilled).length;
  return frame.strips.flatMap(({ name, holes, part: id, entry }) => {
    const part = partOf(parts, id);
    const { length: count } = holes;
    if (part?.kind !== "strip" || part.posts === null || part.posts === count) return [];
    const barrels = counted(part.posts, "barrel");
    return {
      path: ["strips", entry, "holes"],
      message: `The strip ${shown(name)} covers ${counted(count, "hole")}, but ${id} has ${barrels}.`,
      found: counted(count, "hole"),
      expected: counted(part.posts, "hole"),
      tip: part.posts === drilled - count + 2 ? SWAPPED : null,
    };
  });
}
