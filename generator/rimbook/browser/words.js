/**
 * Text as the finder compares it. Reader and book pass through the same folding, so neither side
 * has to think of accents, capitals, hyphens or the sign between two numbers.
 */

/** @type {Record<string, string>} Letters that Unicode does not take apart by itself. */
const PLAIN = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  đ: "d",
  ð: "d",
  ł: "l",
  þ: "th",
  ı: "i",
  ς: "σ",
  "×": "x",
};

/**
 * Words in small plain letters with one space between them. A point stays inside a number, a
 * decimal comma becomes a point, needless zeros go: `2,70 mm` is `2.7 mm`.
 * @param {string} text any characters at all
 * @returns {string}
 */
export function fold(text) {
  const plain = text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}+/gu, "")
    .replace(/[ßæœøđðłþıς×]/g, (letter) => PLAIN[letter] ?? letter)
    .replace(/['’]/g, "")
    .replace(/(\d),(?=\d)/g, "$1.")
    .replace(/[^\p{L}\p{N}.]+/gu, " ")
    .replace(/\.(?!\d)/g, " ")
    .replace(/(^|\D)\./g, "$1 ");
  return plain.split(" ").filter(Boolean).map(shortest).join(" ");
}

/** @param {string} word */
function shortest(word) {
  return /^\d{1,9}\.\d{1,9}$/.test(word) ? String(Number(word)) : word;
}

/**
 * Several names as one text that can be searched: `| plover 76 | plover |`. The bar is in no
 * folded name, so a match never runs from one name into the next.
 * @param {Iterable<string>} names
 * @returns {string}
 */
export function key(names) {
  const folded = new Set([...names].map(fold).filter(Boolean));
  return folded.size ? `| ${[...folded].join(" | ")} |` : "|";
}

/**
 * How many of something, in words: `1 frame`, `2 frames`, `1,200 frames`.
 * @param {number} count
 * @param {string} one
 * @param {string} [many]
 */
export function counted(count, one, many = `${one}s`) {
  const digits = String(count).replace(/\B(?=(\d{3})+$)/g, ",");
  return `${digits} ${count === 1 ? one : many}`;
}

/**
 * `a`, `a and b`, `a, b and c`.
 * @param {readonly string[]} words
 */
export function listed(words) {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
