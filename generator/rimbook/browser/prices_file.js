/** Prices as a file: taken out, taken in, pasted, and all of it forgotten. */

import { el, fill } from "./dom.js";
import { NO_SHOP } from "./shop.js";
import { addFile, HEADING, writeShop } from "./shop_file.js";
import { counted } from "./words.js";

/** @typedef {import("./csv.js").Fault} Fault */
/** @typedef {import("./prices_store.js").PricesStore} PricesStore */

const FILE = "prices-and-stock.csv";
const MOST_FAULTS = 12;
const LARGEST_FILE = 2_000_000;

/**
 * @param {PricesStore} store
 * @param {(says: string, canUndo: boolean) => void} say
 */
export function fileTools(store, say) {
  const faults = el("div", { role: "alert" });
  const area = el("textarea", { id: "rb-prices-paste", rows: "5", spellcheck: "false", autocomplete: "off" });
  const file = el("input", { id: "rb-prices-file", type: "file", accept: ".csv,.txt,text/csv,text/plain" });
  const takeIn = (/** @type {string} */ text) => {
    const { shop, faults: found, taken } = addFile(text, store.shop);
    if (taken) store.change(() => ({ ...shop, isExample: false }));
    fill(faults, ...faultWords(found));
    const left = found.length ? ` ${counted(found.length, "row")} left out, see below.` : "";
    say(taken ? `${counted(taken, "row")} taken over.${left}` : `Nothing was taken over.${left}`, taken > 0);
    return found.length === 0;
  };
  const paste = button("Take the rows over", () => {
    if (!area.value.trim()) return say(`Paste rows first. The first row is the heading: ${HEADING}.`, false);
    if (takeIn(area.value)) area.value = "";
  });
  file.addEventListener("change", async () => {
    const [chosen] = file.files ?? [];
    if (!chosen) return;
    if (chosen.size > LARGEST_FILE) say(`${chosen.name} is too large: a price list has at most 5,000 rows.`, false);
    else {
      try {
        takeIn(await chosen.text());
      } catch {
        say(`${chosen.name} could not be read.`, false);
      }
    }
    file.value = "";
  });
  const save = button("Save as a file", () => {
    const address = URL.createObjectURL(new Blob([writeShop(store.shop)], { type: "text/csv" }));
    el("a", { href: address, download: FILE }).click();
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
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

/** @param {readonly Fault[]} faults */
function faultWords(faults) {
  if (!faults.length) return [];
  const items = faults.slice(0, MOST_FAULTS).map(({ row, message }) => el("li", {}, `Row ${row}: ${message}`));
  const more = faults.length - MOST_FAULTS;
  return [
    el("p", { class: "rb-prices-wrong" }, "These rows were left out; all others were taken over:"),
    el("ul", {}, ...items, more > 0 && el("li", {}, `and ${counted(more, "row")} more.`)),
  ];
}

/**
 * @param {string} words
 * @param {() => void} act
 */
function button(words, act) {
  const made = el("button", { type: "button", class: "rb-button" }, words);
  made.addEventListener("click", act);
  return made;
}
