/**
 * Leave, turn or replace, piece by piece, with the reason. All rules are common practice of the trade,
 * no published source:
 *
 * - a cracked frame is not strung: the job ends;
 * - what is split, missing or lets the string lie low is replaced, and one such place in a strip takes
 *   the whole strip;
 * - a groove alone takes no part out of a shared hole, no two-post part and no strip;
 * - other grooved parts are replaced where there is time; against the clock they are turned as long as
 *   a fresh position remains.
 */

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_frame.js").Piece} Piece */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_state.js").Seen} Seen */

/** @typedef {"leave" | "turn" | "replace"} Act */

/** How much it presses, in order: nothing, it can wait, it should be done, it must be done. */
export const PRESSES = /** @type {const} */ (["nothing", "can wait", "should", "must"]);

/** @typedef {typeof PRESSES[number]} Presses */

/**
 * Why: a word for the program, see `sheet_words.js` for the sentence.
 * @typedef {"not looked" | "sound" | "split" | "missing" | "low" | "takes strip" | "takes twin" | "grooved"
 *   | "fresh left" | "none fresh" | "fresh unknown" | "shared stays" | "twin stays" | "strip stays"} Why
 */

/**
 * @typedef {object} Reason
 * @property {Why} why
 * @property {string[]} holes addresses
 * @property {number | null} count fresh positions, or quarter turns already had
 */

/**
 * @typedef {object} Verdict
 * @property {number} piece index
 * @property {Act} act
 * @property {number} quarters by how many quarter turns, if it is turned
 * @property {Presses} presses
 * @property {boolean} watch whether it is worn and left
 * @property {Reason[]} reasons the weightiest first
 */

/**
 * @typedef {object} Judged
 * @property {boolean} ends whether the frame is cracked: nothing is fitted, nothing strung
 * @property {("edge" | "crushed")[]} cares what else was found on the frame
 * @property {("crack" | "edge" | "crushed")[]} unchecked what the frame was not looked over for
 * @property {string[]} unseen holes that were not looked at
 * @property {Verdict[]} verdicts one for each piece, in the order of the frame
 */

const BROKEN = /** @type {const} */ (["split", "missing", "low"]);

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @returns {Judged}
 */
export function judge(frame, sheet) {
  const { checks, marks } = sheet;
  const cares = /** @type {const} */ (["crushed", "edge"]);
  const all = /** @type {const} */ (["crack", "edge", "crushed"]);
  return {
    ends: checks.crack === "found",
    cares: cares.filter((check) => checks[check] === "found"),
    unchecked: all.filter((check) => checks[check] === "not looked"),
    unseen: frame.holes.map(({ address }) => address).filter((address) => !marks[address]),
    verdicts: frame.pieces.map((piece, at) => ({ piece: at, ...ofPiece(frame, piece, sheet) })),
  };
}

/**
 * @param {SheetFrame} frame
 * @param {Piece} piece
 * @param {Sheet} sheet
 * @returns {Omit<Verdict, "piece">}
 */
function ofPiece(frame, piece, { marks, way }) {
  const addresses = piece.holes.map((hole) => frame.holes[hole].address);
  const seen = (/** @type {Seen} */ what) => addresses.filter((address) => marks[address]?.seen === what);
  /** @type {Reason[]} */
  const broken = BROKEN.map((what) => reason(what, seen(what))).filter(({ holes }) => holes.length);
  if (broken.length) {
    const takes = piece.kind === "strip" ? "takes strip" : "takes twin";
    const all = addresses.length > 1 ? [reason(takes, addresses)] : [];
    return { act: "replace", quarters: 0, presses: "must", watch: false, reasons: [...broken, ...all] };
  }
  const grooved = seen("grooved");
  if (!grooved.length) {
    const isSeen = addresses.every((address) => marks[address]);
    return stay([reason(isSeen ? "sound" : "not looked", addresses)], false);
  }
  const stays = whatStays(frame, piece);
  if (stays) return stay([reason("grooved", grooved), reason(stays, addresses)], true);
  return ofGrooved(piece, grooved, marks[grooved[0]].turns, way === "unhurried");
}

/**
 * A part with one post, in a hole of its own.
 * @param {Piece} piece
 * @param {string[]} holes
 * @param {number} turns
 * @param {boolean} hasTime
 * @returns {Omit<Verdict, "piece">}
 */
function ofGrooved({ positions, step }, holes, turns, hasTime) {
  const left = positions === null ? null : freshLeft(positions, step, turns);
  const worn = reason("grooved", holes, turns);
  const fresh = reason(left === null ? "fresh unknown" : left ? "fresh left" : "none fresh", holes, left);
  const presses = left === 0 ? "should" : "can wait";
  if (hasTime || left === 0) return { act: "replace", quarters: 0, presses, watch: false, reasons: [worn, fresh] };
  return { act: "turn", quarters: toNext(step, turns), presses, watch: left === null, reasons: [worn, fresh] };
}

/**
 * How many fresh positions are left to turn to. A turn that stops short of one spoils the place it leads
 * towards. The same as in the book's own tables.
 * @param {number} positions of a new part, the first one included
 * @param {number} step quarter turns from one to the next
 * @param {number} turns quarter turns it has had
 */
export function freshLeft(positions, step, turns) {
  return Math.max(0, positions - 1 - Math.ceil(turns / step));
}

/**
 * Quarter turns to the next fresh position.
 * @param {number} step
 * @param {number} turns
 */
function toNext(step, turns) {
  return (Math.ceil(turns / step) + 1) * step - turns;
}

/**
 * @param {SheetFrame} frame
 * @param {Piece} piece
 * @returns {Why | null}
 */
function whatStays(frame, { kind, holes }) {
  if (kind === "strip") return "strip stays";
  if (holes.length > 1 || kind === "twin-even" || kind === "twin-uneven") return "twin stays";
  return frame.holes[holes[0]].passes.length > 1 ? "shared stays" : null;
}

/**
 * @param {Reason[]} reasons
 * @param {boolean} watch
 * @returns {Omit<Verdict, "piece">}
 */
function stay(reasons, watch) {
  return { act: "leave", quarters: 0, presses: "nothing", watch, reasons };
}

/**
 * @param {Why} why
 * @param {string[]} holes
 * @param {number | null} [count]
 * @returns {Reason}
 */
function reason(why, holes, count = null) {
  return { why, holes, count };
}
