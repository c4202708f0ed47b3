/** Text as a file: put out by the browser, or taken in from one that somebody chooses. */

import { el } from "./dom.js";

/** What a field takes for a table. */
export const TABLES = ".csv,.txt,text/csv,text/plain";

const LARGEST = 2_000_000;

/**
 * @param {string} name of the file
 * @param {string} type
 * @param {string} text
 */
export function download(name, type, text) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  el("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/**
 * A field that opens a table.
 * @param {string} id
 * @param {string} what it is, to say that it is too large
 * @param {(text: string) => void} take
 * @param {(says: string) => void} refuse
 */
export function tableField(id, what, take, refuse) {
  const file = el("input", { id, type: "file", accept: TABLES });
  file.addEventListener("change", async () => {
    const [chosen] = file.files ?? [];
    if (!chosen) return;
    if (chosen.size > LARGEST) refuse(`${chosen.name} is too large: ${what} has at most 5,000 rows.`);
    else {
      try {
        take(await chosen.text());
      } catch {
        refuse(`${chosen.name} could not be read.`);
      }
    }
    file.value = "";
  });
  return file;
}
