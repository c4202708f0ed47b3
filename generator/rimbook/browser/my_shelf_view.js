/**
 * The page of a shelf of one's own: frames and terms are typed, stock and prices come from the page of prices, and
 * the plan follows.
 *
 * `<div data-rb-my-shelf data-rb-root="../">what a reader without JavaScript gets</div>`, with the constants in a
 * block of JSON inside, becomes all of it. `#frames=plover-76,bobbin-64` offers frames. Nothing typed here leaves the
 * device.
 */

import { shelfOf } from "./buy_list.js";
import { el, fill } from "./dom.js";
import { KeptStore } from "./kept_store.js";
import { framesView } from "./my_shelf_frames.js";
import { ShelfBook } from "./my_shelf_book.js";
import { keepView } from "./my_shelf_keep.js";
import { Prices } from "./my_shelf_money.js";
import { pricesLink } from "./my_shelf_order.js";
import { resultView } from "./my_shelf_result.js";
import { seasonView } from "./my_shelf_season.js";
import { keepShelf, onShelfElsewhere, openShelf } from "./my_shelf_state.js";
import { ownTerm, settledTerms, termsOf, termsView } from "./my_shelf_terms.js";
import { planShelf } from "./shelf_plan.js";
import { canBePlanned, rules, takeRules } from "./shelf_terms.js";
import { learn } from "./shelf_update.js";
import { onShopElsewhere, openShop } from "./shop.js";
import { undoBar } from "./undo_bar.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./my_shelf_result.js").Shown} Shown */
/** @typedef {import("./my_shelf_state.js").Limits} Limits */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */
/** @typedef {import("./shelf_demand.js").ShelfFrame} ShelfFrame */
/** @typedef {import("./shelf_terms.js").Terms} Terms */

/**
 * What the build hands over. Times are in weeks.
 * @typedef {object} Constants
 * @property {unknown} rules the numbers of the working-out
 * @property {number} lead
 * @property {number} review
 * @property {number} service
 * @property {Record<string, number>} shares by kind
 * @property {Record<string, string>} kinds of parts, in words
 * @property {string[]} columns of the plan as a table
 * @property {string} caution that stands with an order
 * @property {Limits} limits
 */

/** After the last change the plan is told once, not at each. */
const PAUSE_MS = 700;

/** @param {HTMLElement} host */
export function startMyShelf(host) {
  const root = host.dataset["rbRoot"] ?? "";
  /** @type {Constants} */
  const constants = JSON.parse(host.querySelector("script[type='application/json']")?.textContent ?? "");
  takeRules(constants.rules);
  const kinds = Object.keys(constants.shares);
  const store = new KeptStore(() => openShelf(constants.limits, kinds), keepShelf, onShelfElsewhere);
  const book = new ShelfBook(root);
  const links = { prices: `${root}prices/index.html` };

  const told = el("p", { class: "rb-my-shelf-told", role: "status" });
  const bar = undoBar(store);
  const { say } = bar;

  const frames = framesView(store, book, constants.limits, say);
  const terms = termsView(store, constants, say);
  const stock = el("p", {});
  const season = seasonView(store, say);
  const keep = keepView(store, constants, links.prices, say, season.dropFaults);
  const result = resultView();
  const refused = el("div", { role: "alert" });
  const impossible = el("p", { class: "rb-prices-wrong", role: "alert", hidden: true });
  const framesBox = inputBox(frames.element);
  const termsBox = inputBox(terms.element);
  fill(
    host,
    refused,
    el(
      "section",
      { id: "typed", class: "rb-my-shelf-input", "aria-labelledby": "typed-title" },
      el("h2", { id: "typed-title" }, "Frames, terms and stock"),
      framesBox.element,
      termsBox.element,
      stock,
    ),
    told,
    impossible,
    result.element,
    season.element,
    keep.element,
    bar.element,
  );
  framesBox.open(store.value.frames.length === 0 || location.hash.startsWith("#frames="));
  addEventListener("hashchange", () => {
    if (location.hash.startsWith("#frames=")) framesBox.open(true);
  });

  let turn = 0;
  /** @type {number | undefined} */
  let timer;
  const show = async () => {
    const thisTurn = ++turn;
    showInputs();
    await book.bring(store.value.frames.map(({ slug }) => slug));
    if (thisTurn !== turn) return;
    showInputs();
    result.element.hidden = true; // never is a plan shown that is not the one of what is typed
    showPlan();
  };

  const showInputs = () => {
    const shelf = store.value;
    frames.show(shelf);
    terms.show(shelf);
    framesBox.sum(framesSum(shelf));
    termsBox.sum(termsSum(shelf, constants));
    const says =
      "This browser refuses to keep anything, as in a private window: what you enter is lost when you leave this " +
      "page. Save it as a file.";
    fill(refused, store.isKept ? null : el("p", { class: "rb-caution" }, says));
  };

  const showPlan = () => {
    const shelf = store.value;
    const { list, isExample } = openShop();
    fill(stock, ...stockWords(list, isExample, links.prices));
    const names = Object.fromEntries(shelf.frames.map(({ slug, name }) => [slug, nameOf(slug) || name]));
    const troubled = shelf.frames.flatMap(({ slug }) => {
      const card = book.cards.get(slug);
      return typeof card === "string" ? [{ slug, why: card }] : [];
    });
    const own = settledTerms(shelf.terms, constants);
    const wanted = shelfFrames(shelf, book);
    const why = whyNot(wanted, own);
    const base = planShelf(why ? [] : wanted, own, shelfOf(list));
    const lesson = learn(base, shelf.used);
    /** @type {Shown} */
    const all = {
      plan: shelf.counted && shelf.used.length ? lesson.plan : base,
      shelf,
      prices: new Prices(list),
      isStocked: list.shelf.length > 0,
      isExample,
      names,
      troubled,
      book,
      constants,
      links,
      partLink: (item) =>
        el("a", { href: `${root}parts/${item}/index.html` }, base.items[item]?.name ?? book.partName(item)),
      frameLink: (slug, name) => (book.framePage(slug) ? el("a", { href: book.framePage(slug) }, name) : name),
    };
    impossible.textContent = why;
    impossible.hidden = !why;
    result.show(all);
    result.element.hidden = why !== "";
    season.element.hidden = why !== "" || !shelf.frames.length;
    season.show(all, lesson.learned, lesson.unknown);
    keep.show(all, list.shelf);
    clearTimeout(timer);
    timer = setTimeout(() => {
      const words = why ? "Nothing is planned." : planSum(all);
      if (told.textContent !== words) told.textContent = words;
    }, PAUSE_MS);
  };

  const nameOf = (/** @type {string} */ slug) => {
    const card = book.cards.get(slug);
    return typeof card === "object" ? card.name : book.frameName(slug);
  };

  store.listen(() => void show());
  onShopElsewhere(() => void show());
  showInputs();
  told.textContent = "Loading the book …";
  void book.open().then(show);
}

