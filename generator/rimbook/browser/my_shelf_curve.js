/** How a shelf grows with the service it gives: the drawing of a club's page, drawn on the page. */

import { svg, through } from "./draft_svg.js";

/** @typedef {import("./draft_svg.js").Spot} Spot */

/** Pieces of both shelves at one service level, as the axis names it.
 * @typedef {{level: string, apart: number, pooled: number}} Point
 */

const [WIDTH, HEIGHT] = [360, 246];
const [LEFT, RIGHT, TOP, BOTTOM] = [34, 12, 46, 40];
const MARK = 3.5;
const NAME = "shelf-curve";

/**
 * The drawing. Levels stand at equal distances, since each costs more than the one before.
 * @param {readonly Point[]} points
 */
export function shelfCurve(points) {
  const most = Math.max(1, ...points.map(({ apart, pooled }) => Math.max(apart, pooled)));
  const step = stepOf(most);
  const top = step * Math.ceil(most / step);
  const spot = (/** @type {number} */ at, /** @type {number} */ value) => spotOf(at, value, points.length, top);
  const apart = points.map((point, at) => spot(at, point.apart));
  const pooled = points.map((point, at) => spot(at, point.pooled));
  const grid = Array.from({ length: Math.floor(top / step) + 1 }, (_, line) => step * line);
  const heights = grid.map((value) => spot(0, value)[1]);
  const helper = heights.map((y) => through([[LEFT, y], [WIDTH - RIGHT, y]])).join(""); // prettier-ignore
  return svg(
    "svg",
    {
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      class: `drawing drawing-${NAME}`,
      role: "group",
      "aria-labelledby": `${NAME}-title`,
      "font-family": "sans-serif",
      fill: "none",
    },
    svg("title", { id: `${NAME}-title` }, "Pieces on the full shelf by service level"),
    svg("desc", { id: `${NAME}-desc` }, said(points)),
    svg("path", { d: helper, class: "helper", "stroke-width": 0.6 }),
    svg(
      "g",
      {},
      ...grid.map((value, at) => words(String(value), LEFT - 6, heights[at] + 3.5, "end")),
      ...points.map(({ level }, at) => words(level, pooled[at][0], HEIGHT - BOTTOM + 16, "middle")),
      words("pieces on the full shelf", 4, TOP - 12, ""),
      words("service level, %", (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 6, "middle"),
    ),
    line(apart, "cross", false),
    line(pooled, "main", true),
    key(LEFT, "one drawer a part", "cross", false),
    key(LEFT + 140, "fewest drawers", "main", true),
  );
}

/** @param {readonly Point[]} points */
function said(points) {
  const each = points.map(
    ({ level, apart, pooled }) => `${level} %: ${pooled} with the fewest drawers, ${apart} with one drawer a part`,
  );
  return each.join("; ");
}

/**
 * @param {number} at
 * @param {number} value
 * @param {number} count
 * @param {number} top
 * @returns {Spot}
 */
function spotOf(at, value, count, top) {
  const across = (WIDTH - LEFT - RIGHT - 24) / Math.max(1, count - 1);
  return [LEFT + 12 + at * across, HEIGHT - BOTTOM - (value / top) * (HEIGHT - TOP - BOTTOM)];
}

/**
 * @param {readonly Spot[]} spots
 * @param {string} ink
 * @param {boolean} isRound its marks, and that the line is whole
 */
function line(spots, ink, isRound) {
  /** @type {Record<string, string>} */
  const dashes = isRound ? {} : { "stroke-dasharray": "5 3" };
  const path = svg("path", { d: through(spots), class: ink, "stroke-width": 1.8, ...dashes });
  const look = { class: `${ink} rim-mark-hollow`, "stroke-width": 1.6 };
  const marks = spots.map(([x, y]) =>
    isRound
      ? svg("circle", { cx: x, cy: y, r: MARK, ...look })
      : svg("rect", { x: x - MARK, y: y - MARK, width: 2 * MARK, height: 2 * MARK, ...look }),
  );
  return svg("g", {}, path, ...marks);
}

/**
 * @param {number} x
 * @param {string} text
 * @param {string} ink
 * @param {boolean} isRound
 */
function key(x, text, ink, isRound) {
  return svg("g", {}, line([[x, 12], [x + 24, 12]], ink, isRound), words(text, x + 32, 15.5, "")); // prettier-ignore
}

/**
 * @param {string} text
 * @param {number} x
 * @param {number} y
 * @param {string} anchor
 */
function words(text, x, y, anchor) {
  /** @type {Record<string, string>} */
  const anchored = anchor ? { "text-anchor": anchor } : {};
  return svg("text", { x, y, ...anchored, "font-size": 10 }, text);
}

/** @param {number} most @returns {number} a round distance of lines, so that there are three to six */
function stepOf(most) {
  for (let size = 1; ; size *= 10) {
    for (const step of [size, 2 * size, 5 * size]) if (most <= 5 * step) return step;
  }
}
