/** A queue of which the least comes out first: a binary heap (J. W. J. Williams, Comm. ACM 7 (1964) 347). */

/** @template Item */
export class Queue {
  /** @param {(item: Item) => number} weigh what must not change while an item is in the queue */
  constructor(weigh) {
    this.weigh = weigh;
    /** @type {Item[]} */
    this.items = [];
  }

  /** What the first one weighs, or Infinity. */
  get least() {
    return this.items.length ? this.weigh(this.items[0]) : Infinity;
  }

  /** @param {Item} item */
  put(item) {
    const { items, weigh } = this;
    const weight = weigh(item);
    let at = items.length;
    while (at > 0 && weigh(items[(at - 1) >> 1]) > weight) {
      items[at] = items[(at - 1) >> 1];
      at = (at - 1) >> 1;
    }
    items[at] = item;
  }

  /** @returns {Item | undefined} */
  take() {
    const { items, weigh } = this;
    const first = items[0];
    const item = items.pop();
    if (!item || !items.length) return first;
    const weight = weigh(item);
    let at = 0;
    for (;;) {
      let under = 2 * at + 1;
      if (under >= items.length) break;
      if (under + 1 < items.length && weigh(items[under + 1]) < weigh(items[under])) under++;
      if (weigh(items[under]) >= weight) break;
      items[at] = items[under];
      at = under;
    }
    items[at] = item;
    return first;
  }
}
