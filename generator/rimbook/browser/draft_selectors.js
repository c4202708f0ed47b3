/** Many holes in few words, as a map names them: `8-11`, `27`, `R31`. */

import { selector, SIDES } from "./draft_address.js";

/** @typedef {import("./draft_address.js").Side} Side */

/**
 * The shortest selectors: runs that both sides have in common come first, lone holes as numbers.
 * @param {Iterable<string>} holes
 * @returns {(string | number)[]}
 */
export function selectors(holes) {
  const all = [...holes];
  const [right, left] = SIDES.map((side) => runs(all.filter((hole) => hole[0] === side)));
  const both = right.filter((run) => left.includes(run));
  const word = (/** @type {string} */ side) => (/** @type {string} */ run) => {
    const [first, last] = run.split("-");
    if (first === last) return side ? `${side}${first}` : Number(first);
    return `${side}${first}-${side}${last}`;
  };
  return [
    ...both.map(word("")),
    ...right.filter((run) => !both.includes(run)).map(word("R")),
    ...left.filter((run) => !both.includes(run)).map(word("L")),
  ];
}

/**
 * The holes that a list of selectors names; what is no selector names none.
 * @param {unknown} words
 * @returns {string[]}
 */
export function holesOf(words) {
  if (!Array.isArray(words)) return [];
  return words.flatMap((word) => {
    const found = selector(word);
    if (!found || found.last < found.first || found.last > 999) return [];
    const numbers = Array.from({ length: found.last - found.first + 1 }, (_, index) => found.first + index);
    return found.sides.flatMap((side) => numbers.map((number) => `${side}${number}`));
  });
}

/**
 * @param {string[]} holes of one side
 * @returns {string[]} such as `8-11` and `27-27`
 */
function runs(holes) {
  /** @type {[number, number][]} */
  const found = [];
  for (const number of [...new Set(holes.map((hole) => Number(hole.slice(1))))].sort((a, b) => a - b)) {
    const last = found[found.length - 1];
    if (last && number === last[1] + 1) last[1] = number;
    else found.push([number, number]);
  }
  return found.map(([first, last]) => `${first}-${last}`);
}
