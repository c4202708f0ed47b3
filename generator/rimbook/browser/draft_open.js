/** Maps of the book as they are written, fetched a piece at a time. */

import { sound } from "./draft_sound.js";
import { isMapping } from "./draft_written.js";
import { load } from "./registry.js";

/** @typedef {import("./draft_written.js").Draft} Draft */

const SLUG = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/**
 * The map that the address asks for, as `#map=plover-76`.
 * @param {string} hash
 * @returns {string | null}
 */
export function askedMap(hash) {
  const slug = new URLSearchParams(hash.replace(/^#/, "")).get("map");
  return slug !== null && SLUG.test(slug) ? slug : null;
}

/**
 * The piece that would hold a map: the last one that begins with it or before it.
 * @param {string} slug
 * @param {readonly string[]} pieces the first map of each, in order
 */
export function pieceOf(slug, pieces) {
  let [low, high] = [0, pieces.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (pieces[middle] <= slug) low = middle + 1;
    else high = middle;
  }
  return low ? pieces[low - 1] : null;
}

/**
 * @param {string} slug
 * @param {readonly string[]} pieces
 * @param {string} root the way to the root of the site
 * @returns {Promise<Draft | null>} null where the book has no such map
 */
export async function openMap(slug, pieces, root) {
  const piece = pieceOf(slug, pieces);
  if (piece === null) return null;
  const maps = await load(`drafts/${piece}`, `${root}data/drafts/${piece}.js`);
  const found = isMapping(maps) && Object.hasOwn(/** @type {object} */ (maps), slug) ? /** @type {any} */ (maps)[slug] : null;
  return sound(found);
}
