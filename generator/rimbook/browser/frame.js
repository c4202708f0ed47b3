/** The page of a frame. */

import "./page.js";
import { startLayers } from "./layers.js";
import { startMarks } from "./marks.js";
import { describeRow, startTables } from "./tables.js";

startTables(document);
startLayers(document);
startMarks(document, describeRow);
