/**
 * The page on which a shop enters what parts cost it, what lies on its shelf, and how it charges.
 *
 * `<div data-rb-prices data-rb-root="../">what a reader without JavaScript gets</div>` becomes all of it.
 * Nothing typed here leaves the device.
 */

import { el, fill } from "./dom.js";
import { fileTools } from "./prices_file.js";
import { PricesStore } from "./prices_store.js";
import { priceTable } from "./prices_table.js";
import { termsForm } from "./prices_terms.js";
import { load } from "./registry.js";
import { undoBar } from "./undo_bar.js";

/** @typedef {import("./buy_list.js").Sold} Sold */
/** @typedef {import("./buy_list.js").Shelved} Shelved */
/** @typedef {import("./prices_table.js").Host} Host */
/** @typedef {import("./prices_table.js").Item} Item */
/** @typedef {import("./prices_table.js").Kind} Kind */
/** @typedef {import("./shop.js").Shop} Shop */

/**
 * Of the book: what its parts are called, and an invented list.
 * @typedef {object} Book
 * @property {Record<string, string>} names by id
 * @property {{currency: string, sold: Sold[], shelf: Shelved[], hourly: number, least: number, markup: number}} example
 */

const DATA = "data/prices.js";
const PARTS = "rb-prices-parts";

/** @param {HTMLElement} host */
export function startPrices(host) {
  /** @type {Book | null} */
  let book = null;
  const store = new PricesStore();
  const bar = undoBar(store);
  const { say } = bar;

  const parts = el("datalist", { id: PARTS });
  /** @type {Map<string, string>} */
  let ids = new Map();
  /** @type {Host} */
  const rows = {
    currency: () => store.shop.list.currency,
    nameOf: (part) => (book ? (book.names[part] ?? "not in this book") : ""),
    idOf: (typed) => ids.get(typed.toLowerCase()) ?? typed,
    replace: (kind, old, fresh) => replace(store, kind, old, fresh),
    say,
  };
  const sold = priceTable("sold", PARTS, rows);
  const shelf = priceTable("shelf", PARTS, rows);
  const terms = termsForm(store);
  const refused = el("div", { role: "alert" });
  const invented = el(
    "p",
    { class: "rb-caution", hidden: true },
    "This is the invented example list. No shop asks these prices: forget it before you enter your own.",
  );
  const example = el("button", { type: "button", class: "rb-button" }, "Load an invented example list");
  example.addEventListener("click", () => {
    if (!book) return;
    const { currency, sold, shelf, hourly, least, markup } = book.example;
    store.change((shop) => ({
      ...shop,
      list: { currency, sold, shelf },
      terms: { ...shop.terms, hourly, least, markup },
      isExample: true,
    }));
    say("The invented example list is loaded.", true);
  });
  const exampleBox = el("p", {}, example);

  let currency = "";
  const show = (/** @type {Shop} */ shop) => {
    const isNew = shop.list.currency !== currency;
    currency = shop.list.currency;
    if (isNew) {
      sold.redraw(shop.list);
      shelf.redraw(shop.list);
    }
    sold.show(shop.list);
    shelf.show(shop.list);
    terms.show(shop);
    invented.hidden = !shop.isExample;
    exampleBox.hidden = shop.list.sold.length + shop.list.shelf.length > 0;
    example.disabled = book === null;
    const says =
      "This browser refuses to keep anything, as in a private window: what you enter is lost when you leave " +
      "this page. Save it as a file.";
    fill(refused, !store.isKept && el("p", { class: "rb-caution" }, says));
  };
  const box = (/** @type {string} */ title, /** @type {import("./dom.js").Child[]} */ ...inside) =>
    el("section", {}, el("h2", {}, title), ...inside);
  fill(
    host,
    parts,
    refused,
    invented,
    exampleBox,
    box(
      "Parts and prices",
      el("p", {}, "Type a part's id or its name. A row is kept as soon as it is right."),
      sold.element,
      shelf.element,
    ),
    box(
      "What you charge",
      terms.charge,
      el(
        "p",
        {},
        "A pack is charged by the piece, for its rest goes into your drawer; a set is charged whole. A piece with " +
          "a price of its own on the shelf costs that, without the markup.",
      ),
    ),
    box(
      "How long work takes you",
      el("p", {}, "Seconds. The usual ones are assumptions: time yourself."),
      terms.labour,
    ),
    box("File", fileTools(store, say)),
    bar.element,
  );
  store.listen(show);
  show(store.shop);
  load("prices", (host.dataset["rbRoot"] ?? "") + DATA).then(
    (value) => {
      book = /** @type {Book} */ (value);
      ids = new Map(
        Object.entries(book.names).flatMap(([id, name]) => [
          [name.toLowerCase(), id],
          [id, id],
        ]),
      );
      fill(parts, ...Object.entries(book.names).map(([id, name]) => el("option", { value: id }, name)));
      currency = "";
      show(store.shop);
    },
    () => say("The book's list of parts could not be loaded: type the ids of parts yourself.", false),
  );
}

/**
 * @param {PricesStore} store
 * @param {Kind} kind
 * @param {Item | null} old
 * @param {Item | null} fresh
 */
function replace(store, kind, old, fresh) {
  /** @type {Item[]} */
  const items = store.shop.list[kind];
  const at = items.findIndex((item) => JSON.stringify(item) === JSON.stringify(old));
  const about = (/** @type {Item} */ item) => (kind === "sold" ? JSON.stringify({ ...item, price: 0 }) : item.part);
  const isTwice = fresh !== null && items.some((item, index) => index !== at && about(item) === about(fresh));
  if (isTwice) return "There is a row about the same already: change that one.";
  const then =
    at < 0
      ? [...items, ...(fresh ? [fresh] : [])]
      : items.flatMap((item, index) => (index === at ? (fresh ? [fresh] : []) : [item]));
  store.change((shop) => ({ ...shop, list: { ...shop.list, [kind]: then } }));
  return "";
}
