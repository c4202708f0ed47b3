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
  const way = choiceView("Way of working", "rb-work-way", WAYS, (chosen) => {
    const sheet = store.sheet();
    store.change(work(sheet, chosen, sheet.minutes ?? USUAL_MINUTES));
  });
  minutes.addEventListener("change", () => {
    const left = minutes.value === "" ? null : minutes.valueAsNumber;
    store.change(work(store.sheet(), "against the clock", left));
  });
  const said = el("p", { class: "rb-work-said", role: "status" });
  const short = el("div", {});
  const lists = el("div", {});
  return {
    element: el(
      "section",
      { "aria-label": "Order of work" },
      el("h3", {}, "Order of work"),
      way.element,
      field,
      said,
      short,
      lists,
    ),
    /** @param {Job} job */
    show(job) {
      const sheet = store.sheet();
      way.show(sheet.way);
      field.hidden = sheet.way === "unhurried";
      const left = sheet.minutes === null ? "" : String(sheet.minutes);
      if (document.activeElement !== minutes || minutes.value === "" || Number(minutes.value) !== sheet.minutes) {
        minutes.value = left;
      }
      const says = total(job);
      if (said.textContent !== says) said.textContent = says;
      fill(short, tooShort(store.frame, job));
      fill(
        lists,
        list(store.frame, job, "What to do first", job.work),
        list(store.frame, job, "What can wait", job.clock.later),
      );
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
 * @param {SheetFrame} frame
 * @param {Job} job
 * @param {string} title
 * @param {readonly Task[]} tasks
 */
function list(frame, { verdicts, lacking }, title, tasks) {
  if (!tasks.length) return null;
  const items = tasks.map(({ piece, presses, seconds }) => {
    const waits = title === "What can wait" ? "" : `, ${PRESSES_WORDS[presses]}`;
    return el(
      "li",
      {},
      el("strong", {}, holesWords(holesOf(frame, piece))),
      ` ${actWords(verdicts[piece]).toLowerCase()}: ${frame.pieces[piece].name}, ${seconds} s${waits}`,
    );
  });
  const short = lacking.length && title !== "What can wait" ? " (without what no part is to be had for)" : "";
  const attributes = { class: "rb-work-list", open: tasks.length <= FEW };
  return el(
    "details",
    attributes,
    el("summary", {}, `${title}: ${counted(tasks.length, "place")}${short}`),
    el("ol", {}, ...items),
  );
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
