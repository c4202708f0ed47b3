/** The page of a frame. */

import "./page.js";
import { startTension } from "./frame_tension.js";
import { startLayers } from "./layers.js";
import { startMarks } from "./marks.js";
import { describeRow, startTables } from "./tables.js";

startTables(document);
startLayers(document);
startTension(document);
startMarks(document, describeRow);
