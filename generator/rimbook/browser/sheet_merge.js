/** Two tabs, one sheet: what each of them changed is put together, so that nothing is lost. */

import { CHECKS, FOUND } from "./sheet_state.js";

/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_state.js").Mark} Mark */

/**
 * A hole that both have marked, and differently.
 * @typedef {object} Clash
 * @property {string} address
 * @property {Mark | null} mine
 * @property {Mark | null} theirs
 */

/**
 * What only one of them changed is taken. Where both changed a hole, mine stays and the clash is told;
 * where both changed what was found on the frame, the graver stays.
 * @param {Sheet} base as it was when both began
 * @param {Sheet} mine
 * @param {Sheet} theirs
 * @returns {{sheet: Sheet, clashes: Clash[]}}
 */
export function merge(base, mine, theirs) {
  /** @type {Record<string, Mark>} */
  const marks = {};
  /** @type {Clash[]} */
  const clashes = [];
  for (const address of new Set([mine, theirs].flatMap((sheet) => Object.keys(sheet.marks)))) {
    const [before, own, other] = [base, mine, theirs].map((sheet) => sheet.marks[address] ?? null);
    const isMine = !isSame(own, before);
    if (isMine && !isSame(other, before) && !isSame(own, other)) clashes.push({ address, mine: own, theirs: other });
    const kept = isMine ? own : other;
    if (kept) marks[address] = kept;
  }
  const checks = { ...theirs.checks };
  for (const check of CHECKS) {
    const [before, own, other] = [base, mine, theirs].map((sheet) => FOUND.indexOf(sheet.checks[check]));
    if (own !== before) checks[check] = FOUND[other === before ? own : Math.max(own, other)];
  }
  const hasWay = mine.way !== base.way || mine.minutes !== base.minutes;
  const { way, minutes } = hasWay ? mine : theirs;
  return { sheet: { marks, checks, way, minutes, doubts: openDoubts(base, mine, theirs), last: mine.last }, clashes };
}

/**
 * A doubt that either has settled is settled.
 * @param {Sheet} base
 * @param {Sheet} mine
 * @param {Sheet} theirs
 */
function openDoubts(base, mine, theirs) {
  const [before, own, other] = [base, mine, theirs].map(
    ({ doubts }) => new Map(doubts.map((doubt) => [JSON.stringify(doubt), doubt])),
  );
  const all = new Map([...other, ...own]);
  return [...all].filter(([each]) => !before.has(each) || (own.has(each) && other.has(each))).map(([, doubt]) => doubt);
}

/**
 * @param {Mark | null} one
 * @param {Mark | null} other
 */
function isSame(one, other) {
  return one?.seen === other?.seen && one?.turns === other?.turns;
}
