/** What the page of prices changes. */

import { KeptStore } from "./kept_store.js";
import { keepShop, onShopElsewhere, openShop } from "./shop.js";

/** @typedef {import("./shop.js").Shop} Shop */

/** @extends {KeptStore<Shop>} */
export class PricesStore extends KeptStore {
  constructor() {
    super(openShop, keepShop, onShopElsewhere);
  }

  /** @returns {Shop} */
  get shop() {
    return this.value;
  }
}
