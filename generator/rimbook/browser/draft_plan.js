/** Where everything of the live drawing goes, in units of the page: the head face on, handle down. */

import { at, curve } from "./draft_outline.js";
import { places } from "./draft_places.js";

/** @typedef {import("./draft_outline.js").Curve} Curve */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_settle.js").Hole} Hole */
/** @typedef {import("./draft_svg.js").Spot} Spot */

export const WIDTH = 360;
const [TALLEST, MARGIN] = [520, 56];
const [SMALLEST, LARGEST] = [2.8, 4.2];
const SHARED_SPREAD = 1.5;
const STEP_MM = 3;

/**
 * @typedef {object} Plan
 * @property {Curve} line
 * @property {Map<string, number>} along mm clockwise of each place, also of those not drilled
 * @property {(alongMm: number, out?: number) => Spot} spot on the rim, so many units outside
 * @property {(alongMm: number) => Spot} out the unit way out of the head, on the page
 * @property {(startMm: number, endMm: number, out: number) => Spot[]} beside the line clockwise between two places
 * @property {Spot[]} rim
 * @property {number} radius of a mark
 * @property {number} band half the width of the rim
 */

/**
 * @param {DraftFrame} frame
 * @returns {Plan}
 */
export function planned(frame) {
  const line = curve(frame.head);
  const [xs, ys] = [line.points.map(([x]) => x), line.points.map(([, y]) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min((WIDTH - 2 * MARGIN) / (right - left), TALLEST / (high - low));
  const onPage = (/** @type {Spot} */ [x, y]) => /** @type {Spot} */ ([(x - left) * scale, (high - y) * scale]);
  const along = alongOf(frame.holes, places(frame), line.length);
  const sight = (/** @type {number} */ place) => {
    const { at: point, out } = at(line, place);
    return { spot: onPage(point), out: /** @type {Spot} */ ([out[0], -out[1]]) };
  };
  const spot = (/** @type {number} */ place, units = 0) => {
    const { spot: [x, y], out } = sight(place);
    return /** @type {Spot} */ ([x + out[0] * units, y + out[1] * units]);
  };
  const beside = (/** @type {number} */ start, /** @type {number} */ end, /** @type {number} */ units) => {
    const length = (((end - start) % line.length) + line.length) % line.length;
    const steps = Math.max(1, Math.ceil(length / STEP_MM));
    return Array.from({ length: steps + 1 }, (_, index) => spot(start + (length * index) / steps, units));
  };
  const radius = radiusOf(frame.holes, along, line.length, scale);
  const rim = line.points.filter((_, index) => index % 4 === 0).map(onPage);
  return { line, along, spot, out: (place) => sight(place).out, beside, rim, radius, band: radius * 1.75 };
}

/**
 * Where each place is. One that is not drilled has no spot: it is drawn midway between its neighbours.
 * @param {readonly Hole[]} holes
 * @param {Map<string, {along: number}>} known
 * @param {number} length
 * @returns {Map<string, number>}
 */
function alongOf(holes, known, length) {
  const count = holes.length;
  const drilled = holes.flatMap(({ address }, index) => (known.has(address) ? [index] : []));
  const placeAt = (/** @type {number} */ index) => known.get(holes[index].address)?.along ?? 0;
  const found = holes.map(({ address }, index) => known.get(address)?.along ?? (length * (index + 0.5)) / count);
  drilled.forEach((before, turn) => {
    const after = drilled[(turn + 1) % drilled.length];
    const between = (after - before - 1 + count) % count;
    const gap = (placeAt(after) - placeAt(before) + length) % length || length;
    for (let step = 1; step <= between; step++) {
      found[(before + step) % count] = (placeAt(before) + (gap * step) / (between + 1)) % length;
    }
  });
  return new Map(holes.map(({ address }, index) => [address, found[index]]));
}

/**
 * A radius with which neighbouring marks just stay apart, as far as they can still be told.
 * @param {readonly Hole[]} holes
 * @param {Map<string, number>} along
 * @param {number} length
 * @param {number} scale
 */
function radiusOf(holes, along, length, scale) {
  const spread = (/** @type {Hole} */ { drilled, passes }) => (!drilled ? 0.5 : passes.length > 1 ? SHARED_SPREAD : 1.1);
  const room = holes.slice(1).map((hole, index) => {
    const [one, other] = [along.get(holes[index].address) ?? 0, along.get(hole.address) ?? 0];
    return ((((other - one) % length) + length) % length) * scale / (spread(holes[index]) + spread(hole));
  });
  return Math.min(LARGEST, Math.max(SMALLEST, 0.97 * Math.min(LARGEST, ...room)));
}
