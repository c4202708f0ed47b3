/** The walk: one word for each place, from the middle of the head to the middle of the throat. */

import { shown } from "./draft_text.js";

export const MOST_PLACES = 200;

/**
 * What stands at a place, and whether there is a hole at all.
 * @typedef {object} Place
 * @property {string[]} passes such as `m3` and `c1`
 * @property {boolean} drilled
 */

/**
 * A word that is no place.
 * @typedef {object} WalkFault
 * @property {number} index
 * @property {string} word
 * @property {string} message
 */

/**
 * @param {string} word
 * @returns {Place | string} or why it is none
 */
export function readPlace(word) {
  if (word === ".") return { passes: [], drilled: true };
  if (word === "x") return { passes: [], drilled: false };
  const passes = word.split("+");
  if (!passes.every((each) => /^[mc][1-9][0-9]{0,2}$/.test(each))) return `${shown(word)} is no place of a walk.`;
  if (passes.length > 2) return `${shown(word)} puts ${passes.length} strings through one hole; two are the most.`;
  if (new Set(passes).size < passes.length) return `${shown(word)} puts the same string through one hole twice.`;
  return { passes, drilled: true };
}

/**
 * @param {string} text
 * @returns {{places: Place[], faults: WalkFault[]}}
 */
export function readWalk(text) {
  const words = text.split(/\s+/).filter(Boolean);
  /** @type {Place[]} */
  const places = [];
  /** @type {WalkFault[]} */
  const faults = [];
  words.forEach((word, index) => {
    const place = readPlace(word);
    if (typeof place === "string") faults.push({ index, word, message: place });
    else places.push(place);
  });
  if (!words.length) faults.push({ index: 0, word: "", message: "The walk is empty." });
  else if (words.length > MOST_PLACES) {
    const message = `The walk has ${words.length} places; at most ${MOST_PLACES} are read.`;
    faults.push({ index: MOST_PLACES, word: "", message });
  }
  return { places: places.slice(0, MOST_PLACES), faults };
}

/**
 * The word that `readPlace` reads back.
 * @param {Place} place
 */
export function writePlace({ passes, drilled }) {
  if (!drilled) return "x";
  return passes.join("+") || ".";
}
