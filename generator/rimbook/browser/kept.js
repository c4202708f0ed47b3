/** The frames a reader keeps: a list of slugs on the device, and in the address of the board. */

import { onChangeElsewhere, recall, remember } from "./device.js";

const NAME = "frames";
const SLUG = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const LONGEST = 100;

/** More frames than this make no board that anyone could read. */
export const MOST_FRAMES = 60;

/** @type {Set<() => void>} */
const callbacks = new Set();

/**
 * Only what can be a slug, each once, and not too many.
 * @param {unknown} value
 * @returns {string[]}
 */
export function slugsIn(value) {
  if (!Array.isArray(value)) return [];
  const good = value.filter((slug) => typeof slug === "string" && slug.length <= LONGEST && SLUG.test(slug));
  return [...new Set(good)].slice(0, MOST_FRAMES);
}

/**
 * The slugs in the address of a board: `#frames=plover-76,bobbin-64`.
 * @param {string} hash
 * @returns {string[]}
 */
export function slugsInHash(hash) {
  const text = new URLSearchParams(hash.replace(/^#/, "")).get(NAME) ?? "";
  return slugsIn(text.split(",").map((slug) => slug.trim().toLowerCase()));
}

/**
 * @param {readonly string[]} slugs
 * @returns {string} with `#`, or empty
 */
export function hashOf(slugs) {
  return slugs.length ? `#${NAME}=${slugs.join(",")}` : "";
}

/** @returns {string[]} */
export function kept() {
  return slugsIn(recall(NAME));
}

/**
 * @param {readonly string[]} slugs
 * @returns {boolean} whether the device will remember
 */
export function keepAll(slugs) {
  const remembered = remember(NAME, slugsIn(slugs));
  for (const callback of callbacks) callback();
  return remembered;
}

/**
 * Keeps a frame, or lets it go.
 * @param {string} slug
 * @returns {{kept: boolean, remembered: boolean, full: boolean}}
 */
export function toggle(slug) {
  const before = kept();
  const had = before.includes(slug);
  if (!had && before.length >= MOST_FRAMES) return { kept: false, remembered: true, full: true };
  const remembered = keepAll(had ? before.filter((other) => other !== slug) : [...before, slug]);
  return { kept: !had, remembered, full: false };
}

/**
 * Calls back after every change of the kept frames, in this tab or another.
 * @param {() => void} callback
 */
export function onKept(callback) {
  callbacks.add(callback);
  onChangeElsewhere(NAME, callback);
}
