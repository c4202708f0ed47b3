/** The plan on the page, in the order in which a hand needs it: what to order first. */

import { el, fill } from "./dom.js";
import { facts } from "./my_shelf_bits.js";
import { compareView } from "./my_shelf_compare.js";
import { drawersView, framesWords, lostView, piecesView } from "./my_shelf_drawers.js";
import { orderView } from "./my_shelf_order.js";
import { assumedTerm, ownTerm, termsOf } from "./my_shelf_terms.js";
import { startTables } from "./tables.js";
import { today } from "./today.js";

/** @typedef {import("./dom.js").Child} Child */
/** @typedef {import("./my_shelf_book.js").ShelfBook} ShelfBook */
/** @typedef {import("./my_shelf_money.js").Prices} Prices */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */
/** @typedef {import("./my_shelf_view.js").Constants} Constants */
/** @typedef {import("./shelf_plan.js").ShelfPlan} ShelfPlan */

/**
 * All that is shown of a plan. `names` are those of the frames, `troubled` frames without data, and why.
 * @typedef {object} Shown
 * @property {ShelfPlan} plan
 * @property {MyShelf} shelf
 * @property {Prices} prices
 * @property {boolean} isStocked whether anything is known of what lies on the shelf
 * @property {boolean} isExample whether prices and stock are invented
 * @property {Record<string, string>} names
 * @property {{slug: string, why: string}[]} troubled
 * @property {ShelfBook} book
 * @property {Constants} constants
 * @property {{prices: string}} links
 * @property {(item: string) => Child} partLink
 * @property {(slug: string, name: string) => Child} frameLink
 */

export function resultView() {
  const day = el("p", { id: "day" });
  const order = el("div", {});
  const drawers = el("div", {});
  const pieces = el("div", {});
  const lost = el("div", {});
  const goesBy = el("div", {});
  const compare = compareView();
  const box = (/** @type {string} */ id, /** @type {string} */ title, /** @type {HTMLElement} */ inside) =>
    el("section", { id, "aria-labelledby": `${id}-title` }, el("h2", { id: `${id}-title` }, title), inside);
  const piecesBox = box("pieces", "Strips and sets: keep or not", pieces);
  const rest = el(
    "div",
    {},
    box("shelf", "The shelf", drawers),
    piecesBox,
    box("unplanned", "Cannot be planned", lost),
    box("compare", "What sharing saves", compare.element),
    box("terms", "What it goes by", goesBy),
  );
  const sayDay = () => {
    day.textContent = `Planned on ${today()}.`;
  };
  addEventListener("beforeprint", sayDay); // a page may stay open overnight
  return {
    element: el("div", {}, day, box("order", "Order today", order), rest),
    /** @param {Shown} all */
    show(all) {
      day.hidden = !all.shelf.frames.length;
      sayDay();
      rest.hidden = !all.shelf.frames.length;
      fill(order, ...orderView(all));
      fill(drawers, ...drawersView(all));
      startTables(drawers);
      const strips = piecesView(all);
      piecesBox.hidden = strips.length === 0;
      fill(pieces, ...strips);
      fill(lost, ...lostView(all));
      compare.show(all);
      fill(goesBy, ...goesByView(all));
    },
  };
}

/**
 * @param {Shown} all
 * @returns {Child[]}
 */
function goesByView(all) {
  const { constants, shelf, prices, isStocked } = all;
  const rows = termsOf(constants).map(({ key, name, said }) => {
    const own = ownTerm(shelf.terms, key);
    const value = said(own ?? assumedTerm(constants, key));
    const words = own === null ? [value, ", an ", el("b", {}, "assumption"), ": type your own above"] : [value];
    return /** @type {[Child, Child[]]} */ ([name, words]);
  });
  const stock = `${isStocked ? "what you entered" : "none is known"}; ${prices.isEmpty ? "no prices" : "with your prices"}`;
  return [
    facts([
      ...rows,
      ["Stock", [stock]],
      ["Rates", [shelf.counted && shelf.used.length ? "with what you counted" : "by the shares above, nothing counted yet"]],
      ["Frames", [framesWords(all) || "none yet"]],
    ]),
  ];
}
