/** Marks made for another version of the map, whose holes are not where they were: each is asked about. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { guesses } from "./sheet_code.js";
import { settle, sweep } from "./sheet_state.js";
import { markWords } from "./sheet_words.js";
import { counted } from "./words.js";

/** @typedef {import("./sheet_state.js").Doubt} Doubt */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_store.js").Store} Store */

/**
 * @param {Store} store
 * @returns {HTMLElement} empty as long as there are none
 */
export function doubtList(store) {
  const place = el("div", { class: "rb-doubts" });
  /** @type {readonly Doubt[]} */
  let shown = [];
  store.watch(({ doubts }) => {
    if (doubts === shown) return;
    shown = doubts;
    if (doubts.length) fill(place, ...questions(store, doubts));
    else fill(place);
  });
  return place;
}

/**
 * @param {Store} store
 * @param {readonly Doubt[]} doubts
 */
function questions(store, doubts) {
  const sure = doubts.filter((doubt) => guesses(store.frame, doubt).length === 1);
  const all = button(`Put ${counted(sure.length, "mark")} where they belong by their strings`, () => {
    const put = (/** @type {Sheet} */ sheet, /** @type {Doubt} */ doubt) => settle(sheet, doubt, guesses(store.frame, doubt));
    store.change(sure.reduce(put, store.sheet()));
  });
  return [
    el("h4", {}, "Which hole was meant?"),
    el("p", {}, `The marks were made for another version of this map. ${counted(doubts.length, "mark")} did not find the hole again: say where it goes. None is lost until then.`),
    sure.length > 1 && el("p", {}, all),
    el("ul", { class: "rb-plain" }, ...doubts.map((doubt) => question(store, doubt))),
  ];
}

/**
 * @param {Store} store
 * @param {Doubt} doubt
 */
function question(store, doubt) {
  const order = store.frame.holes.map(({ address }) => address);
  const [guess] = guesses(store.frame, doubt);
  const isRow = doubt.from !== doubt.to;
  const select = (/** @type {string} */ label, /** @type {string | undefined} */ chosen) => {
    const options = order.map((address) => el("option", { value: address, selected: address === chosen }, address));
    return el("select", { "aria-label": label }, el("option", { value: "" }, "choose"), ...options);
  };
  const first = select(isRow ? "first hole" : "hole", guess ?? doubt.from);
  const last = isRow ? select("last hole", doubt.to) : null;
  const put = () => {
    const holes = sweep(order, first.value, last ? last.value : first.value);
    if (holes.length) store.change(settle(store.sheet(), doubt, holes));
    else first.focus();
  };
  const where = isRow ? `${doubt.from} to ${doubt.to}` : doubt.from;
  return el(
    "li",
    {},
    `Was ${where}: ${markWords(doubt.mark)}. It is `,
    first,
    last && " to ",
    last,
    " ",
    button("Put it there", put),
    " ",
    button("Let it go", () => store.change(settle(store.sheet(), doubt, []))),
  );
}
