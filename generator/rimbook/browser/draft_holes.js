/**
 * The place on the walk where the work is, and what keys and buttons do there. Knows nothing of elements.
 */

import { clockwise } from "./draft_address.js";
import { lengthsOf } from "./draft_by_hole.js";
import {
  counts, insertPlace, joinNext, removePlace, setLengths, setPlace, setWord, sidesOf, splitPlace, swapNext, toggleTieOffs,
  wordsDown,
} from "./draft_edit.js"; // prettier-ignore
import { readNumber } from "./draft_fields.js";
import { actOf } from "./draft_keys.js";
import { selectors } from "./draft_selectors.js";
import { readPlace } from "./draft_walk.js";

/** @typedef {import("./draft_by_hole.js").Lengths} Lengths */
/** @typedef {import("./draft_edit.js").Which} Which */
/** @typedef {import("./draft_keys.js").Act} Act */
/** @typedef {import("./draft_keys.js").Mode} Mode */
/** @typedef {import("./draft_store.js").DraftStore} DraftStore */
/** @typedef {import("./draft_written.js").Draft} Draft */

const MOST_PENS = 9;

export class Holes {
  /**
   * @param {DraftStore} store
   * @param {Record<string, number[]>} typical bores by sport
   * @param {(says: string, isUrgent?: boolean) => void} say
   * @param {() => void} onMoved
   */
  constructor(store, typical, say, onMoved) {
    this.store = store;
    this.typical = typical;
    this.say = say;
    this.onMoved = onMoved;
    /** @type {Which} */
    this.which = "both";
    /** @type {Mode} */
    this.mode = "strings";
    this.cursor = 1;
    /** @type {number | null} where the marked run began */
    this.anchor = null;
    this.typed = "";
    /** @type {Record<Lengths, number[]>} typed under “another” */
    this.added = { bore_mm: [], rim_depth_mm: [] };
  }

  /** @returns {Draft} */
  get draft() {
    return this.store.draft;
  }

  get words() {
    return wordsDown(this.draft, this.which);
  }

  /** The numbers that a key is for: the marked run, or the place itself. */
  get numbers() {
    const from = Math.min(this.anchor ?? this.cursor, this.cursor);
    const to = Math.max(this.anchor ?? this.cursor, this.cursor);
    return Array.from({ length: to - from + 1 }, (_, index) => from + index);
  }

  /** @returns {string[]} addresses of `numbers` */
  get chosen() {
    const most = counts(this.draft);
    return sidesOf(this.which).flatMap((side) => this.numbers.filter((number) => number <= most[side]).map((number) => `${side}${number}`));
  }

  get chosenWords() {
    return selectors(this.chosen).map(String);
  }

  /** @returns {Lengths} */
  get lengths() {
    return this.mode === "depths" ? "rim_depth_mm" : "bore_mm";
  }

  /** Bores or depths by key: those in use, those added, and those typical for the sport, the smallest first. */
  get pens() {
    const name = this.lengths;
    const used = [...lengthsOf(this.draft[name], clockwise(counts(this.draft))).values()].filter((each) => each !== "unknown");
    const usual = name === "bore_mm" ? (this.typical[this.draft["sport"]] ?? []) : [];
    const pens = [...new Set([...used, ...this.added[name], ...usual])].slice(0, MOST_PENS);
    return pens.map(Number).sort((a, b) => a - b);
  }

  /** Keeps the place within the walk, whatever became of it. */
  settle() {
    if (this.draft["left"] && this.which === "both") this.which = "R";
    const last = Math.max(1, this.words.length);
    this.cursor = Math.min(this.cursor, last);
    if (this.anchor !== null) this.anchor = Math.min(this.anchor, last);
  }

  /**
   * @param {KeyboardEvent} event
   * @returns {boolean} whether the key meant anything
   */
  press(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const act = actOf(event.key, event.shiftKey, this.mode, this.typed);
    if (act) this.act(act);
    return act !== null;
  }

  /** @param {Act} act */
  act(act) {
    if (!this.words.length) return;
    switch (act.do) {
      case "move":
        return this.go(this.cursor + act.by, act.extends);
      case "end":
        return this.go(act.at === "first" ? 1 : this.words.length, act.extends);
      case "next":
        return this.go(Math.max(...this.numbers) + 1, false);
      case "leave":
        return this.go(this.cursor, false);
      case "type":
        return this.type(act.text);
      case "word":
        return this.write((draft) => this.numbers.reduce((next, number) => setWord(next, this.which, number, act.word), draft));
      case "pen":
        return this.pen(this.pens[act.index]);
      case "unknown":
        return this.pen("unknown");
      case "mode":
        this.mode = act.mode;
        return this.go(this.cursor, this.anchor !== null);
      case "change":
        return this.change(act.name);
    }
  }

  /**
   * @param {number} number
   * @param {boolean} extendsRun
   */
  go(number, extendsRun) {
    this.anchor = extendsRun ? (this.anchor ?? this.cursor) : null;
    this.cursor = Math.min(Math.max(number, 1), Math.max(1, this.words.length));
    this.typed = "";
    this.store.pause();
    this.onMoved();
  }

  /** @param {string} text of a string or of a place, taken over as soon as it means something */
  type(text) {
    this.typed = text;
    const kind = `type ${this.which} ${this.cursor}`;
    if (this.mode === "strings" && typeof readPlace(text) !== "string") {
      this.store.change({ draft: setWord(this.draft, this.which, this.cursor, text) }, kind);
    }
    const place = this.mode === "places" ? readNumber(text) : undefined;
    if (typeof place === "number" && place > 0) this.store.change({ draft: setPlace(this.draft, this.which, this.cursor, place) }, kind);
    this.onMoved();
  }

  /** @param {number | "unknown" | undefined} length for the chosen holes */
  pen(length) {
    if (length === undefined) return this.say("No length has that key yet: type another with =.");
    if (this.mode === "places") {
      return this.write((draft) => this.numbers.reduce((next, number) => setPlace(next, this.which, number, length), draft));
    }
    return this.write((draft) => setLengths(draft, this.lengths, this.chosen, length));
  }

  /**
   * A change to the chosen holes; then on to what follows them.
   * @param {(draft: Draft) => Draft} how
   */
  write(how) {
    this.store.pause();
    this.store.change({ draft: how(this.draft) });
    this.go(Math.max(...this.numbers) + 1, false);
  }

  /** @param {"insert" | "remove" | "join" | "split" | "swap" | "tie"} name */
  change(name) {
    const { draft, which, cursor } = this;
    /** @type {Draft | string} */
    let next = draft;
    if (name === "insert") next = insertPlace(draft, which, cursor + 1, ".");
    if (name === "remove") next = [...this.numbers].reverse().reduce((rest, number) => removePlace(rest, which, number), draft);
    if (name === "join") next = joinNext(draft, which, cursor);
    if (name === "split") next = splitPlace(draft, which, cursor);
    if (name === "swap") next = swapNext(draft, which, cursor);
    if (name === "tie") next = toggleTieOffs(draft, this.chosen);
    if (typeof next === "string") return this.say(next, true);
    this.store.pause();
    this.store.change({ draft: next });
    this.go(name === "insert" ? cursor + 1 : Math.min(...this.numbers), false);
  }

  /**
   * A length that no key has yet, for the chosen holes.
   * @param {number} length
   */
  add(length) {
    this.added[this.lengths] = [length, ...this.added[this.lengths]];
    this.pen(length);
  }

  /** @param {Which} which */
  turn(which) {
    this.which = which;
    this.go(this.cursor, false);
  }
}
