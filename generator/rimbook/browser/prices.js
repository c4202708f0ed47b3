/** The page of prices and stock. */

import "./page.js";
import { all } from "./dom.js";
import { startPrices } from "./prices_view.js";

for (const host of all(document, "[data-rb-prices]", HTMLElement).slice(0, 1)) startPrices(host);
