/** What a job costs the player, line by line: the lines add up to the total, to the last cent. */

import { share, split } from "./money.js";
import { USUAL_LABOUR } from "./sheet_time.js";

/** @typedef {import("./sheet_time.js").Task} Task */
/** @typedef {import("./sheet_time.js").Labour} Labour */
/** @typedef {import("./money.js").Half} Half */

/**
 * @typedef {object} Terms
 * @property {number} hourly rate of work, in minor units
 * @property {number} least charge for work, in minor units; 0 for none
 * @property {number} markup on parts, in percent
 * @property {Half} half how half a minor unit is rounded
 * @property {number} [step] the total is a multiple of so many minor units
 */

/** @type {Terms} */
export const NO_TERMS = { hourly: 0, least: 0, markup: 0, half: "away", step: 1 };

/**
 * A part, or a pack, that the player pays.
 * @typedef {object} Charged
 * @property {string} name
 * @property {number} count
 * @property {number} each price of one, in minor units
 * @property {boolean} [isFinal] whether that is what the player pays, without the markup
 */

/**
 * @typedef {object} QuoteLine
 * @property {"set-up" | "single" | "wide" | "twin" | "strip" | "turn" | "least charge" | "part" | "rounding"} what
 * @property {string} name of a part; else empty
 * @property {number} count
 * @property {number} seconds of work; 0 for parts
 * @property {number} amount in minor units
 */

/**
 * @typedef {object} Quote
 * @property {QuoteLine[]} lines
 * @property {number} labour
 * @property {number} parts
 * @property {number} total of both, rounded as the terms say: the last line makes up for it
 */

/** @type {Record<string, QuoteLine["what"]>} */
const KINDS = {
  "single": "single",
  "wide": "wide",
  "twin-even": "twin",
  "twin-uneven": "twin",
  "strip": "strip",
  "unknown": "single",
};

/**
 * Work is charged by the second and rounded once; its lines share that sum. Each line of parts is rounded
 * by itself.
 * @param {readonly Task[]} work
 * @param {readonly Charged[]} parts
 * @param {Terms} terms
 * @param {Labour} [labour]
 * @returns {Quote}
 */
export function quote(work, parts, terms, labour = USUAL_LABOUR) {
  const lines = workLines(work, terms, labour);
  const charged = lines.reduce((total, { amount }) => total + amount, 0);
  const lacking = work.length ? Math.max(0, terms.least - charged) : 0;
  if (lacking) lines.push({ what: "least charge", name: "", count: 1, seconds: 0, amount: lacking });
  /** @type {QuoteLine[]} */
  const sold = parts.map(({ name, count, each, isFinal }) => ({
    what: "part",
    name,
    count,
    seconds: 0,
    amount: share(each * count, Math.round((100 + (isFinal ? 0 : terms.markup)) * 100), 10_000, terms.half),
  }));
  const labourTotal = charged + lacking;
  const partsTotal = sold.reduce((total, { amount }) => total + amount, 0);
  const { step = 1 } = terms;
  const total = share(labourTotal + partsTotal, 1, step, terms.half) * step;
  const amount = total - labourTotal - partsTotal;
  if (amount) sold.push({ what: "rounding", name: "", count: 1, seconds: 0, amount });
  return { lines: [...lines, ...sold], labour: labourTotal, parts: partsTotal, total };
}

/**
 * @param {readonly Task[]} work
 * @param {Terms} terms
 * @param {Labour} labour
 * @returns {QuoteLine[]}
 */
function workLines(work, { hourly, half }, labour) {
  if (!work.length) return [];
  /** @type {Map<QuoteLine["what"], {count: number, seconds: number}>} */
  const sums = new Map([["set-up", { count: 1, seconds: labour.setUp }]]);
  for (const { act, kind, seconds } of work) {
    const what = act === "turn" ? "turn" : KINDS[kind];
    const sum = sums.get(what) ?? { count: 0, seconds: 0 };
    sums.set(what, { count: sum.count + 1, seconds: sum.seconds + seconds });
  }
  const kept = [...sums].filter(([, { seconds }]) => seconds > 0);
  const seconds = kept.reduce((total, [, sum]) => total + sum.seconds, 0);
  if (!seconds) return [];
  const amounts = split(share(hourly, seconds, 3600, half), kept.map(([, sum]) => sum.seconds), half);
  return kept.map(([what, sum], at) => ({ what, name: "", ...sum, amount: amounts[at] }));
}
