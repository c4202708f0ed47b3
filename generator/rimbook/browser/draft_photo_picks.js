/** What is picked in a photo, in the order of the walk: four corners, two middles, then hole after hole. */

import { CORNERS, MIDDLES } from "./draft_photo.js";

/** @typedef {import("./draft_outline.js").Point} Point */

const FIRST = [...CORNERS, ...MIDDLES];
const MOST_STEPS = 500;

export class Picks {
  constructor() {
    /** All that can be picked, in order; holes by their address. */
    this.targets = FIRST;
    /** Pixels from the top left; null for what was skipped. @type {ReadonlyMap<string, Point | null>} */
    this.points = new Map();
    this.current = FIRST[0];
    /** @type {{points: ReadonlyMap<string, Point | null>, current: string}[]} */
    this.before = [];
  }

  /** @param {readonly string[]} holes drilled ones, down the right side and then down the left */
  walk(holes) {
    this.targets = [...FIRST, ...holes];
    if (!this.targets.includes(this.current)) this.current = this.#open(0);
  }

  /** @param {readonly string[]} names */
  all(names) {
    const found = names.map((name) => this.points.get(name));
    return found.every((point) => point) ? /** @type {Point[]} */ (found) : null;
  }

  /** The holes that have a point, in the order of the walk. @returns {[string, Point][]} */
  get holes() {
    return this.targets.slice(FIRST.length).flatMap((name) => {
      const point = this.points.get(name);
      return point ? [/** @type {[string, Point]} */ ([name, point])] : [];
    });
  }

  /**
   * Puts what is asked for at a point, or skips it, and goes on to the next that is open.
   * @param {Point | null} point
   */
  put(point) {
    this.#keep();
    this.points = new Map([...this.points, [this.current, point]]);
    this.current = this.#open(this.targets.indexOf(this.current) + 1);
  }

  /**
   * @param {string} name
   * @param {Point} point
   * @param {boolean} isNew whether this is a step of its own
   */
  move(name, point, isNew) {
    if (isNew) this.#keep();
    this.points = new Map([...this.points, [name, point]]);
  }

  /** @param {string} name */
  go(name) {
    if (this.targets.includes(name)) this.current = name;
  }

  /** @param {number} by */
  step(by) {
    const index = this.targets.indexOf(this.current) + by;
    this.current = this.targets[Math.min(Math.max(index, 0), this.targets.length - 1)];
  }

  /** @returns {boolean} whether there was anything to undo */
  undo() {
    const step = this.before.pop();
    if (!step) return false;
    [this.points, this.current] = [step.points, this.targets.includes(step.current) ? step.current : this.#open(0)];
    return true;
  }

  clear() {
    [this.points, this.current, this.before] = [new Map(), FIRST[0], []];
  }

  #keep() {
    this.before = [...this.before, { points: this.points, current: this.current }].slice(-MOST_STEPS);
  }

  /** @param {number} from */
  #open(from) {
    const rest = this.targets.slice(from);
    return rest.find((name) => !this.points.has(name)) ?? rest[0] ?? this.targets[this.targets.length - 1];
  }
}
