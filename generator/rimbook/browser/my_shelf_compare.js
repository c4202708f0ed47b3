/** What sharing saves, and what each further per cent of service costs: tables and a drawing. */

import { el, fill } from "./dom.js";
import { shown } from "./money.js";
import { shelfCurve } from "./my_shelf_curve.js";
import { table, tableRow } from "./my_shelf_bits.js";
import { percentOf } from "./my_shelf_read.js";
import { compared, curve } from "./shelf_compare.js";
import { rules } from "./shelf_terms.js";
import { percent } from "./shelf_words.js";

/** @typedef {import("./dom.js").Child} Child */
/** @typedef {import("./my_shelf_result.js").Shown} Shown */
/** @typedef {import("./shelf_compare.js").Size} Size */

const NUMBER = "rb-number";
/** @type {[string, string][]} */
const MONEY_HEADS = [
  ["Money tied up", NUMBER],
  ["Drawers without a price", NUMBER],
];

export function compareView() {
  const ways = el("div", {});
  const steps = el("div", {});
  const figure = el("figure", { class: "rb-shelf-curve" });
  const more = el("details", { id: "service-table" }, el("summary", {}, "The same as a table"), steps);
  const cost = el("div", {}, el("h3", { id: "service" }, "What more service costs"), figure, more);
  return {
    element: el("div", {}, ways, cost),
    /** @param {Shown} all */
    show(all) {
      cost.hidden = !all.plan.drawers.length;
      if (!all.plan.drawers.length) {
        return fill(ways, el("p", {}, "There is nothing to share yet."));
      }
      fill(ways, ...waysOf(all));
      showSteps(all, figure, steps);
    },
  };
}

/**
 * @param {Shown} all
 * @returns {Child[]}
 */
function waysOf({ plan, prices }) {
  const { byFrame, byPart, pooled } = compared(plan, (item) => prices.unit(item));
  const rows = /** @type {[string, Size][]} */ ([
    ["Every frame its own parts", byFrame],
    ["One drawer for every part on the maps", byPart],
    ["The fewest drawers (this shelf)", pooled],
  ]);
  const isPriced = !prices.isEmpty;
  const worst = Math.max(...rows.map(([, { unpriced }]) => unpriced));
  return [
    table(
      "compare-caption",
      `The same service, ${percent(plan.terms.service)} a drawer, in three ways`,
      [
        ["Way", ""],
        ["Drawers", NUMBER],
        ["Not empty", NUMBER],
        ["Pieces when full", NUMBER],
        ["Short a year", NUMBER],
        ...(isPriced ? MONEY_HEADS : []),
      ],
      rows.map(([name, size]) =>
        tableRow(
          name,
          [String(size.drawers), NUMBER],
          [String(size.kept), NUMBER],
          [String(size.units), NUMBER],
          [tenth(size.shortAYear), NUMBER],
          ...(isPriced ? moneyCells(size, prices.currency) : []),
        ),
      ),
    ),
    el(
      "p",
      {},
      "A set counts as one piece. The promise is made for each drawer: many drawers of things that are hardly ever " +
        "asked for may all stay empty, so look at what runs short as well.",
      isPriced && worst ? " What has no price is not in the money." : "",
    ),
  ];
}

/**
 * @param {Shown} all
 * @param {HTMLElement} figure
 * @param {HTMLElement} host
 */
function showSteps({ plan, prices }, figure, host) {
  const found = curve(plan, (item) => prices.unit(item), rules().services);
  const isPriced = !prices.isEmpty;
  fill(
    figure,
    shelfCurve(
      found.map(({ service, byPart, pooled }) => ({
        level: percentOf(service),
        apart: byPart.units,
        pooled: pooled.units,
      })),
    ),
  );
  fill(
    host,
    table(
      "service-caption",
      "Pieces on the full shelf",
      [
        ["Service level", ""],
        ["One drawer a part", NUMBER],
        ["Fewest drawers", NUMBER],
        ["Short a year", NUMBER],
        ...(isPriced ? MONEY_HEADS : []),
      ],
      found.map(({ service, byPart, pooled }) =>
        tableRow(
          percent(service),
          [String(byPart.units), NUMBER],
          [String(pooled.units), NUMBER],
          [tenth(pooled.shortAYear), NUMBER],
          ...(isPriced ? moneyCells(pooled, prices.currency) : []),
        ),
      ),
    ),
  );
}

/**
 * @param {Size} size
 * @param {string} currency
 * @returns {[Child, string][]}
 */
function moneyCells({ worth, unpriced }, currency) {
  return [
    [shown(Math.round(worth), currency), NUMBER],
    [String(unpriced), NUMBER],
  ];
}

/** @param {number} value with one digit behind the point, without needless zeros, as the build writes it */
function tenth(value) {
  return value.toFixed(1).replace(/\.0$/, "");
}
