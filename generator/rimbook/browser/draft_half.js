/** One half of the rim, and where lines of the string bed meet it. */

import { curve } from "./draft_outline.js";

/** @typedef {import("./draft_outline.js").Head} Head */
/** @typedef {"head" | "throat"} End */

/**
 * A stretch of the rim on which one coordinate, the key, never falls. A line beyond either end meets it there.
 */
export class Stretch {
  /**
   * @param {number[]} keys
   * @param {number[]} along
   * @param {number[]} heights
   */
  constructor(keys, along, heights) {
    let most = -Infinity;
    this.keys = keys.map((key) => (most = Math.max(most, key)));
    this.alongs = along;
    this.heights = heights;
  }

  /**
   * @param {number} key
   * @returns {number} where the line meets the stretch, in mm from the middle of the head
   */
  along(key) {
    const [index, share] = this.#meet(key);
    return between(this.alongs, index, share);
  }

  /**
   * @param {number} key
   * @returns {[number, number]} the y where the line meets the stretch, and how steep the rim is there
   */
  height(key) {
    const [index, share] = this.#meet(key);
    const rise = this.heights[index] - this.heights[index - 1];
    const run = this.alongs[index] - this.alongs[index - 1];
    return [between(this.heights, index, share), run ? Math.abs(rise / run) : 1];
  }

  /**
   * @param {number} key
   * @returns {[number, number]} the piece that ends at an index, and the share of it before the line
   */
  #meet(key) {
    const { keys } = this;
    const found = keys.findIndex((each) => each >= key);
    const index = Math.min(Math.max(found < 0 ? keys.length : found, 1), keys.length - 1);
    const step = keys[index] - keys[index - 1];
    const share = step ? (key - keys[index - 1]) / step : 0;
    return [index, Math.min(Math.max(share, 0), 1)];
  }
}

/**
 * Lengths run from the middle of the head down this side. A main is found by its distance from the centre
 * line, a cross by its distance below the origin.
 * @typedef {object} Half
 * @property {number} length
 * @property {Record<End, Stretch>} mains
 * @property {Stretch} crosses
 */

/**
 * The right and the left half of a head; one and the same where it is symmetric.
 * @param {Head} head
 * @returns {[Half, Half]}
 */
export function halves(head) {
  const { points, along, length } = curve(head);
  const turn = points.findIndex(([x], index) => index > 0 && x === 0);
  const right = half(
    points.slice(0, turn + 1).map(([x]) => x),
    points.slice(0, turn + 1).map(([, y]) => y),
    along.slice(0, turn + 1),
  );
  if (head.outline !== "points") return [right, right];
  const back = points.slice(turn).reverse();
  const left = half(
    [0, ...back.map(([x]) => -x)],
    [points[0][1], ...back.map(([, y]) => y)],
    [0, ...along.slice(turn).reverse().map((place) => length - place)],
  );
  return [right, left];
}

/**
 * @param {number[]} xs
 * @param {number[]} ys
 * @param {number[]} along
 * @returns {Half}
 */
function half(xs, ys, along) {
  let widest = 1;
  for (let index = 1; index < xs.length - 1; index++) if (xs[index] > xs[widest]) widest = index;
  const head = (/** @type {number[]} */ values) => values.slice(0, widest + 1);
  const throat = (/** @type {number[]} */ values) => values.slice(widest).reverse();
  return {
    length: along[along.length - 1],
    mains: {
      head: new Stretch(head(xs), head(along), head(ys)),
      throat: new Stretch(throat(xs), throat(along), throat(ys)),
    },
    crosses: new Stretch(
      ys.map((y) => -y),
      along,
      ys,
    ),
  };
}

/**
 * @param {number[]} values
 * @param {number} index
 * @param {number} share
 */
function between(values, index, share) {
  return values[index - 1] + share * (values[index] - values[index - 1]);
}
