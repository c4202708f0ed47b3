/**
 * What the hand holds while it marks: a mark to give, a row that was begun, the hole it has come to. Fingers,
 * keys and the tools all come through here, so that they do the same.
 */

import { mark, MOST_TURNS, sweep } from "./sheet_state.js";
import { CHECK_ADVICE, holesWords, markWords } from "./sheet_words.js";
import { counted } from "./words.js";

/** @typedef {import("./sheet_state.js").Mark} Mark */
/** @typedef {import("./sheet_state.js").Seen} Seen */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_store.js").Store} Store */

/**
 * @typedef {object} Hand
 * @property {Seen | "none" | null} pen what a tap gives; `none` takes a mark away, null leaves taps alone
 * @property {number} turns quarter turns that go with `grooved`
 * @property {boolean} isSweeping whether two taps, or a finger drawn along, mark a row
 * @property {boolean} isStepping whether the tools mark the hole that the hand has come to, and go on
 * @property {string | null} from where a row begins
 * @property {string | null} at the hole that was marked last, or stepped to
 * @property {readonly string[]} row what would be marked if the finger was lifted now
 * @property {string} said what was done last, in words
 */

/** @type {Hand} */
const EMPTY_HAND = { pen: null, turns: 0, isSweeping: false, isStepping: false, from: null, at: null, row: [], said: "" };

/** @typedef {ReturnType<typeof startMarker>} Marker */

/** @param {Store} store */
export function startMarker(store) {
  const order = store.frame.holes.map(({ address }) => address);
  const strings = new Map(store.frame.holes.map(({ address, passes }) => [address, passes.join(" + ") || "no string"]));
  let hand = EMPTY_HAND;
  /** @type {((hand: Hand) => void)[]} */
  const callbacks = [];

  /** @param {Partial<Hand>} next */
  const hold = (next) => {
    hand = { ...hand, ...next };
    for (const callback of callbacks) callback(hand);
  };

  /** @param {Seen | "none"} pen */
  const markOf = (pen) => (pen === "none" ? null : { seen: pen, turns: pen === "grooved" ? hand.turns : 0 });

  /** @param {string} address */
  const heard = (address) => `${address}, ${strings.get(address)}: ${markWords(store.sheet().marks[address])}.`;

  /**
   * @param {readonly string[]} holes
   * @param {Mark | null} given
   */
  const give = (holes, given) => {
    if (store.sheet().checks.crack === "found") return hold({ said: CHECK_ADVICE.crack, row: [], from: null });
    store.change(mark(store.sheet(), holes, given));
    const last = holes[holes.length - 1];
    const said = holes.length > 1 ? `${holesWords(holes)}, ${counted(holes.length, "hole")}: ${markWords(given)}.` : heard(last);
    hold({ at: last, from: null, row: [], said });
  };

  /**
   * A hole, or the row that was begun and ends here.
   * @param {string} address
   */
  const rowTo = (address) => (hand.from ? sweep(order, hand.from, address) : [address]);

  /** @param {number} by */
  const next = (by) => order[((hand.at ? order.indexOf(hand.at) : by > 0 ? -1 : 0) + by + order.length) % order.length];

  return {
    order,
    hand: () => hand,
    hold,
    /** @param {(hand: Hand) => void} callback */
    listen(callback) {
      callbacks.push(callback);
      callback(hand);
    },

    /**
     * @param {string} address
     * @param {Mark | null} given
     */
    put: (address, given) => give(rowTo(address), given),

    /**
     * @param {string} from
     * @param {string} to
     */
    sweep: (from, to) => hand.pen && give(sweep(order, from, to), markOf(hand.pen)),

    /**
     * @param {string} from
     * @param {string} to
     */
    preview: (from, to) => hold({ row: sweep(order, from, to) }),

    /**
     * A finger, or Enter, on a hole.
     * @param {string} address
     * @returns {boolean} whether it meant something
     */
    tap(address) {
      if (hand.isStepping) hold({ at: address, said: heard(address) });
      else if (!hand.pen) return false;
      else if (hand.isSweeping && !hand.from) {
        hold({ from: address, at: address, said: `A row from ${address}: now the hole where it ends.` });
      } else {
        const given = markOf(hand.pen);
        const own = store.sheet().marks[address];
        const isSame = !hand.from && own?.seen === given?.seen && own?.turns === given?.turns;
        give(rowTo(address), isSame ? null : given);
      }
      return true;
    },

    /**
     * A tool is pressed: it marks the hole stepped to, or is taken in hand, or put down again.
     * @param {Seen | "none"} pen
     */
    press(pen) {
      if (!hand.isStepping) return hold({ pen: hand.pen === pen ? null : pen, from: null });
      give(rowTo(hand.at ?? order[0]), markOf(pen));
      const to = next(1);
      hold({ at: to, said: `${hand.said} Next ${heard(to)}` });
    },

    /** @param {number} by */
    step(by) {
      const to = hand.isStepping || !hand.at ? next(by) : hand.at;
      hold({ isStepping: true, isSweeping: false, pen: null, from: null, at: to, said: heard(to) });
    },

    /** The same as the last mark, on the hole stepped to, or on the one after the last. */
    same() {
      const { last } = store.sheet();
      if (!last || !hand.at) return hold({ said: "Nothing is marked yet." });
      const to = hand.isStepping ? hand.at : next(1);
      give([to], last);
      if (hand.isStepping) hold({ at: next(1) });
    },

    /** @param {string} address */
    again(address) {
      const { last } = store.sheet();
      if (last) give(rowTo(address), last);
      else hold({ said: "Nothing is marked yet." });
    },

    /** @param {number} turns */
    turn: (turns) => hold({ turns: Math.min(MOST_TURNS, Math.max(0, turns)) }),

    /**
     * Something done to the sheet as a whole.
     * @param {Sheet} sheet
     * @param {string} said
     */
    change(sheet, said) {
      store.change(sheet);
      hold({ from: null, row: [], said });
    },
  };
}
