/** What a worker tells pages of what it keeps. */

/**
 * Why not everything wanted is kept: no network; no room; the browser refuses; the site offers nothing to keep;
 * the server has not all that its list names.
 * @typedef {"" | "away" | "full" | "refused" | "nothing" | "missing"} Trouble
 */

/**
 * @typedef {object} Kept
 * @property {number} files how many are kept
 * @property {number} bytes
 * @property {number} allFiles how many there are
 * @property {number} allBytes
 * @property {boolean} ask whether the book is so large that its reader is asked first
 * @property {boolean} whole whether everything is wanted
 * @property {boolean} busy
 * @property {Trouble} trouble
 */

/** @type {Readonly<Kept>} */
export const NOTHING_KEPT = Object.freeze({
  files: 0,
  bytes: 0,
  allFiles: 0,
  allBytes: 0,
  ask: false,
  whole: false,
  busy: false,
  trouble: "",
});

/** What ends a round of keeping early; "stale" where the server has a newer edition than the one being fetched. */
export class Stop extends Error {
  /** @param {Trouble | "stale"} why */
  constructor(why) {
    super(why);
    this.why = why;
  }
}
