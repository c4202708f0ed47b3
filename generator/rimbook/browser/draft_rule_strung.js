/** Whether the strung area keeps within the published limits of its sport. */

import { fixed, general, mm } from "./draft_number.js";
import { curve } from "./draft_outline.js";
import { over } from "./draft_rule_size.js";

/** @typedef {import("./draft_outline.js").Curve} Curve */
/** @typedef {import("./draft_problem.js").Limit} Limit */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {ReturnType<Rule>[number]} Told */

/** @type {Rule} */
export function strungWithinLaw({ frame }, { limits }) {
  const line = curve(frame.head);
  const [width, length] = sizeOf(line);
  const isOver = (/** @type {number} */ value, /** @type {Limit | undefined} */ limit) =>
    limit !== undefined && over(value, limit, limits);
  const law = (/** @type {string} */ what) => limits.law[`${frame.sport} ${what}`];
  /** @type {Told[]} */
  const told = [];
  const broad = law("strung width");
  if (isOver(width, broad)) {
    const tip = width > length ? "inside_mm is [width, height]." : null;
    told.push(excess(frame, 0, "strung width", width, broad, tip));
  }
  const long = law("strung length");
  if (isOver(length, long)) {
    const { throat_width: throat, length_with_throat: longer } = limits;
    const mayRunOn = mayRunIntoThroat(frame);
    const isNarrow = mayRunOn && !isOver(widthBelow(line, long.most), throat);
    const tip = `Farther down it may run on into the throat, no wider than ${mm(throat.most)} (${throat.rule}).`;
    if (!isNarrow) told.push(excess(frame, 1, "strung length", length, long, mayRunOn ? tip : null));
    else if (isOver(length, longer)) told.push(excess(frame, 1, "strung length", length, longer, null));
  }
  const wide = law("strung area");
  const square = areaOf(line) / 100;
  if (isOver(square, wide)) {
    const most = `${general(wide.most)} cm²`;
    const message = `The strung area is ${fixed(square, 1)} cm²; ${wide.rule} allows ${most}.`;
    told.push({ path: ["head"], message, expected: `at most ${most}` });
  }
  return told;
}

/**
 * @param {DraftFrame} frame
 * @param {number} index
 * @param {string} what
 * @param {number} value
 * @param {Limit} limit
 * @param {string | null} tip
 * @returns {Told}
 */
function excess({ head }, index, what, value, limit, tip) {
  return {
    path: head.outline === "points" ? ["head", "points_mm"] : ["head", "inside_mm", index],
    message: `The ${what} is ${mm(value)}; ${limit.rule} allows ${mm(limit.most)}.`,
    expected: `at most ${mm(limit.most)}`,
    tip,
  };
}

/**
 * @param {Curve} line
 * @returns {[number, number]} width and length of what it encloses, in mm
 */
function sizeOf({ points }) {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

/**
 * @param {Curve} line
 * @returns {number} the area it encloses, in mm²
 */
function areaOf({ points }) {
  const twice = points.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length];
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

/**
 * How wide a line still is anywhere lower than so many mm below its top.
 * @param {Curve} line
 * @param {number} down
 */
function widthBelow({ points }, down) {
  const low = Math.max(...points.map(([, y]) => y)) - down;
  const xs = points.flatMap(([x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length];
    const crossing = y < low !== nextY < low ? [x + ((nextX - x) * (low - y)) / (nextY - y)] : [];
    return y < low ? [x, ...crossing] : crossing;
  });
  return xs.length ? Math.max(...xs) - Math.min(...xs) : 0;
}

/**
 * Whether an outline can have a part "which otherwise would be the throat" (BWF Law 4.2.2).
 * @param {DraftFrame} frame
 */
function mayRunIntoThroat({ sport, head }) {
  return sport === "badminton" && ["teardrop", "points"].includes(head.outline);
}
