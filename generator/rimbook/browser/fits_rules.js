/**
 * Which parts serve a measured hole, the best first, with the reasons. The rules are those of the build
 * (`bench/serves.py`, `bench/marks.py`): one file of cases, `tests/cases/fits.json`, holds both to the same answers.
 */

import { seatOf } from "./fits_seat.js";

/** @typedef {import("./fits_data.js").Fits} Fits */
/** @typedef {import("./fits_data.js").Part} Part */
/** @typedef {import("./fits_data.js").Verdict} Verdict */
/** @typedef {import("./fits_hole.js").Wanted} Wanted */
/** @typedef {import("./fits_seat.js").Seat} Seat */

/** @typedef {{code: string, mm: number | null, what: string | null}} Reason */

/**
 * One aspect of a part in a hole. Ranking goes by `grade`, then by `off`, the least first.
 * @typedef {object} Mark
 * @property {Reason[]} reasons
 * @property {string | null} fails why it does not serve
 * @property {boolean} near whether it misses by little
 * @property {boolean} doubt whether it is not known for sure
 * @property {number} grade
 * @property {number} off
 */

/**
 * @typedef {object} Served
 * @property {Part} part
 * @property {Verdict} verdict
 * @property {Reason[]} reasons
 * @property {number[]} rank
 * @property {Seat} seat
 */

const FIT_GRADES = { "snug": 0, "finger fit": 1, "needs driving": 2, "drops out": 3, "will not seat": 3 };
const ROOM_GRADES = { "runs free": 0, "tight": 1, "unknown": 2, "will not go": 3 };
const REACH_GRADES = { flush: 0, proud: 0, trim: 1, unknown: 2, short: 3 };

/** @type {readonly Verdict[]} */
const VERDICTS = ["serves", "may serve", "near miss"];
const NEAR_MISS = 2;
const NO = 3;

/**
 * The parts that serve, near misses at the end; those that miss by more are left out. None for an unknown bore.
 * @param {Wanted} wanted
 * @param {Fits} fits
 * @returns {Served[]}
 */
export function ranked(wanted, fits) {
  const { bore } = wanted;
  if (bore === null) return [];
  return fits.parts.flatMap((part) => serve(wanted, bore, part, fits) ?? []).sort(compare);
}

/**
 * The part whose barrel comes nearest to a bore, with the reasons why it does not serve, where none does.
 * @param {Wanted} wanted
 * @param {Fits} fits
 * @returns {{part: Part, reasons: Reason[]} | null}
 */
export function nearest(wanted, fits) {
  const { bore } = wanted;
  if (bore === null) return null;
  const off = (/** @type {Part} */ part) => Math.abs(bore - part.barrel_mm);
  const [part] = [...fits.parts].sort((a, b) => off(a) - off(b));
  return part ? { part, reasons: reasonsOf(marksOf(seatOf(wanted, bore, part, fits), fits)) } : null;
}

/**
 * @param {Wanted} wanted
 * @param {number} bore
 * @param {Part} part
 * @param {Fits} fits
 * @returns {Served | null}
 */
function serve(wanted, bore, part, fits) {
  const seat = seatOf(wanted, bore, part, fits);
  const marks = marksOf(seat, fits);
  const at = verdictOf(marks);
  const verdict = VERDICTS[at];
  if (!verdict) return null;
  const rank = [at, ...marks.map((mark) => mark.grade), ...marks.map((mark) => mark.off)];
  return { part, verdict, reasons: reasonsOf(marks), rank, seat };
}

/**
 * @param {Seat} seat
 * @param {Fits} fits
 */
function marksOf(seat, fits) {
  return [ofFit(seat.fit, fits), ofRoom(seat.room, fits), ofReach(seat.reach, fits)];
}

/** @param {readonly Mark[]} marks */
function reasonsOf(marks) {
  return marks.flatMap((mark) => mark.reasons);
}

/**
 * By rank, then parts sold by themselves, then by id.
 * @param {Served} a
 * @param {Served} b
 */
function compare(a, b) {
  const at = a.rank.findIndex((each, index) => each !== b.rank[index]);
  if (at >= 0) return (a.rank[at] ?? 0) - (b.rank[at] ?? 0);
  return Number(b.part.alone) - Number(a.part.alone) || (a.part.id < b.part.id ? -1 : 1);
}

