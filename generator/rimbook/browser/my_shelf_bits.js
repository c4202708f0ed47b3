/** Small things that the page of a shelf is built of. */

import { el, fill } from "./dom.js";
import { counted } from "./words.js";

/** @typedef {import("./csv.js").Fault} Fault */
/** @typedef {import("./dom.js").Child} Child */

const MOST_FAULTS = 12;

/**
 * @param {string} words
 * @param {() => void} act
 * @param {string} [label] where the words alone do not say what it is about
 */
export function button(words, act, label = "") {
  const made = el("button", { type: "button", class: "rb-button", "aria-label": label || false }, words);
  made.addEventListener("click", act);
  return made;
}

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

/**
 * @param {HTMLElement} host
 * @param {readonly Fault[]} faults
 */
export function showFaults(host, faults) {
  if (!faults.length) return fill(host);
  const items = faults.slice(0, MOST_FAULTS).map(({ row, message }) => el("li", {}, `Row ${row}: ${message}`));
  const more = faults.length - MOST_FAULTS;
  fill(
    host,
    el("p", { class: "rb-prices-wrong" }, "These rows were left out; all others were taken over:"),
    el("ul", {}, ...items, more > 0 && el("li", {}, `and ${counted(more, "row")} more.`)),
  );
}

/**
 * @param {string} name of the file
 * @param {string} type
 * @param {string} text
 */
export function download(name, type, text) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  el("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/**
 * A field that opens a file of text.
 * @param {string} id
 * @param {string} accept
 * @param {(text: string) => void} take
 * @param {(says: string) => void} refuse
 */
export function fileField(id, accept, take, refuse) {
  const file = el("input", { id, type: "file", accept });
  file.addEventListener("change", async () => {
    const [chosen] = file.files ?? [];
    if (!chosen) return;
    if (chosen.size > 2_000_000) refuse(`${chosen.name} is too large: such a table has at most 5,000 rows.`);
    else {
      try {
        take(await chosen.text());
      } catch {
        refuse(`${chosen.name} could not be read.`);
      }
    }
    file.value = "";
  });
  return file;
}
