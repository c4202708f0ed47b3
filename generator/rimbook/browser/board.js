/** The page of my frames. */

import "./page.js";
import { startBoard } from "./board_view.js";
import { all } from "./dom.js";

for (const host of all(document, "[data-rb-board]", HTMLElement).slice(0, 1)) startBoard(host);
