/** How a part sits in a hole, in words. The reasons come from the build, so both say the same. */

import { number, signed, size } from "./millimetres.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./fits_data.js").Part} Part */
/** @typedef {import("./fits_hole.js").Wanted} Wanted */
/** @typedef {import("./fits_rules.js").Reason} Reason */
/** @typedef {import("./fits_seat.js").Seat} Seat */

const DOUBTS = ["unknown", "may be loose", "may be tight"];
const MINDED = ["trim", "strings tight"];

/**
 * @param {Reason} reason
 * @param {Record<string, string>} sentences
 */
export function reasonText({ code, mm, what }, sentences) {
  const amount = mm === null ? "" : number(mm);
  return (sentences[code] ?? code).replace("{mm}", amount).replace("{what}", what ?? "");
}

/**
 * The reasons by what they are: why not, what is not sure, and what to mind while fitting. What the reader has not
 * measured is left out: it is the same for every part, and is said once.
 * @param {readonly Reason[]} reasons
 * @param {Record<string, string>} sentences
 * @param {readonly string[]} unmeasured
 * @returns {[string, string][]}
 */
export function reasonFacts(reasons, sentences, unmeasured) {
  const against = reasons.filter(({ code }) => !DOUBTS.includes(code) && !MINDED.includes(code));
  const doubts = reasons.filter(({ code }) => DOUBTS.includes(code) && code !== "unknown");
  const minded = reasons.filter(({ code }) => MINDED.includes(code));
  const unknown = reasons.flatMap(({ what }) => (what && !unmeasured.includes(what) ? [what] : []));
  if (unknown.length) doubts.push({ code: "unknown", mm: null, what: listed(unknown) });
  const text = (/** @type {Reason[]} */ some) => some.map((each) => reasonText(each, sentences)).join("; ");
  /** @type {[string, string][]} */
  const facts = [
    ["Why not", text(against)],
    ["Not sure", text(doubts)],
    ["Mind", text(minded)],
  ];
  return facts.filter(([, says]) => says);
}

/**
 * How the barrel sits, without the bench word.
 * @param {Seat["fit"]} fit
 * @param {Part} part
 */
export function fitText({ word, clearance, least, most, kind, loosest, tightest }, part) {
  const barrel = `barrel of ${size(part.barrel_mm)} mm`;
  const off = number(Math.abs(clearance));
  const squeezed = clearance < 0 ? `a ${barrel}, squeezed by ${off} mm` : `${off} mm of air round a ${barrel}`;
  const sits = off === "0" ? `a ${barrel}, line to line` : squeezed;
  if (least === null || most === null || kind === null) return sits;
  const a = kind === "interference" ? "an" : "a";
  const span = tightest === loosest ? `${word} for sure` : `anything from ${tightest} to ${loosest}`;
  return `${sits}; within the uncertainty ${signed(least)} to ${signed(most)} mm, ${a} ${kind} fit: ${span}`;
}

/**
 * @param {Seat["room"]} room
 * @param {Part} part
 */
export function roomText({ word, needs, spare }, part) {
  if (needs === 0) return "no string goes through";
  const opening = part.bore_mm === null ? "opening unknown" : `opening ${size(part.bore_mm)} mm`;
  if (needs === null) return `${opening}; the string is unknown`;
  if (word === null || spare === null) return `${opening}; the strings need ${number(needs)} mm`;
  const left = spare < 0 ? `${number(-spare)} lacking` : `${number(spare)} to spare`;
  return `${word}: ${opening}, ${number(needs)} needed, ${left}`;
}

/**
 * @param {Seat["reach"]} reach
 * @param {Part} part
 * @param {number | null} depth
 */
export function lengthText({ word, proud, trim }, part, depth) {
  const post = part.length_mm === null ? "length unknown" : `${size(part.length_mm)} mm under the flange`;
  if (word === null || proud === null) return depth === null ? `${post}; the rim is unknown` : post;
  if (word === "short") return `short: ${post}, ${number(-proud)} less than the rim is deep`;
  if (word === "flush") return `flush: ${post}`;
  const stands = `proud: ${post} stands out by ${number(proud)} mm`;
  return trim ? `${stands}; cut ${number(trim)} mm off after fitting` : `${stands}; nothing to cut`;
}

/**
 * The hole as one sentence, so that a printed answer says what was asked.
 * @param {Wanted} wanted
 */
export function holeText({ bore, step, depth, strings }) {
  const parts = [
    bore === null ? "" : `bore ${size(bore)} mm${step === null ? "" : `, measured in steps of ${number(step)}`}`,
    depth === null ? "" : `rim ${size(depth)} mm deep`,
    strings === null ? "" : stringsText(strings),
  ];
  return `The hole: ${parts.filter(Boolean).join("; ")}.`;
}

/** @param {readonly number[]} strings */
function stringsText(strings) {
  if (!strings.length) return "no string";
  const diameters = [...new Set(strings.map(number))];
  return `${strings.length === 1 ? "one string" : counted(strings.length, "string")} of ${listed(diameters)} mm`;
}
