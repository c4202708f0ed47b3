/**
 * Layers of a drawing that can be switched off.
 *
 * `input[type=checkbox][data-rb-layer="strings"]` inside `[data-rb-drawing="face"]` takes the class `no-strings` on and off
 * there. What is switched off is kept on the device, for each drawing by itself.
 */

import { all } from "./dom.js";
import { recall, remember } from "./device.js";

const NAME = "layers-off";

/** @param {ParentNode} page */
export function startLayers(page) {
  for (const drawing of all(page, "[data-rb-drawing]", HTMLElement)) {
    for (const box of all(drawing, "input[data-rb-layer]", HTMLInputElement)) {
      const layer = box.dataset["rbLayer"] ?? "";
      const name = `${drawing.dataset["rbDrawing"]}/${layer}`;
      const show = () => drawing.classList.toggle(`no-${layer}`, !box.checked);
      box.checked = !off().includes(name);
      show();
      box.addEventListener("change", () => {
        show();
        const others = off().filter((other) => other !== name);
        remember(NAME, box.checked ? others : [...others, name]);
      });
    }
  }
}

/** @returns {string[]} */
function off() {
  const value = recall(NAME);
  return Array.isArray(value) ? value.filter((name) => typeof name === "string") : [];
}
