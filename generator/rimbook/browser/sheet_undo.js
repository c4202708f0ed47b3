/** What was done to a sheet, so that it can be undone and done again. */

/** @typedef {import("./sheet_state.js").Sheet} Sheet */

const MOST_STEPS = 200;

/**
 * @typedef {object} History
 * @property {Sheet} now
 * @property {readonly Sheet[]} before the last one last
 * @property {readonly Sheet[]} undone the next one last
 */

/**
 * @param {Sheet} sheet
 * @returns {History}
 */
export function begin(sheet) {
  return { now: sheet, before: [], undone: [] };
}

/**
 * @param {History} history
 * @param {Sheet} sheet
 * @returns {History}
 */
export function step({ now, before }, sheet) {
  return { now: sheet, before: [...before, now].slice(-MOST_STEPS), undone: [] };
}

/**
 * @param {History} history
 * @returns {History} the same where nothing is left to undo
 */
export function undo(history) {
  const sheet = history.before.at(-1);
  if (!sheet) return history;
  return { now: sheet, before: history.before.slice(0, -1), undone: [...history.undone, history.now] };
}

/**
 * @param {History} history
 * @returns {History} the same where nothing was undone
 */
export function redo(history) {
  const sheet = history.undone.at(-1);
  if (!sheet) return history;
  return { now: sheet, before: [...history.before, history.now], undone: history.undone.slice(0, -1) };
}
