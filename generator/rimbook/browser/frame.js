/** The page of a frame. */

import "./page.js";
import { startTension } from "./frame_tension.js";
import { startLayers } from "./layers.js";
import { startMarks } from "./marks.js";
import { startSheetDoor } from "./sheet_door.js";
import { describeRow } from "./tables.js";

startLayers(document);
startTension(document);
startMarks(document, describeRow);
startSheetDoor(document);
