/** From what is written to what is meant: every default and exception of a draft settled, hole by hole. */

import { address, placeOf, selector, sideOf } from "./draft_address.js";
import { Ring, fitted } from "./draft_ring.js";
import { nearest, unquoted } from "./draft_text.js";
import { readWalk } from "./draft_walk.js";
import { written } from "./draft_written.js";

/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_outline.js").Head} Head */
/** @typedef {import("./draft_outline.js").Point} Point */
/** @typedef {import("./draft_problem.js").DraftPart} DraftPart */
/** @typedef {import("./draft_problem.js").Finding} Finding */
/** @typedef {import("./draft_problem.js").Limits} Limits */
/** @typedef {import("./draft_ring.js").Twin} Twin */
/** @typedef {import("./draft_walk.js").Place} Place */
/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {import("./draft_written.js").Path} Path */
/** @typedef {Record<Side, Place[]>} Walks */

/**
 * A place on the walk with all defaults and exceptions settled. Lengths are in mm, null where nobody knows.
 * `strip` and `twin` are indices.
 * @typedef {object} Hole
 * @property {string} address
 * @property {Side} side
 * @property {number} number
 * @property {string[]} passes such as `m9` and `c1`
 * @property {boolean} drilled
 * @property {number | null} bore
 * @property {number | null} depth of the rim
 * @property {string | null} part
 * @property {number | null} strip
 * @property {number | null} twin
 * @property {boolean} tieOff
 * @property {number | null} place measured, down its side
 */

/**
 * A moulded strip, the drilled holes it covers, clockwise, and the entry of the draft that wrote it.
 * @typedef {object} Strip
 * @property {string} name
 * @property {string[]} holes
 * @property {string | null} part
 * @property {number} entry
 */

/**
 * A frame as a draft has it: what the geometry, the drawing and the rules take. Holes run clockwise.
 * @typedef {object} DraftFrame
 * @property {string} name
 * @property {string} maker
 * @property {string} sport
 * @property {Head} head
 * @property {number} mains
 * @property {number} crosses
 * @property {[number, number] | null} spacing
 * @property {Hole[]} holes
 * @property {Strip[]} strips
 * @property {Twin[]} twins
 * @property {string[]} tieOffs
 * @property {number} pieces of string
 * @property {"head" | "throat"} mainsStart
 * @property {"head" | "throat"} crossesStart
 * @property {Side} firstCross
 * @property {boolean} mirrored
 */

/** What says how a frame is built: the rest may be missing and a frame can still be drawn. */
export const BUILT_OF = [
  "sport", "head", "mains", "crosses", "spacing_mm", "walk", "places_mm", "left", "stringing", "bore_mm",
  "rim_depth_mm", "fitted", "strips",
];

/**
 * @param {Draft} given whose keys of `BUILT_OF` have the right shape
 * @param {Record<string, DraftPart>} catalogue
 * @param {Pick<Limits, "longest_mm" | "most_named" | "most_faults">} limits
 * @returns {{frame: DraftFrame | null, findings: Finding[]}} a frame, or why there is none
 */
export function settle(given, catalogue, limits) {
  const draft = written(given);
  const { head, findings } = headOf(draft);
  const walked = walksOf(draft, limits.most_faults);
  findings.push(...walked.findings);
  const { walks } = walked;
  if (findings.length || !head) return { frame: null, findings };
  const ring = new Ring({ R: walks.R.length, L: walks.L.length }, limits);
  const settled = holesOf(draft, ring, walks, catalogue);
  if (ring.findings.length) {
    const once = new Map(ring.findings.map((each) => [JSON.stringify(each), each]));
    return { frame: null, findings: [...once.values()] };
  }
  const { stringing = {}, spacing_mm: apart } = draft;
  const frame = {
    name: String(draft.name ?? "").trim(),
    maker: String(draft.maker ?? "").trim(),
    sport: draft.sport,
    head,
    mains: draft.mains,
    crosses: draft.crosses,
    spacing: apart ? /** @type {[number, number]} */ ([apart.mains, apart.crosses]) : null,
    ...settled,
    pieces: stringing.pieces ?? 2,
    mainsStart: stringing.mains_start ?? "head",
    crossesStart: stringing.crosses_start ?? "head",
    firstCross: stringing.first_cross ?? "R",
    mirrored: !draft.left,
  };
  return { frame, findings: [] };
}

