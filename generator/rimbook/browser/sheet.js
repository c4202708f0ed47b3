/** The bench sheet of a frame's page: loaded once somebody wants it. */

import { startSheet } from "./sheet_view.js";

startSheet(document);
