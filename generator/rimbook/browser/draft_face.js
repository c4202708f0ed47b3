/**
 * The live drawing of a draft: the head face on, as the site draws it. The list of holes says the same to
 * those who hear it; here a pointer picks a hole.
 */

import { placed } from "./draft_labels.js";
import { pathsOf, straightPieces } from "./draft_path.js";
import { planned, WIDTH } from "./draft_plan.js";
import { markOf, svg, through, weave } from "./draft_svg.js";

/** @typedef {import("./draft_plan.js").Plan} Plan */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_settle.js").Hole} Hole */
/** @typedef {import("./draft_svg.js").Marks} Marks */
/** @typedef {import("./draft_svg.js").Spot} Spot */

const [FONT, STUB] = [9.6, 26];
const [STRIP_CLEAR, CROWN, OVERHANG_MM] = [3.2, 2.6, 2.2];

/** @typedef {{mainsStart: "head" | "throat", crossesStart: "head" | "throat", firstCross: "R" | "L"}} Order */

/**
 * @typedef {object} Face
 * @property {SVGElement} drawing
 * @property {Plan} plan
 * @property {(holes: readonly string[], focus: string | null) => void} ring marks holes, one of them more
 * @property {(x: number, y: number) => string | null} holeAt the hole nearest to a point of the window
 */

/**
 * @param {DraftFrame} frame
 * @param {Order} order
 * @param {Marks} marks
 * @param {Record<string, import("./draft_problem.js").DraftPart>} parts
 * @returns {Face}
 */
export function drawFace(frame, order, marks, parts) {
  const plan = planned(frame);
  const at = (/** @type {string} */ hole, out = 0) => plan.spot(plan.along.get(hole) ?? 0, out);
  const labels = placed(wanted(frame, plan), FONT);
  const throat = Math.max(...plan.rim.map(([, y]) => y)) + plan.band + STUB;
  const boxes = labels.map(({ box }) => box);
  const edge = plan.band + 9;
  const xs = plan.rim.map(([x]) => x);
  const left = Math.min(Math.min(...xs) - edge, ...boxes.map((box) => box[0])) - 1;
  const right = Math.max(Math.max(...xs) + edge, ...boxes.map((box) => box[2])) + 1;
  const pad = Math.max(0, WIDTH - (right - left)) / 2;
  const top = Math.min(-edge, ...boxes.map((box) => box[1])) - 2;
  const low = Math.max(throat, ...boxes.map((box) => box[3])) + 2;
  const rings = svg("g", { class: "rb-draft-rings" });
  const drawing = svg(
    "svg",
    { viewBox: [left - pad, top, right - left + 2 * pad, low - top].join(" "), class: "drawing rb-draft-drawing", "aria-hidden": "true", fill: "none", "font-family": "sans-serif" },
    throatOf(frame, plan, throat),
    svg("path", { d: through(plan.rim, true), class: "rim-edge", "stroke-width": 2 * plan.band + 1.2 }),
    svg("path", { d: through(plan.rim, true), class: "rim-band", "stroke-width": 2 * plan.band }),
    ...strings(frame, order, plan, at),
    ...partBands(frame, plan, parts),
    ...frame.holes.filter(({ tieOff }) => tieOff).map(({ address }) => knot(plan, address)),
    rings,
    ...frame.holes.map((hole) => placeMark(hole, at(hole.address), plan, marks)),
    ...labels.flatMap(({ text, middle: [x, y], style, spot }) => [
      svg("path", { d: through([spot, [x, y]]), class: "pointer", "stroke-width": style === "bore" ? 0.6 : 0 }),
      svg("text", { x, y: y + FONT * 0.36, "font-size": FONT, "text-anchor": "middle", class: `rb-draft-${style}`, "font-weight": style === "address" ? "normal" : "bold" }, text),
    ]),
  );
  return {
    drawing,
    plan,
    ring(holes, focus) {
      const drawn = holes.filter((hole) => plan.along.has(hole)).map((hole) => {
        const [cx, cy] = at(hole);
        const isFocus = hole.slice(1) === focus?.slice(1);
        return svg("circle", { cx, cy, r: plan.radius * 2.3, class: isFocus ? "rb-draft-here" : "rb-draft-marked" });
      });
      rings.replaceChildren(...drawn);
    },
    holeAt(x, y) {
      const matrix = drawing instanceof SVGSVGElement ? drawing.getScreenCTM()?.inverse() : null;
      if (!matrix) return null;
      const point = new DOMPoint(x, y).matrixTransform(matrix);
      let [best, nearest] = [/** @type {string | null} */ (null), 24 * matrix.a];
      for (const { address } of frame.holes) {
        const [hx, hy] = at(address);
        const away = Math.hypot(hx - point.x, hy - point.y);
        if (away < nearest) [best, nearest] = [address, away];
      }
      return best;
    },
  };
}

