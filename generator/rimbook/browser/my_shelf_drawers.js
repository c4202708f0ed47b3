/** The shelf itself: what each drawer serves and how much to keep, strips and sets, and what cannot be planned. */

import { el } from "./dom.js";
import { facts, table, tableRow } from "./my_shelf_bits.js";
import { TROUBLES } from "./my_shelf_frames.js";
import { advice, here, openedFor, percent, serves, standsIn, unplanned, weeks, yearly } from "./shelf_words.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./dom.js").Child} Child */
/** @typedef {import("./my_shelf_result.js").Shown} Shown */
/** @typedef {import("./shelf_plan.js").Drawer} Drawer */

const NUMBER = "rb-number";

/**
 * @param {Shown} all
 * @returns {Child[]}
 */
export function drawersView({ plan, names, book, partLink, constants }) {
  const { drawers, items, terms } = plan;
  if (!drawers.length) return [el("p", {}, "No drawer yet.")];
  const ordered = [...drawers].sort(
    (a, b) => b.levels.upTo - a.levels.upTo || b.aYear - a.aYear || (a.item < b.item ? -1 : 1),
  );
  const kept = drawers.filter(({ levels }) => levels.upTo > 0).length;
  const cutOff = plan.fewest && plan.least ? "" : " The search for the fewest drawers was cut off: a smaller shelf may exist.";
  const idle = Object.entries(plan.idle).map(([part, count]) => `${count} ${items[part]?.name ?? book.partName(part)}`);
  return [
    el(
      "p",
      {},
      `${counted(drawers.length, "drawer")}; of ${kept} something is kept.${cutOff} At each review, every ` +
        `${weeks(terms.review)}, fill each drawer up. With fewer than the reorder point, and nothing else that counts, order at once.`,
    ),
    table(
      "shelf-caption",
      "What each drawer serves, and how much to keep",
      [
        ["Drawer", ""],
        ["Kind", ""],
        ["Serves", ""],
        ["A year", NUMBER],
        ["Reorder below", NUMBER],
        ["Fill up to", NUMBER],
        ["Here", ""],
        ["Lasts", NUMBER],
        ["Short a year", NUMBER],
      ],
      ordered.map((drawer) =>
        tableRow(
          partLink(drawer.item),
          [constants.kinds[items[drawer.item]?.kind ?? ""] ?? "", ""],
          [servesWords(drawer, plan, names), "rb-words"],
          [yearly(drawer.aYear), NUMBER],
          [String(drawer.levels.reorder), NUMBER],
          [String(drawer.levels.upTo), NUMBER],
          [here(drawer, items), ""],
          [percent(drawer.levels.chance), NUMBER],
          [yearly(drawer.levels.shortAYear), NUMBER],
        ),
      ),
      true,
    ),
    idle.length ? el("p", {}, `In stock, but counted for no drawer: ${idle.join(", ")}.`) : null,
  ];
}

/**
 * @param {Drawer} drawer
 * @param {Shown["plan"]} plan
 * @param {Record<string, string>} names
 */
function servesWords(drawer, { items }, names) {
  const words = document.createDocumentFragment();
  words.append(serves(drawer, names));
  const more = [
    ["in place of", standsIn(drawer, items)],
    ["opened for", openedFor(drawer, items)],
  ];
  for (const [how, what] of more) {
    if (what) words.append(el("br"), el("span", { class: "rb-quiet" }, `${how} ${what}`));
  }
  return words;
}

/**
 * Strips and sets, each with the advice to keep it or not; nothing where there is none.
 * @param {Shown} all
 * @returns {Child[]}
 */
export function piecesView({ plan, partLink }) {
  const { drawers, items, terms } = plan;
  const pieces = drawers.filter(({ item }) => ["strip", "set"].includes(items[item]?.kind ?? ""));
  if (!pieces.length) return [];
  pieces.sort((a, b) => b.levels.upTo - a.levels.upTo || b.aYear - a.aYear || (a.item < b.item ? -1 : 1));
  return [
    el("p", {}, "One broken hole takes the whole strip. A set is opened only for what is sold in no other way."),
    facts(
      pieces.map((drawer) => {
        const opened = openedFor(drawer, items);
        return [partLink(drawer.item), [advice(drawer, terms), opened ? ` It is opened for ${opened}.` : ""]];
      }),
    ),
  ];
}

/**
 * What cannot be planned, a frame at a time, with what to do.
 * @param {Shown} all
 * @returns {Child[]}
 */
export function lostView({ plan, names, troubled, frameLink }) {
  /** @type {Map<string, string[]>} */
  const found = new Map(troubled.map(({ slug, why }) => [slug, [TROUBLES[why]]]));
  for (const each of plan.unplanned) {
    const words =
      each.why === "restrings unknown"
        ? "all of it: nobody has written down how often it is restrung. Type its restrings a year above."
        : unplanned(each, plan.items);
    found.set(each.frame, [...(found.get(each.frame) ?? []), words.slice(0, 1).toUpperCase() + words.slice(1)]);
  }
  if (!found.size) return [el("p", {}, "Nothing: all that your frames take is planned.")];
  const rows = [...found].map(
    ([slug, words]) => /** @type {[Child, Child[]]} */ ([frameLink(slug, names[slug] ?? slug), [words.join(" ")]]),
  );
  return [el("p", {}, "Of these nothing is kept, and nothing is guessed."), facts(rows)];
}

/**
 * @param {Shown} all
 * @returns {string} the frames and how often each is restrung
 */
export function framesWords({ shelf, names }) {
  return listed(
    shelf.frames.map(({ slug, restrings, count }) => {
      const many = count === null ? "" : `, ${count} of them`;
      const often = restrings === null ? "restrings unknown" : `${counted(restrings, "restring")} a year`;
      return `${names[slug] ?? slug} (${often}${many})`;
    }),
  );
}
