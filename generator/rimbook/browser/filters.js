/** What a frame must have, chosen rather than typed. */

import { places, range } from "./ask.js";
import { fold } from "./words.js";

/**
 * @typedef {object} Filters
 * @property {string} sport
 * @property {string} maker
 * @property {string} bore in mm, as written on pages
 * @property {string} part a catalogue id, or how a part's id or name begins
 * @property {string} pattern `22x21`
 * @property {string} holes `76`, `70-80`
 * @property {string} shared `9 13`: places on the walk, either side
 */

/** @typedef {keyof Filters} FilterName */
/** @typedef {import("./index_data.js").Index} Index */
/** @typedef {(frame: number) => boolean} Test */

/** @type {Readonly<Filters>} */
export const NO_FILTERS = { sport: "", maker: "", bore: "", part: "", pattern: "", holes: "", shared: "" };

/** @type {Readonly<Record<FilterName, string>>} What a filter is called where it is spoken of. */
export const FILTER_LABELS = {
  sport: "sport",
  maker: "maker",
  bore: "bore",
  part: "part",
  pattern: "pattern",
  holes: "holes",
  shared: "shared at",
};

/** @param {Filters} filters */
export function active(filters) {
  const names = /** @type {FilterName[]} */ (Object.keys(NO_FILTERS));
  return names.filter((name) => filters[name].trim() !== "");
}

/**
 * One test for each filter that is set. A value that the book does not know fits no frame.
 * @param {Filters} filters
 * @param {Index} index
 * @returns {Test[]}
 */
export function tests(filters, index) {
  const { columns } = index;
  return active(filters).map((name) => {
    const value = filters[name].trim();
    switch (name) {
      case "sport":
        return byNumber(columns.sport, columns.sports.indexOf(value));
      case "maker":
        return byNumber(columns.maker, columns.makers.indexOf(value));
      case "pattern":
        return byNumber(columns.pattern, columns.patterns.indexOf(value));
      case "bore":
        return bySet(columns.boreSet, columns.boreSets, [columns.bores.indexOf(value)]);
      case "part":
        return takesPart(index, value);
      case "holes":
        return hasHoles(index, range(value));
      case "shared":
        return sharedAt(index, places(value));
    }
  });
}

/**
 * An id means that part alone; anything else means every part whose id or name begins so.
 * @param {Index} index
 * @param {string} text
 * @returns {Test}
 */
export function takesPart({ parts }, text) {
  if (!parts) return () => false;
  const named = parts.number.get(text);
  const begins = `| ${fold(text)}`;
  const wanted = new Set(
    named === undefined
      ? parts.entries.flatMap(({ key }, part) => (key.includes(begins) ? [part] : []))
      : [named],
  );
  const fits = parts.sets.map((set) => set.some((part) => wanted.has(part)));
  return (frame) => fits[parts.setOf[frame] ?? -1] === true;
}

/**
 * @param {Index} index
 * @param {import("./ask.js").Range | null} wanted
 * @returns {Test}
 */
export function hasHoles(index, wanted) {
  const { holes } = index.columns;
  if (!wanted) return () => false;
  return (frame) => (holes[frame] ?? 0) >= wanted.least && (holes[frame] ?? 0) <= wanted.most;
}

/**
 * Whether a frame has shared holes at all these places.
 * @param {Index} index
 * @param {readonly number[]} wanted
 * @returns {Test}
 */
export function sharedAt(index, wanted) {
  return wanted.length ? bySet(index.columns.sharedSet, index.columns.sharedSets, wanted) : () => false;
}

/**
 * @param {readonly number[]} column
 * @param {number} wanted
 * @returns {Test}
 */
function byNumber(column, wanted) {
  return (frame) => column[frame] === wanted;
}

/**
 * Each distinct set is looked at once, however many frames have it.
 * @param {readonly number[]} column the number of each frame's set
 * @param {readonly (readonly number[])[]} sets
 * @param {readonly number[]} wanted all of these
 * @returns {Test}
 */
function bySet(column, sets, wanted) {
  const fits = sets.map((set) => wanted.every((value) => set.includes(value)));
  return (frame) => fits[column[frame] ?? -1] === true;
}