/**
 * @param {DraftFrame} frame
 * @param {Plan} plan
 * @param {number} low
 */
function throatOf(frame, plan, low) {
  const half = plan.line.length / 2;
  const [x] = plan.spot(half);
  const spread = frame.sport === "badminton" ? 0 : plan.line.length * 0.1;
  const arms = [-1, 1].map((side) => through([plan.spot(half + side * spread), [x - (spread ? side * 8 : 0), low]]));
  return svg("path", { d: arms.join(""), class: "throat", "stroke-width": 12 });
}

/**
 * @param {DraftFrame} frame
 * @param {Order} order
 * @param {Plan} plan
 * @param {(hole: string, out?: number) => Spot} at
 */
function strings(frame, order, plan, at) {
  const line = (/** @type {[string, string]} */ [start, end]) => /** @type {[Spot, Spot]} */ ([at(start), at(end)]);
  const { mains, crosses } = straightPieces(frame.holes);
  const across = mains.map(line).sort((a, b) => a[0][0] + a[1][0] - b[0][0] - b[1][0]);
  const down = crosses.map(line).sort((a, b) => a[0][1] + a[1][1] - b[0][1] - b[1][1]);
  const [mainPath, crossPath] = weave(across, down, 2.2);
  const places = new Map([...plan.along].map(([hole, along]) => [hole, { along }]));
  const legs = (pathsOf({ ...frame, ...order }, places, plan.line.length) ?? []).flat().filter(({ run }) => run === "outside");
  const out = plan.band - 1;
  const outside = legs.map(({ start, end }) => {
    let [a, b] = [plan.along.get(start) ?? 0, plan.along.get(end) ?? 0];
    let [first, last] = [start, end];
    if ((b - a + plan.line.length) % plan.line.length > plan.line.length / 2) [a, b, first, last] = [b, a, end, start];
    return through([at(first), ...plan.beside(a, b, out), at(last)]);
  });
  return [
    svg("path", { d: crossPath, class: "cross", "stroke-width": 1.1 }),
    svg("path", { d: mainPath, class: "main", "stroke-width": 1.1 }),
    svg("path", { d: outside.join(""), class: "outside", "stroke-width": 0.9 }),
  ];
}

/**
 * Strips outside the rim with their end caps, and the staples of two-post parts.
 * @param {DraftFrame} frame
 * @param {Plan} plan
 * @param {Record<string, import("./draft_problem.js").DraftPart>} parts
 */
function partBands(frame, plan, parts) {
  const out = plan.band + STRIP_CLEAR;
  const along = (/** @type {string} */ hole) => plan.along.get(hole) ?? 0;
  const strips = frame.strips.filter(({ holes }) => holes.length).flatMap(({ holes, part }) => {
    const [start, end] = [along(holes[0]) - OVERHANG_MM, along(holes[holes.length - 1]) + OVERHANG_MM];
    const known = part !== null;
    const caps = [start, end].map((place) => through([plan.spot(place, out - 2.8), plan.spot(place, out + 2.8)]));
    return [
      svg("path", { d: through(plan.beside(start, end, out)), class: "strip-band", "stroke-width": 2.6, ...(known ? {} : { "stroke-dasharray": "3 2" }) }),
      svg("path", { d: caps.join(""), class: "strip-cap", "stroke-width": 1.4 }),
    ];
  });
  const twins = frame.twins.map(({ holes: [first, last], part }) => {
    const [one, other] = parts[part]?.length ?? [];
    const legs = other === undefined ? [0, 0] : [one > other ? 5.6 : 0, other > one ? 5.6 : 0];
    const short = plan.radius + 2.4;
    const crown = plan.beside(along(first), along(last), plan.band + CROWN);
    const spots = [plan.spot(along(first), -short - legs[0]), ...crown, plan.spot(along(last), -short - legs[1])];
    return svg("path", { d: through(spots), class: "twin-staple", "stroke-width": 2, "stroke-linejoin": "round" });
  });
  return [...strips, ...twins];
}