/**
 * Serves with nothing against it, may serve in doubt, near miss where one thing fails by little, no.
 * @param {readonly Mark[]} marks
 */
function verdictOf(marks) {
  const failed = marks.filter((mark) => mark.fails !== null);
  if (failed.some((mark) => !mark.near || mark.fails !== failed[0]?.fails)) return NO;
  if (failed.length) return NEAR_MISS;
  return marks.some((mark) => mark.doubt) ? 1 : 0;
}

/**
 * @param {import("./fits_seat.js").Fit} fit
 * @param {Fits} fits
 * @returns {Mark}
 */
function ofFit({ word, clearance, loosest, tightest, missing }, fits) {
  const { thresholds } = fits;
  const off = nanometres(clearance - (thresholds.driving_under_mm + thresholds.finger_over_mm) / 2);
  const grade = FIT_GRADES[word];
  if (word === "drops out") {
    const over = reason("too loose", clearance - thresholds.drops_out_over_mm);
    return failing(over, thresholds.near_fit_mm, grade, off, fits);
  }
  if (word === "will not seat") {
    const over = reason("too tight", thresholds.seats_down_to_mm - clearance);
    return failing(over, thresholds.near_fit_mm, grade, off, fits);
  }
  const doubts = unknown(missing);
  if (loosest === "drops out") doubts.push(reason("may be loose"));
  if (tightest === "will not seat") doubts.push(reason("may be tight"));
  return { ...mark(doubts, grade, off), doubt: doubts.length > 0 };
}

/**
 * Of two with room enough, the thicker wall is better.
 * @param {import("./fits_seat.js").Room} room
 * @param {Fits} fits
 * @returns {Mark}
 */
function ofRoom({ word, spare, missing }, fits) {
  const grade = ROOM_GRADES[word ?? "unknown"];
  if (word === null) return { ...mark(unknown(missing), grade), doubt: true };
  const spareMm = spare ?? 0;
  if (word === "will not go") {
    return failing(reason("no room", -spareMm), fits.thresholds.near_room_mm, grade, 0, fits);
  }
  const tight = word === "tight" ? [reason("strings tight", fits.thresholds.threading_mm - spareMm)] : [];
  return mark(tight, grade, nanometres(Math.max(0, spareMm)));
}

/**
 * The best post ends where a cut would leave it.
 * @param {import("./fits_seat.js").Reach} reach
 * @param {Fits} fits
 * @returns {Mark}
 */
function ofReach({ word, proud, trim, holds, missing }, fits) {
  const grade = REACH_GRADES[word ?? "unknown"];
  if (word === null || proud === null) return { ...mark(unknown(missing), grade), doubt: true };
  const off = nanometres(proud - fits.thresholds.leave_proud_mm);
  if (word !== "short") return mark(word === "trim" ? [reason("trim", trim)] : [], grade, off);
  const short = failing(reason("too short", -proud), fits.thresholds.near_length_mm, grade, off, fits);
  return holds ? short : { ...short, reasons: [...short.reasons, reason("lets go")], near: false };
}

/**
 * A part that fails in one thing: a near miss if by little.
 * @param {Reason} why
 * @param {number} nearMm
 * @param {number} grade
 * @param {number} off
 * @param {Fits} fits
 * @returns {Mark}
 */
function failing(why, nearMm, grade, off, fits) {
  return { ...mark([why], grade, off), fails: why.code, near: (why.mm ?? 0) <= nearMm + fits.close_mm };
}

/**
 * @param {Reason[]} reasons
 * @param {number} grade
 * @param {number} [off]
 * @returns {Mark}
 */
function mark(reasons, grade, off = 0) {
  return { reasons, fails: null, near: false, doubt: false, grade, off };
}

/**
 * @param {string} code
 * @param {number | null} [mm]
 * @param {string | null} [what] is missing
 * @returns {Reason}
 */
function reason(code, mm = null, what = null) {
  return { code, mm, what };
}

/** @param {readonly string[]} missing */
function unknown(missing) {
  return missing.map((what) => reason("unknown", null, what));
}

/**
 * A length without its sign as a whole number, so that both sides sort alike.
 * @param {number} mm
 */
function nanometres(mm) {
  return Math.floor(Math.abs(mm) * 1e6 + 0.5);
}
