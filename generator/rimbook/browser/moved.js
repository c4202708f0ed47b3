/**
 * The page at an old address: on to the new one with all that stands behind the `#`, so that a printed code still
 * leads to its hole or its sheet. What a browser does by itself without scripts would lose it.
 */

import "./page.js";
import { all } from "./dom.js";

for (const link of all(document, "a[data-rb-leads-to]", HTMLAnchorElement).slice(0, 1)) {
  location.replace(link.href + location.hash);
}
