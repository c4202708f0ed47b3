/**
 * A tension and a friction of the reader's own on the page of a frame.
 *
 * `[data-rb-tension]` becomes a field for them: `data-rb-newtons` is the tension of the page, `data-rb-limit` and
 * `data-rb-limit-unit` the maker's printed limit, `data-rb-frictions` the coefficients to choose from, first that
 * of the page. What follows is told by factors, one for each coefficient or one for all: newtons in
 * `[data-rb-times]` are the factor times the tension, megapascals in `[data-rb-presses]` too, and
 * `[data-rb-multiple]` says the factor.
 * `[data-rb-worst]` names a hole at each coefficient, `[data-rb-ranked]` the hardest-worked ones. `[data-rb-at]` says
 * the tension, and `[data-rb-assumed]` goes where it is no longer the page's own; `[data-rb-sliding]` and
 * `[data-rb-rubbing]` say that there is no friction, or which.
 */

import { recall, remember } from "./device.js";
import { all, el, fill } from "./dom.js";
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
  const frictions = (place.dataset["rbFrictions"] ?? "0").split(",");
  const friction = el("select", {}, ...frictions.map((each) => el("option", { value: each }, each)));
  const said = el("p", { class: "rb-tension-said", role: "status" });
  place.append(
    el(
      "p",
      { class: "rb-tension" },
      el("label", {}, "Tension ", field),
      " ",
      el("label", {}, el("span", { class: "rb-tension-unit" }, "Unit "), unit),
      " ",
      el("label", {}, "Friction µ ", friction),
      " ",
      back,
    ),
    said,
  );
  let newtons = usual;

  /** @param {string | undefined} each one for each coefficient, or one for all */
  const now = (each = "") => {
    const choices = each.split(",");
    return choices[friction.selectedIndex] ?? choices[0] ?? "";
  };

  const show = () => {
    back.hidden = newtons === usual;
    for (const each of all(page, "[data-rb-times]", HTMLElement))
      each.textContent = whole(newtons * Number(now(each.dataset["rbTimes"])));
    for (const each of all(page, "[data-rb-presses]", HTMLElement))
      each.textContent = (newtons * Number(now(each.dataset["rbPresses"]))).toFixed(1);
    for (const each of all(page, "[data-rb-at]", HTMLElement)) {
      const rubs = each.dataset["rbAt"] === "friction" && friction.selectedIndex > 0;
      each.textContent = `${written(newtons, chosen)} ${chosen}${rubs ? ` and µ = ${friction.value}` : ""}`;
    }
    for (const each of all(page, "[data-rb-assumed]", HTMLElement)) each.hidden = newtons !== usual;
  };

  const rub = () => {
    const rubs = friction.selectedIndex > 0;
    for (const each of all(page, "[data-rb-multiple]", HTMLElement))
      each.textContent = multiple(now(each.dataset["rbMultiple"]));
    for (const each of all(page, "[data-rb-worst]", HTMLAnchorElement)) {
      each.textContent = now(each.dataset["rbWorst"]);
      each.setAttribute("href", `#${each.textContent}`);
    }
    for (const each of all(page, "[data-rb-ranked]", HTMLElement)) {
      const holes = now(each.dataset["rbRanked"]).split(" ");
      fill(each, ...holes.flatMap((hole, index) => ranked(page, hole, index, now)));
    }
    for (const each of all(page, "[data-rb-sliding]", HTMLElement)) each.hidden = rubs;
    for (const each of all(page, "[data-rb-rubbing]", HTMLElement)) each.hidden = !rubs;
    for (const each of all(page, "[data-rb-friction]", HTMLElement)) each.textContent = friction.value;
    show();
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
  friction.addEventListener("change", rub);
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

/**
 * One of the hardest-worked holes, as the page writes them; its newtons are still to be filled in.
 * @param {ParentNode} page
 * @param {string} hole
 * @param {number} index
 * @param {(each: string | undefined) => string} now
 */
function ranked(page, hole, index, now) {
  const cell = page.querySelector(`#${hole} [data-rb-times]`);
  const factors = (cell instanceof HTMLElement && cell.dataset["rbTimes"]) || "";
  return [
    index ? ", " : "",
    el("a", { href: `#${hole}` }, hole),
    " ",
    el("span", { "data-rb-times": factors }),
    " N ",
    el("span", { class: "rb-quiet" }, `(× ${multiple(now(factors))})`),
  ];
}

/** @param {string} factor */
function multiple(factor) {
  return Number(factor).toFixed(2);
}

/** @param {number} value */
function whole(value) {
  return value.toFixed(0).replace(/\B(?=(\d{3})+$)/g, ",");
}
