/**
 * How one barrel sits in one hole: its fit, the room for the strings, its reach. Worked out as in the build, where
 * formulas and sources stand: `bench/fit.py`, `bench/room.py`, `bench/length.py`. Lengths in mm, null is unknown.
 */

/** @typedef {import("./fits_data.js").Fits} Fits */
/** @typedef {import("./fits_data.js").Part} Part */
/** @typedef {import("./fits_data.js").FitWord} FitWord */

/**
 * The word is that of the sizes as measured; `loosest` and `tightest` are those at the limits.
 * @typedef {object} Fit
 * @property {FitWord} word
 * @property {number} clearance bore less barrel: below zero the barrel is squeezed
 * @property {number | null} least
 * @property {number | null} most
 * @property {"clearance" | "transition" | "interference" | null} kind
 * @property {FitWord | null} loosest
 * @property {FitWord | null} tightest
 * @property {string[]} missing
 */

/**
 * @typedef {object} Room
 * @property {import("./fits_data.js").RoomWord | null} word
 * @property {number | null} needs without room to thread
 * @property {number | null} spare lacking below zero
 * @property {string[]} missing
 */

/**
 * @typedef {object} Reach
 * @property {import("./fits_data.js").ReachWord | null} word
 * @property {number | null} proud of the rim; below zero it is short
 * @property {number | null} trim 0 where nothing is cut
 * @property {boolean | null} holds
 * @property {string[]} missing
 */

/** @typedef {{fit: Fit, room: Room, reach: Reach}} Seat */

/**
 * @param {import("./fits_hole.js").Wanted} wanted
 * @param {number} bore of the hole
 * @param {Part} part
 * @param {Fits} fits
 * @returns {Seat}
 */
export function seatOf(wanted, bore, part, fits) {
  return {
    fit: fitOf(bore, wanted.step, part, fits),
    room: roomOf(part.bore_mm, wanted.strings, fits),
    reach: reachOf(part.length_mm, wanted.depth, fits),
  };
}

/**
 * @param {number} bore
 * @param {number | null} step in which it was measured
 * @param {Part} part
 * @param {Fits} fits
 * @returns {Fit}
 */
export function fitOf(bore, step, part, fits) {
  const clearance = bore - part.barrel_mm;
  const word = fitWord(clearance, fits);
  const missing = [];
  if (step === null) missing.push("bore resolution");
  if (part.barrel_u_mm === null) missing.push("barrel tolerance");
  if (step === null || part.barrel_u_mm === null) {
    return { word, clearance, least: null, most: null, kind: null, loosest: null, tightest: null, missing };
  }
  const ofBore = fits.thresholds.coverage * (step / Math.sqrt(12));
  const ofBarrel = fits.thresholds.coverage * part.barrel_u_mm;
  const least = bore - ofBore - (part.barrel_mm + ofBarrel);
  const most = bore + ofBore - (part.barrel_mm - ofBarrel);
  const kind = least >= -fits.close_mm ? "clearance" : most <= fits.close_mm ? "interference" : "transition";
  return {
    word,
    clearance,
    least,
    most,
    kind,
    loosest: fitWord(most, fits),
    tightest: fitWord(least, fits),
    missing,
  };
}

/**
 * A value on a threshold takes the word nearer to snug.
 * @param {number} clearance
 * @param {Fits} fits
 * @returns {FitWord}
 */
function fitWord(clearance, { thresholds, close_mm: close }) {
  if (clearance > thresholds.drops_out_over_mm + close) return "drops out";
  if (clearance > thresholds.finger_over_mm + close) return "finger fit";
  if (clearance >= thresholds.driving_under_mm - close) return "snug";
  return clearance >= thresholds.seats_down_to_mm - close ? "needs driving" : "will not seat";
}

/**
 * @param {number | null} bore the opening inside the barrel
 * @param {readonly number[] | null} strings a diameter for each
 * @param {Fits} fits
 * @returns {Room}
 */
export function roomOf(bore, strings, fits) {
  if (strings?.length === 0) return { word: "runs free", needs: 0, spare: null, missing: [] };
  const missing = [];
  if (bore === null) missing.push("inner bore");
  if (strings === null) missing.push("string diameter");
  const needs = strings && enclosing(strings, fits.ratios);
  if (bore === null || needs === null) return { word: null, needs, spare: null, missing };
  const spare = bore - needs;
  const { thresholds, close_mm: close } = fits;
  const goes = spare >= -close ? "tight" : "will not go";
  return { word: spare >= thresholds.threading_mm - close ? "runs free" : goes, needs, spare, missing };
}

/**
 * The smallest round bore that takes these strings side by side. Four and more unequal ones count as if all were
 * the thickest.
 * @param {readonly number[]} strings
 * @param {readonly number[]} ratios
 */
function enclosing(strings, ratios) {
  const [first = 0, second = 0, third = 0] = [...strings].sort((a, b) => b - a);
  if (strings.length === 2) return first + second;
  if (strings.length === 3 && third < first) return roundThree(first, second, third);
  return (ratios[strings.length] ?? NaN) * first;
}

/**
 * Three strings, the thickest first: the third lies in the gap beside the others, or pushes them apart.
 * @param {number} a
 * @param {number} b
 * @param {number} c
 */
function roundThree(a, b, c) {
  if (c <= (a * b * (a + b)) / (a * a + a * b + b * b)) return a + b;
  return 1 / (2 * Math.sqrt(1 / (a * b) + 1 / (b * c) + 1 / (c * a)) - 1 / a - 1 / b - 1 / c);
}

/**
 * @param {number | null} post length under the flange
 * @param {number | null} depth of the rim
 * @param {Fits} fits
 * @returns {Reach}
 */
export function reachOf(post, depth, { thresholds, close_mm: close }) {
  const missing = [];
  if (depth === null) missing.push("rim depth");
  if (post === null) missing.push("post length");
  if (depth === null || post === null) return { word: null, proud: null, trim: null, holds: null, missing };
  const proud = post - depth;
  const holds = Math.min(post, depth) >= thresholds.hold_share * depth - close;
  const isShort = proud < -thresholds.flush_within_mm - close;
  const isFlush = proud <= thresholds.flush_within_mm + close;
  const long = proud <= thresholds.proud_up_to_mm + close ? "proud" : "trim";
  const word = isShort ? "short" : isFlush ? "flush" : long;
  return { word, proud, trim: word === "trim" ? proud - thresholds.leave_proud_mm : 0, holds, missing };
}
