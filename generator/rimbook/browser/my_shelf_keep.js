/** Keep and move: all that was typed as a file and back, the plan as a table, and a club's file. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { showFaults } from "./faults_list.js";
import { download, tableField } from "./files.js";
import { clubFile, clubSlug, UNNAMED } from "./my_shelf_club.js";
import { planTable } from "./my_shelf_csv.js";
import { addShelf, COLUMNS, writeShelf } from "./my_shelf_file.js";
import { pricesLink } from "./my_shelf_order.js";
import { NO_SHELF, textOf } from "./my_shelf_state.js";
import { copyText } from "./sheet_copy.js";
import { todayInFiles } from "./today.js";
import { counted } from "./words.js";

/** @typedef {import("./buy_list.js").Shelved} Shelved */
/** @typedef {import("./my_shelf_result.js").Shown} Shown */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */
/** @typedef {import("./my_shelf_view.js").Constants} Constants */
/** @typedef {import("./kept_store.js").KeptStore<MyShelf>} Store */

/**
 * @param {Store} store
 * @param {Constants} constants
 * @param {string} prices address of the page of prices and stock
 * @param {(says: string, canUndo: boolean) => void} say
 * @param {() => void} onOther everything is another's, or nothing, from now on
 */
export function keepView(store, constants, prices, say, onOther) {
  /** @type {Shown | null} */
  let last = null;
  /** @type {readonly Shelved[]} */
  let stock = [];
  const saved = (/** @type {string} */ name) => say(`Saved as ${name}, wherever this browser puts its downloads.`, false);

  const faults = el("div", { role: "alert" });
  const file = tableField(
    "rb-my-shelf-file",
    "such a table",
    (text) => {
      const read = addShelf(text, store.value, constants.limits, Object.keys(constants.shares));
      showFaults(faults, read.faults);
      const left = read.faults.length ? ` ${counted(read.faults.length, "row")} left out, see below.` : "";
      if (read.taken) {
        store.change(() => read.shelf);
        onOther();
      }
      say(read.taken ? `${counted(read.taken, "row")} taken over.${left}` : `Nothing was taken over.${left}`, read.taken > 0);
    },
    (says) => say(says, false),
  );
  const save = button("Save frames, terms and counts as a file", () => {
    const name = `${clubSlug(store.value)}.csv`;
    download(name, "text/csv", writeShelf(store.value));
    saved(name);
  });
  const plan = button("Save the plan as a table (CSV)", () => {
    if (!last) return;
    const name = `${clubSlug(store.value)}-plan.csv`;
    download(name, "text/csv", planTable(last, constants.columns));
    saved(name);
  });
  const paper = button("Print", () => print());
  const forget = button("Forget frames, terms and counts", () => {
    store.change(() => NO_SHELF);
    fill(faults);
    onOther();
    say("Frames, terms and counts are forgotten on this device. Prices and stock are not.", true);
  });

  const name = el("input", { id: "rb-my-shelf-club", type: "text", maxlength: "80", autocomplete: "off", placeholder: UNNAMED });
  name.addEventListener("change", () => store.change((shelf) => ({ ...shelf, club: textOf(name.value) })));
  const text = el("pre", {});
  const path = el("code", {});
  const command = el("code", {});
  const written = () => (last ? clubFile(last.shelf, stock, last.book, todayInFiles()) : "");
  const copy = button("Copy the club’s file", async () => {
    const isCopied = await copyText(written());
    say(isCopied ? "The club’s file is copied." : "This browser does not let a page copy: mark the text and copy it yourself.", false);
  });
  const get = button("Download the club’s file", () => {
    const slug = clubSlug(store.value);
    download(`${slug}.yaml`, "application/yaml", written());
    saved(`${slug}.yaml`);
  });
  const counts = el("p", { hidden: true }, "The counts are not in it: give them with ", el("code", {}, "--used"), ".");
  const inside = el(
    "div",
    {},
    el("p", {}, el("label", { for: name.id }, "Name of the club or shop"), name),
    el("p", {}, "Put it into a book at ", path, ". Then labels and charts work as well, and ", command, " tells the same plan."),
    counts,
    el("p", { class: "rb-prices-buttons" }, copy, get),
    el("div", { class: "rb-scroll", role: "region", "aria-label": "The club’s file", tabindex: "0" }, text),
  );
  const none = el("p", {}, "Add a frame first: a club has from 1 to ", String(constants.limits.frames), ".");
  return {
    element: el(
      "section",
      { id: "keep", class: "rb-my-shelf-screen", "aria-labelledby": "keep-title" },
      el("h2", { id: "keep-title" }, "Keep and move"),
      el("p", { class: "rb-prices-buttons" }, paper, plan, save, forget),
      el("p", { class: "rb-quiet" }, "Stock and prices are saved and forgotten on ", pricesLink(prices), "."),
      el("p", {}, el("label", { for: file.id }, "Open a saved file again (CSV)"), file),
      el("p", { class: "rb-quiet" }, "The heading is ", el("code", {}, COLUMNS.join(",")), ". Rows are added to what is there."),
      faults,
      el("h3", {}, "As a club’s file"),
      inside,
      none,
    ),
    /**
     * @param {Shown} all
     * @param {readonly Shelved[]} shelved
     */
    show(all, shelved) {
      [last, stock] = [all, shelved];
      const isEmpty = !all.shelf.frames.length;
      inside.hidden = isEmpty;
      none.hidden = !isEmpty;
      if (name !== document.activeElement) name.value = all.shelf.club;
      path.textContent = `frames/clubs/${clubSlug(all.shelf)}.yaml`;
      command.textContent = `rimbook shelf ${clubSlug(all.shelf)}`;
      counts.hidden = !(all.shelf.counted && all.shelf.used.length);
      text.textContent = isEmpty ? "" : written();
    },
  };
}
