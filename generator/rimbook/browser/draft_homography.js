/**
 * The projective transform between two planes, of four points that are known in both: a photo of something flat
 * and the flat thing itself. The eight unknowns follow from eight linear equations (Heckbert, Fundamentals of
 * Texture Mapping and Image Warping, 1989, section 2.2), solved about the middle of the points, each set scaled
 * to its own size.
 */

/** @typedef {[number, number]} Point */
/** @typedef {readonly number[]} Matrix nine numbers, row by row; above nought on the near side of the horizon */

/** Three points whose triangle is flatter than this share of its longest side are taken to lie in a line. */
const FLAT = 0.01;

const TRIPLES = [[0, 1, 2], [1, 2, 3], [2, 3, 0], [3, 0, 1]]; // prettier-ignore

/**
 * What is wrong with four points as the corners of a flat rectangle seen from in front, in order round it.
 * @param {readonly Point[]} quad
 * @returns {string} empty where nothing is
 */
export function quadFault(quad) {
  if (quad.length !== 4 || !quad.flat().every(Number.isFinite)) return "Four points are needed.";
  const turns = TRIPLES.map(([a, b, c]) => turn(quad[a], quad[b], quad[c]));
  const isFlat = ([a, b, c], /** @type {number} */ index) => {
    const longest = Math.max(dist(quad[a], quad[b]), dist(quad[b], quad[c]), dist(quad[c], quad[a]));
    return Math.abs(turns[index]) <= FLAT * longest * longest;
  };
  if (TRIPLES.some(isFlat)) return "Three of the four points lie in one line, or nearly.";
  const right = turns.filter((each) => each > 0).length;
  if (right === 2) return "The sides cross: pick the corners one after another round the edge.";
  if (right === 1 || right === 3) return "One point lies between the other three: no rectangle looks like that in a photo.";
  return "";
}

/**
 * @param {readonly Point[]} from four points, in order round
 * @param {readonly Point[]} to the same four in the other plane
 * @returns {Matrix | string} the transform, or why there is none
 */
export function homography(from, to) {
  const fault = quadFault(from) || quadFault(to);
  if (fault) return fault;
  const [near, far] = [middled(from), middled(to)];
  const rows = from.flatMap((point, index) => {
    const [x, y] = moved(near, point);
    const [u, v] = moved(far, to[index]);
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ];
  });
  const found = solved(rows);
  if (!found) return "The four points leave no way to lay one plane on the other.";
  const matrix = times(inverse(far), times([...found, 1], near));
  // The sign in which the points themselves are on the near side.
  const [x, y] = from[0];
  const sign = Math.sign(matrix[6] * x + matrix[7] * y + matrix[8]);
  return matrix.map((each) => each * sign);
}

/**
 * @param {Matrix} matrix
 * @param {Point} point
 * @returns {Point | null} null at the horizon of the plane and beyond it
 */
export function apply(matrix, [x, y]) {
  const [a, b, c, d, e, f, g, h, i] = matrix;
  const depth = g * x + h * y + i;
  const size = Math.abs(g * x) + Math.abs(h * y) + Math.abs(i);
  if (!(depth > 1e-9 * size)) return null;
  return [(a * x + b * y + c) / depth, (d * x + e * y + f) / depth];
}

/**
 * The way back, of the same sign: what is on the near side stays there.
 * @param {Matrix} matrix that can be inverted
 * @returns {Matrix}
 */
export function inverse([a, b, c, d, e, f, g, h, i]) {
  const [p, q, r] = [e * i - f * h, f * g - d * i, d * h - e * g];
  const whole = a * p + b * q + c * r;
  return [p, c * h - b * i, b * f - c * e, q, a * i - c * g, c * d - a * f, r, b * g - a * h, a * e - b * d].map((each) => each / whole);
}

/**
 * @param {Matrix} after
 * @param {Matrix} before
 * @returns {Matrix} one transform and then the other
 */
export function times(after, before) {
  return Array.from({ length: 9 }, (_, index) => {
    const [row, column] = [3 * Math.floor(index / 3), index % 3];
    return after[row] * before[column] + after[row + 1] * before[column + 3] + after[row + 2] * before[column + 6];
  });
}

/**
 * How far at most a point moves in the second plane for a step of one in the first: the greater singular value
 * of the derivative there.
 * @param {Matrix} matrix
 * @param {Point} point
 * @returns {number} Infinity at the horizon and beyond
 */
export function stretch(matrix, point) {
  const there = apply(matrix, point);
  if (!there) return Infinity;
  const [a, b, , d, e, , g, h, i] = matrix;
  const depth = g * point[0] + h * point[1] + i;
  const [xx, xy] = [(a - there[0] * g) / depth, (b - there[0] * h) / depth];
  const [yx, yy] = [(d - there[1] * g) / depth, (e - there[1] * h) / depth];
  const squares = xx * xx + xy * xy + yx * yx + yy * yy;
  const area = xx * yy - xy * yx;
  return Math.sqrt((squares + Math.sqrt(Math.max(0, squares * squares - 4 * area * area))) / 2);
}

/**
 * Twice the area of a triangle, above nought where it turns from the first axis to the second.
 * @param {Point} one
 * @param {Point} two
 * @param {Point} three
 */
export function turn(one, two, three) {
  return (two[0] - one[0]) * (three[1] - two[1]) - (two[1] - one[1]) * (three[0] - two[0]);
}

/**
 * Moves the middle of some points to the origin and their mean distance from it to the square root of two.
 * @param {readonly Point[]} points
 * @returns {Matrix}
 */
function middled(points) {
  const mean = (/** @type {number[]} */ values) => values.reduce((sum, each) => sum + each, 0) / values.length;
  const [x, y] = [mean(points.map((point) => point[0])), mean(points.map((point) => point[1]))];
  const scale = Math.SQRT2 / mean(points.map((point) => dist(point, [x, y])));
  return [scale, 0, -scale * x, 0, scale, -scale * y, 0, 0, 1];
}

/**
 * @param {Matrix} matrix without perspective
 * @param {Point} point
 * @returns {Point}
 */
function moved([a, b, c, d, e, f], [x, y]) {
  return [a * x + b * y + c, d * x + e * y + f];
}

/**
 * Elimination with partial pivoting.
 * @param {number[][]} given rows of so many factors, and what they come to
 * @returns {number[] | null}
 */
function solved(given) {
  const rows = given.map((row) => [...row]);
  const count = rows.length;
  for (let column = 0; column < count; column++) {
    let best = column;
    for (let row = column + 1; row < count; row++) if (Math.abs(rows[row][column]) > Math.abs(rows[best][column])) best = row;
    [rows[column], rows[best]] = [rows[best], rows[column]];
    if (Math.abs(rows[column][column]) < 1e-12) return null;
    for (let row = 0; row < count; row++) {
      if (row === column) continue;
      const share = rows[row][column] / rows[column][column];
      for (let each = column; each <= count; each++) rows[row][each] -= share * rows[column][each];
    }
  }
  return rows.map((row, index) => row[count] / row[index]);
}

/**
 * @param {Point} one
 * @param {Point} other
 */
function dist(one, other) {
  return Math.hypot(one[0] - other[0], one[1] - other[1]);
}
