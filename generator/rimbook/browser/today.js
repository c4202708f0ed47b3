/** The day it is where the reader is. */

/** The day as files have it, as 2026-10-04. */
export function todayInFiles() {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;
}

/** @returns {string} `4 October 2026`, as the pages of the book write a day */
export function today() {
  return new Intl.DateTimeFormat("en-GB", { dateStyle: "long" }).format(new Date());
}