/**
 * Why no shelf can be planned by these terms, or nothing. A club's file is held to the same.
 * @param {readonly ShelfFrame[]} frames
 * @param {Terms} terms
 */
function whyNot(frames, terms) {
  if (terms.lead + terms.review === 0) {
    return "Delivery and review are both 0 weeks, so nothing would ever be kept: expected more than 0 for one of them.";
  }
  if (canBePlanned(frames, terms)) return "";
  const most = rules().most.restrings.toLocaleString("en");
  return `So many restrings cannot be planned for: a shelf can serve ${most} between two orders at most.`;
}

/**
 * The frames that have data, as the plan wants them.
 * @param {MyShelf} shelf
 * @param {ShelfBook} book
 * @returns {ShelfFrame[]}
 */
function shelfFrames({ frames }, book) {
  return frames.flatMap(({ slug, restrings }) => {
    const card = book.cards.get(slug);
    return card && typeof card === "object" ? [{ slug, name: card.name, restrings, shelf: card.shelf }] : [];
  });
}

/**
 * A part of the page that is typed into: folded away once it is filled, its sum in one line.
 * @param {HTMLElement} inside
 */
function inputBox(inside) {
  const words = el("summary", {});
  const details = el("details", {}, words, inside);
  return {
    element: details,
    /** @param {boolean} isOpen */
    open(isOpen) {
      details.open = isOpen;
    },
    /** @param {string} says */
    sum(says) {
      if (words.textContent !== says) words.textContent = says;
    },
  };
}

/** @param {MyShelf} shelf */
function framesSum({ frames }) {
  if (!frames.length) return "Frames: none yet, add those you string";
  const unknown = frames.filter(({ restrings }) => restrings === null).length;
  return `Frames: ${frames.length}${unknown ? `, of ${unknown} the restrings are not known` : ""}`;
}

/**
 * @param {MyShelf} shelf
 * @param {Constants} constants
 */
function termsSum({ terms }, constants) {
  const all = termsOf(constants);
  const assumed = all.filter(({ key }) => ownTerm(terms, key) === null).length;
  const { lead, review, service } = settledTerms(terms, constants);
  const [time, , chance] = all;
  const words = `Terms: delivery ${time.said(lead)}, review ${time.said(review)}, service ${chance.said(service)}`;
  return `${words}; ${assumed ? `${assumed} of ${all.length} are assumptions` : "all your own"}`;
}

/**
 * @param {import("./buy_list.js").PriceList} list
 * @param {boolean} isExample
 * @param {string} address
 */
function stockWords({ sold, shelf }, isExample, address) {
  const known = [
    shelf.length ? `${counted(shelf.length, "part")} on your shelf` : "nothing on your shelf",
    sold.length ? `${counted(sold.length, "pack")} with a price` : "no prices",
  ];
  const from = isExample ? " (the invented example list)" : "";
  return [`Stock: ${listed(known)}${from}. Enter it on `, pricesLink(address), "; this page follows at once."];
}

/** @param {Shown} all */
function planSum({ plan, shelf, troubled }) {
  if (!shelf.frames.length) return "No frame yet, so nothing is planned.";
  const orders = plan.drawers.filter(({ order }) => order);
  const urgent = orders.filter(({ order }) => order?.urgent).length;
  const lost = new Set([...plan.unplanned.map(({ frame }) => frame), ...troubled.map(({ slug }) => slug)]).size;
  const words = [
    `${counted(plan.drawers.length, "drawer")}; ${orders.length ? `${counted(orders.length, "line")} to order today` : "nothing to order today"}`,
    urgent ? `, ${urgent} of them at once` : "",
    lost ? `; of ${counted(lost, "frame")} something cannot be planned` : "",
  ];
  return `${words.join("")}.`;
}
