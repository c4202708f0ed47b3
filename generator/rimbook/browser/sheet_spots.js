/** Where the holes are in a drawing, where the sign of each goes, and which hole a finger means. */

/** @typedef {{x: number, y: number}} Spot in units of the drawing */

/**
 * @typedef {object} Place
 * @property {string} address
 * @property {Element} hole
 * @property {Spot} at
 * @property {Spot} sign
 */

const INSIDE = 17;
/** Signs of neighbours that stand closer than this would touch: every other one goes further in. */
const CLOSE = 15;
const FURTHER = 13;
/** In the unrolled rim: from the ruler to the gap between the name of a hole and its bore; from a word's foot to its middle. */
const BESIDE = 40;
const FOOT = 3.6;
/** So far from a hole, in px on the glass, a finger still means it. */
const FINGER = 44;

/**
 * @param {SVGSVGElement} drawing
 * @param {readonly string[]} order
 * @returns {Place[]} the holes that it shows, clockwise
 */
export function placesIn(drawing, order) {
  const holes = new Map([...drawing.querySelectorAll("[data-address]")].map((hole) => [hole.getAttribute("data-address"), hole]));
  const shown = order.filter((address) => holes.has(address));
  const spots = shown.map((address) => {
    const hole = /** @type {Element} */ (holes.get(address));
    return { address, hole, at: { x: number(hole, "x"), y: number(hole, "y") } };
  });
  const lines = isUnrolled(drawing) ? linesOf(drawing) : null;
  return spots.map((spot, index) => ({ ...spot, sign: lines ? beside(spot, lines, drawing) : inwards(spots, index) }));
}

/**
 * The hole that is meant by a point on the glass. Null where none is near.
 * @param {SVGSVGElement} drawing
 * @param {readonly Place[]} places
 * @param {number} x client px
 * @param {number} y client px
 */
export function nearest(drawing, places, x, y) {
  const matrix = drawing.getScreenCTM();
  if (!matrix) return null;
  const point = new DOMPoint(x, y).matrixTransform(matrix.inverse());
  const middle = middleOf(drawing);
  const isRows = isUnrolled(drawing);
  /** @type {Place | null} */
  let best = null;
  let least = FINGER / matrix.a;
  for (const place of places) {
    // In the unrolled rim a hole has the whole of its line, as far as the middle of the page.
    if (isRows && place.at.x < middle !== point.x < middle) continue;
    const off = isRows ? Math.abs(point.y - place.sign.y) : Math.hypot(point.x - place.at.x, point.y - place.at.y);
    if (off < least) [best, least] = [place, off];
  }
  return best?.address ?? null;
}

/** @param {SVGSVGElement} drawing */
function isUnrolled(drawing) {
  return Boolean(drawing.querySelector(".layer-heads"));
}

/** @param {SVGSVGElement} drawing */
function middleOf({ viewBox: { baseVal } }) {
  return baseVal.x + baseVal.width / 2;
}

/**
 * At what height the words of each hole stand.
 * @param {SVGSVGElement} drawing
 */
function linesOf(drawing) {
  const words = [...drawing.querySelectorAll(".layer-addresses text")];
  return new Map(words.map((word) => [word.textContent, number(word, "y") - FOOT]));
}

/**
 * @param {{address: string, at: Spot}} spot
 * @param {ReadonlyMap<string | null, number>} lines
 * @param {SVGSVGElement} drawing
 * @returns {Spot}
 */
function beside({ address, at }, lines, drawing) {
  const by = at.x < middleOf(drawing) ? -BESIDE : BESIDE;
  return { x: at.x + by, y: lines.get(address) ?? at.y };
}

/**
 * Square to the line through the neighbours, towards the middle of the head.
 * @param {readonly {at: Spot}[]} spots
 * @param {number} index
 * @returns {Spot}
 */
function inwards(spots, index) {
  const near = (/** @type {number} */ by) => spots[(index + by + spots.length) % spots.length].at;
  const [before, here, after] = [near(-1), near(0), near(1)];
  const gap = Math.min(distance(before, here), distance(here, after));
  const length = distance(before, after) || 1;
  const depth = INSIDE + (gap < CLOSE && index % 2 ? FURTHER : 0);
  // Clockwise on the page, the inside of the rim is to the right.
  return { x: here.x - ((after.y - before.y) / length) * depth, y: here.y + ((after.x - before.x) / length) * depth };
}

/**
 * @param {Spot} one
 * @param {Spot} other
 */
function distance(one, other) {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/**
 * @param {Element} element
 * @param {string} name
 */
function number(element, name) {
  return Number(element.getAttribute(name));
}
