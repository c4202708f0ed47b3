/** The drafting page. */

import "./page.js";
import { all } from "./dom.js";
import { startDraft } from "./draft_view.js";

for (const host of all(document, "[data-rb-draft]", HTMLElement).slice(0, 1)) startDraft(host);
