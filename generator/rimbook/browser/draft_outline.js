/**
 * The head outline: the closed line in millimetres on which the holes sit, clockwise from the middle of the
 * head. The same curves, sampled alike, as where the site is built.
 */

import { smooth } from "./draft_measured.js";

/** Pieces from the middle of the head to the middle of the throat. */
export const STEPS = 360;

/** @typedef {[number, number]} Point x to the right, y towards the head */

/**
 * @typedef {object} Head
 * @property {"ellipse" | "superellipse" | "teardrop" | "points"} outline
 * @property {number} width
 * @property {number} height
 * @property {number | null} exponent
 * @property {number | null} taper
 * @property {Point[]} points
 */

/**
 * @typedef {object} Curve
 * @property {Point[]} points
 * @property {number[]} along length from the start to each point
 * @property {number} length of the whole
 */

const TURNS = Array.from({ length: STEPS / 2 }, (_, step) => (Math.PI * step) / STEPS);
const SIN = [...TURNS.map(Math.sin), 1, ...TURNS.map(Math.sin).reverse()];
const COS = [...TURNS.map(Math.cos), 0, ...TURNS.map((turn) => -Math.cos(turn)).reverse()];

/**
 * @param {Head} head
 * @returns {Curve}
 */
export function curve(head) {
  const [a, b] = [head.width / 2, head.height / 2];
  if (head.outline === "points") return measured(head.points);
  if (head.outline === "teardrop") return mirrored(teardrop(a, b, head.taper ?? 0));
  const exponent = head.outline === "superellipse" && head.exponent ? head.exponent : 2;
  return mirrored(superellipse(a, b, exponent));
}

/**
 * @param {Curve} line
 * @returns {number} from the middle of the head clockwise to the middle of the throat
 */
export function throatOf({ points, along }) {
  return along[points.findIndex(([x], index) => index > 0 && x === 0)];
}

/**
 * The point so many millimetres clockwise from the middle of the head, and the unit way out of the head.
 * @param {Curve} line
 * @param {number} along
 * @returns {{at: Point, out: Point}}
 */
export function at(line, along) {
  const place = ((along % line.length) + line.length) % line.length;
  const { points } = line;
  const count = points.length;
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (line.along[middle] <= place) low = middle + 1;
    else high = middle;
  }
  const index = low - 1;
  const before = points[(index - 1 + count) % count];
  const [here, after, beyond] = [points[index], points[(index + 1) % count], points[(index + 2) % count]];
  const [ux, uy] = [here[0] - before[0], here[1] - before[1]];
  const [vx, vy] = [after[0] - here[0], after[1] - here[1]];
  const [wx, wy] = [beyond[0] - after[0], beyond[1] - after[1]];
  const [u, v, w] = [Math.hypot(ux, uy), Math.hypot(vx, vy), Math.hypot(wx, wy)];
  const share = (place - line.along[index]) / v;
  const [first, last] = [((1 - share) * v) / (u + v) / u, (share * v) / (v + w) / w];
  const middle = (((1 - share) * u) / (u + v) + (share * w) / (v + w)) / v;
  let [tx, ty] = [first * ux + middle * vx + last * wx, first * uy + middle * vy + last * wy];
  let size = Math.hypot(tx, ty);
  if (!size) [tx, ty, size] = [vx, vy, v];
  return { at: [here[0] + share * vx, here[1] + share * vy], out: [-ty / size, tx / size] };
}

/**
 * @param {number} a
 * @param {number} b
 * @param {number} exponent
 * @returns {Point[]} the right half, from head to throat
 */
function superellipse(a, b, exponent) {
  return SIN.map((s, step) => {
    const c = COS[step];
    const reach = exponent === 2 ? 1 : (s ** exponent + Math.abs(c) ** exponent) ** (-1 / exponent);
    return [a * reach * s, b * reach * c];
  });
}

/**
 * Between the ellipse and the piriform, with a widest place of the given width.
 * @param {number} a
 * @param {number} b
 * @param {number} taper
 * @returns {Point[]}
 */
function teardrop(a, b, taper) {
  const k = taper / Math.SQRT2;
  const widest = (2 * k) / (1 + Math.sqrt(1 + 8 * k * k));
  const scale = a / (Math.sqrt(1 - widest * widest) * (1 + k * widest));
  return SIN.map((s, step) => [scale * s * (1 + k * COS[step]), b * COS[step]]);
}

/**
 * @param {Point[]} right
 * @returns {Curve}
 */
function mirrored(right) {
  const left = right.slice(1, -1).reverse();
  const down = lengths(right);
  const whole = 2 * down[down.length - 1];
  const back = down.slice(1, -1).reverse();
  return {
    points: [...right, ...left.map(([x, y]) => /** @type {Point} */ ([-x, y]))],
    along: [...down, ...back.map((place) => whole - place)],
    length: whole,
  };
}

/**
 * @param {Point[]} given
 * @returns {Curve}
 */
function measured(given) {
  const points = smooth(given, 2 * STEPS);
  const along = lengths([...points, points[0]]);
  return { points, along: along.slice(0, -1), length: along[along.length - 1] };
}

/**
 * @param {Point[]} points
 * @returns {number[]} from the first to each
 */
function lengths(points) {
  let total = 0;
  return points.map(([x, y], index) => {
    if (index) total += Math.hypot(x - points[index - 1][0], y - points[index - 1][1]);
    return total;
  });
}
