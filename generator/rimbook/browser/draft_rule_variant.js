/** Whether a draft is a variant of a frame that there is, by the same maker, and not in a ring. */

import { folded, others } from "./draft_names.js";
import { nearest, shown } from "./draft_text.js";

/** @typedef {import("./draft_problem.js").OtherFrame} OtherFrame */
/** @typedef {import("./draft_where.js").Rule} Rule */

/** @type {Rule} */
export function variantOf({ draft, frame }, given) {
  const parent = draft.variant_of ?? null;
  const frames = others(given);
  const path = ["variant_of"];
  if (parent === null) return [];
  if (parent === given.slug) {
    return [{ path, message: `${parent} cannot be a variant of itself.`, tip: "Leave variant_of out." }];
  }
  const other = frames.get(parent);
  if (!other) {
    return [
      {
        path,
        message: `There is no map ${shown(parent)} to be a variant of.`,
        nearest: nearest(parent, frames.keys()),
        tip: "The name is that of the map's file, without .yaml.",
      },
    ];
  }
  const { look_alike: alike } = given.limits;
  if (folded(other.maker, alike) !== folded(frame.maker, alike)) {
    return [
      {
        path,
        message: `${parent} is made by ${shown(other.maker)}, not by ${shown(frame.maker)}.`,
        expected: `another frame by ${shown(frame.maker)}`,
      },
    ];
  }
  const way = ring(parent, frames, given.slug);
  if (!way.length) return [];
  const message = `These frames are variants of each other in a ring: ${way.join(", ")}.`;
  return [{ path, message, tip: "The oldest of them is a variant of none." }];
}

/**
 * The way from the draft back to itself, or nothing.
 * @param {string} parent
 * @param {Map<string, OtherFrame>} frames
 * @param {string | undefined} slug
 * @returns {string[]}
 */
function ring(parent, frames, slug) {
  if (!slug) return [];
  const way = [slug];
  /** @type {string | null} */
  let current = parent;
  while (current !== null && frames.has(current) && !way.includes(current)) {
    way.push(current);
    current = frames.get(current)?.variant_of ?? null;
  }
  return current === slug ? [...way, slug] : [];
}
