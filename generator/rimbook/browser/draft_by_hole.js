/** What a draft says hole by hole: a bore or a rim depth for some holes, and the short form it is written in. */

import { selectors, holesOf } from "./draft_selectors.js";
import { entries, isMapping } from "./draft_written.js";

/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {"bore_mm" | "rim_depth_mm"} Lengths */
/** @typedef {number | "unknown"} Length */

/**
 * The length written for each of some holes.
 * @param {unknown} value of `bore_mm` or `rim_depth_mm`
 * @param {readonly string[]} holes
 * @returns {Map<string, Length>}
 */
export function lengthsOf(value, holes) {
  const isByHole = isMapping(value);
  const plain = isByHole ? entries(value).find(([key]) => key === "default")?.[1] : value;
  const found = new Map(holes.map((hole) => [hole, lengthOf(plain)]));
  if (!isByHole) return found;
  for (const [key, words] of entries(value)) {
    if (key === "default") continue;
    for (const hole of holesOf(words)) if (found.has(hole)) found.set(hole, lengthOf(key));
  }
  return found;
}

/**
 * The most common length as the default, the others with their holes; one length alone stands alone.
 * @param {Map<string, Length>} lengths
 * @param {(hole: string) => boolean} counts whether a hole is there at all: any other follows the default
 * @returns {unknown}
 */
export function shortForm(lengths, counts) {
  /** @type {Map<Length, string[]>} */
  const holes = new Map();
  for (const [hole, length] of lengths) {
    if (counts(hole)) holes.set(length, [...(holes.get(length) ?? []), hole]);
  }
  const order = [...holes.keys()].sort((a, b) => rank(a) - rank(b));
  if (order.length < 2) return order[0] ?? "unknown";
  const most = order.reduce((best, each) => ((holes.get(each) ?? []).length > (holes.get(best) ?? []).length ? each : best));
  const others = order.filter((each) => each !== most).map((each) => [String(each), selectors(holes.get(each) ?? [])]);
  return { default: most, ...Object.fromEntries(others) };
}

/** @param {Length} length */
function rank(length) {
  return length === "unknown" ? Infinity : length;
}

/**
 * @param {unknown} word
 * @returns {Length}
 */
function lengthOf(word) {
  const length = typeof word === "string" && word.trim() === "" ? NaN : Number(word);
  return length > 0 ? length : "unknown";
}
