/** What is typed on the page of a shelf, read as numbers. A wrong one gives a sentence that says what is expected. */

/** @typedef {{value: number | null} | {problem: string}} Read */

const MOST_DIGITS = 4;
const PER_CENT = /^\d{1,4}(?:\.\d{1,4})?$/;

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
 * A share as somebody types it: `0.35` may be meant as 35 %, so below one per cent the sign must say which. In a
 * file the name of the row says it.
 * @param {string} typed
 * @returns {Read}
 */
export function typedShare(typed) {
  return inTwoWays(typed, (number) => number > 0 && number < 1) ?? readShare(typed);
}

/**
 * A service level as somebody types it: the same, and `1` may be meant as all.
 * @param {string} typed
 * @returns {Read}
 */
export function typedService(typed) {
  return inTwoWays(typed, (number) => number > 0 && number <= 1) ?? readService(typed);
}

/**
 * A number from 0 to 1 as it can be typed: 0.35 is `35`, and 0.005 is `0.5 %`.
 * @param {number} share
 * @param {(typed: string) => Read} read how it is read
 */
export function asTyped(share, read) {
  const text = percentOf(share);
  return "problem" in read(text) ? `${text} %` : text;
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
 * @param {(number: number) => boolean} isEither whether such a number, without a sign, may also be a share of 1
 * @returns {Read | null} what is wrong with it, or null
 */
function inTwoWays(typed, isEither) {
  const text = plainOf(typed);
  const number = PER_CENT.test(text) ? Number(text) : NaN;
  if (!isEither(number)) return null;
  const meant = number < 1 ? percentOf(number) : "per cent, such as 95";
  const whole = number < 1 ? meant : "95";
  return {
    problem: `“${typed}” can be read in two ways: write ${meant} for ${whole}\u00a0%, or ${text}\u00a0% with the sign.`,
  };
}

/**
 * @param {string} typed
 * @returns {number | null} NaN for what is no number, null for nothing
 */
function fractionOf(typed) {
  const text = plainOf(typed.normalize("NFKC").replace(/\s*%\s*$/, ""));
  if (!text) return null;
  return PER_CENT.test(text) ? Number((Number(text) / 100).toFixed(MOST_DIGITS + 2)) : NaN;
}

/** @param {string} typed */
function plainOf(typed) {
  return typed.normalize("NFKC").trim().replace(",", ".");
}

/** @param {number} count */
function grouped(count) {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}
