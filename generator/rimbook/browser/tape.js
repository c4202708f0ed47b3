/** The page of a rim tape: all drawings at a scale that puts the reader's printer right. */

import "./page.js";
import { recall, remember } from "./device.js";
import { all, fill } from "./dom.js";
import { number, readMm } from "./millimetres.js";

const BAR_MM = 100;
const KEPT = "printer";

const form = document.querySelector("form[data-rb-tape]");
const answer = document.querySelector("[data-rb-tape-answer]");
const input = form?.querySelector("input");
if (form instanceof HTMLFormElement && answer && input) start(form, answer, input);

/**
 * @param {HTMLFormElement} form
 * @param {Element} answer
 * @param {HTMLInputElement} input
 */
function start(form, answer, input) {
  const least = Number(form.dataset.rbLeast);
  const most = Number(form.dataset.rbMost);
  const kept = recall(KEPT);
  if (typeof kept === "number" && kept >= least && kept <= most) input.value = number(kept);
  form.hidden = false;
  form.addEventListener("submit", (event) => event.preventDefault());
  input.addEventListener("input", () => apply(true));
  apply(false);

  /** @param {boolean} isTyped */
  function apply(isTyped) {
    const measured = readMm(input.value);
    const isPossible = measured >= least && measured <= most;
    input.setAttribute("aria-invalid", String(!isPossible));
    if (isPossible) {
      draw(BAR_MM / measured);
      if (isTyped) remember(KEPT, measured);
    }
    fill(answer, said(measured, isPossible));
  }

  /**
   * @param {number} measured
   * @param {boolean} isPossible
   */
  function said(measured, isPossible) {
    if (!isPossible) return `Type what you measured, ${least} to ${most} mm. Nothing was changed.`;
    if (measured === BAR_MM) return "Drawn as it is.";
    return `Drawn for your printer, at ${number(10_000 / measured)} %. Print again: the bar should now measure 100 mm.`;
  }
}

/**
 * Every drawing at a multiple of its true size.
 * @param {number} scale
 */
function draw(scale) {
  for (const box of all(document, "[data-rb-width]", HTMLElement)) {
    const drawing = box.querySelector("svg");
    drawing?.setAttribute("width", `${(Number(box.dataset.rbWidth) * scale).toFixed(3)}mm`);
    drawing?.setAttribute("height", `${(Number(box.dataset.rbHeight) * scale).toFixed(3)}mm`);
  }
}
