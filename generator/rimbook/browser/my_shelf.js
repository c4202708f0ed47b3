/** The page of a shelf of one's own. */

import "./page.js";
import { all } from "./dom.js";
import { startMyShelf } from "./my_shelf_view.js";

for (const host of all(document, "[data-rb-my-shelf]", HTMLElement).slice(0, 1)) startMyShelf(host);
