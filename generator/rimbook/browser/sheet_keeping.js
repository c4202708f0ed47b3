/**
 * A sheet kept in the address and on the device, with other windows and senders in mind: what they have is
 * never written over before somebody was asked.
 *
 * A step in the history whose address this page wrote itself says so, since going back to it brings nothing
 * new. A hole behind the `#` (`#R12`) is followed, and then gives way to the sheet again.
 */

import { el } from "./dom.js";
import { showHash } from "./hash.js";
import { decode, encode } from "./sheet_code.js";
import { codeInHash, hashOfSheet, keepSheet, keptCode, onSheetElsewhere } from "./sheet_kept.js";
import { merge } from "./sheet_merge.js";
import { isBlank, put, EMPTY } from "./sheet_state.js";
import { markWords } from "./sheet_words.js";

/** @typedef {import("./sheet_kept.js").Opened} Opened */
/** @typedef {import("./sheet_merge.js").Clash} Clash */
/** @typedef {import("./sheet_code.js").Read} Read */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_store.js").Store} Store */

const OWN = "rimbookSheet";

/**
 * @param {Store} store
 * @param {Opened} opened
 * @param {HTMLElement} notes where questions and news stand
 * @param {() => void} show opens the sheet
 */
export function startKeeping(store, opened, notes, show) {
  const { frame } = store;
  const isOwnStep = () => Boolean(history.state?.[OWN]);
  /** What lies on the device, as far as this page knows. */
  let code = keptCode(frame);
  let base = decode(frame, code).sheet;
  let isAsking = false;
  let isRefused = false;

  const writeHash = () => {
    const hash = hashOfSheet(frame, store.sheet());
    if (hash || codeInHash(location.hash)) showHash(hash, { ...history.state, [OWN]: true });
  };
  const takeIn = () => {
    const now = keptCode(frame);
    if (now === code || isAsking) return;
    const [before, theirs] = [base, decode(frame, now).sheet];
    const { clashes } = merge(before, store.sheet(), theirs);
    [base, code] = [theirs, now];
    store.rebase((sheet) => merge(before, sheet, theirs).sheet);
    for (const clash of clashes) askAbout(clash, "Another window marked the same hole,");
  };
  const keep = () => {
    if (isAsking) return;
    takeIn();
    const sheet = store.sheet();
    if ((isBlank(sheet) ? "" : encode(frame, sheet)) === code) return;
    const isKept = keepSheet(frame, sheet);
    [base, code] = [sheet, keptCode(frame)];
    if (!isKept && !isRefused) tell("This browser keeps nothing on this device. The marks are in the address of this page: copy it, or leave the page open.");
    isRefused ||= !isKept;
  };

  /**
   * @param {string} words
   * @param {[string, () => void][]} [answers]
   * @param {Node} [more]
   */
  function tell(words, answers = [["Close", () => {}]], more) {
    const note = el("div", { class: "rb-sheet-note", role: "alert" }, el("p", {}, words, more && " ", more));
    for (const [label, act] of answers) {
      const button = el("button", { type: "button", class: "rb-button" }, label);
      button.addEventListener("click", () => {
        note.remove();
        act();
      });
      note.append(button, " ");
    }
    notes.append(note);
    show();
  }

  /**
   * @param {Clash} clash
   * @param {string} why
   */
  function askAbout({ address, mine, theirs }, why) {
    tell(`${why} ${address}: ${markWords(mine)} or ${markWords(theirs)}?`, [
      [`Keep “${markWords(mine)}”`, () => {}],
      [`Take “${markWords(theirs)}”`, () => store.change(put(store.sheet(), [address], theirs))],
    ]);
  }

  /**
   * Two sheets, one place: nothing is written over before somebody has chosen.
   * @param {string} words
   * @param {Sheet} other the one that is not shown
   * @param {[string, string]} labels keep what is shown, take the other
   */
  function askWhich(words, other, labels) {
    isAsking = true;
    const take = (/** @type {Sheet} */ sheet) => {
      isAsking = false;
      code = keptCode(frame);
      base = decode(frame, code).sheet;
      store.change({ ...sheet });
    };
    const both = () => {
      const { sheet, clashes } = merge(EMPTY, store.sheet(), other);
      take(sheet);
      for (const clash of clashes) askAbout(clash, "The two differ at");
    };
    const [keepShown, takeOther] = labels;
    tell(words, [
      [keepShown, () => take(store.sheet())],
      [takeOther, () => take(other)],
      ["Put both together", both],
    ]);
  }

  /**
   * @param {Read} read
   * @param {string} sent the address, if it came from there
   */
  function report({ problems, isOtherMap, sheet }, sent) {
    const link = sent && el("a", { href: `#sheet=${sent}` }, "The address as it came");
    const where = sent ? "" : "What was kept on this device cannot be read whole. ";
    if (problems.length) tell(where + problems.join(" "), undefined, link || undefined);
    else if (isOtherMap && !sheet.doubts.length) tell("The map has changed since these marks were made. All of them found their holes again.");
  }

  const { read, from, other } = opened;
  const isHurt = read.problems.length > 0;
  if (from === "address" && other && isOwnStep()) store.rebase(() => other);
  else {
    if (from === "address" && other && !isBlank(read.sheet)) {
      askWhich("The address brought other marks than those that lie on this device. Those of the address are shown.", other, [
        "Keep those of the address",
        "Take those of this device",
      ]);
    }
    report(read, from === "address" ? codeInHash(location.hash) : "");
  }
  let isFirst = true;
  store.listen(() => {
    // An address that cannot be read stays where it is until there is something to put in its place.
    if (!isFirst || !isHurt) {
      writeHash();
      keep();
    }
    isFirst = false;
  });
  onSheetElsewhere(frame, takeIn);
  addEventListener("hashchange", () => {
    const sent = codeInHash(location.hash);
    const own = store.sheet();
    if (!sent || isOwnStep() || sent === encode(frame, own)) return writeHash();
    const brought = decode(frame, sent);
    report(brought, sent);
    if (isBlank(own)) store.change(brought.sheet);
    else if (!isBlank(brought.sheet)) {
      askWhich("The address brought other marks than those that are shown here.", brought.sheet, [
        "Keep those shown",
        "Take those of the address",
      ]);
    }
  });
}
