/** After the season: what was used, the old rates and levels beside the new ones, and a plan by either. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { showFaults } from "./faults_list.js";
import { tableField } from "./files.js";
import { table, tableRow } from "./my_shelf_bits.js";
import { rules } from "./shelf_terms.js";
import { readUsed } from "./shelf_used.js";
import { yearly } from "./shelf_words.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./dom.js").Child} Child */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */
/** @typedef {import("./my_shelf_result.js").Shown} Shown */
/** @typedef {import("./kept_store.js").KeptStore<MyShelf>} Store */
/** @typedef {import("./shelf_update.js").Learned} Learned */
/** @typedef {import("./my_shelf_state.js").Used} Used */

const HEADING = "part,count,weeks";
const NUMBER = "rb-number";

/**
 * @param {Store} store
 * @param {(says: string, canUndo: boolean) => void} say
 */
export function seasonView(store, say) {
  const faults = el("div", { role: "alert" });
  const area = el("textarea", { id: "rb-my-shelf-used", rows: "4", spellcheck: "false", autocomplete: "off" });
  const takeIn = (/** @type {string} */ text) => {
    const read = readUsed(text);
    showFaults(faults, read.faults);
    const left = read.faults.length ? ` ${counted(read.faults.length, "row")} left out, see below.` : "";
    if (read.used.length) store.change((shelf) => ({ ...shelf, used: read.used }));
    const taken = counted(read.used.length, "row");
    say(read.used.length ? `${taken} counted.${left}` : `Nothing was counted.${left}`, read.used.length > 0);
    return read.faults.length === 0;
  };
  const file = tableField("rb-my-shelf-used-file", "such a table", takeIn, (says) => say(says, false));
  const paste = button("Count these rows", () => {
    if (!area.value.trim()) return say(`Paste rows first. The first row is the heading: ${HEADING}.`, false);
    if (takeIn(area.value)) area.value = "";
  });
  const go = button("", () => {
    const { counted: was } = store.value;
    store.change((shelf) => ({ ...shelf, counted: !was }));
    say(was ? "The plan goes by the shares again." : "The plan goes by the counted rates.", true);
  });
  const forget = button("Forget the counts", () => {
    store.change((shelf) => ({ ...shelf, used: [], counted: false }));
    fill(faults);
    say("The counts are forgotten.", true);
    area.focus();
  });
  const learned = el("div", {});
  const choice = el("p", { class: "rb-prices-buttons" }, go, forget);
  return {
    element: el(
      "section",
      { id: "season", "aria-labelledby": "season-title" },
      el("h2", { id: "season-title" }, "After the season"),
      el(
        "p",
        {},
        "Count what was used of each part. The plan then weighs as much as one year of counting: see what it changes " +
          "before you plan by it.",
      ),
      el(
        "div",
        { class: "rb-my-shelf-input" },
        el("p", {}, el("label", { for: file.id }, "Open a file of counts (CSV)"), file),
        el("p", {}, el("label", { for: area.id }, "Or paste rows from a spreadsheet"), area),
        el("p", { class: "rb-quiet" }, "The heading is ", el("code", {}, HEADING), ". No weeks are a year."),
        el("p", { class: "rb-prices-buttons" }, paste),
        faults,
      ),
      learned,
      choice,
    ),
    /** What was left out of these counts concerns nobody once there are others, or none. */
    dropFaults: () => fill(faults),
    /**
     * @param {Shown} all
     * @param {readonly Learned[]} found
     * @param {readonly Used[]} unknown counts of parts that no drawer has
     */
    show(all, found, unknown) {
      const { shelf } = all;
      choice.hidden = !shelf.used.length;
      go.textContent = shelf.counted ? "Plan by the shares again" : "Plan with the counted rates";
      fill(learned, ...lessons(all, found, unknown));
    },
  };
}

/**
 * @param {Shown} all
 * @param {readonly Learned[]} found
 * @param {readonly Used[]} unknown
 * @returns {Child[]}
 */
function lessons({ shelf, plan, book }, found, unknown) {
  if (!shelf.used.length) return [];
  const name = (/** @type {string} */ part) => plan.items[part]?.name ?? book.partName(part);
  const rows = found.map(({ item, part, used, prior, posterior, old, new: fresh }) =>
    tableRow(
      item === part ? name(part) : `${name(part)}, in ${name(item)}`,
      [`${used.count} in ${Number((used.years * rules().weeksOfYear).toFixed(1))}\u00a0weeks`, ""],
      [`${yearly(prior.shape / prior.rate)} → ${yearly(posterior.shape / posterior.rate)}`, NUMBER],
      [`${old.reorder} → ${fresh.reorder}`, NUMBER],
      [`${old.upTo} → ${fresh.upTo}`, NUMBER],
    ),
  );
  const others = unknown.map(({ part }) => name(part));
  return [
    el("p", {}, el("b", {}, shelf.counted ? "The plan goes by the counted rates." : "The plan does not go by them yet.")),
    rows.length
      ? table(
          "season-caption",
          "What the counts say: as planned → as counted",
          [
            ["Part", ""],
            ["Used", ""],
            ["A year", NUMBER],
            ["Reorder below", NUMBER],
            ["Fill up to", NUMBER],
          ],
          rows,
        )
      : null,
    others.length ? el("p", {}, `No drawer of this shelf has ${listed(others)}: the count is left out.`) : null,
  ];
}
