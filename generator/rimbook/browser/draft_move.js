/** Everything that a draft says of holes by number, when a place comes or goes before them. */

import { address, clockwise, selector } from "./draft_address.js";
import { lengthsOf, shortForm } from "./draft_by_hole.js";
import { pairs } from "./draft_yaml.js";
import { wordsOf } from "./draft_written.js";

/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_written.js").Draft} Draft */

/**
 * The draft with its facts moved along; the walk itself is left to the caller.
 * @param {Draft} draft
 * @param {readonly Side[]} sides whose places move
 * @param {number} at the number that is new, or that goes
 * @param {1 | -1} by
 * @returns {Draft}
 */
export function moved(draft, sides, at, by) {
  const next = { ...draft };
  const old = { R: wordsOf(String(draft.walk)).length, L: wordsOf(String(draft.left?.walk ?? draft.walk)).length };
  for (const name of ["bore_mm", "rim_depth_mm"]) {
    if (draft[name] === undefined) continue;
    const lengths = [...lengthsOf(draft[name], clockwise(old))].flatMap(([hole, length]) => {
      const there = newHole(hole, sides, at, by);
      return there ? [/** @type {const} */ ([there, length])] : [];
    });
    next[name] = shortForm(new Map(lengths), () => true);
  }
  if (draft["fitted"]) {
    next["fitted"] = pairs(draft["fitted"]).flatMap(([key, part]) => {
      if (key === "default" || key.startsWith("bore ")) return [[key, part]];
      return keys(key, sides, at, by).map((each) => [each, part]);
    });
  }
  if (draft["strips"]) next["strips"] = draft["strips"].flatMap((/** @type {any} */ strip) => stripsOf(strip, sides, at, by));
  if (draft["stringing"]?.tie_offs) {
    const holes = draft["stringing"].tie_offs.flatMap((/** @type {string} */ hole) => newHole(hole, sides, at, by) ?? []);
    next["stringing"] = { ...draft["stringing"], tie_offs: holes };
  }
  const shifted = (/** @type {any[]} */ list) => (by > 0 ? list.toSpliced(at - 1, 0, "unknown") : list.toSpliced(at - 1, 1));
  if (draft["places_mm"] && sides.includes("R")) next["places_mm"] = shifted(draft["places_mm"]);
  if (draft["left"]?.places_mm && sides.includes("L")) {
    next["left"] = { ...draft["left"], places_mm: shifted(draft["left"].places_mm) };
  }
  return next;
}

/**
 * @param {string} hole
 * @param {readonly Side[]} sides
 * @param {number} at
 * @param {1 | -1} by
 * @returns {string | null} its new address; null where it goes
 */
function newHole(hole, sides, at, by) {
  const side = /** @type {Side} */ (hole[0]);
  const number = Number(hole.slice(1));
  if (!sides.includes(side) || number < at) return hole;
  if (by < 0 && number === at) return null;
  return `${side}${number + by}`;
}

/**
 * What becomes of the first and the last number of a run; null where nothing is left of it.
 * @param {number} first
 * @param {number} last
 * @param {number} at
 * @param {1 | -1} by
 * @returns {[number, number] | null}
 */
function newRun(first, last, at, by) {
  const from = first > at || (by > 0 && first === at) ? first + by : first;
  const to = last >= at ? last + by : last;
  return from <= to ? [from, to] : null;
}

/**
 * @param {string} key of a line of `fitted`
 * @param {readonly Side[]} sides
 * @param {number} at
 * @param {1 | -1} by
 * @returns {string[]} two where one side moves and the other does not
 */
function keys(key, sides, at, by) {
  const found = selector(key);
  if (!found) {
    const ends = key.split("-");
    if (ends.length !== 2 || !ends.every(address)) return [key];
    const there = ends.map((end) => newHole(end, sides, at, by));
    return there.every(Boolean) ? [there.join("-")] : [];
  }
  const word = (/** @type {string} */ side, /** @type {[number, number] | null} */ run) =>
    run ? [run[0] === run[1] ? `${side}${run[0]}` : `${side}${run[0]}-${side}${run[1]}`] : [];
  const isWhole = found.sides.every((side) => sides.includes(side));
  if (isWhole) return word(found.sides.length === 2 ? "" : found.sides[0], newRun(found.first, found.last, at, by));
  return found.sides.flatMap((side) =>
    word(side, sides.includes(side) ? newRun(found.first, found.last, at, by) : [found.first, found.last]),
  );
}

/**
 * @param {any} strip as written
 * @param {readonly Side[]} sides
 * @param {number} at
 * @param {1 | -1} by
 * @returns {any[]} none where nothing is left; two where one side moves and the other does not
 */
function stripsOf(strip, sides, at, by) {
  const [first, last] = strip.holes;
  if (address(first) && address(last)) {
    // Clockwise is down the right side and up the left: the end that goes gives way to its neighbour inside.
    const end = (/** @type {string} */ hole, /** @type {boolean} */ isFirst) => {
      const inward = (hole[0] === "R") === isFirst ? 0 : -1;
      return newHole(hole, sides, at, by) ?? `${hole[0]}${Number(hole.slice(1)) + inward}`;
    };
    if (first === last && !newHole(first, sides, at, by)) return [];
    return [{ ...strip, holes: [end(first, true), end(last, false)].map((hole) => (hole.endsWith("0") && hole.length === 2 ? `${hole[0]}1` : hole)) }];
  }
  const found = selector(`${first}-${last}`);
  if (!found || found.sides.length !== 2) return [strip];
  const run = newRun(found.first, found.last, at, by);
  if (sides.length === 2) return run ? [{ ...strip, holes: run }] : [];
  return found.sides.flatMap((side) => {
    const ends = sides.includes(side) ? run : [found.first, found.last];
    const [from, to] = ends ?? [];
    if (!from) return [];
    return [{ ...strip, holes: side === "R" ? [`R${from}`, `R${to}`] : [`L${to}`, `L${from}`] }];
  });
}
