/**
 * A tension of the reader's own on the page of a frame.
 *
 * `[data-rb-tension]` becomes a field for it: `data-rb-newtons` is the tension of the page, `data-rb-limit` and
 * `data-rb-limit-unit` the maker's printed limit. What follows the tension is told by factors: newtons in
 * `[data-rb-times]` are the factor times the tension, megapascals in `[data-rb-presses]` too. `[data-rb-at]` says the
 * tension, and `[data-rb-assumed]` goes where it is no longer the page's own.
 */

import { recall, remember } from "./device.js";
import { all, el } from "./dom.js";
import { readTension, tensionWords, UNITS, written } from "./tension.js";

const NAME = "tension-unit";

/** @param {ParentNode} page */
export function startTension(page) {
  const place = page.querySelector("[data-rb-tension]");
  if (!(place instanceof HTMLElement)) return;
  const usual = Number(place.dataset["rbNewtons"]);
  const limit = limitOf(place);
  const unit = el("select", {}, ...Object.keys(UNITS).map((name) => el("option", { value: name }, name)));
  const kept = recall(NAME);
  unit.value = typeof kept === "string" && kept in UNITS ? kept : (limit?.unit ?? "lb");
  let chosen = unit.value;
  const field = el("input", {
    type: "text",
    inputmode: "decimal",
    autocomplete: "off",
    size: "6",
    value: written(usual, chosen),
  });
  const back = el("button", { type: "button", class: "rb-button", hidden: true }, "Usual tension");
  const said = el("p", { class: "rb-tension-said", role: "status" });
  place.append(
    el(
      "p",
      { class: "rb-tension" },
      el("label", {}, "Tension ", field),
      " ",
      el("label", {}, el("span", { class: "rb-tension-unit" }, "Unit "), unit),
      " ",
      back,
    ),
    said,
  );
  let newtons = usual;

  const show = () => {
    back.hidden = newtons === usual;
    for (const each of all(page, "[data-rb-times]", HTMLElement))
      each.textContent = whole(newtons * Number(each.dataset["rbTimes"]));
    for (const each of all(page, "[data-rb-presses]", HTMLElement))
      each.textContent = (newtons * Number(each.dataset["rbPresses"])).toFixed(1);
    for (const each of all(page, "[data-rb-at]", HTMLElement))
      each.textContent = `${written(newtons, chosen)} ${chosen}`;
    for (const each of all(page, "[data-rb-assumed]", HTMLElement)) each.hidden = newtons !== usual;
  };

  /** @param {{ newtons: number | null, says: string }} found */
  const take = (found) => {
    if (found.newtons !== null) newtons = found.newtons;
    field.setAttribute("aria-invalid", String(found.newtons === null));
    said.textContent = found.newtons === null ? found.says : tensionWords(newtons, limit);
    said.classList.toggle("rb-caution", said.textContent !== "");
    show();
  };

  field.addEventListener("input", () => take(readTension(field.value, chosen)));
  unit.addEventListener("change", () => {
    chosen = unit.value;
    remember(NAME, chosen);
    field.value = written(newtons, chosen);
    take({ newtons, says: "" });
  });
  back.addEventListener("click", () => {
    field.value = written(usual, chosen);
    field.focus();
    take({ newtons: usual, says: "" });
  });
}

/** @param {HTMLElement} place */
function limitOf(place) {
  const value = place.dataset["rbLimit"];
  const unit = place.dataset["rbLimitUnit"];
  return value && unit ? { value: Number(value), unit } : null;
}

/** @param {number} value */
function whole(value) {
  return value.toFixed(0).replace(/\B(?=(\d{3})+$)/g, ",");
}
