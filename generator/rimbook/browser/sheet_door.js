/**
 * The door to the bench sheet: its script is loaded when somebody opens it, or when the address or the device
 * holds a sheet.
 *
 * `#sheet` names the frame in `data-rb-sheet` and the script in `data-rb-sheet-script`; `data-rb-sheet-wanted`
 * tells the script that a reader asked for it.
 */

import { recall } from "./device.js";
import { el, fill } from "./dom.js";

/** @param {ParentNode} page */
export function startSheetDoor(page) {
  const section = page.querySelector("#sheet");
  const need = section?.querySelector("[data-rb-sheet-need]");
  if (!(section instanceof HTMLElement) || !need) return;
  const { rbSheet: slug = "", rbSheetScript: source = "" } = section.dataset;
  const button = el("button", { type: "button", class: "rb-button rb-sheet-open" }, "Open the bench sheet");
  fill(need, button);
  let isAsked = false;
  const load = () => {
    if (isAsked) return;
    isAsked = true;
    const script = el("script", { src: source });
    script.addEventListener("error", () => {
      isAsked = false;
      script.remove();
      fill(need, button, " The bench sheet could not be loaded. Try again when the network is back.");
    });
    document.head.append(script);
  };
  const isHeld = () => /^#(.*&)?sheet=/.test(location.hash) || Boolean(recall(`sheet.${slug}`));
  button.addEventListener("click", () => {
    section.dataset["rbSheetWanted"] = "";
    load();
  });
  addEventListener("hashchange", () => isHeld() && load());
  if (isHeld()) load();
}
