/** Text from people, as messages quote it, and the known word that was probably meant. */

const MOST_SHOWN = 60;
const MOST_COMPARED = 200;
/** Words that have less than this in common are not near. */
const NEAR = 0.6;

// C0 and C1 controls but tab and line ends; the marks that turn text round or join it invisibly; other line
// ends; letters and signs without a shape; tags; surrogates; private use and non-characters.
const HIDDEN =
  /[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\u3164\ufe00-\ufe0d\ufeff\uffa0\ufff9-\uffff\ud800-\udfff\ue000-\uf8ff\u{e0000}-\u{e007f}]/gu;

/**
 * The first character that a reader cannot see.
 * @param {string} text
 * @returns {string | null}
 */
export function hiddenCharacter(text) {
  return text.match(HIDDEN)?.[0] ?? null;
}

/**
 * The number of a character as `200B`.
 * @param {string} character
 */
export function numberOf(character) {
  return (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0");
}

/**
 * The text with every hidden character and line end written out.
 * @param {string} text
 */
export function visible(text) {
  return text
    .replace(HIDDEN, (character) => `\\u${numberOf(character).toLowerCase()}`)
    .replaceAll("\n", "\\n")
    .replaceAll("\r", "\\r")
    .replaceAll("\t", "\\t");
}

/**
 * A value as a message quotes it: visible, on one line, and not too long.
 * @param {unknown} value
 */
export function shown(value) {
  return `“${unquoted(value)}”`;
}

/**
 * The same without quotation marks.
 * @param {unknown} value
 */
export function unquoted(value) {
  const letters = [...visible(asText(value))];
  return letters.length > MOST_SHOWN ? `${letters.slice(0, MOST_SHOWN - 1).join("")}…` : letters.join("");
}

/**
 * A single value as the build writes it.
 * @param {unknown} value
 * @returns {string}
 */
export function asText(value) {
  if (value === null || value === undefined) return "None";
  if (typeof value === "boolean") return value ? "True" : "False";
  return String(value);
}

/**
 * The choice spelled most like the word, if one is close.
 * @param {string} word
 * @param {Iterable<string>} choices
 * @returns {string | null}
 */
export function nearest(word, choices) {
  const letters = [...word].slice(0, MOST_COMPARED);
  const places = placesOf(letters);
  let best = /** @type {string | null} */ (null);
  let most = NEAR;
  for (const choice of choices) {
    const other = [...choice];
    const total = letters.length + other.length;
    if (total && (2 * Math.min(letters.length, other.length)) / total < most) continue;
    const alike = total ? (2 * matched(other, letters, places)) / total : 1;
    if (alike > most || (alike === most && (best === null || choice > best))) [best, most] = [choice, alike];
  }
  return best;
}

/**
 * Where each letter stands. Of a long word, letters that come very often tell nothing.
 * @param {string[]} letters
 * @returns {Map<string, number[]>}
 */
function placesOf(letters) {
  /** @type {Map<string, number[]>} */
  const places = new Map();
  letters.forEach((letter, index) => {
    const found = places.get(letter);
    if (found) found.push(index);
    else places.set(letter, [index]);
  });
  if (letters.length < 200) return places;
  const often = Math.floor(letters.length / 100) + 1;
  return new Map([...places].filter(([, found]) => found.length <= often));
}

/**
 * How many letters two words have in common, by the longest piece they share and then what lies on either
 * side of it (J. W. Ratcliff and J. A. Obershelp, 1988).
 * @param {string[]} one
 * @param {string[]} other
 * @param {Map<string, number[]>} places of the other's letters
 */
function matched(one, other, places) {
  let total = 0;
  const waiting = [[0, one.length, 0, other.length]];
  for (let piece = waiting.pop(); piece; piece = waiting.pop()) {
    const [start, end, otherStart, otherEnd] = piece;
    const [at, otherAt, length] = longest(one, other, places, piece);
    if (!length) continue;
    total += length;
    waiting.push([start, at, otherStart, otherAt], [at + length, end, otherAt + length, otherEnd]);
  }
  return total;
}

/**
 * @param {string[]} one
 * @param {string[]} other
 * @param {Map<string, number[]>} places
 * @param {number[]} piece start and end in one, start and end in the other
 * @returns {[number, number, number]} the start of the longest common piece in both, and its length
 */
function longest(one, other, places, [start, end, otherStart, otherEnd]) {
  let [at, otherAt, length] = [start, otherStart, 0];
  /** @type {Map<number, number>} */
  let before = new Map();
  for (let index = start; index < end; index++) {
    /** @type {Map<number, number>} */
    const here = new Map();
    for (const place of places.get(one[index]) ?? []) {
      if (place < otherStart || place >= otherEnd) continue;
      const run = (before.get(place - 1) ?? 0) + 1;
      here.set(place, run);
      if (run > length) [at, otherAt, length] = [index - run + 1, place - run + 1, run];
    }
    before = here;
  }
  while (at > start && otherAt > otherStart && one[at - 1] === other[otherAt - 1]) {
    [at, otherAt, length] = [at - 1, otherAt - 1, length + 1];
  }
  while (at + length < end && otherAt + length < otherEnd && one[at + length] === other[otherAt + length]) length += 1;
  return [at, otherAt, length];
}
