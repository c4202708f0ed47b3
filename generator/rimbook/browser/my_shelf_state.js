/**
 * What a shop typed on the page of its shelf: kept on this device and nowhere else. What lies on the shelf and
 * what parts cost is kept by the page of prices (`shop.js`).
 */

import { onChangeElsewhere, recall, remember } from "./device.js";

/**
 * `count` and `restrings` (a year, of all of them together) are null where nobody typed them. `name` is what
 * the frame was called when it was added, for the day on which the book has it no more.
 * @typedef {{slug: string, name: string, count: number | null, restrings: number | null}} KeptFrame
 */

/** What was used of a part, in years. @typedef {{part: string, count: number, years: number}} Used */

/** Weeks, weeks, a chance and shares from 0 to 1; null, or no share, is the assumption.
 * @typedef {{lead: number | null, review: number | null, service: number | null, shares: Record<string, number>}} OwnTerms
 */

/**
 * `counted`: whether the plan goes by what was used. `club` is what the shop is called in a club's file.
 * @typedef {object} MyShelf
 * @property {KeptFrame[]} frames
 * @property {OwnTerms} terms
 * @property {Used[]} used
 * @property {boolean} counted
 * @property {string} club
 */

/** The bounds of what can be typed, as the page hands them over.
 * @typedef {{frames: number, weeks: number, count: number, restrings: number}} Limits
 */

const NAME = "shelf";
const FORMAT = 1;
const SLUG = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const LONGEST_SLUG = 60;
const LONGEST_NAME = 80;
const MOST_USED = 5000;

/** @type {MyShelf} */
export const NO_SHELF = {
  frames: [],
  terms: { lead: null, review: null, service: null, shares: {} },
  used: [],
  counted: false,
  club: "",
};

/**
 * Whatever of it can be relied on; what makes no sense is left out.
 * @param {Limits} limits
 * @param {readonly string[]} kinds kinds of part that have a share
 * @returns {MyShelf}
 */
export function openShelf(limits, kinds) {
  const kept = /** @type {any} */ (recall(NAME));
  if (kept?.format !== FORMAT) return NO_SHELF;
  const ofKind = kinds.map((kind) => [kind, within(kept.terms?.shares?.[kind], 1)]);
  const service = within(kept.terms?.service, 1);
  return {
    frames: framesOf(kept.frames, limits),
    terms: {
      lead: within(kept.terms?.lead, limits.weeks),
      review: within(kept.terms?.review, limits.weeks),
      service: service === 0 || service === 1 ? null : service,
      shares: Object.fromEntries(ofKind.filter(([, share]) => share !== null)),
    },
    used: listOf(kept.used).filter(isUsed).slice(0, MOST_USED),
    counted: kept.counted === true,
    club: textOf(kept.club),
  };
}

/**
 * @param {MyShelf} shelf
 * @returns {boolean} whether it will still be there next time
 */
export function keepShelf(shelf) {
  return remember(NAME, { format: FORMAT, ...shelf });
}

/** @param {() => void} callback another tab has changed it */
export function onShelfElsewhere(callback) {
  onChangeElsewhere(NAME, callback);
}

/** @param {unknown} slug */
export function isSlug(slug) {
  return typeof slug === "string" && slug.length <= LONGEST_SLUG && SLUG.test(slug);
}

/**
 * The same shelf with more frames, each once and no more than the limit.
 * @param {MyShelf} shelf
 * @param {readonly {slug: string, name: string}[]} more
 * @param {number} most
 * @returns {MyShelf}
 */
export function withFrames(shelf, more, most) {
  const had = new Set(shelf.frames.map(({ slug }) => slug));
  const fresh = more.filter(({ slug }) => isSlug(slug) && !had.has(slug));
  const added = fresh.map(({ slug, name }) => ({ slug, name: textOf(name), count: null, restrings: null }));
  return { ...shelf, frames: [...shelf.frames, ...added].slice(0, most) };
}

/**
 * The same shelf with something of one frame changed. A frame that was taken out meanwhile stays out.
 * @param {MyShelf} shelf
 * @param {string} slug
 * @param {Partial<KeptFrame>} change
 * @returns {MyShelf}
 */
export function withFrame(shelf, slug, change) {
  return { ...shelf, frames: shelf.frames.map((each) => (each.slug === slug ? { ...each, ...change } : each)) };
}

/**
 * @param {unknown} value
 * @param {Limits} limits
 * @returns {KeptFrame[]}
 */
function framesOf(value, limits) {
  /** @type {Map<string, KeptFrame>} */
  const found = new Map();
  for (const each of listOf(value)) {
    if (!isSlug(each?.slug) || found.has(each.slug)) continue;
    const count = within(each.count, limits.count);
    found.set(each.slug, {
      slug: each.slug,
      name: textOf(each.name) || each.slug,
      count: Number.isInteger(count) ? count : null,
      restrings: within(each.restrings, limits.restrings),
    });
  }
  return [...found.values()].slice(0, limits.frames);
}

/** @param {any} each */
function isUsed(each) {
  return isSlug(each?.part) && Number.isInteger(each.count) && each.count >= 0 && each.years > 0 && each.years <= 100;
}

/** @param {unknown} value a name, as it is written in one line */
export function textOf(value) {
  return typeof value === "string" ? value.replace(/\s+/g, " ").trim().slice(0, LONGEST_NAME) : "";
}

/**
 * @param {unknown} value
 * @param {number} most
 * @returns {number | null}
 */
function within(value, most) {
  return typeof value === "number" && value >= 0 && value <= most ? value : null;
}

/**
 * @param {unknown} value
 * @returns {any[]}
 */
function listOf(value) {
  return Array.isArray(value) ? value : [];
}
