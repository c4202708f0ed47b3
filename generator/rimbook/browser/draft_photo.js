/**
 * From points of a photo to places along the rim.
 *
 * Four corners of a rectangle of known size give the plane in millimetres; the middle of the head and the middle
 * of the throat say how the frame lies in it. What is not in that plane is measured wrong: at a height h above it,
 * seen from a distance D, lengths come out too great by the share h / (D - h) (similar triangles).
 */

import { apply, homography, stretch, times, turn } from "./draft_homography.js";
import { at, throatOf } from "./draft_outline.js";

/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_homography.js").Matrix} Matrix */
/** @typedef {import("./draft_outline.js").Curve} Curve */
/** @typedef {import("./draft_outline.js").Point} Point */

/** Known rectangles, long side and short side in mm: ISO 216; 11 by 8.5 inches (ANSI/ASME Y14.1). */
export const SHEETS = /** @type {const} */ ([
  ["A4 sheet", 297, 210],
  ["A3 sheet", 420, 297],
  ["Letter sheet", 279.4, 215.9],
]);

export const CORNERS = ["corner 1", "corner 2", "corner 3", "corner 4"];
export const MIDDLES = ["middle of the head", "middle of the throat"];

/**
 * How a photo shows the face: the way from its pixels to millimetres, x to the right and y towards the head.
 * @typedef {object} Sight
 * @property {Matrix} face
 * @property {number} apartMm from the middle of the head to the middle of the throat, as the photo has it
 * @property {number} drawnMm the same on the line of the draft
 */

/**
 * A picked hole: down its side from the middle of the head, how far outside the line of holes (below nought
 * inside), and what one pixel is at most there. All in mm.
 * @typedef {object} Reading
 * @property {string} address
 * @property {number} place
 * @property {number} off
 * @property {number} pixel
 */

/**
 * @param {readonly Point[]} corners in the photo, clockwise as seen, in pixels from the top left
 * @param {readonly [number, number]} sheet from corner 1 to 2, and from 2 to 3, in mm
 * @param {readonly Point[]} middles of head and throat, in the photo
 * @param {Curve} line on which the holes sit
 * @returns {Sight | string} or why there is none
 */
export function sightOf(corners, [long, short], middles, line) {
  const plane = planeOf(corners, [long, short]);
  if (typeof plane === "string") return plane;
  const [head, throat] = middles.map((point) => apply(plane, point));
  if (!head || !throat) return "A middle lies beyond the horizon of the sheet: mend the corners.";
  const apartMm = Math.hypot(head[0] - throat[0], head[1] - throat[1]);
  const [top, low] = [at(line, 0).at, at(line, throatOf(line)).at];
  const drawnMm = Math.hypot(top[0] - low[0], top[1] - low[1]);
  if (apartMm < drawnMm / 10) return "The middle of the head and the middle of the throat are picked too close together.";
  // Turned so that throat to head is up, the middle between them where it is in the draft; never scaled.
  const [sine, cosine] = [(head[0] - throat[0]) / apartMm, (head[1] - throat[1]) / apartMm];
  const [x, y] = [(head[0] + throat[0]) / 2, (head[1] + throat[1]) / 2];
  const [toX, toY] = [(top[0] + low[0]) / 2, (top[1] + low[1]) / 2];
  const laid = [cosine, -sine, toX - cosine * x + sine * y, sine, cosine, toY - sine * x - cosine * y, 0, 0, 1];
  return { face: times(laid, plane), apartMm, drawnMm };
}

/**
 * The plane of a rectangle: from pixels to mm from the middle of it, y upwards.
 * @param {readonly Point[]} corners clockwise as seen
 * @param {readonly [number, number]} sheet
 * @returns {Matrix | string}
 */
export function planeOf(corners, [long, short]) {
  if (!(long > 0 && short > 0)) return "Say how long and how wide the sheet is, in mm.";
  const [a, b] = [long / 2, short / 2];
  const plane = homography(corners, [[-a, b], [a, b], [a, -b], [-a, -b]]); // prettier-ignore
  if (typeof plane === "string") return plane;
  // Pixels count downwards.
  if (turn(corners[0], corners[1], corners[2]) < 0) return "The corners go round anticlockwise: pick them clockwise, or left and right are exchanged.";
  return plane;
}

/**
 * @param {Sight} sight
 * @param {Curve} line
 * @param {string} address
 * @param {Point} pixel
 * @returns {Reading | null} null where the pixel shows nothing of the plane
 */
export function readingOf({ face }, line, address, pixel) {
  const point = apply(face, pixel);
  if (!point) return null;
  const { along, off } = nearestAlong(line, point);
  return { address, place: placeDown(line, address[0] === "R" ? "R" : "L", along), off, pixel: stretch(face, pixel) };
}

/**
 * The place of the line nearest to a point.
 * @param {Curve} line
 * @param {Point} point
 * @returns {{along: number, off: number}} mm clockwise from the middle of the head, and mm outside the line
 */
export function nearestAlong({ points, along, length }, [x, y]) {
  let [best, found, side] = [Infinity, 0, 1];
  points.forEach(([ax, ay], index) => {
    const [bx, by] = points[(index + 1) % points.length];
    const [vx, vy] = [bx - ax, by - ay];
    const step = vx * vx + vy * vy;
    const share = step ? Math.min(1, Math.max(0, ((x - ax) * vx + (y - ay) * vy) / step)) : 0;
    const away = Math.hypot(x - ax - share * vx, y - ay - share * vy);
    if (away >= best) return;
    const end = index + 1 < points.length ? along[index + 1] : length;
    // Clockwise, outside is to the left.
    [best, found, side] = [away, along[index] + share * (end - along[index]), vx * (y - ay) - vy * (x - ax) < 0 ? -1 : 1];
  });
  return { along: found, off: best * side };
}

/**
 * From the middle of the head down one side; a little below nought on the other side of the middle.
 * @param {Curve} line
 * @param {Side} side
 * @param {number} along
 */
export function placeDown({ length }, side, along) {
  const place = side === "R" ? along : length - along;
  return place > 0.75 * length ? place - length : place;
}

/**
 * The hole of a side that is expected nearest to a place.
 * @param {ReadonlyMap<string, number>} expected places down each side, by address
 * @param {Side} side
 * @param {number} place
 * @returns {string | null}
 */
export function holeAt(expected, side, place) {
  const own = [...expected].filter(([address]) => address[0] === side);
  const first = /** @type {[string, number] | null} */ (own[0] ?? null);
  return own.reduce((best, each) => (best && Math.abs(each[1] - place) < Math.abs(best[1] - place) ? each : best), first)?.[0] ?? null;
}
