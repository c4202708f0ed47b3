/** A hole as a reader typed it, and what is wrong with it: every field is judged by itself, and none is changed. */

import { number, readMm } from "./millimetres.js";

/** @typedef {"bore" | "depth" | "strings" | "string" | "step"} Field */
/** @typedef {Record<Field, string>} Typed */

/**
 * Lengths in mm; null is what the reader could not measure.
 * @typedef {object} Wanted
 * @property {number | null} bore
 * @property {number | null} depth of the rim
 * @property {number[] | null} strings a diameter for each, thinnest first; empty where none goes through
 * @property {number | null} step in which the bore was measured
 */

/** @typedef {Partial<Record<Field, string>>} Problems a sentence for each field that is wrong */

/** @type {readonly Field[]} */
export const FIELDS = ["bore", "depth", "strings", "string", "step"];

/** @type {Record<Field, string>} */
export const FIELD_NAMES = {
  bore: "bore",
  depth: "rim depth",
  strings: "number of strings",
  string: "string diameter",
  step: "resolution",
};

/** @type {Record<Field, string>} */
const EXAMPLES = { bore: "2.1", depth: "9.4", strings: "2", string: "0.68", step: "0.05" };

/** @type {Typed} */
export const NOTHING_TYPED = { bore: "", depth: "", strings: "1", string: "", step: "" };

/**
 * @param {Typed} typed
 * @param {Record<Field, number>} most what each may be at most
 * @returns {{wanted: Wanted, problems: Problems}} what is wrong is null in `wanted`
 */
export function readHole(typed, most) {
  /** @type {Problems} */
  const problems = {};

  /**
   * @param {Field} field
   * @param {string} text
   */
  const length = (field, text) => {
    if (!text.trim()) return null;
    const mm = readMm(text);
    if (mm > 0 && mm <= most[field]) return mm;
    const [name, told] = [FIELD_NAMES[field], `“${text.trim()}”`];
    problems[field] = Number.isNaN(mm)
      ? `${told} is no ${name}: expected millimetres, such as ${EXAMPLES[field]}.`
      : `The ${name} cannot be ${told}: expected more than 0 and at most ${most[field]} mm.` +
        meant(Math.abs(mm), most[field]);
    return null;
  };

  const [bore, depth, step] = [
    length("bore", typed.bore),
    length("depth", typed.depth),
    length("step", typed.step),
  ];
  const diameters = split(typed.string).map((text) => length("string", text));
  const count = readCount(typed.strings, diameters.length, most.strings, problems);
  if (count !== null && diameters.length > Math.max(count, 1)) {
    problems.string ??=
      `${diameters.length} string diameters are given for ${count === 1 ? "1 string" : `${count} strings`}: ` +
      "expected one diameter, or one for each string.";
  }
  return { wanted: { bore, depth, strings: inHole(diameters, count), step }, problems };
}

/**
 * What to measure before an answer can be trusted, under the names that the build uses.
 * @param {Wanted} wanted
 */
export function missingOf({ bore, step, depth, strings }) {
  const measures = { "bore": bore, "bore resolution": step, "rim depth": depth, "string diameter": strings };
  return Object.entries(measures).flatMap(([name, value]) => (value === null ? [name] : []));
}

/**
 * Several diameters stand apart by a plus, a stroke, a semicolon, a space, or a comma with a space after it.
 * @param {string} typed
 */
function split(typed) {
  const bare = typed.normalize("NFKC").replace(/\bmm\b|(?<=\d)mm\b/gi, " ");
  return bare.split(/[+/;&\s]+|,\s+/).filter(Boolean);
}

/**
 * How many strings: as many as diameters where nobody says.
 * @param {string} typed
 * @param {number} diameters
 * @param {number} most
 * @param {Problems} problems
 */
function readCount(typed, diameters, most, problems) {
  const text = typed.trim();
  if (!text) return diameters || null;
  const count = readMm(text);
  if (Number.isInteger(count) && count >= 0 && count <= most) return count;
  problems.strings = `The number of strings cannot be “${text}”: expected a whole number from 0 to ${most}.`;
  return null;
}

/**
 * The diameters of so many strings in one hole. Where fewer are given, the thickest is repeated.
 * @param {readonly (number | null)[]} diameters
 * @param {number | null} count
 * @returns {number[] | null}
 */
function inHole(diameters, count) {
  if (count === 0) return [];
  const known = diameters.filter((each) => each !== null).sort((a, b) => a - b);
  const thickest = known.at(-1);
  if (count === null || thickest === undefined || known.length < diameters.length) return null;
  return [...known, ...Array(Math.max(0, count - known.length)).fill(thickest)].slice(0, count);
}

/**
 * What a slip of the point or of the sign would have been.
 * @param {number} mm without its sign
 * @param {number} most
 */
function meant(mm, most) {
  if (!(mm > 0 && mm < 1e6)) return "";
  let near = mm;
  while (near > most) near /= 10;
  return ` Did you mean ${number(near)}?`;
}
