/**
 * What the address bar remembers, behind the `#`: so it works from a folder on disk, and no server
 * learns what was sought.
 */

import { MOST_CHARACTERS } from "./ask.js";
import { NO_FILTERS } from "./filters.js";

/**
 * @typedef {object} Search
 * @property {string} typed
 * @property {import("./filters.js").Filters} filters
 */

const TYPED = "q";

/**
 * Keys that nobody knows, or knows no longer, are passed over.
 * @param {string} hash with or without `#`
 * @returns {Search}
 */
export function readSearch(hash) {
  const given = new URLSearchParams(hash.replace(/^#/, ""));
  const filters = { ...NO_FILTERS };
  for (const name of names()) filters[name] = (given.get(name) ?? "").slice(0, MOST_CHARACTERS);
  return { typed: (given.get(TYPED) ?? "").slice(0, MOST_CHARACTERS + 1), filters };
}

/**
 * Whether anything here is for the finder: an anchor such as `#content` is not.
 * @param {string} hash
 */
export function holdsSearch(hash) {
  const given = new URLSearchParams(hash.replace(/^#/, ""));
  return hash.length < 2 || [TYPED, ...names()].some((name) => given.has(name));
}

/**
 * @param {Search} search
 * @returns {string} with `#`, or empty
 */
export function writeSearch({ typed, filters }) {
  const kept = new URLSearchParams();
  if (typed.trim()) kept.set(TYPED, typed.slice(0, MOST_CHARACTERS));
  for (const name of names()) if (filters[name].trim()) kept.set(name, filters[name].trim());
  const text = kept.toString();
  return text && `#${text}`;
}

function names() {
  return /** @type {import("./filters.js").FilterName[]} */ (Object.keys(NO_FILTERS));
}
