/**
 * The modules of a QR code in their places: what a reader finds it by, the codewords between, a mask over
 * those, and what the reader must be told of it. All after ISO/IEC 18004:2015, 6.3 and 7.7 to 7.10.
 */

/** @typedef {import("./qr_codewords.js").Level} Level */
/** @typedef {boolean[][]} Modules rows from the top; true is dark */

const LEVEL_BITS = { L: 0b01, M: 0b00 };

/** Which modules a mask turns over, by row and column (table 10). */
const MASKS = [
  (/** @type {number} */ i, /** @type {number} */ j) => (i + j) % 2 === 0,
  (/** @type {number} */ i) => i % 2 === 0,
  (/** @type {number} */ _, /** @type {number} */ j) => j % 3 === 0,
  (/** @type {number} */ i, /** @type {number} */ j) => (i + j) % 3 === 0,
  (/** @type {number} */ i, /** @type {number} */ j) => (Math.floor(i / 2) + Math.floor(j / 3)) % 2 === 0,
  (/** @type {number} */ i, /** @type {number} */ j) => ((i * j) % 2) + ((i * j) % 3) === 0,
  (/** @type {number} */ i, /** @type {number} */ j) => (((i * j) % 2) + ((i * j) % 3)) % 2 === 0,
  (/** @type {number} */ i, /** @type {number} */ j) => (((i + j) % 2) + ((i * j) % 3)) % 2 === 0,
];

/**
 * @param {number} version
 * @param {Level} level
 * @param {readonly number[]} words
 * @param {number | null} asked the mask, 0 to 7; null for the one with the lowest penalty
 * @returns {{modules: Modules, mask: number}}
 */
export function matrix(version, level, words, asked) {
  const { modules, taken } = frame(version);
  place(modules, taken, words);
  const masked = (/** @type {number} */ mask) =>
    modules.map((row, i) => row.map((dark, j) => (taken[i][j] ? dark : dark !== MASKS[mask](i, j))));
  let best = asked ?? 0;
  if (asked === null) {
    // A mask is judged before format and version are written (7.8.1).
    const penalties = MASKS.map((_, mask) => penalty(masked(mask)));
    best = penalties.indexOf(Math.min(...penalties));
  }
  const done = masked(best);
  writeFormat(done, level, best);
  writeVersion(done, version);
  return { modules: done, mask: best };
}

/**
 * Everything that is there whatever the text, and which modules are taken by it, or kept free.
 * @param {number} version
 * @returns {{modules: Modules, taken: Modules}}
 */
function frame(version) {
  const size = 4 * version + 17;
  const grid = () => Array.from({ length: size }, () => Array.from({ length: size }, () => false));
  const [modules, taken] = [grid(), grid()];
  const keep = (/** @type {number} */ i, /** @type {number} */ j, dark = false) => {
    if (!taken[i]?.length || j < 0 || j >= size) return;
    modules[i][j] = dark;
    taken[i][j] = true;
  };
  const square = (
    /** @type {number} */ i,
    /** @type {number} */ j,
    /** @type {number} */ reach,
    /** @type {number} */ light,
  ) => {
    for (let down = -reach; down <= reach; down++) {
      for (let right = -reach; right <= reach; right++) {
        const ring = Math.max(Math.abs(down), Math.abs(right));
        keep(i + down, j + right, ring !== light && ring !== 4);
      }
    }
  };
  for (let at = 0; at < size; at++) {
    keep(6, at, at % 2 === 0);
    keep(at, 6, at % 2 === 0);
  }
  const corners = [
    [3, 3],
    [3, size - 4],
    [size - 4, 3],
  ];
  for (const [i, j] of corners) square(i, j, 4, 2);
  const rows = alignments(version);
  for (const i of rows) {
    for (const j of rows) {
      if (!corners.some(([down, right]) => Math.abs(i - down) < 6 && Math.abs(j - right) < 6)) square(i, j, 2, 1);
    }
  }
  for (let at = 0; at < 9; at++) {
    if (at === 6) continue;
    keep(8, at);
    keep(at, 8);
  }
  for (let at = size - 8; at < size; at++) {
    keep(8, at);
    keep(at, 8);
  }
  if (version >= 7) {
    for (let at = 0; at < 18; at++) {
      keep(Math.floor(at / 3), size - 11 + (at % 3));
      keep(size - 11 + (at % 3), Math.floor(at / 3));
    }
  }
  return { modules, taken };
}

