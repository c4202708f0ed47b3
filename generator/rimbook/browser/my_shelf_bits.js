/** Small things that the page of a shelf is built of. */

import { el } from "./dom.js";

/** @typedef {import("./dom.js").Child} Child */

/**
 * A text field that says what is wrong with what was typed. `take` gives that, or nothing.
 * @param {string} id
 * @param {string} inputmode
 * @param {(typed: string) => string} take
 */
export function typedField(id, inputmode, take) {
  const input = el("input", { id, type: "text", inputmode, maxlength: "30", autocomplete: "off", spellcheck: "false" });
  const wrong = el("p", { id: `${id}-wrong`, class: "rb-prices-wrong", role: "alert", hidden: true });
  input.setAttribute("aria-describedby", wrong.id);
  input.addEventListener("change", () => {
    const says = take(input.value);
    wrong.textContent = says;
    wrong.hidden = !says;
    if (says) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  });
  return {
    input,
    wrong,
    /** @param {string} value as it is kept; what was typed wrongly stays until somebody mends it */
    show(value) {
      if (wrong.hidden && input !== document.activeElement) input.value = value;
    },
    /** @param {string} value as it is kept, whatever was typed */
    reset(value) {
      wrong.hidden = true;
      input.removeAttribute("aria-invalid");
      input.value = value;
    },
  };
}

/**
 * @param {string} id
 * @param {string} caption
 * @param {readonly [string, string][]} heads words and class of each column
 * @param {readonly HTMLTableRowElement[]} rows
 * @param {boolean} [isSortable]
 */
export function table(id, caption, heads, rows, isSortable = false) {
  const columns = heads.map(([words, name]) => el("th", { scope: "col", class: name || false }, words));
  return el(
    "div",
    { class: "rb-scroll", role: "region", "aria-labelledby": id, tabindex: "0" },
    el(
      "table",
      { class: "rb-table", "data-rb-sortable": isSortable },
      el("caption", { id }, caption),
      el("thead", {}, el("tr", {}, ...columns)),
      el("tbody", {}, ...rows),
    ),
  );
}

/**
 * @param {Child} first heads the row
 * @param {...[Child, string]} cells what is in each, and its class
 */
export function tableRow(first, ...cells) {
  return el(
    "tr",
    {},
    el("th", { scope: "row" }, first),
    ...cells.map(([inside, name]) => el("td", { class: name || false }, inside)),
  );
}

/**
 * @param {readonly [Child, Child[]][]} rows what it is about, and what is said
 */
export function facts(rows) {
  return el(
    "dl",
    { class: "rb-facts" },
    ...rows.map(([term, said]) => el("div", {}, el("dt", {}, term), el("dd", {}, ...said))),
  );
}
