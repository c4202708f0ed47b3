/** A draft from outside, made safe to work on: what has not even the right sort of value is left out. */

import { isMapping } from "./draft_written.js";

/** @typedef {import("./draft_written.js").Draft} Draft */

const MOST_LETTERS = 200_000;

const isText = (/** @type {unknown} */ value) => typeof value === "string";
const isList = Array.isArray;
const isEnd = (/** @type {unknown} */ value) => typeof value === "string" || typeof value === "number";

/** @type {Record<string, (value: any) => boolean>} */
const SORTS = {
  name: isText,
  maker: isText,
  sport: isText,
  aliases: (value) => isList(value) && value.every(isText),
  variant_of: isText,
  head: isMapping,
  overall_mm: isList,
  spacing_mm: isMapping,
  walk: isText,
  places_mm: isList,
  left: (value) => isMapping(value) && isText(value.walk) && (value.places_mm === undefined || isList(value.places_mm)),
  stringing: (value) => isMapping(value) && (value.tie_offs === undefined || (isList(value.tie_offs) && value.tie_offs.every(isText))),
  fitted: (value) => isList(value) && value.every((each) => isList(each) && each.length === 2 && isText(each[0]) && isText(each[1])),
  strips: (value) =>
    isList(value) && value.every((each) => isMapping(each) && isText(each.name) && isText(each.part) && isList(each.holes) && each.holes.length === 2 && each.holes.every(isEnd)),
  tension_limit: isText,
  measured: isMapping,
  confirmed: (value) => isList(value) && value.every(isMapping),
  note: isText,
};

/**
 * @param {unknown} value
 * @returns {Draft | null}
 */
export function sound(value) {
  if (!isMapping(value) || JSON.stringify(value).length > MOST_LETTERS) return null;
  const kept = Object.entries(/** @type {Draft} */ (value)).filter(([key, each]) => {
    const is = Object.hasOwn(SORTS, key) ? SORTS[key] : null;
    return each !== null && (!is || is(each));
  });
  return { ...Object.fromEntries(kept), format: 1 };
}

/**
 * What a person knows before the first hole is looked at; the rest is unknown.
 * @returns {Draft}
 */
export function blank() {
  return {
    format: 1,
    sport: "badminton",
    head: { outline: "ellipse" },
    rim_depth_mm: "unknown",
    stringing: { pieces: 2, mains_start: "head", crosses_start: "head", first_cross: "R" },
    bore_mm: "unknown",
    fitted: [["default", "unknown"]],
  };
}
