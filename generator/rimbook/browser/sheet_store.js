/**
 * The one sheet of a page: what is on it now, what was before, and who wants to know of a change.
 *
 * Whoever watches is told within the change: that is for the marks, which show in the next picture. Whoever
 * listens is told once that picture is there, and once for changes that come in a burst.
 */

import { begin, redo, step, undo } from "./sheet_undo.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */

/**
 * @typedef {object} Store
 * @property {SheetFrame} frame
 * @property {() => Sheet} sheet
 * @property {(next: Sheet) => void} change one step, which can be undone
 * @property {() => void} undo
 * @property {() => void} redo
 * @property {() => boolean} canUndo
 * @property {() => boolean} canRedo
 * @property {(change: (sheet: Sheet) => Sheet) => void} rebase a change that came from elsewhere: undoing goes
 *   on to take back only what was done here
 * @property {(callback: (sheet: Sheet) => void) => void} watch
 * @property {(callback: (sheet: Sheet) => void) => void} listen
 */

/** A page that nobody sees paints nothing; then this is waited. */
const PATIENCE_MS = 100;

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @returns {Store}
 */
export function startStore(frame, sheet) {
  let history = begin(sheet);
  /** @type {((sheet: Sheet) => void)[]} */
  const watchers = [];
  /** @type {((sheet: Sheet) => void)[]} */
  const listeners = [];
  let isTold = true;
  const tell = () => {
    if (isTold) return;
    isTold = true;
    for (const callback of listeners) callback(history.now);
  };
  const go = (/** @type {import("./sheet_undo.js").History} */ next) => {
    if (next === history) return;
    history = next;
    for (const callback of watchers) callback(history.now);
    if (!isTold) return;
    isTold = false;
    requestAnimationFrame(() => setTimeout(tell));
    setTimeout(tell, PATIENCE_MS);
  };
  // Nothing is lost if the page is left right after a mark.
  addEventListener("pagehide", tell);
  document.addEventListener("visibilitychange", tell);
  return {
    frame,
    sheet: () => history.now,
    change: (next) => next !== history.now && go(step(history, next)),
    undo: () => go(undo(history)),
    redo: () => go(redo(history)),
    canUndo: () => history.before.length > 0,
    canRedo: () => history.undone.length > 0,
    rebase: (change) =>
      go({
        now: change(history.now),
        before: history.before.map(change),
        undone: history.undone.map(change),
      }),
    watch(callback) {
      watchers.push(callback);
      callback(history.now);
    },
    listen(callback) {
      listeners.push(callback);
      callback(history.now);
    },
  };
}
