/** One choice out of a few, as radio buttons that a thumb hits. */

import { el } from "./dom.js";

/**
 * @template {string} Value
 * @param {string} legend
 * @param {string} name of the group in the page
 * @param {readonly (readonly [Value, string])[]} options and their words
 * @param {(value: Value) => void} choose
 * @returns {{element: HTMLFieldSetElement, show: (value: Value) => void}}
 */
export function choiceView(legend, name, options, choose) {
  const buttons = options.map(([value]) => {
    const button = el("input", { type: "radio", name, value });
    button.addEventListener("change", () => choose(value));
    return button;
  });
  const labels = options.map(([, words], at) =>
    el("label", { class: "rb-work-tap" }, buttons[at], el("span", {}, words)),
  );
  return {
    element: el("fieldset", { class: "rb-work-choice" }, el("legend", {}, legend), ...labels),
    show: (value) => buttons.forEach((button, at) => (button.checked = options[at][0] === value)),
  };
}
