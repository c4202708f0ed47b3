/** The page of measured holes. */

import "./page.js";
import { all } from "./dom.js";
import { startFits } from "./fits_view.js";

for (const host of all(document, "[data-rb-fits]", HTMLElement).slice(0, 1)) startFits(host);
