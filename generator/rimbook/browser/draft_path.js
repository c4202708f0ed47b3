/** The way of the string through a draft: every pass inside the head and every leg outside the rim. */

import { SIDES } from "./draft_address.js";

/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_settle.js").Hole} Hole */

/**
 * @typedef {object} Leg
 * @property {string} start
 * @property {string} end
 * @property {"inside" | "outside"} run
 */

/** @typedef {[string, string]} Run where a pass enters the head, and where it leaves */

/**
 * @typedef {object} Strung
 * @property {number} mains
 * @property {number} crosses
 * @property {Hole[]} holes clockwise
 * @property {string[]} tieOffs
 * @property {number} pieces of string
 * @property {"head" | "throat"} mainsStart
 * @property {"head" | "throat"} crossesStart
 * @property {Side} firstCross
 */

/**
 * The legs of each piece of string from end to end: of the mains and of the crosses, or of the whole.
 * @param {Strung} strung
 * @param {Map<string, {along: number}>} places
 * @param {number} roundMm the whole length of the rim
 * @returns {Leg[][] | null} null where the walk leaves no way
 */
export function pathsOf(strung, places, roundMm) {
  const found = holesOfPasses(strung);
  if (!found) return null;
  let mains = mainsOf(strung, found);
  const crosses = crossesOf(strung, found);
  if (strung.pieces === 1 && strung.firstCross === "L") mains = mains.map(([end, start]) => /** @type {Run} */ ([start, end])).reverse();
  const pieces = strung.pieces === 1 ? [[...mains, ...crosses]] : [mains, crosses];
  const ends = pieces.flatMap((runs) => [runs[0][0], runs[runs.length - 1][1]]);
  const ties = strung.tieOffs.filter((hole) => places.has(hole));
  const knots = knotsOf(ends, ties, places, roundMm);
  const tied = ends.map((end, index) => knots.get(index) ?? end);
  return pieces.map((runs, index) => thread(tied[2 * index], runs, tied[2 * index + 1]));
}

/**
 * The straight pieces that can be drawn of any walk, finished or not: mains that have two holes on a side, and
 * crosses that have one on each.
 * @param {readonly Hole[]} holes
 * @returns {{mains: Run[], crosses: Run[]}}
 */
export function straightPieces(holes) {
  const at = byPass(holes);
  /** @type {{mains: Run[], crosses: Run[]}} */
  const pieces = { mains: [], crosses: [] };
  for (const [key, found] of at) {
    const [pass, side] = key.split(" ");
    if (pass[0] === "m" && found.length === 2) pieces.mains.push([found[0], found[1]]);
    const other = at.get(`${pass} L`) ?? [];
    if (pass[0] === "c" && side === "R" && found.length === 1 && other.length === 1) pieces.crosses.push([found[0], other[0]]);
  }
  return pieces;
}

/**
 * @param {readonly Hole[]} holes
 * @returns {Map<string, string[]>} addresses by pass and side, from the head
 */
function byPass(holes) {
  /** @type {Map<string, string[]>} */
  const found = new Map();
  for (const { address, side, passes } of holes) {
    for (const pass of passes) {
      const key = `${pass} ${side}`;
      const known = found.get(key) ?? [];
      found.set(key, side === "L" ? [address, ...known] : [...known, address]);
    }
  }
  return found;
}

/**
 * @param {Strung} strung
 * @returns {Map<string, string[]> | null} null where a pass has too few holes or too many, or is not one of the frame's
 */
function holesOfPasses({ mains, crosses, holes }) {
  if (mains % 2) return null;
  const found = byPass(holes);
  /** @type {Set<string>} */
  const wanted = new Set();
  for (const side of SIDES) {
    for (let number = 1; number <= mains / 2; number++) wanted.add(`m${number} ${side}`);
    for (let number = 1; number <= crosses; number++) wanted.add(`c${number} ${side}`);
  }
  const isWhole = [...wanted].every((key) => found.get(key)?.length === (key[0] === "m" ? 2 : 1));
  return isWhole && found.size === wanted.size ? found : null;
}

