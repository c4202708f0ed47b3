/**
 * A text as the codewords of a QR code: bytes, padding, and the words from which a reader mends what it
 * could not see. All after ISO/IEC 18004:2015, 7.4 to 7.6.
 */

/** @typedef {"L" | "M"} Level how much can be mended: about 7 or 15 in a hundred codewords */

export const MOST_VERSION = 40;

/**
 * Mending words in each block, and number of blocks, by version from 1: ISO/IEC 18004:2015, table 9.
 * @type {Record<Level, {mending: readonly number[], blocks: readonly number[]}>}
 */
const BLOCKS = {
  L: {
    mending: numbers(
      "7 10 15 20 26 18 20 24 30 18 20 24 26 30 22 24 28 30 28 28 " +
        "28 28 30 30 26 28 30 30 30 30 30 30 30 30 30 30 30 30 30 30",
    ),
    blocks: numbers("1 1 1 1 1 2 2 2 2 4 4 4 4 4 6 6 6 6 7 8 8 9 9 10 12 12 12 13 14 15 16 17 18 19 19 20 21 22 24 25"),
  },
  M: {
    mending: numbers(
      "10 16 26 18 24 16 18 22 22 26 30 22 22 24 24 28 28 26 26 26 " +
        "26 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28",
    ),
    blocks: numbers(
      "1 1 1 2 2 4 4 4 5 5 5 8 9 9 10 10 11 13 14 16 17 17 18 20 21 23 25 26 28 29 31 33 35 37 38 40 43 45 47 49",
    ),
  },
};

const BYTE_MODE = 0b0100;
const PADDING = [0b11101100, 0b00010001];

/** x⁸ + x⁴ + x³ + x² + 1, the polynomial of the field (7.5.2). */
const FIELD = 0b100011101;

/**
 * How many modules of a symbol are left for codewords: all but the finders with their light edges, the
 * format, the two timing lines, the alignment squares and the version.
 * @param {number} version
 */
function modulesFor(version) {
  const size = 4 * version + 17;
  const across = version < 2 ? 0 : Math.floor(version / 7) + 2;
  const squares = across ? across * across - 3 : 0;
  const onTiming = across ? 2 * (across - 2) : 0;
  const ofVersion = version < 7 ? 0 : 36;
  return size * size - 3 * 64 - 31 - 2 * (size - 16) - 25 * squares + 5 * onTiming - ofVersion;
}

/**
 * The smallest version that holds so many bytes.
 * @param {number} bytes
 * @param {Level} level
 * @param {number} [atLeast]
 * @returns {number | null} null where none does
 */
export function versionFor(bytes, level, atLeast = 1) {
  for (let version = atLeast; version <= MOST_VERSION; version++) {
    if (4 + lengthBits(version) + 8 * bytes <= 8 * dataWords(version, level)) return version;
  }
  return null;
}

/**
 * All codewords in the order in which they are placed: the blocks' first words, their second ones, and so on.
 * @param {Uint8Array} bytes
 * @param {number} version that holds them
 * @param {Level} level
 * @returns {number[]}
 */
export function codewords(bytes, version, level) {
  const words = padded(bytes, version, level);
  const { mending, blocks } = blocksOf(version, level);
  const short = Math.floor(words.length / blocks);
  const long = words.length % blocks;
  const divisor = generator(mending);
  /** @type {number[][]} */
  const data = [];
  for (let block = 0, from = 0; block < blocks; block++) {
    const length = short + (block >= blocks - long ? 1 : 0);
    data.push(words.slice(from, from + length));
    from += length;
  }
  return [...woven(data), ...woven(data.map((block) => remainder(block, divisor)))];
}

/**
 * @param {Uint8Array} bytes
 * @param {number} version
 * @param {Level} level
 * @returns {number[]} the data words, filled up to the end
 */
function padded(bytes, version, level) {
  /** @type {number[]} */
  const bits = [];
  const add = (/** @type {number} */ value, /** @type {number} */ length) => {
    for (let at = length - 1; at >= 0; at--) bits.push((value >> at) & 1);
  };
  const length = dataWords(version, level);
  add(BYTE_MODE, 4);
  add(bytes.length, lengthBits(version));
  for (const byte of bytes) add(byte, 8);
  add(0, Math.min(4, 8 * length - bits.length));
  add(0, (8 - (bits.length % 8)) % 8);
  /** @type {number[]} */
  const words = [];
  for (let at = 0; at < bits.length; at += 8) words.push(Number.parseInt(bits.slice(at, at + 8).join(""), 2));
  for (let at = 0; words.length < length; at++) words.push(PADDING[at % 2]);
  return words;
}

/** @param {number} version */
function lengthBits(version) {
  return version < 10 ? 8 : 16;
}

/**
 * @param {number} version
 * @param {Level} level
 */
function dataWords(version, level) {
  const { mending, blocks } = blocksOf(version, level);
  return Math.floor(modulesFor(version) / 8) - mending * blocks;
}

/**
 * @param {number} version
 * @param {Level} level
 */
function blocksOf(version, level) {
  const { mending, blocks } = BLOCKS[level];
  return { mending: mending[version - 1], blocks: blocks[version - 1] };
}

/**
 * The first of each row, then the second of each, as far as rows go.
 * @param {readonly number[][]} rows
 */
function woven(rows) {
  const longest = Math.max(...rows.map((row) => row.length));
  const order = Array.from({ length: longest }, (_, at) => rows.filter((row) => at < row.length).map((row) => row[at]));
  return order.flat();
}

/**
 * The product of (x − 2⁰)(x − 2¹)…, without its first coefficient, which is 1 (annex A).
 * @param {number} degree
 */
function generator(degree) {
  let product = [1];
  for (let at = 0, root = 1; at < degree; at++, root = times(root, 2)) {
    const shifted = [...product, 0];
    product = shifted.map((each, index) => each ^ times(product[index - 1] ?? 0, root));
  }
  return product.slice(1);
}

/**
 * What is left of the block, as a polynomial, divided by the generator: its mending words.
 * @param {readonly number[]} block
 * @param {readonly number[]} divisor
 */
function remainder(block, divisor) {
  /** @type {number[]} */
  let left = divisor.map(() => 0);
  for (const word of block) {
    const factor = word ^ left[0];
    left = divisor.map((each, at) => (left[at + 1] ?? 0) ^ times(each, factor));
  }
  return left;
}

/**
 * @param {number} one
 * @param {number} other
 */
function times(one, other) {
  let product = 0;
  for (let bit = 7; bit >= 0; bit--) {
    product = (product << 1) ^ (product & 0x80 ? FIELD : 0);
    if ((other >> bit) & 1) product ^= one;
  }
  return product;
}

/** @param {string} text */
function numbers(text) {
  return text.split(" ").map(Number);
}
