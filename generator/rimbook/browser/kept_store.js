/**
 * What a page changes and this device keeps. Every change is made to what lies on the device now, not to what
 * this page showed when it was opened: two tabs lose nothing of each other.
 */

/** @template Value */
export class KeptStore {
  /**
   * @param {() => Value} open
   * @param {(value: Value) => boolean} keep gives whether it will still be there next time
   * @param {(callback: () => void) => void} onElsewhere calls back when another tab has changed it
   */
  constructor(open, keep, onElsewhere) {
    this.open = open;
    this.keep = keep;
    this.isKept = true;
    /** What was there before the last change that can be undone, and what that change made of it. */
    this.last = { before: "", after: "" };
    /** @type {((value: Value) => void)[]} */
    this.callbacks = [];
    onElsewhere(() => this.tell());
  }

  /** @returns {Value} */
  get value() {
    return this.open();
  }

  /** @param {(value: Value) => void} callback after every change, here or in another tab */
  listen(callback) {
    this.callbacks.push(callback);
  }

  /** @param {(value: Value) => Value} how */
  change(how) {
    const before = this.value;
    this.isKept = this.keep(how(before));
    this.last = { before: JSON.stringify(before), after: JSON.stringify(this.value) };
    this.tell();
  }

  /** @returns {boolean} whether it could be undone: nothing was changed since, here or in another tab */
  undo() {
    const { before, after } = this.last;
    if (!before || JSON.stringify(this.value) !== after) return false;
    this.isKept = this.keep(JSON.parse(before));
    this.last = { before: "", after: "" };
    this.tell();
    return true;
  }

  tell() {
    const { value } = this;
    for (const callback of this.callbacks) callback(value);
  }
}