/**
 * Where the middles of alignment squares are, in rows as in columns: evenly from the far edge, the rest of
 * the way before the second (annex E).
 * @param {number} version
 * @returns {number[]}
 */
function alignments(version) {
  if (version < 2) return [];
  const [gaps, last] = [Math.floor(version / 7) + 1, 4 * version + 10];
  // Version 32 is the one for which the standard does not round up.
  const step = version === 32 ? 26 : 2 * Math.ceil((last - 6) / gaps / 2);
  return [6, ...Array.from({ length: gaps }, (_, at) => last - step * (gaps - 1 - at))];
}

/**
 * Codewords go up and down in columns two wide, from the right; the upright timing line is passed over (7.7.3).
 * @param {Modules} modules
 * @param {Modules} taken
 * @param {readonly number[]} words
 */
function place(modules, taken, words) {
  const size = modules.length;
  let bit = 0;
  let isUp = true;
  for (let right = size - 1; right > 0; right -= right === 8 ? 3 : 2, isUp = !isUp) {
    for (let step = 0; step < size; step++) {
      const i = isUp ? size - 1 - step : step;
      for (const j of [right, right - 1]) {
        if (taken[i][j]) continue;
        modules[i][j] = (((words[bit >> 3] ?? 0) >> (7 - (bit & 7))) & 1) === 1;
        bit++;
      }
    }
  }
}

/**
 * Twice, and one module that is always dark (7.9).
 * @param {Modules} modules
 * @param {Level} level
 * @param {number} mask
 */
function writeFormat(modules, level, mask) {
  const size = modules.length;
  const format = guarded((LEVEL_BITS[level] << 3) | mask, 0b10100110111, 10) ^ 0b101010000010010;
  for (let at = 0; at < 15; at++) {
    const dark = ((format >> at) & 1) === 1;
    modules[at < 6 ? at : at < 8 ? at + 1 : size - 15 + at][8] = dark;
    modules[8][at < 8 ? size - 1 - at : at === 8 ? 7 : 14 - at] = dark;
  }
  modules[size - 8][8] = true;
}

/**
 * Twice, from version 7 (7.10).
 * @param {Modules} modules
 * @param {number} version
 */
function writeVersion(modules, version) {
  if (version < 7) return;
  const told = guarded(version, 0b1111100100101, 12);
  for (let at = 0; at < 18; at++) {
    const [near, far] = [Math.floor(at / 3), modules.length - 11 + (at % 3)];
    modules[near][far] = modules[far][near] = ((told >> at) & 1) === 1;
  }
}

/**
 * A number followed by what is left of it after division, bit by bit (annexes C and D).
 * @param {number} value
 * @param {number} divisor
 * @param {number} length bits that are added
 */
function guarded(value, divisor, length) {
  let left = value << length;
  for (let at = 31 - Math.clz32(left); at >= length; at--) {
    if ((left >> at) & 1) left ^= divisor << (at - length);
  }
  return (value << length) | left;
}

/**
 * How hard a symbol is to read: long runs, blocks, what looks like a finder, too much of one colour (7.8.3.1).
 * @param {Modules} modules
 */
function penalty(modules) {
  const size = modules.length;
  const columns = modules.map((_, j) => modules.map((row) => row[j]));
  const lines = [...modules, ...columns].map((line) => line.map(Number).join(""));
  let points = 0;
  for (const line of lines) {
    for (const [run] of line.matchAll(/0{5,}|1{5,}/g)) points += run.length - 2;
    points += 40 * likeFinder(line);
  }
  for (let i = 1; i < size; i++) {
    for (let j = 1; j < size; j++) {
      const own = modules[i][j];
      if (own === modules[i - 1][j] && own === modules[i][j - 1] && own === modules[i - 1][j - 1]) points += 3;
    }
  }
  const dark = modules.flat().filter(Boolean).length;
  return points + 10 * Math.floor(Math.abs((20 * dark) / (size * size) - 10));
}

/**
 * How often dark and light follow each other as 1 : 1 : 3 : 1 : 1 with four light modules before or behind;
 * round the symbol it is light.
 * @param {string} line
 */
function likeFinder(line) {
  const round = `0000${line}0000`;
  let count = 0;
  for (let at = round.indexOf("1011101"); at >= 0;) {
    const isLike = round.startsWith("0000", at - 4) || round.startsWith("0000", at + 7);
    if (isLike) count++;
    at = round.indexOf("1011101", at + (isLike ? 7 : 4));
  }
  return count;
}
