/** The draft under work: kept on this device after every change, with all steps back while the page is open. */

import { recall, remember } from "./device.js";
import { blank, sound } from "./draft_sound.js";
import { isMapping } from "./draft_written.js";

/** @typedef {import("./draft_written.js").Draft} Draft */

/**
 * `slug` names the file: of the map that was opened, or as somebody typed it; empty follows the name.
 * `opened` is the map of the book that is corrected.
 * @typedef {object} State
 * @property {Draft} draft
 * @property {string} slug
 * @property {string} opened
 */

const KEPT = "draft";
const MOST_STEPS = 300;

/** @returns {State} */
export function fresh() {
  return { draft: blank(), slug: "", opened: "" };
}

export class DraftStore {
  constructor() {
    const recalled = recall(KEPT);
    /** @type {any} */
    const kept = isMapping(recalled) ? recalled : {};
    const found = sound(kept.draft);
    const text = (/** @type {unknown} */ value) => (typeof value === "string" ? value.slice(0, 60) : "");
    /** @type {State} */
    this.state = found ? { draft: found, slug: text(kept.slug), opened: text(kept.opened) } : fresh();
    this.isKept = true;
    /** @type {State[]} */
    this.before = [];
    /** @type {State[]} */
    this.undone = [];
    /** @type {((state: State) => void)[]} */
    this.callbacks = [];
    /** The last change; more of the same kind are one step. */
    this.kind = "";
  }

  /** @returns {Draft} */
  get draft() {
    return this.state.draft;
  }

  /** Whether there is anything that would be a pity to lose. */
  get isBegun() {
    return JSON.stringify(this.state) !== JSON.stringify(fresh());
  }

  /** @param {(state: State) => void} callback at once, and after every change */
  listen(callback) {
    this.callbacks.push(callback);
    callback(this.state);
  }

  /**
   * @param {Partial<State>} change
   * @param {string} [kind] changes of one kind in a row are undone together; without one each is a step
   */
  change(change, kind = "") {
    const next = { ...this.state, ...change };
    if (JSON.stringify(next) === JSON.stringify(this.state)) return;
    if (!kind || kind !== this.kind) this.before = [...this.before, this.state].slice(-MOST_STEPS);
    this.undone = [];
    this.#show(next, kind);
  }

  /** The next change is a step of its own. */
  pause() {
    this.kind = "";
  }

  undo() {
    const state = this.before.pop();
    if (!state) return;
    this.undone.push(this.state);
    this.#show(state, "");
  }

  redo() {
    const state = this.undone.pop();
    if (!state) return;
    this.before.push(this.state);
    this.#show(state, "");
  }

  /**
   * @param {State} state
   * @param {string} kind
   */
  #show(state, kind) {
    [this.state, this.kind] = [state, kind];
    this.isKept = remember(KEPT, state);
    for (const callback of this.callbacks) callback(state);
  }
}
