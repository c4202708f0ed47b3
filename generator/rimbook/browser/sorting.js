/** The order of table cells: numbers by size, holes along the walk, words by alphabet, the unknown last. */

import { clockwise, readAddress } from "./hole_walk.js";

const words = new Intl.Collator("en", { numeric: true });

/** @typedef {"ascending" | "descending" | "none"} Direction */

/**
 * Rows in order of one of their texts. Equal ones keep their order, also when it runs backwards.
 * @template Row
 * @param {readonly Row[]} rows
 * @param {(row: Row) => string} text
 * @param {Direction} direction
 * @returns {Row[]}
 */
export function sorted(rows, text, direction) {
  if (direction === "none") return [...rows];
  const sign = direction === "ascending" ? 1 : -1;
  const keyed = rows.map((row) => ({ row, text: text(row).trim() }));
  return keyed
    .sort((a, b) => {
      const [unknownA, unknownB] = [isUnknown(a.text), isUnknown(b.text)];
      return unknownA || unknownB ? Number(unknownA) - Number(unknownB) : sign * compare(a.text, b.text);
    })
    .map(({ row }) => row);
}

/**
 * @param {Direction} direction
 * @returns {Direction} the one that the next press gives
 */
export function next(direction) {
  if (direction === "none") return "ascending";
  return direction === "ascending" ? "descending" : "none";
}

/** @param {string} text */
function isUnknown(text) {
  return text === "" || text === "unknown" || text === "none";
}

/**
 * @param {string} a
 * @param {string} b
 */
function compare(a, b) {
  const [holeA, holeB] = [readAddress(a), readAddress(b)];
  if (holeA && holeB) return clockwise(holeA) - clockwise(holeB);
  const [numberA, numberB] = [leading(a), leading(b)];
  if (numberA !== null && numberB !== null && numberA !== numberB) return numberA - numberB;
  return words.compare(a, b);
}

/** @param {string} text */
function leading(text) {
  const found = /^-?\d[\d,]*(?:\.\d+)?/.exec(text);
  return found ? Number(found[0].replaceAll(",", "")) : null;
}
