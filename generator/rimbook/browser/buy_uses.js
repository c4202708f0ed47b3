/**
 * Which piece goes where: each need gets parts as far up its list as can be.
 *
 * By shortest augmenting paths, where a piece costs its place on the list of the need (R. G. Busacker and
 * P. J. Gowen, ORO technical paper 15 (1961)): the places on the lists add up to the least there is.
 */

/** @typedef {import("./buy_problem.js").Need} Need */

/**
 * @typedef {object} Use
 * @property {string} need
 * @property {string} part
 * @property {number} count pieces
 */

/**
 * @param {readonly Need[]} needs those that come first lack last
 * @param {Readonly<Record<string, number>>} supply pieces by part id
 * @returns {{uses: Use[], left: Record<string, number>}}
 */
export function deal(needs, supply) {
  const left = { ...supply };
  /** @type {Map<string, number>[]} */
  const got = needs.map(() => new Map());
  needs.forEach((need, at) => {
    let wanted = need.count;
    let brought = wanted;
    while (wanted > 0 && brought > 0) {
      brought = bring(needs, got, left, at, wanted);
      wanted -= brought;
    }
  });
  const uses = needs.flatMap(({ id, parts }, at) =>
    parts.map((part) => ({ need: id, part, count: got[at].get(part) ?? 0 })).filter(({ count }) => count > 0),
  );
  return { uses, left };
}

/**
 * @typedef {object} Reached
 * @property {number} cost
 * @property {number} from the need that takes a piece from this one
 * @property {string} part the part it takes
 */

/**
 * @param {readonly Need[]} needs
 * @param {Map<string, number>[]} got
 * @param {Record<string, number>} left changed in place, as is `got`
 * @param {number} start
 * @param {number} wanted
 * @returns {number} pieces brought
 */
function bring(needs, got, left, start, wanted) {
  const reached = shortest(needs, got, start);
  let end = -1;
  let last = "";
  let least = Infinity;
  for (const [at, { cost }] of reached) {
    needs[at].parts.forEach((part, place) => {
      if (left[part] && cost + place < least) [least, end, last] = [cost + place, at, part];
    });
  }
  if (end < 0) return 0;
  const steps = [];
  for (let at = end; at !== start; ) {
    const step = /** @type {Reached} */ (reached.get(at));
    const { from, part } = step;
    steps.push({ from, to: at, part });
    at = from;
  }
  const count = Math.min(wanted, left[last], ...steps.map(({ to, part }) => got[to].get(part) ?? 0));
  const give = (/** @type {number} */ at, /** @type {string} */ part, /** @type {number} */ pieces) =>
    got[at].set(part, (got[at].get(part) ?? 0) + pieces);
  left[last] -= count;
  give(end, last, count);
  for (const { from, to, part } of steps) {
    give(to, part, -count);
    give(from, part, count);
  }
  return count;
}

/**
 * The cheapest way from a need to every other that could give it a piece (Bellman and Ford).
 * @param {readonly Need[]} needs
 * @param {readonly Map<string, number>[]} got
 * @param {number} start
 */
function shortest(needs, got, start) {
  /** @type {Map<number, Reached>} */
  const reached = new Map([[start, { cost: 0, from: start, part: "" }]]);
  for (let changed = true; changed; ) {
    changed = false;
    for (const [from, { cost }] of [...reached]) {
      needs[from].parts.forEach((part, place) => {
        got.forEach((own, to) => {
          if (to === from || !own.get(part)) return;
          const then = cost + place - needs[to].parts.indexOf(part);
          if (then >= (reached.get(to)?.cost ?? Infinity)) return;
          reached.set(to, { cost: then, from, part });
          changed = true;
        });
      });
    }
  }
  return reached;
}
