/** A smooth closed line through measured points of a head. */

/** @typedef {import("./draft_outline.js").Point} Point */

/** Points closer than this share of half the width are taken for one. */
const SAME = 1e-9;

/**
 * A smooth line through the points, clockwise from the middle of the head: at each of them it runs as the
 * circle through it and its neighbours does. It has a point of x = 0 at the head and at the throat, nowhere else.
 * @param {readonly Point[]} measured
 * @param {number} pieces about so many
 * @returns {Point[]}
 */
export function smooth(measured, pieces) {
  let line = centred(spline(distinct(measured), pieces));
  if (turnsLeft(line)) line = line.reverse();
  const close = SAME * Math.max(...line.map(([x]) => x));
  line = distinct(
    line.filter(([x]) => Math.abs(x) > close),
    close,
  );
  const crossings = line.flatMap((start, index) => {
    const end = line[(index + 1) % line.length];
    if (start[0] > 0 === end[0] > 0) return [];
    return [{ y: start[1] + ((end[1] - start[1]) * start[0]) / (start[0] - end[0]), index }];
  });
  const byHeight = (/** @type {{y: number}} */ one, /** @type {{y: number}} */ other) => other.y - one.y;
  const ordered = [...crossings].sort(byHeight);
  const [head, throat] = [ordered[0], ordered[ordered.length - 1]];
  const rest = [...line.slice(head.index + 1), ...line.slice(0, head.index + 1)];
  const half = (throat.index - head.index + line.length) % line.length;
  return [[0, head.y], ...rest.slice(0, half), [0, throat.y], ...rest.slice(half)];
}

/**
 * @param {readonly Point[]} points of a closed line
 * @param {number} [close]
 * @returns {Point[]} without those that repeat the one before
 */
function distinct(points, close = 0) {
  return points.filter((point, index) => dist(point, points[(index - 1 + points.length) % points.length]) > close);
}

/**
 * @param {Point[]} points
 * @param {number} pieces
 * @returns {Point[]}
 */
function spline(points, pieces) {
  const count = points.length;
  const next = (/** @type {number} */ index) => points[(index + 1) % count];
  const step = points.reduce((total, point, index) => total + dist(point, next(index)), 0) / pieces;
  const ways = points.map((point, index) => way(points[(index - 1 + count) % count], point, next(index)));
  return points.flatMap((point, index) => {
    const steps = Math.ceil(dist(point, next(index)) / step);
    return span(point, next(index), ways[index], ways[(index + 1) % count], steps);
  });
}

/**
 * The unit tangent of the circle through three points at the middle one.
 * @param {Point} before
 * @param {Point} point
 * @param {Point} after
 * @returns {Point}
 */
function way(before, point, after) {
  const [into, out] = [
    [point[0] - before[0], point[1] - before[1]],
    [after[0] - point[0], after[1] - point[1]],
  ];
  const [a, b] = [Math.hypot(into[0], into[1]), Math.hypot(out[0], out[1])];
  const [x, y] = [(into[0] * b) / a + (out[0] * a) / b, (into[1] * b) / a + (out[1] * a) / b];
  const size = Math.hypot(x, y);
  return size ? [x / size, y / size] : [x, y];
}

/**
 * Points from one up to another on a Hermite cubic, as fast at its ends as the usual cubic for an arc.
 * @param {Point} start
 * @param {Point} end
 * @param {Point} leaving
 * @param {Point} arriving
 * @param {number} pieces
 * @returns {Point[]}
 */
function span(start, end, leaving, arriving, pieces) {
  const cosine = leaving[0] * arriving[0] + leaving[1] * arriving[1];
  const speed = (2 * dist(start, end)) / (1 + Math.sqrt(Math.max(1 + cosine, 0) / 2));
  return Array.from({ length: pieces }, (_, piece) => {
    const t = piece / pieces;
    const rest = 1 - t;
    const [a, c] = [(1 + 2 * t) * rest * rest, t * t * (3 - 2 * t)];
    const [b, d] = [t * rest * rest * speed, -t * t * rest * speed];
    return [
      a * start[0] + b * leaving[0] + c * end[0] + d * arriving[0],
      a * start[1] + b * leaving[1] + c * end[1] + d * arriving[1],
    ];
  });
}

/**
 * @param {Point[]} line
 * @returns {Point[]} with the origin in the middle of its box
 */
function centred(line) {
  const [xs, ys] = [line.map(([x]) => x), line.map(([, y]) => y)];
  const middle = (/** @type {number[]} */ values) => (Math.min(...values) + Math.max(...values)) / 2;
  const [x0, y0] = [middle(xs), middle(ys)];
  return line.map(([x, y]) => [x - x0, y - y0]);
}

/** @param {Point[]} line */
function turnsLeft(line) {
  const twice = line.reduce((total, [x, y], index) => {
    const [nextX, nextY] = line[(index + 1) % line.length];
    return total + x * nextY - nextX * y;
  }, 0);
  return twice > 0;
}

/**
 * @param {Point} one
 * @param {Point} other
 */
function dist(one, other) {
  return Math.hypot(one[0] - other[0], one[1] - other[1]);
}
