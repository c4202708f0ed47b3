/** Names of frames, and when two of them are taken for the same. */

/** @typedef {import("./draft_problem.js").Given} Given */
/** @typedef {import("./draft_problem.js").Limits} Limits */
/** @typedef {import("./draft_problem.js").OtherFrame} OtherFrame */

/**
 * @param {Given} given
 * @returns {Map<string, OtherFrame>} by slug, without the map that the draft would correct
 */
export function others({ frames, slug }) {
  return new Map(Object.entries(frames).filter(([each]) => each !== slug));
}

/**
 * A name without case, accents, spaces and signs, and with look-alike letters made one.
 * @param {string} name
 * @param {Record<string, string>} alike letters by those that look like them
 */
export function folded(name, alike) {
  const digits = /** @type {Record<string, string>} */ ({ O: "0", o: "0", I: "1", l: "1", "|": "1" });
  const plain = name
    .normalize("NFKD")
    // Beside digits alone, these letters are read as digits.
    .replace(/(?<![\p{L}\p{N}_])[\p{Nd}OoIl|]*\p{Nd}[\p{Nd}OoIl|]*(?![\p{L}\p{N}_])/gu, (number) =>
      number.replace(/[OoIl|]/g, (letter) => digits[letter]),
    );
  const small = [...plain].map((letter) => letter.toUpperCase().toLowerCase().replace("ß", "ss")).join("");
  return [...small.replaceAll("ς", "σ")]
    .map((letter) => alike[letter] ?? letter)
    .filter((letter) => /[\p{L}\p{N}]/u.test(letter))
    .join("");
}

/**
 * Every form of a name: a capital may be taken for what it looks like, or for its small letter.
 * @param {string} name
 * @param {Limits} limits
 * @returns {Set<string>}
 */
export function forms(name, { look_alike: alike, look_alike_capitals: capitals }) {
  const plain = name.normalize("NFKD");
  const likened = [...plain].map((letter) => capitals[letter] ?? letter).join("");
  return new Set([folded(plain, alike), folded(likened, alike)]);
}

/**
 * The first word with letters of several scripts that look alike, and these scripts.
 * @param {string} name
 * @param {Record<string, [number, number][]>} ranges of the letters of each script
 * @returns {{word: string, scripts: string[]} | null}
 */
export function mixedWord(name, ranges) {
  for (const word of name.split(/\s+/)) {
    const numbers = [...word.normalize("NFC")].map((letter) => letter.codePointAt(0) ?? 0);
    const isOf = (/** @type {string} */ script) =>
      numbers.some((number) => ranges[script].some(([first, last]) => first <= number && number <= last));
    const scripts = Object.keys(ranges).filter(isOf).sort();
    if (scripts.length > 1) return { word, scripts };
  }
  return null;
}
