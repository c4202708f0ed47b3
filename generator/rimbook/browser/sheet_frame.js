/**
 * What the bench sheet knows of a frame, as the build hands it over, and how holes are told apart.
 */

const FORMAT = 1;
const BASE = 36;
const LETTERS = "abcdefghijklmnopqrstuvwxyz";

/**
 * A drilled hole. Holes come clockwise from the middle of the head.
 * @typedef {object} Hole
 * @property {string} address
 * @property {string[]} passes strings that go through, such as `m9` and `c1`
 * @property {number | null} pull on the grommet, in string tensions
 * @property {number} piece what sits there: an index of `pieces`
 */

/** @typedef {"single" | "wide" | "twin-even" | "twin-uneven" | "strip" | "unknown"} PieceKind */

/**
 * What is pushed in as one: a single part, a two-post part, a strip.
 * @typedef {object} Piece
 * @property {PieceKind} kind
 * @property {string | null} part its id, null where nobody knows
 * @property {string} name in words
 * @property {number[]} holes indices of `holes`, clockwise
 * @property {number | null} positions fresh positions when it is new, null where nobody knows
 * @property {number} step quarter turns from one to the next
 * @property {number} serves index of `serves`
 */

/**
 * A part that serves a piece's place.
 * @typedef {object} Serving
 * @property {string} part
 * @property {string} verdict `serves`, or `may serve` where something is not sure
 * @property {string} says how it fits, in words
 * @property {string} [pin] which pin pushes it out, in words
 * @property {string} [trim] what to cut off, in words; left out where there is nothing to cut
 */

/**
 * @typedef {object} SheetFrame
 * @property {number} format
 * @property {string} slug
 * @property {string} name
 * @property {string} sport
 * @property {Hole[]} holes
 * @property {Piece[]} pieces
 * @property {Serving[][]} serves by place, the best part first
 * @property {Record<string, string>} names of parts and sets, by id
 * @property {Record<string, Record<string, number>>} sets what each set holds, by id
 */

/**
 * @param {unknown} value as the data file handed it over
 * @returns {SheetFrame | null} null where it is of another edition
 */
export function readFrame(value) {
  const frame = /** @type {Partial<SheetFrame> | null | undefined} */ (value);
  const isWhole = frame?.format === FORMAT && [frame.holes, frame.pieces, frame.serves].every(Array.isArray);
  return isWhole ? /** @type {SheetFrame} */ (frame) : null;
}

/**
 * What makes each hole itself, however the places are numbered: its side, its strings, and which of the
 * holes with the same strings on that side it is, from the head.
 * @param {SheetFrame} frame
 * @returns {Map<string, string>} two signs by address, see `signs`
 */
export function marksOfHoles(frame) {
  /** @type {Map<string, number>} */
  const seen = new Map();
  const walk = [...frame.holes].sort((a, b) => numberOf(a.address) - numberOf(b.address));
  return new Map(
    walk.map(({ address, passes }) => {
      const strings = `${address[0]} ${passes.join("+")}`;
      const nth = (seen.get(strings) ?? 0) + 1;
      seen.set(strings, nth);
      return [address, signs(`${strings} ${nth}`)];
    }),
  );
}

/**
 * What tells one version of a map from another, as far as its holes go.
 * @param {SheetFrame} frame
 */
export function fingerprint(frame) {
  const marks = marksOfHoles(frame);
  return digest([frame.slug, ...[...marks].map(([address, mark]) => `${address} ${mark}`)].join("\n"), 5);
}

/**
 * A text as so many letters and digits that hardly any other text has.
 * @param {string} text
 * @param {number} length up to 5
 */
export function digest(text, length) {
  return (hash(text) % BASE ** length).toString(BASE).padStart(length, "0");
}

/**
 * The same as a letter and a letter or digit, so that it can follow a number.
 * @param {string} text
 */
export function signs(text) {
  const number = hash(text);
  return LETTERS[number % LETTERS.length] + (Math.floor(number / LETTERS.length) % BASE).toString(BASE);
}

/**
 * FNV-1a, 32 bits, of the UTF-16 units (G. Fowler, L. C. Noll, K.-P. Vo).
 * @param {string} text
 */
function hash(text) {
  let number = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) number = Math.imul(number ^ text.charCodeAt(at), 0x01000193);
  return number >>> 0;
}

/** @param {string} address */
function numberOf(address) {
  return Number(address.slice(1));
}
