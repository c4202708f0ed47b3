/** Prices as a file: taken out, taken in, pasted, and all of it forgotten. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { download, tableField } from "./files.js";
import { showFaults } from "./faults_list.js";
import { NO_SHOP } from "./shop.js";
import { addFile, HEADING, writeShop } from "./shop_file.js";
import { counted } from "./words.js";

/** @typedef {import("./prices_store.js").PricesStore} PricesStore */

const FILE = "prices-and-stock.csv";

/**
 * @param {PricesStore} store
 * @param {(says: string, canUndo: boolean) => void} say
 */
export function fileTools(store, say) {
  const faults = el("div", { role: "alert" });
  const area = el("textarea", { id: "rb-prices-paste", rows: "5", spellcheck: "false", autocomplete: "off" });
  const takeIn = (/** @type {string} */ text) => {
    const { shop, faults: found, taken } = addFile(text, store.shop);
    if (taken) store.change(() => ({ ...shop, isExample: false }));
    showFaults(faults, found);
    const left = found.length ? ` ${counted(found.length, "row")} left out, see below.` : "";
    say(taken ? `${counted(taken, "row")} taken over.${left}` : `Nothing was taken over.${left}`, taken > 0);
    return found.length === 0;
  };
  const file = tableField("rb-prices-file", "a price list", takeIn, (says) => say(says, false));
  const paste = button("Take the rows over", () => {
    if (!area.value.trim()) return say(`Paste rows first. The first row is the heading: ${HEADING}.`, false);
    if (takeIn(area.value)) area.value = "";
  });
  const save = button("Save as a file", () => {
    download(FILE, "text/csv", writeShop(store.shop));
    say(`Saved as ${FILE}, wherever this browser puts its downloads.`, false);
  });
  const forget = button("Forget everything", () => {
    store.change(() => NO_SHOP);
    fill(faults);
    say("All prices, the shelf and your rates are forgotten on this device.", true);
  });
  return el(
    "div",
    { class: "rb-prices-file" },
    el("p", {}, el("label", { for: file.id }, "Take a file in (CSV)"), file),
    el("p", {}, el("label", { for: area.id }, "Or paste rows from a spreadsheet"), area),
    el("p", { class: "rb-quiet" }, "The heading is ", el("code", {}, HEADING), ". Kind is sold or shelf."),
    el("p", { class: "rb-prices-buttons" }, paste, save, forget),
    faults,
  );
}