/**
 * @param {Draft} draft
 * @returns {{head: Head | null, findings: Finding[]}}
 */
function headOf({ head }) {
  /** @type {Finding[]} */
  const findings = [];
  const complain = (/** @type {string} */ message, /** @type {string[]} */ ...path) =>
    findings.push({ rule: "meaning", path: ["head", ...path], message });
  const { outline, exponent = null, taper = null, inside_mm: inside = null, points_mm: points = null } = head;
  const own = { exponent: "superellipse", taper: "teardrop", points_mm: "points" };
  for (const [name, owner] of Object.entries(own)) {
    const isGiven = (head[name] ?? null) !== null;
    if (isGiven && outline !== owner) complain(`${name} belongs to the outline ${owner}, not ${outline}.`, name);
    else if (!isGiven && outline === owner) complain(`The outline ${outline} needs the key ${name}.`);
  }
  if (outline !== "points") {
    const [width, height] = inside ?? [];
    if (inside) return { head: { outline, width, height, exponent, taper, points: [] }, findings };
    complain(`The outline ${outline} needs inside_mm: [width, height].`);
    return { head: null, findings };
  }
  if (inside) complain("The points give the size; leave inside_mm out.", "inside_mm");
  if (!points) return { head: null, findings };
  const [width, height] = [0, 1].map((axis) => {
    const values = points.map((/** @type {Point} */ point) => point[axis]);
    return Math.max(...values) - Math.min(...values);
  });
  if (!width || !height) complain("The points lie on one line; a head has a width and a height.", "points_mm");
  return { head: { outline, width, height, exponent: null, taper: null, points }, findings };
}

/**
 * @param {Draft} draft
 * @param {number} most faults that are told of one walk
 * @returns {{walks: Walks, findings: Finding[]}}
 */
function walksOf({ walk, left, mains, crosses }, most) {
  const mainNames = Array.from({ length: Math.floor(mains / 2) }, (_, index) => `m${index + 1}`);
  const known = [...mainNames, ...Array.from({ length: crosses }, (_, index) => `c${index + 1}`)];
  const read = (/** @type {Side} */ side, /** @type {string} */ text, /** @type {Path} */ path) => {
    const { places, faults } = readWalk(text);
    /** @type {Finding[]} */
    const findings = faults.slice(0, most).map(({ index, word, message }) => ({
      rule: "meaning",
      path: [...path, index],
      message,
      hole: `${side}${index + 1}`,
      expected: "m3, c5, m9+c1, . (no string) or x (no hole)",
      nearest: nearest(word, known),
    }));
    return { places, findings };
  };
  const right = read("R", walk, ["walk"]);
  if (!left) return { walks: { R: right.places, L: right.places }, findings: right.findings };
  const other = read("L", left.walk, ["left", "walk"]);
  return { walks: { R: right.places, L: other.places }, findings: [...right.findings, ...other.findings] };
}

/**
 * @param {Draft} draft
 * @param {Ring} ring
 * @param {Walks} walks
 * @param {Record<string, DraftPart>} catalogue
 */
