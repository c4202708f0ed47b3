/** Whether the head is a racket's, and the whole racket holds its head, keeps within the law, and has a tension that the sport uses. */

import { fixed, general, mm } from "./draft_number.js";

/** @typedef {import("./draft_problem.js").Limit} Limit */
/** @typedef {import("./draft_problem.js").Limits} Limits */
/** @typedef {import("./draft_where.js").Rule} Rule */

/** @type {Rule} */
export function headLargeEnough({ frame: { head } }, { limits: { smallest_head_mm: least } }) {
  return [head.width, head.height].flatMap((size, index) => {
    if (size >= least) return [];
    return {
      path: head.outline === "points" ? ["head", "points_mm"] : ["head", "inside_mm", index],
      message: `The line of holes is ${mm(size)} ${index ? "high" : "wide"}: less than any racket's.`,
      expected: `at least ${mm(least)}`,
      tip: "Lengths are in mm: 18.4 cm are 184 mm, 7.25 inches are 184.15 mm.",
    };
  });
}

/** @type {Rule} */
export function overallHoldsHead({ draft, frame: { head } }) {
  const overall = draft.overall_mm ?? [Infinity, Infinity];
  return [head.height, head.width].flatMap((inside, index) => {
    if (overall[index] > inside) return [];
    const what = index ? "width" : "length";
    return {
      path: ["overall_mm", index],
      message: `The whole frame has a ${what} of ${mm(overall[index])}, but its line of holes has ${mm(inside)}.`,
      expected: `more than ${mm(inside)}`,
      tip: "overall_mm is [length, width]; inside_mm is [width, height].",
    };
  });
}

/** @type {Rule} */
export function frameWithinLaw({ draft, frame: { sport } }, { limits }) {
  const overall = draft.overall_mm ?? [0, 0];
  return ["frame length", "frame width"].flatMap((what, index) => {
    const limit = limits.law[`${sport} ${what}`];
    if (!limit || !over(overall[index], limit, limits)) return [];
    return {
      path: ["overall_mm", index],
      message: `The ${what} is ${mm(overall[index])}; ${limit.rule} allows ${mm(limit.most)}.`,
      expected: `at most ${mm(limit.most)}`,
      tip: overall[0] < overall[1] ? "The length comes first, then the width." : null,
    };
  });
}

/** @type {Rule} */
export function tensionPlausible({ draft, frame: { sport } }, { limits }) {
  if (!draft.tension_limit) return [];
  const [number, unit] = draft.tension_limit.split(" ");
  const { newton } = limits;
  const [value, doubtful] = [Number(number), limits.doubtful_n[sport]];
  const newtons = value * newton[unit];
  if (newtons <= doubtful) return [];
  const fits = Object.keys(newton).find((other) => other !== "N" && value * newton[other] <= doubtful);
  const pounds = (/** @type {number} */ force) => `${fixed(force / newton.lb, 0)} lb`;
  return [
    {
      path: ["tension_limit"],
      message: `A limit of ${general(value)} ${unit} is ${pounds(newtons)}: more than ${sport} is strung at.`,
      expected: `at most about ${pounds(doubtful)}`,
      nearest: fits ? `${general(value)} ${fits}` : null,
      tip: "Copy number and unit as the maker printed them: too high a limit breaks frames.",
    },
  ];
}

/**
 * Whether a value exceeds a limit; one that meets it does not.
 * @param {number} value
 * @param {Limit} limit
 * @param {Limits} limits
 */
export function over(value, limit, { rounding }) {
  return value > limit.most + rounding;
}
