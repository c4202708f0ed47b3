/** Hole places along the rim: measured where somebody did, otherwise derived from the pattern. */

import { halves } from "./draft_half.js";
import { filled, inOrder } from "./draft_order.js";
import { at, curve } from "./draft_outline.js";
import { spacing } from "./draft_spacing.js";

/** @typedef {import("./draft_spacing.js").Bed} Bed */
/** @typedef {import("./draft_spacing.js").DraftHole} DraftHole */
/** @typedef {import("./draft_spacing.js").Spacing} Spacing */
/** @typedef {import("./draft_half.js").Half} Half */
/** @typedef {import("./draft_order.js").Slot} Slot */
/** @typedef {import("./draft_outline.js").Point} Point */

/** Derived places keep this far apart, clear of flanges (common practice, no published source). */
export const DERIVED_GAP_MM = 4.5;
const MEASURED_GAP_MM = 0.01;

/**
 * @typedef {object} Placed
 * @property {Point} at
 * @property {Point} out the unit way out of the head
 * @property {number} along clockwise from the middle of the head, in mm
 * @property {boolean} measured
 */

/**
 * Where a hole comes to lie down its own side, and how far that is from where it should, both in mm.
 * @typedef {object} Laid
 * @property {number} along
 * @property {number} bend
 */

/**
 * All drilled holes on the outline, by address. A measured place wins; derived places follow those beside them.
 * @param {Bed} bed
 * @returns {Map<string, Placed>}
 */
export function places(bed) {
  const line = curve(bed.head);
  const laid = laidOf(bed);
  /** @type {Map<string, Placed>} */
  const found = new Map();
  for (const hole of bed.holes) {
    if (!hole.drilled) continue;
    const down = laid(hole).along;
    const along = hole.side === "R" ? down : line.length - down;
    found.set(hole.address, { ...at(line, along), along, measured: hole.place !== null });
  }
  return found;
}

/**
 * How far (mm) each drilled hole had to move along the rim to keep the order of the walk, by address.
 * @param {Bed} bed
 * @returns {Map<string, number>}
 */
export function bends(bed) {
  const laid = laidOf(bed);
  return new Map(bed.holes.filter(({ drilled }) => drilled).map((hole) => [hole.address, laid(hole).bend]));
}

/**
 * Where the strings of a frame run when drawn straight.
 * @param {Bed} bed
 */
export function bedOf(bed) {
  return spacing(bed, halvesOf(bed));
}

/**
 * @param {Bed} bed
 * @returns {(hole: DraftHole) => Laid} for drilled holes
 */
function laidOf(bed) {
  const walks = halvesOf(bed);
  const even = spacing(bed, walks);
  const laid = walks.map(({ half, holes }) => lay(half, holes, even));
  return ({ side, number }) => laid[side === "R" ? 0 : laid.length - 1].get(number) ?? { along: 0, bend: 0 };
}

/**
 * The right and the left half with their holes, or one for both where they are alike.
 * @param {Bed} bed
 */
function halvesOf({ head, holes }) {
  const [right, left] = halves(head);
  const side = (/** @type {string} */ name) =>
    holes.filter((hole) => hole.side === name).sort((a, b) => a.number - b.number);
  const [down, other] = [side("R"), side("L")];
  if (right === left && areAlike(down, other)) return [{ half: right, holes: down }];
  return [
    { half: right, holes: down },
    { half: left, holes: other },
  ];
}

/**
 * @param {DraftHole[]} one
 * @param {DraftHole[]} other
 */
function areAlike(one, other) {
  const key = ({ passes, place, drilled }) => `${passes.join("+")} ${place} ${drilled}`;
  return one.length === other.length && one.every((hole, index) => key(hole) === key(other[index]));
}

/**
 * @param {Half} half
 * @param {DraftHole[]} holes of one side, from the head
 * @param {Spacing} even
 * @returns {Map<number, Laid>} by number
 */
function lay(half, holes, even) {
  /** @type {Slot} */
  const first = [0.5, 0];
  /** @type {Slot} */
  const last = [holes.length + 0.5, half.length];
  const drilled = holes.filter((hole) => hole.drilled);
  const measured = drilled.flatMap(({ number, place }) => (place === null ? [] : [/** @type {Slot} */ ([number, place])]));
  const pattern = new Map(patternOf(half, holes, even));
  const fixed = [first, ...inOrder(measured, first, last, MEASURED_GAP_MM), last];
  const wanted = follow(pattern, fixed);
  const known = [first];
  for (let index = 1; index < fixed.length; index++) {
    const [start, end] = [fixed[index - 1], fixed[index]];
    const between = wanted.filter(([slot]) => start[0] < slot && slot < end[0]);
    known.push(...inOrder(between, start, end, DERIVED_GAP_MM), end);
  }
  const numbers = drilled.map(({ number }) => number);
  const along = filled(known, numbers);
  const should = new Map([...wanted, ...measured]);
  return new Map(
    numbers.map((number) => {
      const here = along.get(number) ?? 0;
      return [number, { along: here, bend: Math.abs(here - (should.get(number) ?? here)) }];
    }),
  );
}

/**
 * Where the strings of each hole, drawn straight, meet the rim: their mean where two pass.
 * @param {Half} half
 * @param {DraftHole[]} holes
 * @param {Spacing} even
 * @returns {Slot[]}
 */
function patternOf(half, holes, even) {
  /** @type {Set<number>} */
  const seen = new Set();
  return holes.flatMap(({ number, passes }) => {
    const lines = passes.map((each) => {
      const count = Number(each.slice(1));
      if (each.startsWith("c")) return half.crosses.along(-even.cross(count));
      const end = seen.has(count) ? "throat" : "head";
      seen.add(count);
      return half.mains[end].along(even.main(count));
    });
    if (!lines.length) return [];
    return [/** @type {Slot} */ ([number, lines.reduce((sum, each) => sum + each, 0) / lines.length])];
  });
}

/**
 * The pattern's places, shifted as the measured holes on either side of them are.
 * @param {Map<number, number>} pattern
 * @param {Slot[]} fixed
 * @returns {Slot[]}
 */
function follow(pattern, fixed) {
  /** @type {Slot[]} */
  const shifts = fixed.flatMap(([slot, place]) => {
    const plain = pattern.get(slot);
    return plain === undefined ? [] : [/** @type {Slot} */ ([slot, place - plain])];
  });
  if (!shifts.length) return [...pattern];
  const all = [/** @type {Slot} */ ([fixed[0][0], 0]), ...shifts, /** @type {Slot} */ ([fixed[fixed.length - 1][0], 0])];
  const taken = new Set(all.map(([slot]) => slot));
  return [...pattern]
    .filter(([slot]) => !taken.has(slot))
    .map(([slot, place]) => {
      const index = all.findIndex(([each]) => each > slot);
      const [[start, low], [end, high]] = [all[index - 1], all[index]];
      return [slot, place + low + ((high - low) * (slot - start)) / (end - start)];
    });
}
