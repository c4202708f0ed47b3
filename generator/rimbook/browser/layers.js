/**
 * Layers of a drawing that can be switched off, or on where they start off.
 *
 * `input[type=checkbox][data-rb-layer="strings"]` inside `[data-rb-drawing="face"]` takes the class `no-strings` on and off
 * there. What is switched off, or on, is kept on the device, for each drawing by itself.
 */

import { all } from "./dom.js";
import { recall, remember } from "./device.js";

const OFF = "layers-off";
const ON = "layers-on";

/** @param {ParentNode} page */
export function startLayers(page) {
  for (const drawing of all(page, "[data-rb-drawing]", HTMLElement)) {
    for (const box of all(drawing, "input[data-rb-layer]", HTMLInputElement)) {
      const layer = box.dataset["rbLayer"] ?? "";
      const name = `${drawing.dataset["rbDrawing"]}/${layer}`;
      const show = () => drawing.classList.toggle(`no-${layer}`, !box.checked);
      const [starts, list] = box.defaultChecked ? [true, OFF] : [false, ON];
      box.checked = starts !== kept(list).includes(name);
      show();
      box.addEventListener("change", () => {
        show();
        const others = kept(list).filter((other) => other !== name);
        remember(list, box.checked === starts ? others : [...others, name]);
      });
    }
  }
}

/**
 * @param {string} list
 * @returns {string[]}
 */
function kept(list) {
  const value = recall(list);
  return Array.isArray(value) ? value.filter((name) => typeof name === "string") : [];
}
