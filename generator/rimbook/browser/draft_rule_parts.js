/** Whether every part that a draft names is in the catalogue, and is of a kind that can sit there. */

import { nearest, shown, unquoted } from "./draft_text.js";
import { fittedLines } from "./draft_where.js";
import { runs } from "./draft_words.js";

/** @typedef {import("./draft_problem.js").DraftPart} DraftPart */
/** @typedef {import("./draft_where.js").Rule} Rule */

/** @type {Record<string, string>} */
const TIPS = {
  strip: "Name the strip and its first and last hole under strips.",
  set: "Name the parts of the set, hole by hole; the set names its frames itself.",
};

/** @type {Rule} */
export function partExists(settled, { parts }) {
  const fitted = fittedLines(settled).map(({ path, part, kept }) => ({ path, part, holes: runs(kept) }));
  const strips = (settled.draft.strips ?? []).map((/** @type {any} */ { part }, /** @type {number} */ index) => ({
    path: ["strips", index, "part"],
    part,
    holes: "",
  }));
  return [...fitted, ...strips].flatMap(({ path, part, holes }) => {
    if (part === null || part === "unknown" || partOf(parts, part)) return [];
    return {
      path,
      message: `The catalogue has no part ${shown(part)}.`,
      hole: holes ? unquoted(holes) : null,
      nearest: nearest(part, Object.keys(parts)) ?? "unknown",
    };
  });
}

/** @type {Rule} */
export function partSuitsPlace(settled, { parts, limits }) {
  const inHole = (/** @type {string} */ id) => !["strip", "set"].includes(parts[id].kind);
  const ids = Object.keys(parts);
  const fitted = fittedLines(settled).flatMap(({ path, part: id, kept }) => {
    const part = partOf(parts, id);
    if (!id || !part || inHole(id)) return [];
    return {
      path,
      message: `${id} is ${limits.kinds[part.kind]} and cannot sit in a hole.`,
      hole: kept[0] ?? null,
      expected: "a single, a wide one or a twin",
      nearest: nearest(id, ids.filter(inHole)),
      tip: TIPS[part.kind],
    };
  });
  const written = /** @type {any[]} */ (settled.draft.strips ?? []);
  const moulded = written.flatMap(({ name, part: id }, index) => {
    const part = partOf(parts, id);
    if (!part || part.kind === "strip") return [];
    return {
      path: ["strips", index, "part"],
      message: `${id} is ${limits.kinds[part.kind]} and cannot be the strip ${shown(name)}.`,
      expected: "a strip",
      nearest: nearest(id, ids.filter((each) => parts[each].kind === "strip")),
      tip: TIPS[part.kind] ?? "Write it under fitted.",
    };
  });
  return [...fitted, ...moulded];
}

/**
 * @param {Record<string, DraftPart>} parts
 * @param {string | null} id
 * @returns {DraftPart | null}
 */
export function partOf(parts, id) {
  return id !== null && Object.hasOwn(parts, id) ? parts[id] : null;
}
