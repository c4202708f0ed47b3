/** How a shop charges: its currency, rates and rounding, and how long each kind of work takes it. */

import { CURRENCIES } from "./currencies.js";
import { el } from "./dom.js";
import { readAmount, written } from "./money.js";
import { MOST_SECONDS } from "./shop.js";
import { readNumber, readTerm, WORKS } from "./shop_file.js";

/** @typedef {import("./prices_store.js").PricesStore} PricesStore */
/** @typedef {import("./shop.js").Shop} Shop */

const TERMS = /** @type {const} */ ([
  ["hourly", "Rate of an hour's work", "0 or empty: work is not charged."],
  ["least", "Least charge for work", "What a small job costs at least; 0 for none."],
  ["markup", "Markup on parts, %", "Added to what packs and sets cost you."],
  ["step", "Round the total to", "Such as 0.05 where there is no smaller coin."],
]);

const HALVES = /** @type {const} */ ([
  ["away", "up, away from zero"],
  ["even", "to the even neighbour"],
]);

/** @param {PricesStore} store */
export function termsForm(store) {
  const names = new Intl.DisplayNames(undefined, { type: "currency", fallback: "code" });
  const options = CURRENCIES.map((code) => {
    const name = names.of(code);
    return el("option", { value: code }, name && name !== code ? `${code}, ${name}` : code);
  });
  const currency = el("select", { id: "rb-prices-currency" }, ...options);
  const currencyField = field(currency, "Currency (ISO 4217)", "One list has one currency.");
  currency.addEventListener("change", () => {
    const says = otherCurrency(store, currency.value);
    currencyField.wrong(says);
    if (says) currency.value = store.shop.list.currency;
  });
  const half = el(
    "select",
    { id: "rb-prices-half" },
    ...HALVES.map(([value, words]) => el("option", { value }, words)),
  );
  half.addEventListener("change", () =>
    store.change((shop) => ({ ...shop, terms: { ...shop.terms, half: half.value === "even" ? "even" : "away" } })),
  );
  const terms = TERMS.map(([name, label, hint]) => {
    const input = text(`rb-prices-${name}`, "decimal");
    const own = field(input, label, hint);
    input.addEventListener("change", () => {
      const read = readTerm(name, input.value, store.shop.list.currency);
      own.wrong("problem" in read ? read.problem : "");
      if ("value" in read) store.change((shop) => ({ ...shop, terms: { ...shop.terms, [name]: read.value } }));
    });
    return { ...own, input, name };
  });
  const works = WORKS.map(([name, , label]) => {
    const input = text(`rb-prices-${name}`, "numeric");
    const own = field(input, `${label}, s`, "");
    input.addEventListener("change", () => {
      const read = readNumber(input.value, MOST_SECONDS, "seconds");
      own.wrong("problem" in read ? read.problem : "");
      if ("value" in read) store.change((shop) => ({ ...shop, labour: { ...shop.labour, [name]: read.value } }));
    });
    return { ...own, input, name };
  });
  return {
    charge: el(
      "div",
      { class: "rb-prices-fields" },
      currencyField.element,
      ...terms.map(({ element }) => element),
      field(half, "Half a smallest coin goes", "").element,
    ),
    labour: el("div", { class: "rb-prices-fields" }, ...works.map(({ element }) => element)),
    /** @param {Shop} shop */
    show(shop) {
      currency.value = shop.list.currency;
      half.value = shop.terms.half;
      for (const { input, name, isWrong } of terms) {
        if (isWrong() || input === document.activeElement) continue;
        input.value =
          name === "markup" ? String(shop.terms.markup) : written(shop.terms[name] ?? 1, shop.list.currency);
      }
      for (const { input, name, isWrong } of works) {
        if (!isWrong() && input !== document.activeElement) input.value = String(shop.labour[name]);
      }
    },
  };
}

/**
 * Figures stay as they are written: 9.50 in one currency becomes 9.50 in the other.
 * @param {PricesStore} store
 * @param {string} code
 * @returns {string} what is wrong, or nothing
 */
function otherCurrency(store, code) {
  const { list, terms } = store.shop;
  let says = "";
  const turn = (/** @type {number} */ amount) => {
    const read = readAmount(written(amount, list.currency).replace(/\.0+$/, ""), code);
    if ("amount" in read) return read.amount;
    says ||= read.problem;
    return amount;
  };
  const sold = list.sold.map((row) => ({ ...row, price: turn(row.price) }));
  const shelf = list.shelf.map((row) => ({ ...row, price: row.price === null ? null : turn(row.price) }));
  const [hourly, least] = [turn(terms.hourly), turn(terms.least)];
  if (says) return `The currency stays ${list.currency}. ${says}`;
  store.change((shop) => ({
    ...shop,
    list: { currency: code, sold, shelf },
    terms: { ...terms, hourly, least, step: 1 },
  }));
  return "";
}

/**
 * @param {string} id
 * @param {string} inputmode
 */
function text(id, inputmode) {
  return el("input", { id, type: "text", inputmode, maxlength: "30", autocomplete: "off", spellcheck: "false" });
}

/**
 * @param {HTMLInputElement | HTMLSelectElement} input
 * @param {string} label
 * @param {string} hint
 */
function field(input, label, hint) {
  const hintId = `${input.id}-hint`;
  const wrong = el("p", { id: `${input.id}-wrong`, class: "rb-prices-wrong", role: "alert", hidden: true });
  input.setAttribute("aria-describedby", hint ? `${hintId} ${wrong.id}` : wrong.id);
  return {
    element: el(
      "div",
      {},
      el("label", { for: input.id }, label),
      input,
      wrong,
      hint && el("p", { id: hintId, class: "rb-quiet rb-prices-hint" }, hint),
    ),
    isWrong: () => !wrong.hidden,
    /** @param {string} says */
    wrong(says) {
      wrong.textContent = says;
      wrong.hidden = !says;
      if (says) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    },
  };
}
