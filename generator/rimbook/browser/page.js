/** Every page: what is kept shows, tables sort, and `/` leads to the finder (`a[data-rb-finder-link]`). */

import { isTyping } from "./dom.js";
import { startKeepButtons } from "./keep_button.js";
import { startOffline } from "./offline.js";
import { startTables } from "./tables.js";

startKeepButtons();
startOffline();
startTables(document);

addEventListener(
  "keydown",
  (event) => {
    const link = document.querySelector("a[data-rb-finder-link]");
    const plain = event.key === "/" && !event.ctrlKey && !event.metaKey && !event.altKey;
    if (!plain || isTyping(event.target) || !(link instanceof HTMLAnchorElement)) return;
    if (document.querySelector("[data-rb-finder]")) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    link.click();
  },
  { capture: true },
);
