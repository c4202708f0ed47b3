/** What to order today and why, what it costs, and the caution that belongs to it. */

import { el } from "./dom.js";
import { shown } from "./money.js";
import { bill, purchase } from "./my_shelf_money.js";
import { here, whyOrder } from "./shelf_words.js";
import { counted } from "./words.js";

/** @typedef {import("./dom.js").Child} Child */
/** @typedef {import("./my_shelf_result.js").Shown} Shown */
/** @typedef {import("./shelf_plan.js").Drawer} Drawer */

/**
 * @param {Shown} all
 * @returns {Child[]}
 */
export function orderView(all) {
  const { plan, prices, isStocked, isExample, links, constants } = all;
  const wanted = inOrder(plan.drawers);
  const group = (/** @type {string} */ title, /** @type {Drawer[]} */ drawers) =>
    drawers.length
      ? [el("h3", {}, title), el("ul", { class: "rb-orders" }, ...drawers.map((drawer) => orderLine(drawer, all)))]
      : [];
  return [
    isExample
      ? el("p", { class: "rb-caution" }, "Prices and stock are the invented example list. No shop asks these prices, and nothing of it lies on your shelf.")
      : null,
    ...group(
      "At once: an order placed at the next review would come too late",
      wanted.filter(({ order }) => order?.urgent),
    ),
    ...group(
      "With this review: what is here should last until it arrives",
      wanted.filter(({ order }) => !order?.urgent),
    ),
    wanted.length ? null : el("p", {}, nothing(all)),
    wanted.length && !prices.isEmpty ? el("p", {}, billWords(all)) : null,
    isStocked || !plan.drawers.length
      ? null
      : el("p", {}, "Nothing is known of what lies on your shelf, so it is taken to be empty: enter it on ", pricesLink(links.prices), "."),
    plan.drawers.length
      ? el("div", { class: "rb-caution", role: "note", "aria-label": "Caution" }, el("p", {}, constants.caution))
      : null,
  ];
}

/** @param {string} address */
export function pricesLink(address) {
  return el("a", { href: address }, "Prices and stock");
}

/**
 * What is to be ordered, what is asked for most first.
 * @param {readonly Drawer[]} drawers
 */
function inOrder(drawers) {
  return drawers.filter(({ order }) => order).sort((a, b) => b.aYear - a.aYear || (a.item < b.item ? -1 : 1));
}

/**
 * @param {Drawer} drawer
 * @param {Shown} all
 */
function orderLine(drawer, { plan, prices, partLink }) {
  const { words, cost } = purchase(drawer, plan.items[drawer.item]?.packs ?? [], prices);
  const paid = cost === null ? "" : `, ${shown(cost, prices.currency)}`;
  return el(
    "li",
    {},
    el("b", {}, `${drawer.order?.units} × `, partLink(drawer.item)),
    " ",
    el("span", { class: "rb-quiet" }, `(${words}${paid})`),
    el("br"),
    `Here ${here(drawer, plan.items)}. ${whyOrder(drawer, plan.terms)}`,
  );
}

/** @param {Shown} all */
function nothing({ plan, shelf, troubled }) {
  if (plan.drawers.length) return "Nothing: every drawer lasts until the next order arrives.";
  if (!shelf.frames.length) return "Add the frames you string first: nothing is planned yet.";
  if (troubled.length === shelf.frames.length) return "Nothing is planned: none of your frames could be read.";
  if (plan.unplanned.every(({ why }) => why === "restrings unknown")) {
    return "Nothing is planned yet: type how often at least one frame is restrung in a year.";
  }
  return "Nothing is planned: none of the places of your frames is known well enough.";
}

/** @param {Shown} all */
function billWords({ plan, prices }) {
  const { paid, priced, unpriced } = bill(plan, prices);
  if (!priced) return "For none of these a price is known.";
  const without = unpriced ? `, without ${counted(unpriced, "line")} for which no price is known` : "";
  return `The order costs ${shown(paid, prices.currency)} in all${without}.`;
}
