/** What the picks of a photo come to: how well they agree, and the draft with their places. */

import { setPlace } from "./draft_edit.js";

/** @typedef {import("./draft_photo.js").Reading} Reading */
/** @typedef {import("./draft_written.js").Draft} Draft */

/**
 * @typedef {object} Spread
 * @property {number} offMm root mean square distance from the line of holes
 * @property {Reading} farthest from it
 * @property {number} pairs of holes with one number that were picked on both sides
 * @property {number} sidesMm root mean square of half the difference between the two sides
 * @property {number} pixelMm the coarsest pixel
 * @property {number} uncertaintyMm standard uncertainty from the pixel alone
 */

/**
 * The standard uncertainty that a resolution brings: d over the square root of 12, as any value within the step
 * is as likely as another (JCGM 100:2008, F.2.2.1; from memory).
 * @param {number} resolution
 */
export function uncertaintyOf(resolution) {
  return resolution / Math.sqrt(12);
}

/**
 * @param {readonly Reading[]} readings at least one
 * @returns {Spread}
 */
export function spreadOf(readings) {
  const byNumber = new Map(readings.filter(({ address }) => address[0] === "R").map((each) => [each.address.slice(1), each.place]));
  const halves = readings.flatMap(({ address, place }) => {
    const right = byNumber.get(address.slice(1));
    return address[0] === "L" && right !== undefined ? [(place - right) / 2] : [];
  });
  const pixelMm = Math.max(...readings.map(({ pixel }) => pixel));
  return {
    offMm: rms(readings.map(({ off }) => off)),
    farthest: readings.reduce((most, each) => (Math.abs(each.off) > Math.abs(most.off) ? each : most)),
    pairs: halves.length,
    sidesMm: rms(halves),
    pixelMm,
    uncertaintyMm: uncertaintyOf(pixelMm),
  };
}

/**
 * Picks that contradict the walk: behind the one before, or across the middle of the head.
 * @param {readonly Reading[]} readings from the head down each side
 * @returns {string[]}
 */
export function outOfOrder(readings) {
  return readings.flatMap(({ address, place }, index) => {
    if (place <= 0) return `${address} lies on the other side of the middle of the head.`;
    const before = readings[index - 1];
    if (before?.address[0] !== address[0] || before.place < place) return [];
    return `${address} lies before ${before.address}: pick one of them again.`;
  });
}

/**
 * The draft with the places of the picks. A list that both sides share takes the mean of both: what the middle was
 * picked too far to one side cancels out in it. Places of other holes stay as they are.
 * @param {Draft} draft
 * @param {readonly Reading[]} readings
 * @returns {Draft}
 */
export function withPlaces(draft, readings) {
  /** @type {Map<string, number[]>} */
  const found = new Map();
  for (const { address, place } of readings) {
    const key = draft["left"] ? address : `R${address.slice(1)}`;
    found.set(key, [...(found.get(key) ?? []), place]);
  }
  const resolution = resolutionOf(readings);
  let next = draft;
  for (const [key, places] of found) {
    const mean = places.reduce((sum, each) => sum + each, 0) / places.length;
    next = setPlace(next, key[0] === "R" ? "R" : "L", Number(key.slice(1)), rounded(mean, resolution < 0.1 ? 2 : 1));
  }
  return { ...next, ...madeOf(draft, resolution) };
}

/**
 * What one pixel is at most, rounded up to a hundredth of a millimetre.
 * @param {readonly Reading[]} readings
 */
export function resolutionOf(readings) {
  return Math.ceil(spreadOf(readings).pixelMm * 100 - 1e-9) / 100;
}

/**
 * Who measured, and with what. The step of another tool stays: bores are judged by it, and the photo goes into the note.
 * @param {Draft} draft
 * @param {number} resolution
 */
function madeOf({ measured, note }, resolution) {
  const tool = measured?.with;
  if (!tool || tool === "photo") return { measured: { ...measured, with: "photo", resolution_mm: resolution } };
  const said = `Places along the rim: photo, ${resolution} mm a pixel.`;
  const before = String(note ?? "").replace(/\s*Places along the rim: photo, [\d.]+ mm a pixel\./, "").trim();
  return { note: before ? `${before} ${said}` : said };
}

/** @param {number[]} values */
function rms(values) {
  return values.length ? Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / values.length) : 0;
}

/**
 * @param {number} value
 * @param {number} digits
 */
function rounded(value, digits) {
  return Number(value.toFixed(digits));
}
