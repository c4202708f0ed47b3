/** Words round the rim that never lie on each other. */

/** @typedef {import("./draft_svg.js").Spot} Spot */

/**
 * @typedef {object} Wanted
 * @property {string} text
 * @property {Spot} spot just outside the rim
 * @property {Spot} out the unit way out of the head
 * @property {string} style
 * @property {boolean} isNeeded whether it is pushed outwards until it has room, or else left out
 */

/** @typedef {Wanted & {middle: Spot, box: number[]}} Label */

const ASIDE = [0, 3, -3, 6, -6, 9, -9, 12, -12];
const [RINGS, GAP] = [14, 1.6];

/**
 * @param {readonly Wanted[]} wanted in the order in which they get room
 * @param {number} size of the letters
 * @returns {Label[]}
 */
export function placed(wanted, size) {
  /** @type {Label[]} */
  const labels = [];
  for (const want of wanted) {
    const found = placeOf(want, size, labels);
    if (found) labels.push(found);
  }
  return labels;
}

/**
 * @param {Wanted} want
 * @param {number} size
 * @param {readonly Label[]} taken
 * @returns {Label | null}
 */
function placeOf(want, size, taken) {
  const [halfWidth, halfHeight] = [want.text.length * size * 0.34 + 0.8, size * 0.46];
  const [[x, y], [nx, ny]] = [want.spot, want.out];
  const support = Math.abs(nx) * halfWidth + Math.abs(ny) * halfHeight;
  const step = Math.abs(nx) * halfWidth + Math.abs(ny) * halfHeight * 2.2;
  for (let ring = 0; ring < (want.isNeeded ? RINGS : 1); ring++) {
    const out = GAP + support + ring * step;
    for (const aside of want.isNeeded ? ASIDE : [0, 3, -3]) {
      const [cx, cy] = [x + nx * out - ny * aside, y + ny * out + nx * aside];
      const box = [cx - halfWidth, cy - halfHeight, cx + halfWidth, cy + halfHeight];
      if (!taken.some((other) => meet(box, other.box))) return { ...want, middle: [cx, cy], box };
    }
  }
  return null;
}

/**
 * @param {number[]} one
 * @param {number[]} other
 */
function meet(one, other) {
  return one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3];
}
