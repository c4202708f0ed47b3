/** Times, service and shares: what nobody typed is shown as the assumption that it is. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { typedField } from "./my_shelf_bits.js";
import { asTyped, percentOf, readWeeks, typedService, typedShare } from "./my_shelf_read.js";
import { weeks } from "./shelf_words.js";

/** @typedef {import("./my_shelf_read.js").Read} Read */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */
/** @typedef {import("./my_shelf_state.js").OwnTerms} OwnTerms */
/** @typedef {import("./my_shelf_view.js").Constants} Constants */
/** @typedef {import("./kept_store.js").KeptStore<MyShelf>} Store */
/** @typedef {import("./shelf_terms.js").Terms} Terms */

/**
 * One thing the plan goes by. `key` is `lead`, `review`, `service` or a kind of part.
 * @typedef {object} Term
 * @property {string} key
 * @property {string} name
 * @property {string} unit in which it is typed
 * @property {(typed: string) => Read} read
 * @property {(value: number) => string} typed a value as it is typed
 * @property {(value: number) => string} said a value in words
 */

/**
 * All terms, in the order of the page.
 * @param {Constants} constants
 * @returns {Term[]}
 */
export function termsOf({ limits, shares, kinds }) {
  const percent = (/** @type {Term["read"]} */ read) => ({
    read,
    typed: (/** @type {number} */ share) => asTyped(share, read),
    said: (/** @type {number} */ share) => `${percentOf(share)}\u00a0%`,
  });
  const time = { read: (/** @type {string} */ typed) => readWeeks(typed, limits.weeks), typed: String, said: weeks };
  return [
    { key: "lead", name: "From order to delivery", unit: "weeks", ...time },
    { key: "review", name: "Between two reviews of the shelf", unit: "weeks", ...time },
    { key: "service", name: "Service level", unit: "%", ...percent(typedService) },
    ...Object.keys(shares).map((kind) => ({
      key: kind,
      name: `Restrings that renew one part of kind ${kinds[kind]}`,
      unit: "%",
      ...percent(typedShare),
    })),
  ];
}

/**
 * @param {OwnTerms} terms
 * @param {string} key
 * @returns {number | null} null where nobody typed it
 */
export function ownTerm({ lead, review, service, shares }, key) {
  /** @type {Record<string, number | null>} */
  const own = { lead, review, service };
  return key in own ? own[key] : (shares[key] ?? null);
}

/**
 * @param {Constants} constants
 * @param {string} key
 */
export function assumedTerm({ lead, review, service, shares }, key) {
  /** @type {Record<string, number>} */
  const assumed = { lead, review, service, ...shares };
  return assumed[key];
}

/**
 * The terms that the plan is worked out by.
 * @param {OwnTerms} own
 * @param {Constants} constants
 * @returns {Terms}
 */
export function settledTerms(own, constants) {
  return {
    lead: own.lead ?? constants.lead,
    review: own.review ?? constants.review,
    service: own.service ?? constants.service,
    shares: { ...constants.shares, ...own.shares },
  };
}

/**
 * @param {OwnTerms} terms
 * @param {string} key
 * @param {number | null} value
 * @returns {OwnTerms}
 */
export function withTerm(terms, key, value) {
  if (key === "lead" || key === "review" || key === "service") return { ...terms, [key]: value };
  const { [key]: _, ...others } = terms.shares;
  return { ...terms, shares: value === null ? others : { ...others, [key]: value } };
}

/**
 * @param {Store} store
 * @param {Constants} constants
 * @param {(says: string, canUndo: boolean) => void} say
 */
export function termsView(store, constants, say) {
  const fields = termsOf(constants).map((term) => {
    const change = (/** @type {number | null} */ value) =>
      store.change((shelf) => ({ ...shelf, terms: withTerm(shelf.terms, term.key, value) }));
    // A telephone's keys for decimals have no sign for per cent.
    const keys = term.unit === "%" ? "text" : "decimal";
    const field = typedField(`rb-my-shelf-${term.key}`, keys, (typed) => {
      const read = term.read(typed);
      if ("problem" in read) return read.problem;
      change(read.value);
      return "";
    });
    const assumed = assumedTerm(constants, term.key);
    const hint = el("p", { id: `${field.input.id}-hint`, class: "rb-quiet rb-prices-hint" });
    const back = button(
      `Back to ${term.said(assumed)}`,
      () => {
        field.reset("");
        change(null);
        say(`Back to the assumption: ${term.name}.`, true);
        field.input.focus();
      },
      `Back to the assumption, ${term.said(assumed)}: ${term.name}`,
    );
    field.input.setAttribute("aria-describedby", `${hint.id} ${field.wrong.id}`);
    field.input.setAttribute("placeholder", term.typed(assumed));
    return {
      element: el("div", {}, el("label", { for: field.input.id }, `${term.name}, ${term.unit}`), field.input, field.wrong, el("div", { class: "rb-my-shelf-hint" }, hint, back)),
      /** @param {OwnTerms} terms */
      show(terms) {
        const own = ownTerm(terms, term.key);
        field.show(own === null ? "" : term.typed(own));
        back.hidden = own === null;
        const isAssumed = [el("b", {}, "An assumption"), `: ${term.said(assumed)}. Type your own.`];
        fill(hint, ...(own === null ? isAssumed : ["Your own."]));
      },
    };
  });
  return {
    element: el("div", { class: "rb-prices-fields" }, ...fields.map(({ element }) => element)),
    /** @param {MyShelf} shelf */
    show({ terms }) {
      for (const field of fields) field.show(terms);
    },
  };
}
