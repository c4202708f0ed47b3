/** The spacing of the string bed: as written, or worked out from the head, the counts and the walk. */

/** @typedef {import("./draft_half.js").Half} Half */
/** @typedef {import("./draft_half.js").End} End */
/** @typedef {import("./draft_outline.js").Head} Head */

const EDGE_MAINS = 1.9;
const EDGE_CROSSES = 5;
const [LEVEL, BETWEEN, BEYOND, PULL] = [1, 0.5, 0.05, 0.05];

/**
 * @typedef {object} DraftHole
 * @property {string} address
 * @property {"R" | "L"} side
 * @property {number} number
 * @property {string[]} passes
 * @property {boolean} drilled
 * @property {number | null} place measured, in mm down its side
 */

/**
 * What the geometry needs of a frame.
 * @typedef {object} Bed
 * @property {Head} head
 * @property {number} mains
 * @property {number} crosses
 * @property {[number, number] | null} spacing of mains and crosses, where it was measured
 * @property {DraftHole[]} holes
 */

/** Where the strings run: mains and crosses this far apart, crosses about a middle. */
export class Spacing {
  /**
   * @param {number} mainsMm
   * @param {number} crossesMm
   * @param {number} middleMm
   * @param {number} crosses
   */
  constructor(mainsMm, crossesMm, middleMm, crosses) {
    this.mainsMm = mainsMm;
    this.crossesMm = crossesMm;
    this.middleMm = middleMm;
    this.crosses = crosses;
  }

  /** @param {number} number */
  main(number) {
    return (number - 0.5) * this.mainsMm;
  }

  /** @param {number} number */
  cross(number) {
    return this.middleMm + ((this.crosses + 1) / 2 - number) * this.crossesMm;
  }
}

/**
 * The spacing of evenly filled heads.
 * @param {Head} head
 * @param {number} mains
 * @param {number} crosses
 */
export function usualSpacing({ width, height }, mains, crosses) {
  return new Spacing(width / (mains + EDGE_MAINS), height / (crosses + EDGE_CROSSES), 0, crosses);
}

/**
 * The spacing that best meets the walk, where it puts a cross level with a main or between two mains.
 * @param {Bed} bed
 * @param {readonly {half: Half, holes: DraftHole[]}[]} walks
 * @returns {Spacing}
 */
export function spacing(bed, walks) {
  const meetings = walks.flatMap(({ half, holes }) => met(holes).map((meeting) => ({ half, ...meeting })));
  const fit = (/** @type {number} */ mainsMm) => fitCrosses(bed, meetings, mainsMm);
  if (bed.spacing) return fit(bed.spacing[0]).spacing;
  const usual = bed.head.width / (bed.mains + EDGE_MAINS);
  if (!meetings.length) return fit(usual).spacing;
  const tries = Array.from({ length: 7 }, (_, step) => usual * (0.82 + 0.05 * step));
  const costs = tries.map((mainsMm) => fit(mainsMm).miss + PULL * ((bed.mains / 2) * (mainsMm - usual)) ** 2);
  let best = 1;
  for (let index = 1; index < tries.length - 1; index++) if (costs[index] < costs[best]) best = index;
  return fit(tries[best] + dip(costs[best - 1], costs[best], costs[best + 1]) * (tries[1] - tries[0])).spacing;
}

/**
 * Where the parabola through three costs, one step apart, is least.
 * @param {number} before
 * @param {number} here
 * @param {number} after
 */
function dip(before, here, after) {
  const bend = before - 2 * here + after;
  return bend > 0 ? Math.min(Math.max((before - after) / (2 * bend), -1), 1) : 0;
}

/**
 * A cross that the walk puts level with a main, or between two mains, at one end.
 * @typedef {object} Meeting
 * @property {number} cross
 * @property {number} main
 * @property {End} end
 * @property {number} weight
 */

/**
 * @param {Bed} bed
 * @param {readonly (Meeting & {half: Half})[]} meetings
 * @param {number} mainsMm
 * @returns {{miss: number, spacing: Spacing}} the best crosses for such mains, and how badly they still meet
 */
function fitCrosses(bed, meetings, mainsMm) {
  const { height } = bed.head;
  const usual = height / (bed.crosses + EDGE_CROSSES);
  const halfCount = (bed.crosses + 1) / 2;
  let [w, wu, wuu, wy, wuy] = [PULL, 0, PULL * halfCount ** 2, 0, PULL * halfCount ** 2 * usual];
  const levels = meetings.map(({ half, cross, main, end, weight: plain }) => {
    const [y, steep] = half.mains[end].height((main - 0.5) * mainsMm);
    const weight = plain / Math.max(steep, 0.2) ** 2;
    const u = halfCount - cross;
    w += weight;
    wu += weight * u;
    wuu += weight * u * u;
    wy += weight * y;
    wuy += weight * u * y;
    return { weight, u, y };
  });
  let crossesMm = bed.spacing ? bed.spacing[1] : (w * wuy - wu * wy) / (w * wuu - wu * wu);
  if (!bed.spacing) crossesMm = Math.min(Math.max(crossesMm, usual / 2), height / (bed.crosses + 1));
  const middle = (wy - crossesMm * wu) / w;
  const miss = levels.reduce((sum, { weight, u, y }) => sum + weight * (y - middle - u * crossesMm) ** 2, 0);
  return { miss, spacing: new Spacing(mainsMm, crossesMm, middle, bed.crosses) };
}

/**
 * All crosses of one half that the walk puts level with a main or between two mains.
 * @param {readonly DraftHole[]} holes
 * @returns {Meeting[]}
 */
export function met(holes) {
  /** @type {Meeting[]} */
  const found = [];
  /** @type {Set<number>} */
  const seen = new Set();
  /** @type {{index: number, main: number, end: End} | null} */
  let before = null;
  /** @type {{index: number, cross: number}[]} */
  let waiting = [];
  holes.forEach((hole, index) => {
    const mains = numbersOf(hole, "m");
    const crosses = numbersOf(hole, "c");
    if (!mains.length) {
      waiting.push(...crosses.map((cross) => ({ index, cross })));
      return;
    }
    /** @type {End} */
    const end = seen.has(mains[0]) ? "throat" : "head";
    const main = mains.reduce((sum, number) => sum + number, 0) / mains.length;
    for (const number of mains) seen.add(number);
    if (waiting.length && before && before.end !== end) {
      found.push({ cross: waiting[0].cross, main: before.main + 0.5, end: before.end, weight: BEYOND });
      found.push({ cross: waiting[waiting.length - 1].cross, main: main + 0.5, end, weight: BEYOND });
    } else if (before) {
      const { index: start, main: first } = before;
      const step = (main - first) / (index - start);
      for (const each of waiting) {
        found.push({ cross: each.cross, main: first + step * (each.index - start), end, weight: BETWEEN });
      }
    }
    found.push(...crosses.map((cross) => ({ cross, main, end, weight: LEVEL })));
    [before, waiting] = [{ index, main, end }, []];
  });
  return found;
}

/**
 * @param {DraftHole} hole
 * @param {"m" | "c"} kind
 * @returns {number[]}
 */
export function numbersOf({ passes }, kind) {
  return passes.filter((each) => each.startsWith(kind)).map((each) => Number(each.slice(1)));
}
