/** How there is to be worked, unhurried or against the clock: what comes first, and what can wait. */

import { el, fill } from "./dom.js";
import { choiceView } from "./sheet_choice_view.js";
import { MOST_MINUTES, work } from "./sheet_state.js";
import { actWords, holesWords, minutesWords, PRESSES_WORDS } from "./sheet_words.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_job.js").Job} Job */
/** @typedef {import("./sheet_jobs.js").Store} Store */
/** @typedef {import("./sheet_time.js").Task} Task */

const FEW = 12;
const FEW_HOLES = 6;
const USUAL_MINUTES = 10;
const WAYS = /** @type {const} */ ([
  ["unhurried", "Unhurried: what is grooved and can be replaced, is"],
  ["against the clock", "Against the clock: it is turned while a fresh position is left"],
]);

/** @param {Store} store */
export function clockView(store) {
  const minutes = el("input", {
    id: "rb-work-minutes",
    type: "number",
    inputmode: "numeric",
    min: "0",
    max: String(MOST_MINUTES),
    step: "1",
    autocomplete: "off",
  });
  const field = el("p", { class: "rb-work-minutes" }, el("label", { for: minutes.id }, "Minutes left"), " ", minutes);
  const showMinutes = () => (minutes.value = String(store.sheet().minutes ?? ""));
  const way = choiceView("Way of working", "rb-work-way", WAYS, (chosen) => {
    const sheet = store.sheet();
    store.change(work(sheet, chosen, sheet.minutes ?? USUAL_MINUTES));
  });
  minutes.addEventListener("change", () => {
    const left = minutes.value === "" ? null : minutes.valueAsNumber;
    store.change(work(store.sheet(), "against the clock", left));
    showMinutes();
  });
  const said = el("p", { class: "rb-work-said", role: "status" });
  const short = el("div", {});
  const first = taskList(store.frame, "What to do first");
  const later = taskList(store.frame, "What can wait");
  return {
    element: el(
      "section",
      { "aria-label": "Order of work" },
      el("h3", {}, "Order of work"),
      way.element,
      field,
      said,
      short,
      first.element,
      later.element,
    ),
    /** @param {Job} job */
    show(job) {
      const sheet = store.sheet();
      way.show(sheet.way);
      field.hidden = sheet.way === "unhurried";
      if (document.activeElement !== minutes) showMinutes(); // nothing is changed under somebody's fingers
      const says = total(job);
      if (said.textContent !== says) said.textContent = says;
      fill(short, tooShort(store.frame, job));
      const without = job.lacking.length ? " (without what no part is to be had for)" : "";
      first.show(job, job.work, without);
      later.show(job, job.clock.later, "");
    },
  };
}

/** @param {Job} job */
function total({ judged, work: now, clock, lacking }) {
  if (judged.ends) return "The frame is cracked: there is nothing to fit and nothing to string.";
  if (!now.length && !clock.later.length && !lacking.length)
    return "Nothing to do yet: mark what you see at the holes.";
  const later = clock.later.length ? `; ${counted(clock.later.length, "place")} can wait` : "";
  return `${counted(now.length, "place")} to do, about ${minutesWords(clock.seconds)}${later}.`;
}

/**
 * @param {SheetFrame} frame
 * @param {Job} job
 */
function tooShort(frame, { clock }) {
  if (clock.fits) return null;
  const musts = clock.now.filter(({ presses }) => presses === "must");
  const holes = whereOf(
    frame,
    musts.map(({ piece }) => piece),
  );
  return el(
    "div",
    { class: "rb-caution", role: "note" },
    el("p", {}, el("strong", {}, `The time is too short by ${minutesWords(clock.over)}.`)),
    el(
      "p",
      {},
      `What must be done stays on the list all the same: ${holes}. `,
      "Ask for more time, or hand the racket back unstrung.",
    ),
  );
}

/**
 * A list that may be folded away: what somebody folded stays folded.
 * @param {SheetFrame} frame
 * @param {string} title
 */
function taskList(frame, title) {
  const summary = el("summary", {});
  const items = el("ol", {});
  const element = el("details", { class: "rb-work-list", hidden: true }, summary, items);
  return {
    element,
    /**
     * @param {Job} job
     * @param {readonly Task[]} tasks
     * @param {string} remark
     */
    show({ verdicts }, tasks, remark) {
      if (element.hidden) element.open = tasks.length > 0 && tasks.length <= FEW;
      element.hidden = !tasks.length;
      summary.textContent = `${title}: ${counted(tasks.length, "place")}${remark}`;
      fill(items, ...tasks.map((task) => taskItem(frame, verdicts[task.piece], task)));
    },
  };
}

/**
 * @param {SheetFrame} frame
 * @param {import("./sheet_verdict.js").Verdict} verdict
 * @param {Task} task
 */
function taskItem(frame, verdict, { piece, presses, seconds }) {
  const how = `${actWords(verdict).toLowerCase()}: ${frame.pieces[piece].name}, ${seconds} s`;
  const holes = el("strong", {}, holesWords(holesOf(frame, piece)));
  return el("li", {}, holes, ` ${how}, ${PRESSES_WORDS[presses]}`);
}

/**
 * The holes of some pieces: `R4, R6+L6 and L1`, of a long strip where it begins and ends.
 * @param {SheetFrame} frame
 * @param {readonly number[]} pieces
 */
export function whereOf(frame, pieces) {
  const ofOne = (/** @type {string[]} */ holes) => (holes.length > FEW_HOLES ? holesWords(holes) : holes.join("+"));
  return listed(pieces.map((piece) => ofOne(holesOf(frame, piece))));
}

/**
 * @param {SheetFrame} frame
 * @param {number} piece
 */
function holesOf(frame, piece) {
  return frame.pieces[piece].holes.map((hole) => frame.holes[hole].address);
}
