/** What a key means in the list of holes. */

import { readPlace } from "./draft_walk.js";

/**
 * What keys write: strings that pass, bores, rim depths, or measured places.
 * @typedef {"strings" | "bores" | "depths" | "places"} Mode
 */

/** @type {Record<string, Mode>} */
export const MODE_KEYS = { w: "strings", b: "bores", r: "depths", p: "places" };

/** Each change by key: its name, what the button says, and the key. */
export const CHANGES = /** @type {const} */ ([
  ["insert", "New place after", "n"],
  ["remove", "Remove place", "d"],
  ["join", "Join with next", "j"],
  ["split", "Split in two", "s"],
  ["swap", "Swap with next", "e"],
  ["tie", "Tie-off", "t"],
]);

/**
 * `type` is the text so far, `pen` the bore or depth by its key.
 * @typedef {{do: "move", by: number, extends: boolean} | {do: "end", at: "first" | "last", extends: boolean} | {do: "type", text: string}
 *   | {do: "word", word: string} | {do: "pen", index: number} | {do: "unknown"} | {do: "other"} | {do: "mode", mode: Mode}
 *   | {do: "change", name: typeof CHANGES[number][0]} | {do: "next"} | {do: "leave"}} Act
 */

/** @type {Record<string, number>} */
const STEPS = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1, PageDown: 10, PageUp: -10 };

/**
 * @param {string} key as in KeyboardEvent.key
 * @param {boolean} isShifted
 * @param {Mode} mode
 * @param {string} typed so far
 * @returns {Act | null} null where the key means nothing here
 */
export function actOf(key, isShifted, mode, typed) {
  if (STEPS[key]) return { do: "move", by: STEPS[key], extends: isShifted };
  if (key === "Home" || key === "End") return { do: "end", at: key === "Home" ? "first" : "last", extends: isShifted };
  if (key === "Enter" || key === " ") return { do: "next" };
  if (key === "Escape") return { do: "leave" };
  if (key === "Backspace") return typed ? { do: "type", text: typed.slice(0, -1) } : null;
  if (key === "Insert") return { do: "change", name: "insert" };
  if (key === "Delete") return { do: "change", name: "remove" };
  const letter = key.length === 1 ? key.toLowerCase() : "";
  const written = mode === "strings" ? stringsAct(letter, typed) : mode === "places" ? placesAct(letter, typed) : penAct(letter);
  if (written) return written;
  if (MODE_KEYS[letter]) return { do: "mode", mode: MODE_KEYS[letter] };
  const change = CHANGES.find(([, , own]) => own === letter);
  return change ? { do: "change", name: change[0] } : null;
}

/**
 * @param {string} letter
 * @param {string} typed
 * @returns {Act | null}
 */
function stringsAct(letter, typed) {
  if (!letter || !"mc.x+0123456789".includes(letter)) return null;
  if (!typed && (letter === "." || letter === "x")) return { do: "word", word: letter };
  const isSecond = "mc".includes(letter) && typed !== "" && typeof readPlace(typed) !== "string";
  const text = typed + (isSecond ? "+" : "") + letter;
  // Whatever cannot become a place begins a new one.
  return { do: "type", text: /^[mc]\d{0,3}(\+([mc]\d{0,3})?)?$/.test(text) ? text : /^[mc]$/.test(letter) ? letter : typed };
}

/**
 * @param {string} letter
 * @param {string} typed
 * @returns {Act | null}
 */
function placesAct(letter, typed) {
  if (letter === "u") return { do: "unknown" };
  const text = typed + letter.replace(",", ".");
  return letter && /^\d{0,4}(\.\d{0,3})?$/.test(text) ? { do: "type", text } : null;
}

/**
 * @param {string} letter
 * @returns {Act | null}
 */
function penAct(letter) {
  if (letter === "u" || letter === "0") return { do: "unknown" };
  if (letter === "=") return { do: "other" };
  return /^[1-9]$/.test(letter) ? { do: "pen", index: Number(letter) - 1 } : null;
}
