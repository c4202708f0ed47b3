/**
 * A first walk for a frame that nobody has walked yet: where strings drawn straight would meet the rim. A
 * person then corrects it with the racket in hand. It is a start, never a fact.
 */

import { halves } from "./draft_half.js";
import { DERIVED_GAP_MM } from "./draft_places.js";
import { usualSpacing } from "./draft_spacing.js";

/** @typedef {import("./draft_outline.js").Head} Head */
/** @typedef {import("./draft_walk.js").Place} Place */

/**
 * @param {Head} head
 * @param {number} mains both halves together
 * @param {number} crosses
 * @param {number | null} holes of the whole frame, where somebody has counted: then so many pairs share a hole
 *   as that needs, the nearest first
 * @returns {Place[]} down one side
 */
export function propose(head, mains, crosses, holes = null) {
  const arrivals = arrivalsOf(head, mains, crosses);
  const gaps = arrivals.slice(1).flatMap((there, index) => {
    const here = arrivals[index];
    return here.string[0] === there.string[0] ? [] : [{ gap: there.along - here.along, index }];
  });
  gaps.sort((a, b) => a.gap - b.gap || a.index - b.index);
  const most = holes === null ? null : Math.max(0, arrivals.length - ((holes + 1) >> 1));
  /** @type {Set<number>} */
  const shared = new Set();
  for (const { gap, index } of gaps) {
    if (shared.size === most || (most === null && gap > DERIVED_GAP_MM)) break;
    if (!shared.has(index - 1) && !shared.has(index + 1)) shared.add(index);
  }
  /** @type {Place[]} */
  const places = [];
  for (let index = 0; index < arrivals.length; index++) {
    const here = [arrivals[index].string];
    if (shared.has(index)) here.push(arrivals[++index].string);
    places.push({ passes: here.sort((a, b) => (a[0] < b[0] ? 1 : -1)), drilled: true });
  }
  return places;
}

/**
 * The strings where they meet the rim, from the middle of the head.
 * @param {Head} head
 * @param {number} mains
 * @param {number} crosses
 */
function arrivalsOf(head, mains, crosses) {
  const [half] = halves(head);
  const even = usualSpacing(head, mains, crosses);
  const count = Math.floor(mains / 2);
  const numbers = (/** @type {number} */ most) => Array.from({ length: most }, (_, index) => index + 1);
  const found = [
    ...numbers(count).map((number) => ({ along: half.mains.head.along(even.main(number)), string: `m${number}` })),
    ...numbers(count).map((number) => ({ along: half.mains.throat.along(even.main(number)), string: `m${number}` })),
    ...numbers(crosses).map((number) => ({ along: half.crosses.along(-even.cross(number)), string: `c${number}` })),
  ];
  const order = (/** @type {string} */ string) => (string[0] === "c" ? 0 : 1000) + Number(string.slice(1));
  return found.sort((a, b) => a.along - b.along || order(a.string) - order(b.string));
}