/**
 * From the outermost on the left to the outermost on the right, through head and throat by turns.
 * @param {Strung} strung
 * @param {Map<string, string[]>} found
 * @returns {Run[]}
 */
function mainsOf({ mains, mainsStart }, found) {
  const half = mains / 2;
  const numbers = Array.from({ length: half }, (_, index) => index + 1);
  const order = [...[...numbers].reverse().map((number) => `m${number} L`), ...numbers.map((number) => `m${number} R`)];
  return order.map((key, index) => {
    const holes = /** @type {string[]} */ (found.get(key));
    const [head, throat] = holes;
    // The two centre mains are joined at `mainsStart`: the left one runs up to it.
    const isUp = (((half - index) % 2) + 2) % 2 === 1 === (mainsStart === "head");
    return isUp ? [throat, head] : [head, throat];
  });
}

/**
 * @param {Strung} strung
 * @param {Map<string, string[]>} found
 * @returns {Run[]}
 */
function crossesOf({ crosses, crossesStart, firstCross }, found) {
  const numbers = Array.from({ length: crosses }, (_, index) => index + 1);
  if (crossesStart === "throat") numbers.reverse();
  return numbers.map((number, index) => {
    const [right, left] = SIDES.map((side) => /** @type {string[]} */ (found.get(`c${number} ${side}`))[0]);
    return (index % 2 === 0) === (firstCross === "R") ? [right, left] : [left, right];
  });
}

/**
 * @param {string} start
 * @param {readonly Run[]} runs
 * @param {string} end
 * @returns {Leg[]} none outside where the string turns back in one hole
 */
function thread(start, runs, end) {
  /** @type {Leg[]} */
  const legs = [];
  let here = start;
  for (const [enters, leaves] of runs) {
    if (here !== enters) legs.push({ start: here, end: enters, run: "outside" });
    legs.push({ start: enters, end: leaves, run: "inside" });
    here = leaves;
  }
  if (here !== end) legs.push({ start: here, end, run: "outside" });
  return legs;
}

/**
 * Which tie-off hole each end of string takes, by index of the end: as many as there are holes for, with the
 * least length of string along the rim in all. Exact: the best choice for every set of ends, one hole at a time.
 * @param {readonly string[]} ends
 * @param {readonly string[]} tieOffs
 * @param {Map<string, {along: number}>} places
 * @param {number} roundMm
 * @returns {Map<number, string>}
 */
function knotsOf(ends, tieOffs, places, roundMm) {
  /** @type {Map<number, {length: number, chosen: Map<number, string>}>} */
  const best = new Map([[0, { length: 0, chosen: new Map() }]]);
  for (const hole of tieOffs) {
    for (const [taken, { length, chosen }] of [...best]) {
      ends.forEach((end, index) => {
        if (taken & (1 << index)) return;
        const total = length + apart(places.get(end)?.along ?? 0, places.get(hole)?.along ?? 0, roundMm);
        const more = taken | (1 << index);
        const known = best.get(more);
        if (!known || total < known.length) best.set(more, { length: total, chosen: new Map([...chosen, [index, hole]]) });
      });
    }
  }
  const most = Math.max(...[...best.values()].map(({ chosen }) => chosen.size));
  const full = [...best.values()].filter(({ chosen }) => chosen.size === most);
  return full.reduce((least, each) => (each.length < least.length ? each : least)).chosen;
}

/**
 * The shorter way along the rim, to a micrometre, so that equal ways count as equal.
 * @param {number} one
 * @param {number} other
 * @param {number} roundMm
 */
function apart(one, other, roundMm) {
  const away = Math.abs(one - other);
  return Math.round(Math.min(away, roundMm - away) * 1000) / 1000;
}
