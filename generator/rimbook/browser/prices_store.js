/**
 * What the page of prices changes. Every change is made to what lies on the device now, not to what this page
 * showed when it was opened: two tabs lose nothing of each other.
 */

import { keepShop, onShopElsewhere, openShop } from "./shop.js";

/** @typedef {import("./shop.js").Shop} Shop */

export class PricesStore {
  constructor() {
    this.isKept = true;
    /** What was there before the last change that can be undone, and what that change made of it. */
    this.last = { before: "", after: "" };
    /** @type {((shop: Shop) => void)[]} */
    this.callbacks = [];
    onShopElsewhere(() => this.tell());
  }

  /** @returns {Shop} */
  get shop() {
    return openShop();
  }

  /** @param {(shop: Shop) => void} callback after every change, here or in another tab */
  listen(callback) {
    this.callbacks.push(callback);
  }

  /** @param {(shop: Shop) => Shop} how */
  change(how) {
    const before = this.shop;
    const after = how(before);
    this.isKept = keepShop(after);
    this.last = { before: JSON.stringify(before), after: JSON.stringify(this.shop) };
    this.tell();
  }

  /** @returns {boolean} whether it could be undone: nothing was changed since, here or in another tab */
  undo() {
    const { before, after } = this.last;
    if (!before || JSON.stringify(this.shop) !== after) return false;
    this.isKept = keepShop(JSON.parse(before));
    this.last = { before: "", after: "" };
    this.tell();
    return true;
  }

  tell() {
    const { shop } = this;
    for (const callback of this.callbacks) callback(shop);
  }
}
