/** A page with the finder in it. */

import "./page.js";
import { all } from "./dom.js";
import { startFinder } from "./finder_view.js";

for (const host of all(document, "[data-rb-finder]", HTMLElement).slice(0, 1)) startFinder(host);
