/** From the marks to a purchase: what a repair needs, and what the spare parts of a purchase are good for. */

import { PRESSES } from "./sheet_verdict.js";
import { deal } from "./buy_uses.js";

/** @typedef {import("./buy_problem.js").Need} Need */
/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */

/**
 * Which parts are taken: only what is fitted now, or whatever surely serves, or what may serve as well.
 * @typedef {"own" | "serves" | "may serve"} Accept
 */

/**
 * Places of a frame that take the same parts.
 * @typedef {Need & {pieces: number[]}} PlacesNeed the pieces are indices
 */

/**
 * What the pieces to be replaced need, the most pressing first.
 * @param {SheetFrame} frame
 * @param {readonly Verdict[]} verdicts
 * @param {Accept} accept
 * @returns {PlacesNeed[]}
 */
export function needsOf(frame, verdicts, accept) {
  /** @type {Map<string, PlacesNeed>} */
  const needs = new Map();
  for (const { piece } of pressing(verdicts.filter(({ act }) => act === "replace"))) {
    const parts = partsFor(frame, piece, accept);
    const id = parts.length ? parts.join(" ") : `piece ${piece}`;
    const need = needs.get(id) ?? { id, count: 0, parts, pieces: [] };
    need.count += 1;
    need.pieces.push(piece);
    needs.set(id, need);
  }
  return [...needs.values()];
}

/**
 * Which part goes to which piece, as a purchase deals them out.
 * @param {readonly PlacesNeed[]} needs
 * @param {readonly import("./buy_uses.js").Use[]} uses
 * @returns {{piece: number, part: string | null}[]} null where nothing is to be had
 */
export function picks(needs, uses) {
  return needs.flatMap(({ id, pieces }) => {
    const parts = uses.filter(({ need }) => need === id).flatMap(({ part, count }) => Array(count).fill(part));
    return pieces.map((piece, at) => ({ piece, part: parts[at] ?? null }));
  });
}

/**
 * Worn pieces that spare parts can refresh for the labour alone, the most pressing first.
 * @param {SheetFrame} frame
 * @param {readonly Verdict[]} verdicts
 * @param {Readonly<Record<string, number>>} spare pieces left of a purchase, by part id
 * @param {Accept} accept
 * @returns {{piece: number, part: string}[]}
 */
export function refreshes(frame, verdicts, spare, accept) {
  const worn = pressing(verdicts.filter(({ act, watch }) => act === "turn" || (act === "leave" && watch)));
  const places = worn.map(({ piece }) => ({ id: String(piece), count: 1, parts: partsFor(frame, piece, accept) }));
  return deal(places, spare).uses.map(({ need, part }) => ({ piece: Number(need), part }));
}

/**
 * The verdicts once worn pieces are refreshed after all: they are replaced, and it still can wait.
 * @param {readonly Verdict[]} verdicts
 * @param {readonly {piece: number}[]} refreshed
 * @returns {Verdict[]}
 */
export function withRefreshes(verdicts, refreshed) {
  const fresh = new Set(refreshed.map(({ piece }) => piece));
  return verdicts.map((verdict) =>
    fresh.has(verdict.piece) ? { ...verdict, act: "replace", quarters: 0, presses: "can wait", watch: false } : verdict,
  );
}

/**
 * @param {SheetFrame} frame
 * @param {number} piece
 * @param {Accept} accept
 * @returns {string[]} ids, the best first
 */
function partsFor(frame, piece, accept) {
  const { part, serves } = frame.pieces[piece];
  const own = part === null ? [] : [part];
  if (accept === "own") return own;
  const others = frame.serves[serves].filter(({ verdict }) => verdict === "serves" || accept === "may serve");
  return [...new Set([...own, ...others.map((each) => each.part)])];
}

/** @param {readonly Verdict[]} verdicts */
function pressing(verdicts) {
  return [...verdicts].sort((a, b) => PRESSES.indexOf(b.presses) - PRESSES.indexOf(a.presses) || a.piece - b.piece);
}
