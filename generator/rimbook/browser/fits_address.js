/**
 * A measured hole in the address of the page.
 *
 * A link may fill the form in: `fits/index.html#bore=2.1&depth=9.4&strings=1&string=0.68`. The keys:
 *
 * - `bore`: the drilled hole, in mm;
 * - `depth`: the rim along the hole, in mm;
 * - `strings`: how many strings go through, 1 where it is left out;
 * - `string`: their diameter in mm; two that differ as `0.62+0.70`, which is how a space is written there, or
 *   as the key twice;
 * - `step`: how finely the bore was measured, in mm.
 *
 * The same keys after a `?` are understood too, but a server learns those; the page moves them behind the `#`.
 * What stands behind the `#` counts alone.
 */

import { FIELDS, NOTHING_TYPED } from "./fits_hole.js";

/** @typedef {import("./fits_hole.js").Typed} Typed */

export const MOST_CHARACTERS = 40;

/**
 * @param {{search: string, hash: string}} address
 * @returns {Typed | null} null where no key of ours is there
 */
export function readAddress({ search, hash }) {
  const given = [hash.replace(/^#/, ""), search].map((text) => new URLSearchParams(text)).find(holdsHole);
  if (!given) return null;
  const typed = { ...NOTHING_TYPED };
  for (const field of FIELDS) {
    const values = given.getAll(field).slice(0, MOST_CHARACTERS);
    if (values.length) typed[field] = values.join(" ").slice(0, MOST_CHARACTERS);
  }
  return typed;
}

/**
 * @param {Typed} typed
 * @returns {string} with `#`, or empty where nothing is typed
 */
export function writeAddress(typed) {
  if (FIELDS.every((field) => typed[field] === NOTHING_TYPED[field])) return "";
  const kept = new URLSearchParams();
  for (const field of FIELDS) {
    if (typed[field] !== NOTHING_TYPED[field] || field === "strings") kept.set(field, typed[field].trim());
  }
  return `#${kept}`;
}

/** Moves what a link put after the `?` behind the `#`. From a folder on disk a browser may refuse. */
export function moveBehindHash() {
  const given = new URLSearchParams(location.search);
  if (!holdsHole(given)) return;
  const typed = readAddress(location);
  for (const field of FIELDS) given.delete(field);
  const rest = given.toString() && `?${given}`;
  try {
    history.replaceState(history.state, "", location.pathname + rest + (typed ? writeAddress(typed) : ""));
  } catch {
    // Then both stand there, and what is behind the # counts.
  }
}

/** @param {URLSearchParams} given */
function holdsHole(given) {
  return FIELDS.some((field) => given.has(field));
}
