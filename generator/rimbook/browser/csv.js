/**
 * Tables as comma-separated text, after RFC 4180, section 2. Read more kindly than written: a byte-order
 * mark, bare line feeds, and semicolons or tabs in place of commas are understood.
 *
 * A cell that a spreadsheet would take for a formula is written with an apostrophe before it, which
 * spreadsheets take for "text" (OWASP, CSV Injection), and read without.
 */

const MOST_CHARACTERS = 1_000_000;
const MOST_ROWS = 5000;
const FORMULA = /^'*[=+\-@\t\r\0＝＋－＠]/;
const SEPARATORS = [",", ";", "\t"];

/**
 * @typedef {object} Row
 * @property {number} row as a spreadsheet counts: the heading is row 1
 * @property {string[]} cells
 */

/**
 * @typedef {object} Fault
 * @property {number} row
 * @property {string} message one sentence, without the row
 */

/**
 * All rows that can be read, and what is wrong with the others. Empty rows are left out.
 * @param {string} text
 * @returns {{rows: Row[], faults: Fault[]}}
 */
export function readCsv(text) {
  /** @type {Fault[]} */
  const faults = [];
  if (text.length > MOST_CHARACTERS) {
    faults.push({ row: 1, message: `The text is longer than ${MOST_CHARACTERS} characters; the rest is left out.` });
  }
  const source = text.slice(0, MOST_CHARACTERS).replace(/^\uFEFF/, "");
  const reader = new Reader(source, separatorOf(source));
  /** @type {Row[]} */
  const rows = [];
  for (let row = 1; !reader.isAtEnd; row++) {
    if (row > MOST_ROWS) {
      faults.push({ row, message: `There are more than ${MOST_ROWS} rows; the rest is left out.` });
      break;
    }
    const { cells, message } = reader.row();
    if (message) faults.push({ row, message });
    else if (cells.some((cell) => cell !== "")) rows.push({ row, cells: cells.map(withoutGuard) });
  }
  return { rows, faults };
}

/**
 * A table with a heading: its columns in small letters, which of those needed are missing, and what is there in words.
 * @param {readonly Row[]} rows
 * @param {readonly string[]} needed
 */
export function headed([heading, ...others], needed) {
  const columns = heading?.cells.map((cell) => cell.trim().toLowerCase()) ?? [];
  return {
    row: heading?.row ?? 1,
    columns,
    others,
    missing: needed.filter((column) => !columns.includes(column)),
    found: heading ? `found ${columns.join(", ")}` : "there is no row",
  };
}

/**
 * What is wrong with a row that has not as many cells as the heading has columns.
 * @param {number} cells
 * @param {number} columns
 */
export function uneven(cells, columns) {
  return cells === columns ? "" : `It has ${cells} cells; expected ${columns}, as in the heading.`;
}

/**
 * Rows as text: CRLF after each, quotes only where they are needed.
 * @param {readonly (readonly string[])[]} rows
 */
export function writeCsv(rows) {
  return rows.map((cells) => `${cells.map(written).join(",")}\r\n`).join("");
}

/** @param {string} cell */
function written(cell) {
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n;\t]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** @param {string} cell */
function withoutGuard(cell) {
  return cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell;
}

/**
 * What stands between the cells of the first row, outside quotes.
 * @param {string} text
 */
function separatorOf(text) {
  const heading = /^(?:"(?:[^"]|"")*"|[^"\r\n])*/.exec(text)?.[0].replace(/"(?:[^"]|"")*"/g, "") ?? "";
  const counts = SEPARATORS.map((sign) => heading.split(sign).length);
  return SEPARATORS[counts.indexOf(Math.max(...counts))];
}

const STRAY_QUOTE =
  "A quote stands inside a cell that does not begin with one: put the whole cell in quotes and double those inside.";
const AFTER_QUOTE = "Something follows a closing quote: double the quotes that stand inside a cell.";
const OPEN_QUOTE = "A quote is opened and never closed.";

class Reader {
  /**
   * @param {string} text
   * @param {string} separator
   */
  constructor(text, separator) {
    this.text = text;
    this.separator = separator;
    this.at = 0;
  }

  get isAtEnd() {
    return this.at >= this.text.length;
  }

  /** One row; after a fault the reader stands at the next line. */
  row() {
    const cells = [];
    for (;;) {
      const { cell, message } = this.text[this.at] === '"' ? this.quoted() : this.plain();
      if (message) {
        this.skipLine();
        return { cells, message };
      }
      cells.push(cell);
      if (this.text[this.at] === this.separator) this.at++;
      else break;
    }
    this.skipLine();
    return { cells, message: "" };
  }

  plain() {
    const start = this.at;
    while (!this.isAtEnd && this.text[this.at] !== this.separator && !this.isBreak()) {
      if (this.text[this.at] === '"') {
        return { cell: "", message: STRAY_QUOTE };
      }
      this.at++;
    }
    return { cell: this.text.slice(start, this.at), message: "" };
  }

  quoted() {
    const start = this.at + 1;
    let end = this.text.indexOf('"', start);
    while (end >= 0 && this.text[end + 1] === '"') end = this.text.indexOf('"', end + 2);
    if (end < 0) return { cell: "", message: OPEN_QUOTE };
    this.at = end + 1;
    const isClosed = this.isAtEnd || this.text[this.at] === this.separator || this.isBreak();
    if (!isClosed) return { cell: "", message: AFTER_QUOTE };
    return { cell: this.text.slice(start, end).replaceAll('""', '"'), message: "" };
  }

  isBreak() {
    return this.text[this.at] === "\r" || this.text[this.at] === "\n";
  }

  skipLine() {
    while (!this.isAtEnd && !this.isBreak()) this.at++;
    this.at += this.text.startsWith("\r\n", this.at) ? 2 : 1;
  }
}