/**
 * @param {Plan} plan
 * @param {string} hole
 */
function knot(plan, hole) {
  const along = plan.along.get(hole) ?? 0;
  const end = plan.spot(along + 2, -plan.band - 3.4);
  return svg(
    "g",
    {},
    svg("path", { d: through([plan.spot(along), end]), class: "knot-end", "stroke-width": 1.4 }),
    svg("circle", { cx: end[0], cy: end[1], r: 2.4, class: "knot" }),
  );
}

/**
 * @param {Hole} hole
 * @param {Spot} spot
 * @param {Plan} plan
 * @param {Marks} marks
 */
function placeMark(hole, [x, y], plan, marks) {
  const at = `translate(${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10})`;
  return svg("g", { transform: at, "data-address": hole.address, class: "rb-draft-hole" }, ...markOf(hole, plan.radius, marks));
}

/**
 * The first and last place of each side, then bores other than the most common, then every fifth place.
 * @param {DraftFrame} frame
 * @param {Plan} plan
 */
function wanted(frame, plan) {
  const reach = plan.band + (frame.strips.length || frame.twins.length ? 8.5 : 3);
  const label = (/** @type {number} */ along, /** @type {string} */ text, /** @type {string} */ style, /** @type {boolean} */ isNeeded) => ({
    text, style, isNeeded, spot: plan.spot(along, reach), out: plan.out(along),
  }); // prettier-ignore
  const along = (/** @type {Hole} */ { address }) => plan.along.get(address) ?? 0;
  const last = { R: 0, L: 0 };
  for (const { side, number } of frame.holes) last[side] = Math.max(last[side], number);
  const isEnd = (/** @type {Hole} */ { side, number }) => number === 1 || number === last[side];
  const ends = frame.holes.filter(isEnd).map((hole) => label(along(hole), hole.address, "address", true));
  const fifths = frame.holes.filter((hole) => !isEnd(hole) && hole.number % 5 === 0);
  const bores = boreRuns(frame.holes).map((run) => {
    const start = along(run[0]);
    const length = (along(run[run.length - 1]) - start + plan.line.length) % plan.line.length;
    return label(start + length / 2, boreText(run[0].bore), "bore", true);
  });
  return [...ends, ...bores, ...fifths.map((hole) => label(along(hole), hole.address, "address", false))];
}

/** @param {number | null} bore */
function boreText(bore) {
  return bore === null ? "?" : Number.isInteger(bore) ? `${bore}.0` : String(bore);
}

/**
 * Runs of neighbouring holes of one known bore that is not the most common one.
 * @param {readonly Hole[]} holes
 * @returns {Hole[][]}
 */
function boreRuns(holes) {
  /** @type {Map<number | null, number>} */
  const counts = new Map();
  for (const { bore, drilled } of holes) if (drilled) counts.set(bore, (counts.get(bore) ?? 0) + 1);
  const common = [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
  /** @type {Hole[][]} */
  const runs = [];
  let before = /** @type {Hole | null} */ (null);
  for (const hole of holes) {
    const isTold = hole.drilled && hole.bore !== null && hole.bore !== common;
    if (isTold && before?.bore === hole.bore && before.drilled) runs[runs.length - 1].push(hole);
    else if (isTold) runs.push([hole]);
    before = hole;
  }
  return runs;
}
