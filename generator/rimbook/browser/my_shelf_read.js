/** What is typed on the page of a shelf, read as numbers. A wrong one gives a sentence that says what is expected. */

/** @typedef {{value: number | null} | {problem: string}} Read */

const MOST_DIGITS = 4;

/**
 * A number that may be left out: an empty field is null.
 * @param {string} typed
 * @param {{most: number, unit: string, whole?: boolean}} asks
 * @returns {Read}
 */
export function readOptional(typed, { most, unit, whole = false }) {
  const text = plainOf(typed);
  if (!text) return { value: null };
  if (/^\d{1,3},\d{3}$/.test(typed.trim())) {
    return { problem: `“${typed}” can be read in two ways: write ${typed.trim().replace(",", "")} or ${Number(text)}.` };
  }
  const value = Number(text);
  const isRight = (whole ? /^\d{1,9}$/ : /^\d{1,9}(?:\.\d{1,4})?$/).test(text) && value <= most;
  if (isRight) return { value };
  const what = whole ? "a whole number" : "a number";
  return { problem: `“${typed}” will not do: expected ${what}${unit} from 0 to ${grouped(most)}.` };
}

/**
 * A number of weeks: `3`, `1.5`, `3 weeks`.
 * @param {string} typed
 * @param {number} most
 */
export function readWeeks(typed, most) {
  const read = readOptional(typed.replace(/\s*weeks?\s*$/i, ""), { most, unit: " of weeks" });
  return "problem" in read ? { problem: read.problem.replace(/“.*?”/s, `“${typed}”`) } : read;
}

/**
 * A share in per cent as a number from 0 to 1: `35`, `35 %`, `2.5`.
 * @param {string} typed
 * @returns {Read}
 */
export function readShare(typed) {
  const share = fractionOf(typed);
  if (share === null || (share >= 0 && share <= 1)) return { value: share };
  return { problem: `“${typed}” will not do: expected per cent of all restrings, from 0 to 100.` };
}

/**
 * A service level in per cent as a chance between 0 and 1. Never to run short cannot be planned for.
 * @param {string} typed
 * @returns {Read}
 */
export function readService(typed) {
  const chance = fractionOf(typed);
  if (chance === null || (chance > 0 && chance < 1)) return { value: chance };
  return { problem: `“${typed}” will not do: expected per cent above 0 and below 100, such as 95.` };
}

/**
 * A number from 0 to 1 as per cent, without needless zeros: 0.35 is `35`.
 * @param {number} share
 */
export function percentOf(share) {
  return String(Number((share * 100).toFixed(MOST_DIGITS)));
}

/**
 * @param {string} typed
 * @returns {number | null} NaN for what is no number, null for nothing
 */
function fractionOf(typed) {
  const text = plainOf(typed.normalize("NFKC").replace(/\s*%\s*$/, ""));
  if (!text) return null;
  return /^\d{1,4}(?:\.\d{1,4})?$/.test(text) ? Number((Number(text) / 100).toFixed(MOST_DIGITS + 2)) : NaN;
}

/** @param {string} typed */
function plainOf(typed) {
  return typed.normalize("NFKC").trim().replace(",", ".");
}

/** @param {number} count */
function grouped(count) {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}