function holesOf(draft, ring, walks, catalogue) {
  const bores = ring.lengths("bore_mm", draft.bore_mm ?? "unknown");
  const depths = ring.lengths("rim_depth_mm", draft.rim_depth_mm ?? "unknown");
  const { parts, twins: pairs } = fitted(ring, draft.fitted ?? new Map(), bores, catalogue);
  const strips = stripsOf(draft, ring, walks);
  const stripOf = new Map(strips.flatMap(({ holes }, index) => holes.map((hole) => [hole, index])));
  const twins = pairs.filter(({ holes }) => !holes.some((hole) => stripOf.has(hole)));
  const twinOf = new Map(twins.flatMap(({ holes }, index) => holes.map((hole) => [hole, index])));
  const places = placesOf(draft, ring);
  const tieOffs = tieOffsOf(draft, ring);
  /** @type {Hole[]} */
  const holes = ring.all.map((at) => {
    const [side, number] = [sideOf(at), placeOf(at)];
    const { passes, drilled } = walks[side][number - 1];
    if (!drilled) {
      const nothing = { bore: null, depth: null, part: null, strip: null, twin: null, tieOff: false, place: null };
      return { address: at, side, number, passes, drilled, ...nothing };
    }
    const strip = stripOf.get(at) ?? null;
    return {
      address: at,
      side,
      number,
      passes,
      drilled,
      bore: bores.get(at) ?? null,
      depth: depths.get(at) ?? null,
      part: strip === null ? (parts.get(at) ?? null) : strips[strip].part,
      strip,
      twin: twinOf.get(at) ?? null,
      tieOff: tieOffs.includes(at),
      place: places.get(at) ?? null,
    };
  });
  return { holes, strips, twins, tieOffs };
}

/**
 * @param {Draft} draft
 * @param {Ring} ring
 * @param {Walks} walks
 * @returns {Strip[]} two of an entry without sides
 */
function stripsOf({ strips = [] }, ring, walks) {
  const isDrilled = (/** @type {string} */ hole) => walks[sideOf(hole)][placeOf(hole) - 1].drilled;
  return strips.flatMap((/** @type {any} */ { name, holes, part }, /** @type {number} */ entry) =>
    stripRuns(holes, ring, ["strips", entry, "holes"]).map((run) => ({
      name: name.trim(),
      holes: run.filter(isDrilled),
      part: part === "unknown" ? null : part,
      entry,
    })),
  );
}

/**
 * @param {(number | string)[]} ends
 * @param {Ring} ring
 * @param {Path} path
 * @returns {string[][]}
 */
function stripRuns(ends, ring, path) {
  const [first, last] = ends.map(address);
  if (first && last) return ring.between(first, last, path);
  const both = selector(`${ends[0]}-${ends[1]}`);
  if (both?.sides.length === 2) return ring.runs(both, path);
  ring.complain(path, "A strip runs from one hole to another.", {
    found: ends.map(unquoted).join(", "),
    expected: "[L6, R6] clockwise, or [12, 20] for one on each side",
  });
  return [];
}

/**
 * @param {Draft} draft
 * @param {Ring} ring
 * @returns {Map<string, number>} measured places by hole
 */
function placesOf({ places_mm: right, left }, ring) {
  /** @type {[Side, Path, any[] | null | undefined][]} */
  const lists = [
    ["R", ["places_mm"], right],
    left ? ["L", ["left", "places_mm"], left.places_mm] : ["L", ["places_mm"], right],
  ];
  /** @type {Map<string, number>} */
  const places = new Map();
  for (const [side, path, values] of lists) {
    if (values && values.length !== ring.counts[side]) {
      const message = `There are ${values.length} measured places for ${ring.counts[side]} places of the walk.`;
      ring.complain(path, message, { tip: "Write unknown where a place was not measured." });
    }
    (values ?? []).forEach((value, index) => {
      if (value !== "unknown") places.set(`${side}${index + 1}`, value);
    });
  }
  return places;
}

/**
 * @param {Draft} draft
 * @param {Ring} ring
 * @returns {string[]}
 */
function tieOffsOf({ stringing }, ring) {
  const words = /** @type {string[]} */ (stringing?.tie_offs ?? []);
  const known = words.filter((word, index) => ring.has(word, ["stringing", "tie_offs", index]));
  return [...new Set(known)];
}
