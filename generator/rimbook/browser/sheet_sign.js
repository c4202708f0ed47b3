/**
 * The sign of a mark, the same in both drawings, on the tools and in the legend: told by its letter and its
 * outline, so that it survives a printer. Full where the part goes, open where it stays.
 */

/** @typedef {import("./sheet_state.js").Mark} Mark */
/** @typedef {import("./sheet_state.js").Seen} Seen */
/** @typedef {import("./sheet_verdict.js").Act} Act */

const SVG = "http://www.w3.org/2000/svg";

/** What stands in the sign. A sound hole has a tick in its place. @type {Record<Seen, string>} */
export const LETTERS = { sound: "✓", grooved: "G", split: "S", missing: "M", low: "L" };

/** @type {Record<Seen, string>} */
const OUTLINES = {
  sound: "M-3 .2L-.8 2.6L3.2-2.8",
  grooved: "M-6 0A6 6 0 1 0 6 0A6 6 0 1 0-6 0Z",
  split: "M-5.6-5.6H5.6V5.6H-5.6Z",
  missing: "M-3.4-6.2H3.4L6.4-3V3L3.4 6.2H-3.4L-6.4 3V-3Z",
  low: "M-5.6-6H5.6V2.6L0 7.4L-5.6 2.6Z",
};

/** A grooved part that has been turned has a number behind its letter. */
const WIDE = "M-2-6H2A6 6 0 0 1 2 6H-2A6 6 0 0 1-2-6Z";
/** For a part that is turned the outline is an arrow. */
const TURN = ["M6 0A6 6 0 1 1 3-5.2", "M5.6-3.4L1.8-3L4.2-7.2Z"];
const TURN_WIDE = ["M8 0A6 6 0 0 1 2 6H-2A6 6 0 0 1-2-6H2", "M6.6-4.6L2.4-3.4L3.4-8Z"];
const TAKEN = "M-2.4-2.4L2.4 2.4M-2.4 2.4L2.4-2.4";

/**
 * @param {Mark | null} mark null for a hole of a piece that goes because of another hole
 * @param {Act} act what is done with the piece
 * @returns {SVGElement} round the origin, about twelve units across
 */
export function sign(mark, act) {
  const group = shape("g", { class: `rb-sign rb-sign--${mark?.seen ?? "taken"} is-${act}`, "aria-hidden": "true" });
  if (!mark || mark.seen === "sound") {
    group.append(shape("path", { class: "rb-sign-line", d: mark ? OUTLINES.sound : TAKEN }));
    return group;
  }
  group.append(shape("path", { class: "rb-sign-ground", d: mark.turns ? WIDE : OUTLINES[mark.seen] }));
  if (act === "turn") {
    const [line, head] = mark.turns ? TURN_WIDE : TURN;
    group.append(shape("path", { class: "rb-sign-line", d: line }), shape("path", { class: "rb-sign-head", d: head }));
  }
  const word = shape("text", { y: "3.4", "text-anchor": "middle" });
  word.textContent = letters(mark);
  group.append(word);
  return group;
}

/**
 * @param {Mark} mark
 * @returns {string} `G2`
 */
export function letters({ seen, turns }) {
  return LETTERS[seen] + (turns || "");
}

/**
 * The sign by itself, for a button.
 * @param {Mark} mark
 * @param {Act} [act]
 */
export function loneSign(mark, act = "leave") {
  const drawn = shape("svg", { viewBox: "-11 -11 22 22", class: "rb-sign-alone", "aria-hidden": "true" });
  drawn.append(sign(mark, act));
  return drawn;
}

/**
 * @param {string} name
 * @param {Record<string, string>} attributes
 * @returns {SVGElement}
 */
export function shape(name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return /** @type {SVGElement} */ (element);
}
