/** The finder's box and filters, as elements. They hold the reader's choice and nothing else. */

import { MOST_CHARACTERS } from "./ask.js";
import { el } from "./dom.js";
import { FILTER_LABELS, NO_FILTERS, active } from "./filters.js";

/** @typedef {import("./filters.js").Filters} Filters */
/** @typedef {import("./filters.js").FilterName} FilterName */
/** @typedef {import("./index_data.js").Index} Index */
/** @typedef {import("./address.js").Search} Search */

/** @type {readonly FilterName[]} */
const CHOSEN = ["sport", "maker", "bore", "pattern"];
const MOST_SUGGESTIONS = 30;

/**
 * @typedef {object} Form
 * @property {HTMLFormElement} element
 * @property {HTMLInputElement} box
 * @property {() => Search} read
 * @property {(search: Search) => string[]} write gives the values that the book does not know
 * @property {(index: Index) => void} offer fills the lists of choices
 * @property {(index: Index) => void} suggestParts
 */

/** @returns {Form} */
export function finderForm() {
  const box = el("input", {
    type: "search",
    id: "rb-finder-box",
    class: "rb-finder-box",
    autocomplete: "off",
    spellcheck: "false",
    autocapitalize: "off",
    enterkeyhint: "go",
    "aria-describedby": "rb-finder-said",
    "aria-controls": "rb-finder-results",
  });
  const controls = {
    sport: el("select"),
    maker: el("select"),
    bore: el("select"),
    pattern: el("select"),
    part: el("input", { list: "rb-finder-parts", placeholder: "its id or name" }),
    holes: el("input", { placeholder: "76 or 70–80", inputmode: "text" }),
    shared: el("input", { placeholder: "9 13 or 9–11", inputmode: "text" }),
  };
  const suggestions = el("datalist", { id: "rb-finder-parts" });
  for (const [name, control] of Object.entries(controls)) {
    control.setAttribute("name", name);
    if (control instanceof HTMLInputElement) control.maxLength = MOST_CHARACTERS;
  }
  for (const name of CHOSEN) controls[name].append(el("option", { value: "" }, "any"));
  const count = el("span", { class: "rb-finder-count" });
  const opener = el(
    "button",
    { type: "button", class: "rb-button", "aria-expanded": "false", "aria-controls": "rb-finder-choices" },
    "Filter the frames",
    count,
  );
  const choices = el(
    "div",
    { class: "rb-finder-choices", id: "rb-finder-choices", hidden: true },
    labelled("Sport", controls.sport),
    labelled("Maker", controls.maker),
    labelled("Strings, mains × crosses", controls.pattern),
    labelled("Holes, a number or a range", controls.holes),
    labelled("Shared at, on either side", controls.shared),
    labelled("Bore, mm", controls.bore),
    labelled("Part", controls.part),
    el("button", { type: "reset", class: "rb-button" }, "Clear all"),
    suggestions,
  );
  /** @param {boolean} open */
  const unfold = (open) => {
    choices.hidden = !open;
    opener.setAttribute("aria-expanded", String(open));
  };
  opener.addEventListener("click", () => unfold(choices.hidden));

  const element = el(
    "form",
    { class: "rb-finder-form", role: "search", "aria-label": "Finder" },
    el("label", { for: "rb-finder-box" }, "Frame, maker, bore, part or word"),
    box,
    el("div", {}, opener),
    choices,
  );
  const read = () => {
    const filters = { ...NO_FILTERS };
    for (const name of filterNames()) filters[name] = controls[name].value;
    const { length } = active(filters);
    count.textContent = length ? ` (${length} set)` : "";
    return { typed: box.value, filters };
  };

  return {
    element,
    box,
    read,
    write({ typed, filters }) {
      box.value = typed;
      const unknown = [];
      for (const name of filterNames()) {
        const value = filters[name].trim();
        controls[name].value = value;
        if (value && controls[name].value !== value) {
          controls[name].value = "";
          unknown.push(`${FILTER_LABELS[name]} ${value}`);
        }
      }
      if (active(read().filters).length) unfold(true);
      return unknown;
    },
    offer({ columns }) {
      for (const name of CHOSEN) {
        const select = /** @type {HTMLSelectElement} */ (controls[name]);
        const values = valuesOf(columns, name);
        select.replaceChildren(
          el("option", { value: "" }, "any"),
          ...values.map((value) =>
            el("option", { value }, name === "pattern" ? value.replace("x", " × ") : value),
          ),
        );
      }
    },
    suggestParts({ parts }) {
      const typed = controls.part.value.trim().toLowerCase();
      const fitting = (parts?.entries ?? [])
        .map((entry, part) => ({ id: parts?.ids[part] ?? "", title: entry.title }))
        .filter(({ id, title }) => id.includes(typed) || title.toLowerCase().includes(typed));
      suggestions.replaceChildren(
        ...fitting
          .slice(0, MOST_SUGGESTIONS)
          .map(({ id, title }) => el("option", { value: id, label: title })),
      );
    },
  };
}

/**
 * The values of a filter in the order in which one looks for them.
 * @param {import("./index_data.js").PackedFrames} columns
 * @param {FilterName} name
 */
function valuesOf(columns, name) {
  if (name === "sport") return columns.sports;
  if (name === "maker") return columns.makers;
  return name === "bore" ? columns.bores : columns.patterns;
}

function filterNames() {
  return /** @type {FilterName[]} */ (Object.keys(NO_FILTERS));
}

/**
 * @param {string} text
 * @param {HTMLElement} control
 */
function labelled(text, control) {
  control.id = `rb-finder-${control.getAttribute("name")}`;
  return el("div", {}, el("label", { for: control.id }, text), control);
}
