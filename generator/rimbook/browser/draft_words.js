/** How problems put counts, lists and holes into words. */

import { SIDES, placeOf, sideOf } from "./draft_address.js";

/**
 * `1 hole`, `3 holes`, `2 passes`.
 * @param {number} number
 * @param {string} noun
 */
export function counted(number, noun) {
  if (number === 1) return `${number} ${noun}`;
  return `${number} ${noun}${noun.endsWith("s") ? "es" : "s"}`;
}

/**
 * `a, b and c`; a long list ends with how many more there are.
 * @param {readonly string[]} items
 * @param {number} [most]
 */
export function listed(items, most = 6) {
  const more = `${items.length - most + 1} more`;
  const words = items.length > most ? [...items.slice(0, most - 1), more] : items;
  return words.length > 1 ? `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}` : words.join("");
}

/**
 * Holes in short: `R4, R9-R13, L9-L13`. A hole on both sides loses its side: `9-13`.
 * @param {readonly string[]} holes
 */
export function runs(holes) {
  const [right, left] = SIDES.map((side) =>
    holes
      .filter((hole) => sideOf(hole) === side)
      .map(placeOf)
      .sort((a, b) => a - b),
  );
  if (right.join() === left.join()) return runsOf("", right).join(", ");
  return [...runsOf("R", right), ...runsOf("L", left)].join(", ");
}

/**
 * @param {string} side
 * @param {number[]} numbers
 * @returns {string[]}
 */
function runsOf(side, numbers) {
  /** @type {[number, number][]} */
  const found = [];
  for (const number of numbers) {
    const last = found[found.length - 1];
    if (last && number === last[1] + 1) last[1] = number;
    else found.push([number, number]);
  }
  return found.map(([first, last]) => `${side}${first}` + (last > first ? `-${side}${last}` : ""));
}
