/**
 * A table of rows that are typed into: what is sold, or what lies on the shelf. A row is kept as soon as it is
 * whole and right; a wrong one says why and stays as it was typed.
 */

import { el } from "./dom.js";
import { written } from "./money.js";
import { readRow } from "./buy_prices.js";

/** @typedef {import("./buy_list.js").PriceList} PriceList */
/** @typedef {import("./buy_list.js").Sold} Sold */
/** @typedef {import("./buy_list.js").Shelved} Shelved */
/** @typedef {"sold" | "shelf"} Kind */
/** @typedef {"part" | "count" | "price" | "seller"} Field */
/** @typedef {Sold | Shelved} Item */

/**
 * @typedef {object} Host
 * @property {() => string} currency
 * @property {(part: string) => string} nameOf what a part is called, or that the book has none
 * @property {(typed: string) => string} idOf what was typed as an id, if it was a name
 * @property {(kind: Kind, old: Item | null, fresh: Item | null) => string} replace keeps a row, or takes it out;
 *   gives what is wrong, or nothing
 * @property {(says: string, canUndo: boolean) => void} say
 */

/**
 * @typedef {object} Row
 * @property {HTMLTableRowElement} element
 * @property {Item | null} item as it is kept; null for one that is not
 * @property {boolean} isWrong
 */

/** @type {Record<Kind, {title: string, fields: Field[], labels: Record<Field, string>}>} */
const WORDS = {
  sold: {
    title: "What you can buy",
    fields: ["part", "count", "price", "seller"],
    labels: { part: "Part or set", count: "Pieces in the pack", price: "Price of the pack", seller: "Seller" },
  },
  shelf: {
    title: "What lies on your shelf",
    fields: ["part", "count", "price"],
    labels: { part: "Part", count: "Pieces", price: "Price of one to the player", seller: "" },
  },
};

/**
 * @param {Kind} kind
 * @param {string} parts id of the list of parts to choose from
 * @param {Host} host
 */
export function priceTable(kind, parts, host) {
  const { title, fields, labels } = WORDS[kind];
  /** @type {Row[]} */
  let rows = [];
  const body = el("tbody", {});
  const blank = row(null);
  const heads = [...fields.map((field) => labels[field]), ""].map((label) =>
    el("th", { scope: "col" }, label || "Take in or out"),
  );
  const element = el(
    "table",
    { class: "rb-table rb-prices-table" },
    el("caption", {}, title),
    el("thead", {}, el("tr", {}, ...heads)),
    body,
  );
  body.append(blank.element);

  /**
   * @param {Item | null} item
   * @returns {Row}
   */
  function row(item) {
    const inputs = fields.map((field) => input(field));
    const name = el("span", { class: "rb-prices-name" });
    const wrong = el("p", { class: "rb-prices-wrong", hidden: true, role: "alert" });
    const button = el("button", { type: "button", class: "rb-button" }, item ? "Remove" : "Add");
    const cells = fields.map((field, at) =>
      el(
        "td",
        { "data-label": labels[field] },
        inputs[at],
        field === "part" && name,
        field === fields[fields.length - 1] && wrong,
      ),
    );
    const own = { element: el("tr", {}, ...cells, el("td", {}, button)), item, isWrong: false };

    const fill = () => {
      const currency = host.currency();
      const values = own.item && {
        part: own.item.part,
        count: String(own.item.count),
        price: own.item.price === null ? "" : written(own.item.price, currency),
        seller: "seller" in own.item ? own.item.seller : "",
      };
      fields.forEach((field, at) => (inputs[at].value = values?.[field] ?? ""));
      label();
    };
    const label = () => {
      const part = inputs[0].value;
      const about = own.item ? part || "row without a part" : "new row";
      fields.forEach((field, at) => inputs[at].setAttribute("aria-label", `${labels[field]}, ${about}`));
      button.setAttribute("aria-label", own.item ? `Remove ${about}` : `Add the new row to: ${title}`);
      name.textContent = part ? host.nameOf(part) : "";
    };
    const problem = (/** @type {string} */ says) => {
      own.isWrong = says !== "";
      wrong.textContent = says;
      wrong.hidden = !says;
      for (const each of inputs) {
        if (says) each.setAttribute("aria-invalid", "true");
        else each.removeAttribute("aria-invalid");
      }
    };
    const take = () => {
      inputs[0].value = host.idOf(inputs[0].value.trim());
      const typed = Object.fromEntries(fields.map((field, at) => [field, inputs[at].value]));
      const read = readRow({ seller: "", ...typed, kind }, host.currency());
      if ("problem" in read) return problem(read.problem);
      const fresh = "sold" in read ? read.sold : read.shelved;
      if (JSON.stringify(fresh) === JSON.stringify(own.item)) {
        problem("");
        return fill();
      }
      const before = own.item;
      if (before) own.item = fresh; // the row has to know itself again when the table is told of the change
      const says = host.replace(kind, before, fresh);
      if (says) own.item = before;
      problem(says);
      if (says) return;
      fill();
      if (before) return;
      host.say(`Added: ${host.nameOf(fresh.part) || fresh.part}.`, true);
      inputs[0].focus();
    };

    const isBegun = () => inputs.some((each) => each.value.trim() !== "");
    inputs.forEach((each) => {
      each.addEventListener("change", () => {
        inputs[0].value = host.idOf(inputs[0].value.trim());
        label();
        if (own.item) take();
        else if (!isBegun()) problem("");
      });
      each.addEventListener("keydown", (event) => {
        if (event.key === "Enter" && !own.item && isBegun()) take();
      });
    });
    button.addEventListener("click", () => {
      if (!own.item) return take();
      const at = rows.indexOf(own);
      const { part } = own.item;
      host.replace(kind, own.item, null);
      rows = rows.filter((other) => other !== own);
      own.element.remove();
      host.say(`Removed: ${host.nameOf(part) || part}.`, true);
      const next = rows[Math.min(at, rows.length - 1)] ?? blank;
      next.element.querySelector("button")?.focus();
    });
    fill();
    return own;
  }

  /** @param {Field} field */
  function input(field) {
    return el("input", {
      type: "text",
      class: `rb-prices-${field}`,
      inputmode: field === "count" ? "numeric" : field === "price" ? "decimal" : "text",
      maxlength: "100",
      autocomplete: "off",
      spellcheck: "false",
      list: field === "part" && parts,
    });
  }

  return {
    element,
    /** @param {PriceList} list */
    show(list) {
      /** @type {Item[]} */
      const items = kind === "sold" ? list.sold : list.shelf;
      const isSame = (/** @type {Item | null} */ one, /** @type {Item} */ other) =>
        JSON.stringify(one) === JSON.stringify(other);
      const rest = [...rows];
      const found = items.map((item) => {
        const at = rest.findIndex((own) => isSame(own.item, item));
        return at < 0 ? row(item) : rest.splice(at, 1)[0];
      });
      // What was typed wrongly stays until somebody mends it or takes it out.
      rows = [...found, ...rest.filter(({ isWrong }) => isWrong)];
      const wanted = [...rows, blank].map((own) => own.element);
      if (wanted.length !== body.rows.length || wanted.some((each, at) => body.rows[at] !== each)) {
        const focused = document.activeElement;
        body.replaceChildren(...wanted);
        if (focused instanceof HTMLElement && body.contains(focused)) focused.focus();
      }
    },
    /** All rows anew: the currency has changed. */
    redraw(/** @type {PriceList} */ list) {
      rows = [];
      this.show(list);
    },
  };
}
