/** The frames of a board, fetched: their cards, what was renamed, and what is not there. */

import { readCard } from "./board_sum.js";
import { unpackFrames } from "./index_data.js";
import { load } from "./registry.js";

/** @typedef {import("./board_sum.js").Card} Card */

/**
 * @typedef {object} Absent
 * @property {string} slug
 * @property {boolean} gone whether the book surely has no such frame
 */

/**
 * @typedef {object} Fetched
 * @property {string[]} there slugs that are surely in the book
 * @property {Card[]} cards
 * @property {Absent[]} absent
 * @property {ReadonlyMap<string, string>} renamed absent slugs that have a new name, and that name
 */

/**
 * @param {readonly string[]} slugs
 * @param {string} root
 * @returns {Promise<Fetched>}
 */
export async function fetchFrames(slugs, root) {
  const found = await fetchCards(slugs, root);
  const book = found.includes(null) ? await knownNames(root) : null;
  const absent = slugs.filter((_, at) => !found[at]);
  return {
    there: slugs.filter((slug, at) => found[at] || book?.slugs.has(slug)),
    cards: found.filter((card) => card !== null),
    absent: absent.map((slug) => ({ slug, gone: book !== null && !book.slugs.has(slug) })),
    renamed: new Map([...(book?.moved ?? [])].filter(([old]) => absent.includes(old))),
  };
}

/**
 * @param {readonly string[]} slugs
 * @param {string} root
 * @returns {Promise<(Card | null)[]>} null where a card could not be loaded
 */
function fetchCards(slugs, root) {
  return Promise.all(
    slugs.map((slug) => load(`frame:${slug}`, `${root}data/board/${slug}.js`).then(readCard, () => null)),
  );
}

/**
 * All slugs of the book and all that moved, or null where the list itself cannot be loaded.
 * @param {string} root
 */
async function knownNames(root) {
  try {
    const index = unpackFrames(await load("finder", `${root}data/finder.js`));
    return {
      slugs: new Set(index.names.map((_, frame) => index.slug(frame))),
      moved: new Map(Object.entries(index.columns.moved)),
    };
  } catch {
    return null;
  }
}
