/** A field for the address or the code of a sheet, as it stands on a ticket or came in a message. */

import { el, fill } from "./dom.js";
import { readPasted } from "./sheet_address.js";
import { decode } from "./sheet_code.js";
import { hashOfSheet } from "./sheet_kept.js";
import { isBlank } from "./sheet_state.js";

/** @typedef {import("./sheet_store.js").Store} Store */

/**
 * @param {Store} store
 * @returns {HTMLElement}
 */
export function pasteField(store) {
  const id = "sheet-paste";
  const said = el("p", { role: "status" });
  const input = el("input", { id, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false" });
  const open = () => fill(said, ...openPasted(store, input.value));
  const form = el(
    "form",
    { class: "rb-ticket-paste" },
    el("label", { for: id }, "Open a sheet by its address or its code"),
    input,
    el("button", { type: "submit", class: "rb-button" }, "Open"),
    said,
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    open();
  });
  return form;
}

/**
 * A sheet opens as it does from a link: by the address of the page, so that what lies here is asked about.
 * @param {Store} store
 * @param {string} pasted
 * @returns {import("./dom.js").Child[]} what came of it
 */
function openPasted({ frame, sheet }, pasted) {
  const { code, slug } = readPasted(pasted);
  if (!code)
    return ["No sheet was found in this. Expected an address with “#sheet=”, or a code that begins with “1.”."];
  if (slug && slug !== frame.slug) {
    const href = `../${slug}/index.html#sheet=${code}`;
    return ["That sheet is for another frame: ", el("a", { href }, `open it on the page of ${slug}`), "."];
  }
  const read = decode(frame, code);
  if (isBlank(read.sheet)) return [read.problems.join(" ") || "That sheet is blank."];
  const hash = hashOfSheet(frame, read.sheet);
  if (hash === hashOfSheet(frame, sheet())) return ["That sheet is open already."];
  location.hash = `#sheet=${code}`;
  return ["Read. If it asks which marks to keep, the question stands at the top of the bench sheet."];
}
