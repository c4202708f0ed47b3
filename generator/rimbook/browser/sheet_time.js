/**
 * How long the work takes, and against the clock what comes first.
 *
 * Seconds for each kind of work are assumptions, chosen so that a full regrommet of a badminton frame takes
 * the 10 to 20 minutes that are common practice (no published source). A shop may set its own.
 */

import { PRESSES } from "./sheet_verdict.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_frame.js").PieceKind} PieceKind */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */
/** @typedef {import("./sheet_verdict.js").Presses} Presses */

/**
 * Seconds.
 * @typedef {object} Labour
 * @property {number} setUp once a job: look over, clean, lay out
 * @property {number} single out and in, cut if it stands proud
 * @property {number} wide
 * @property {number} twin
 * @property {number} strip besides its posts
 * @property {number} post of a strip
 * @property {number} turn
 */

/** @type {Labour} */
export const USUAL_LABOUR = { setUp: 90, single: 10, wide: 12, twin: 25, strip: 30, post: 6, turn: 5 };

/**
 * @typedef {object} Task
 * @property {number} piece index
 * @property {PieceKind} kind
 * @property {"turn" | "replace"} act
 * @property {Presses} presses
 * @property {number} pull the greatest on any of its holes, in string tensions; 0 where nobody knows
 * @property {number} seconds
 */

/**
 * Everything to do, in the order in which it presses: how badly, then how hard the strings pull, then
 * clockwise.
 * @param {SheetFrame} frame
 * @param {readonly Verdict[]} verdicts
 * @param {Labour} [labour]
 * @returns {Task[]}
 */
export function tasks(frame, verdicts, labour = USUAL_LABOUR) {
  /** @type {Task[]} */
  const found = [];
  for (const { piece, act, presses } of verdicts) {
    if (act === "leave") continue;
    const { kind, holes } = frame.pieces[piece];
    const pull = Math.max(0, ...holes.map((hole) => frame.holes[hole].pull ?? 0));
    const seconds = act === "turn" ? labour.turn : toReplace(kind, holes.length, labour);
    found.push({ piece, kind, act, presses, pull, seconds });
  }
  const first = (/** @type {Task} */ { piece }) => frame.pieces[piece].holes[0];
  return found.sort((a, b) => rank(b) - rank(a) || b.pull - a.pull || first(a) - first(b));
}

/**
 * @param {readonly Task[]} work
 * @param {Labour} [labour]
 * @returns {number} seconds for all of it
 */
export function secondsFor(work, labour = USUAL_LABOUR) {
  return work.reduce((total, { seconds }) => total + seconds, work.length ? labour.setUp : 0);
}

/**
 * @typedef {object} Clock
 * @property {Task[]} now in order
 * @property {Task[]} later what can wait
 * @property {number} seconds for what is done now
 * @property {boolean} fits whether what must be done can be done in time
 * @property {number} over seconds by which it does not
 */

/**
 * What must be done is always done now, even if the time is too short: then that is said. Of the rest,
 * whatever still fits, in order.
 * @param {readonly Task[]} ordered as `tasks` gives them
 * @param {number | null} minutes left; null if nobody said
 * @param {Labour} [labour]
 * @returns {Clock}
 */
export function againstTheClock(ordered, minutes, labour = USUAL_LABOUR) {
  const limit = minutes === null ? Infinity : minutes * 60;
  /** @type {Task[]} */
  const now = [];
  /** @type {Task[]} */
  const later = [];
  for (const task of ordered) {
    const fits = secondsFor([...now, task], labour) <= limit;
    (task.presses === "must" || fits ? now : later).push(task);
  }
  const must = secondsFor(now.filter(({ presses }) => presses === "must"), labour);
  return { now, later, seconds: secondsFor(now, labour), fits: must <= limit, over: Math.max(0, must - limit) };
}

/**
 * @param {PieceKind} kind
 * @param {number} posts
 * @param {Labour} labour
 */
function toReplace(kind, posts, labour) {
  if (kind === "strip") return labour.strip + posts * labour.post;
  if (kind === "twin-even" || kind === "twin-uneven") return labour.twin;
  return kind === "wide" ? labour.wide : labour.single;
}

/** @param {Task} task */
function rank({ presses }) {
  return PRESSES.indexOf(presses);
}
