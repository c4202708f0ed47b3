/** Every word of the bench sheet, written once. */

import { counted, listed } from "./words.js";

/** @typedef {import("./sheet_verdict.js").Reason} Reason */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */
/** @typedef {import("./sheet_state.js").Mark} Mark */

const MOST_HOLES = 6;

/** @type {Record<import("./sheet_state.js").Seen, string>} */
export const SEEN_WORDS = {
  sound: "sound",
  grooved: "grooved",
  split: "split",
  missing: "missing",
  low: "string sits low",
};

/** @type {Record<import("./sheet_state.js").Check, string>} */
export const CHECK_WORDS = {
  crack: "a crack, or paint that is split or creaks",
  edge: "a sharp edge at a hole",
  crushed: "a crushed or flattened rim",
};

/** @type {Record<import("./sheet_state.js").Check, string>} */
export const CHECK_ADVICE = {
  crack: "A cracked frame is not strung: put it aside, mark it and tell its owner. No new grommet mends it.",
  edge: "Smooth the edge before you fit anything: it cuts again what it cut once. Look whether a crack goes on from it.",
  crushed: "Look for a crack under the dent, from both sides. Unless you are sure that there is none, do not string.",
};

/** @type {Record<import("./sheet_verdict.js").Presses, string>} */
export const PRESSES_WORDS = {
  "nothing": "nothing to do",
  "can wait": "can wait",
  "should": "should be done",
  "must": "must be done",
};

/** @type {Record<import("./sheet_quote.js").QuoteLine["what"], [string, string]>} */
export const QUOTE_WORDS = {
  "set-up": ["looking over and setting up", "looking over and setting up"],
  "single": ["single part replaced", "single parts replaced"],
  "wide": ["wide part replaced", "wide parts replaced"],
  "twin": ["two-post part replaced", "two-post parts replaced"],
  "strip": ["strip replaced", "strips replaced"],
  "turn": ["part turned", "parts turned"],
  "least charge": ["up to the least charge", "up to the least charge"],
  "part": ["part", "parts"],
  "rounding": ["rounding", "rounding"],
};

/**
 * @param {Mark | null | undefined} mark
 * @returns {string} `grooved, turned twice`
 */
export function markWords(mark) {
  if (!mark) return "not looked at";
  const times = ["never turned", "turned once", "turned twice"][mark.turns] ?? `turned ${mark.turns} times`;
  return mark.seen === "grooved" ? `grooved, ${times}` : SEEN_WORDS[mark.seen];
}

/**
 * @param {Verdict} verdict
 * @returns {string} `Turn by a quarter`
 */
export function actWords({ act, quarters, watch }) {
  if (act === "replace") return "Replace";
  if (act === "leave") return watch ? "Leave and watch" : "Leave";
  return `Turn by ${["nothing", "a quarter", "a half", "three quarters"][quarters] ?? counted(quarters, "quarter")}`;
}

/**
 * @param {Reason} reason
 * @returns {string} one sentence without a full stop
 */
export function reasonWords({ why, holes, count }) {
  const where = holesWords(holes);
  switch (why) {
    case "not looked":
      return `${where} not looked at`;
    case "sound":
      return "nothing wrong";
    case "split":
      return `split at ${where}`;
    case "missing":
      return `missing at ${where}`;
    case "low":
      return `the string sits low at ${where}: look at the hole for a crack`;
    case "takes strip":
      return `one broken place takes the whole strip, ${where}`;
    case "takes twin":
      return `both posts are one part, ${where}`;
    case "grooved":
      return count ? `grooved at ${where}, ${counted(count, "quarter turn")} so far` : `grooved at ${where}`;
    case "fresh left":
      return `${counted(count ?? 0, "fresh position")} left`;
    case "none fresh":
      return "no fresh position left";
    case "fresh unknown":
      return "nobody knows how many fresh positions it has: turn it only to plastic that is fresh";
    case "shared stays":
      return "a groove alone takes no part out of a shared hole";
    case "twin stays":
      return "a groove alone takes no two-post part out";
    case "strip stays":
      return "a groove alone takes no strip off, and a strip cannot be turned";
  }
}

/**
 * @param {readonly string[]} holes
 * @returns {string} the holes, or where a long row of them begins and ends
 */
export function holesWords(holes) {
  return holes.length > MOST_HOLES ? `${holes[0]} to ${holes[holes.length - 1]}` : listed(holes);
}

/**
 * How long something takes, rounded up to half a minute, as one says it.
 * @param {number} seconds
 */
export function minutesWords(seconds) {
  const halves = Math.ceil(seconds / 30);
  if (halves === 1) return "half a minute";
  return `${halves % 2 ? `${(halves - 1) / 2}½` : halves / 2} ${halves === 2 ? "minute" : "minutes"}`;
}
