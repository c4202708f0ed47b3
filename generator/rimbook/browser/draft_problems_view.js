/** Problems as they arise, in the words of `rimbook check`; each leads to its hole or its field. */

import { el, fill } from "./dom.js";
import { begins } from "./draft_fields.js";
import { counted, listed } from "./draft_words.js";

/** @typedef {import("./draft_fields.js").Field} Field */
/** @typedef {import("./draft_problem.js").Problem} Problem */

const MOST_SHOWN = 30;
const ALIKE = /** @type {const} */ (["error", "warning", "note"]);
const MORE = /** @type {const} */ (["found", "expected", "nearest", "tip"]);

/**
 * Counted by severity: `2 errors and 1 warning`; empty where nothing is wrong.
 * @param {readonly Problem[]} problems
 */
export function sumOf(problems) {
  const counts = ALIKE.map((severity) => ({ severity, count: problems.filter((each) => each.severity === severity).length }));
  return listed(counts.filter(({ count }) => count).map(({ severity, count }) => counted(count, severity)));
}

/**
 * The hole where a problem lies, as `R12`, or null.
 * @param {Problem} problem
 */
export function holeOf({ hole }) {
  return /[RL][1-9]\d{0,3}/.exec(hole ?? "")?.[0] ?? null;
}

/**
 * All holes that a problem names.
 * @param {Problem} problem
 * @returns {string[]}
 */
export function holesIn({ hole, message }) {
  return `${hole ?? ""} ${message}`.match(/\b[RL][1-9]\d{0,3}\b/g) ?? [];
}

/** @param {(problem: Problem) => void} onChosen */
export function problemsView(onChosen) {
  const place = el("div", { class: "rb-draft-problems" });
  let drawn = "";
  return {
    element: place,
    /** @param {readonly Problem[]} problems */
    show(problems) {
      const now = JSON.stringify(problems);
      if (now === drawn) return;
      drawn = now;
      const shown = problems.slice(0, MOST_SHOWN).map((problem) => item(problem, onChosen));
      fill(
        place,
        !problems.length && el("p", {}, "Nothing wrong: ", el("code", {}, "rimbook check"), " would let this map pass."),
        problems.length > 0 && el("ul", { class: "rb-plain" }, ...shown),
        problems.length > MOST_SHOWN && el("p", {}, `And ${counted(problems.length - MOST_SHOWN, "problem")} more: most will go with these.`),
      );
    },
  };
}

/**
 * @param {Problem} problem
 * @param {(problem: Problem) => void} onChosen
 */
function item(problem, onChosen) {
  const button = el("button", { type: "button", class: "rb-draft-problem" }, el("b", { class: `rb-draft-${problem.severity}` }, problem.severity), " ", problem.hole && `${problem.hole}: `, problem.message);
  button.addEventListener("click", () => onChosen(problem));
  const more = MORE.flatMap((name) => (problem[name] ? [`${name}: ${problem[name]}`] : []));
  return el("li", {}, button, el("span", { class: "rb-draft-hint" }, [...more, problem.rule].join(" · ")));
}

/**
 * The field in which a problem stands: the one whose path goes furthest along the problem's.
 * @param {Problem} problem
 * @param {readonly Field[]} fields
 * @returns {Field | null}
 */
export function fieldOf({ path }, fields) {
  const found = fields.filter((field) => begins(path, field.path()) || begins(field.path(), path));
  const shared = (/** @type {Field} */ field) => Math.min(field.path().length, path.length) - (field.element.hidden ? 10 : 0);
  return found.reduce((best, field) => (!best || shared(field) > shared(best) ? field : best), /** @type {Field | null} */ (null));
}
