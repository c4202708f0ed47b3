/** What follows from the marks, piece by piece: the most pressing first, with the reason and its holes. */

import { el, fill } from "./dom.js";
import { judge } from "./sheet_verdict.js";
import { CHECK_ADVICE, CHECK_WORDS, PRESSES_WORDS, actWords, reasonWords } from "./sheet_words.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_verdict.js").Judged} Judged */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_store.js").Store} Store */

const WAYS = {
  "unhurried": "Unhurried: grooved single parts are replaced.",
  "against the clock": "Against the clock: grooved single parts are turned as long as a fresh position remains.",
};

const SIGNS = "On the drawings a full sign or a cross is a part that goes, an open sign one that stays, an arrow one that is turned.";
const FEW = 8;

/**
 * @param {HTMLElement} place
 * @param {Store} store
 */
export function startVerdicts(place, store) {
  store.listen((sheet) => {
    fill(place, el("h3", {}, "Verdicts"), ...verdicts(store.frame, sheet, judge(store.frame, sheet)));
  });
}

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Judged} judged
 * @returns {import("./dom.js").Child[]}
 */
function verdicts(frame, sheet, { ends, cares, unchecked, unseen, verdicts: all }) {
  if (ends) {
    return [caution(el("strong", {}, "The job ends here: the frame is cracked."), ` ${CHECK_ADVICE.crack}`)];
  }
  const groups = /** @type {const} */ (["must", "should", "can wait"]).map((presses) => ({
    words: PRESSES_WORDS[presses],
    found: all.filter((verdict) => verdict.presses === presses),
  }));
  const watched = all.filter(({ act, watch }) => act === "leave" && watch);
  const isUntouched = unseen.length === frame.holes.length;
  const counts = groups.filter(({ found }) => found.length).map(({ words, found }) => `${words}: ${found.length}`);
  if (watched.length) counts.push(`leave and watch: ${watched.length}`);
  return [
    ...cares.map((check) => caution(`There is ${CHECK_WORDS[check]}. ${CHECK_ADVICE[check]}`)),
    unchecked.length > 0 && el("p", { class: "rb-note" }, `The frame was not looked over for ${listed(unchecked.map((check) => CHECK_WORDS[check]))}.`),
    el("p", { class: "rb-verdict-counts" }, isUntouched ? "No hole is marked yet." : counts.join("; ") || "Nothing to do."),
    !isUntouched && unseen.length > 0 && unseenLine(unseen),
    !isUntouched && el("p", { class: "rb-quiet" }, WAYS[sheet.way], " ", SIGNS),
    ...groups.filter(({ found }) => found.length).flatMap(({ words, found }) => group(frame, words, found)),
    ...(watched.length ? group(frame, "leave and watch", watched) : []),
  ];
}

/** @param {readonly string[]} unseen */
function unseenLine(unseen) {
  const where = unseen.length > FEW ? "" : `: ${listed(unseen)}`;
  const words = `${counted(unseen.length, "hole")} not looked at${where}. Under More, “All others are sound” marks them.`;
  return el("p", {}, words);
}

/**
 * @param {SheetFrame} frame
 * @param {string} words
 * @param {readonly Verdict[]} found
 */
function group(frame, words, found) {
  return [
    el("h4", {}, words[0].toUpperCase() + words.slice(1)),
    el("ul", { class: "rb-plain rb-verdicts" }, ...found.map((verdict) => line(frame, verdict))),
  ];
}

/**
 * @param {SheetFrame} frame
 * @param {Verdict} verdict
 */
function line(frame, verdict) {
  const { holes, name } = frame.pieces[verdict.piece];
  const addresses = holes.map((hole) => frame.holes[hole].address);
  const ends = addresses.length > 2 ? [addresses[0], addresses[addresses.length - 1]] : addresses;
  const links = ends.flatMap((address, at) => [at > 0 && (addresses.length > 2 ? " to " : " and "), el("a", { href: `#${address}` }, address)]);
  return el(
    "li",
    { class: `is-${verdict.act}` },
    el("span", { class: "rb-verdict-holes" }, ...links),
    el("span", {}, el("strong", {}, actWords(verdict)), `: ${name}. `, el("span", { class: "rb-quiet" }, sentence(verdict.reasons.map(reasonWords).join("; ")))),
  );
}

/** @param {...import("./dom.js").Child} words */
function caution(...words) {
  return el("div", { class: "rb-caution", role: "note", "aria-label": "Caution" }, el("p", {}, ...words));
}

/** @param {string} words */
function sentence(words) {
  return `${words[0].toUpperCase()}${words.slice(1)}.`;
}
