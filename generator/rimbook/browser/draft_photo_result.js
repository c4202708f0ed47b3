/** What the picks of a photo come to, for people: how well they agree, and the place of each hole. */

import { el } from "./dom.js";
import { outOfOrder, spreadOf } from "./draft_photo_places.js";

/** @typedef {import("./draft_photo.js").Reading} Reading */
/** @typedef {import("./draft_photo.js").Sight} Sight */

/** A photo whose head is off by more than this share is doubted. */
const DOUBTED = 0.01;

/**
 * @param {Sight | null} sight
 * @param {readonly Reading[]} readings
 * @returns {HTMLElement[]}
 */
export function resultOf(sight, readings) {
  if (!sight) return [];
  const { apartMm, drawnMm } = sight;
  const share = apartMm / drawnMm - 1;
  const found = [el("p", {}, `From the middle of the head to the middle of the throat: ${mm(apartMm)} in the photo, ${mm(drawnMm)} in the draft.`)];
  if (Math.abs(share) > DOUBTED) {
    found.push(el("p", { class: "rb-caution" }, `That is ${(100 * Math.abs(share)).toFixed(1)} % ${share > 0 ? "more" : "less"} than the draft has. Check the size of the sheet and which side is first, whether it lies in the plane of the holes, and the height of the head in the draft.`));
  }
  if (!readings.length) return found;
  const { offMm, farthest, pairs, sidesMm, pixelMm, uncertaintyMm } = spreadOf(readings);
  const words = [
    `Off the line of holes: ${mm(offMm, 2)} (root mean square); ${farthest.address} is farthest, ${mm(Math.abs(farthest.off), 2)} ${farthest.off < 0 ? "inside" : "outside"}.`,
    pairs > 0 && `Both sides against their mean: ${mm(sidesMm, 2)} (root mean square of ${pairs} holes).`,
    `A pixel is at most ${mm(pixelMm, 2)} here, which by itself leaves a standard uncertainty of ${mm(uncertaintyMm, 2)} (pixel / √12). Your hand adds to it.`,
  ];
  const rows = readings.map(({ address, place, off }) => el("tr", {}, el("th", { scope: "row" }, address), el("td", {}, place.toFixed(1)), el("td", {}, (Math.round(off * 100) / 100 || 0).toFixed(2))));
  const heads = ["Hole", "Along the rim, mm", "Outside the line, mm"].map((head) => el("th", { scope: "col" }, head));
  return [
    ...found,
    el("ul", {}, ...words.map((each) => each && el("li", {}, each))),
    ...outOfOrder(readings).map((fault) => el("p", { class: "rb-draft-wrong" }, fault)),
    el("div", { class: "rb-draft-photo-table", tabindex: "0", role: "group", "aria-label": "Places from the photo" }, el("table", {}, el("thead", {}, el("tr", {}, ...heads)), el("tbody", {}, ...rows))),
  ];
}

/**
 * @param {number} length
 * @param {number} [digits]
 */
function mm(length, digits = 1) {
  return `${length.toFixed(digits)} mm`;
}
