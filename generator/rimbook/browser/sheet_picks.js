/** The pick list of the technician: what to do where, with which part, in the order of the walk. */

import { actWords } from "./sheet_words.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */

/**
 * @typedef {object} Pick
 * @property {number} piece index
 * @property {string[]} holes addresses
 * @property {string} act in words
 * @property {string | null} part id; null where it is turned, or nothing is to be had
 * @property {string} name of the part
 * @property {string} says how it fits
 * @property {string} pin
 * @property {string} trim
 * @property {boolean} isSubstitute whether it is another part than the map has there
 * @property {boolean} lacks whether it must be replaced and no part is to be had
 */

/**
 * @param {SheetFrame} frame
 * @param {readonly Verdict[]} verdicts
 * @param {readonly {piece: number, part: string | null}[]} parts which part goes where, refreshed pieces too
 * @returns {Pick[]} clockwise from the middle of the head
 */
export function pickList(frame, verdicts, parts) {
  const given = new Map(parts.map(({ piece, part }) => [piece, part]));
  const own = verdicts.filter(({ piece, act }) => act !== "leave" || given.has(piece));
  const first = (/** @type {Verdict} */ { piece }) => frame.pieces[piece].holes[0];
  return [...own].sort((a, b) => first(a) - first(b)).map((verdict) => pick(frame, verdict, given.get(verdict.piece) ?? null));
}

/**
 * @param {SheetFrame} frame
 * @param {Verdict} verdict
 * @param {string | null} part
 * @returns {Pick}
 */
function pick(frame, verdict, part) {
  const { holes, part: fitted, serves } = frame.pieces[verdict.piece];
  const how = frame.serves[serves].find((each) => each.part === part);
  return {
    piece: verdict.piece,
    holes: holes.map((hole) => frame.holes[hole].address),
    act: part === null ? actWords(verdict) : "Replace",
    part,
    name: part === null ? "" : (frame.names[part] ?? part),
    says: how?.says ?? "",
    pin: how?.pin ?? "",
    trim: how?.trim ?? "",
    isSubstitute: part !== null && part !== fitted,
    lacks: part === null && verdict.act === "replace",
  };
}
