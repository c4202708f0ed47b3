/** What the ranking of parts for a hole works from, as the build hands it over. Lengths in mm, null is unknown. */

const FORMAT = 1;

/** @typedef {"drops out" | "finger fit" | "snug" | "needs driving" | "will not seat"} FitWord */
/** @typedef {"runs free" | "tight" | "will not go"} RoomWord */
/** @typedef {"short" | "flush" | "proud" | "trim"} ReachWord */
/** @typedef {"serves" | "may serve" | "near miss"} Verdict */

/**
 * A single or wide part whose barrel somebody measured.
 * @typedef {object} Part
 * @property {string} id
 * @property {string} name
 * @property {string} path of its page, from the root of the site
 * @property {string} kind in words
 * @property {number} barrel_mm outside
 * @property {number | null} barrel_u_mm its standard uncertainty
 * @property {number | null} bore_mm the opening inside
 * @property {number | null} length_mm under the flange
 * @property {boolean} alone whether it is sold by itself
 * @property {string} sold how, in words
 * @property {string} pin that pushes it out, in words
 * @property {string | null} material
 * @property {boolean} swells with moisture
 */

/**
 * Those of the build's thresholds that the ranking needs; see `bench/thresholds.py`.
 * @typedef {object} Thresholds
 * @property {number} drops_out_over_mm
 * @property {number} finger_over_mm
 * @property {number} driving_under_mm
 * @property {number} seats_down_to_mm
 * @property {number} coverage
 * @property {number} threading_mm
 * @property {number} flush_within_mm
 * @property {number} proud_up_to_mm
 * @property {number} leave_proud_mm
 * @property {number} hold_share
 * @property {number} near_fit_mm
 * @property {number} near_room_mm
 * @property {number} near_length_mm
 * @property {Record<string, number[]>} string_mm usual diameters by sport, thinnest first
 */

/**
 * @typedef {object} Fits
 * @property {number} format
 * @property {Thresholds} thresholds
 * @property {number} close_mm lengths nearer than this are the same
 * @property {number[]} ratios bore over string diameter, by the number of strings
 * @property {Record<import("./fits_hole.js").Field, number>} most what each measure may be at most
 * @property {Record<string, string>} sentences by code of the reason, with `{mm}` and `{what}`
 * @property {Record<string, string>} measure how to measure what is missing
 * @property {Record<string, string>} cautions
 * @property {Part[]} parts
 * @property {{name: string, path: string, why: string}[]} unjudged parts of which no fit is claimed
 */

/**
 * @param {unknown} value as the data file handed it over
 * @returns {Fits} throws where it is of another edition
 */
export function readFits(value) {
  const fits = /** @type {Partial<Fits> | null | undefined} */ (value);
  if (fits?.format !== FORMAT || !Array.isArray(fits.parts)) {
    throw new Error("The list of parts is of another edition than this page.");
  }
  return /** @type {Fits} */ (fits);
}
