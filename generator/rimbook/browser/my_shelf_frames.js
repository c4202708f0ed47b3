/** The frames of a shelf: found and added, how many there are, how often they are restrung, and taken out. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { kept, onKept, slugsInHash } from "./kept.js";
import { showHash } from "./hash.js";
import { typedField } from "./my_shelf_bits.js";
import { readOptional } from "./my_shelf_read.js";
import { withFrame, withFrames } from "./my_shelf_state.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./my_shelf_book.js").ShelfBook} ShelfBook */
/** @typedef {import("./my_shelf_state.js").KeptFrame} KeptFrame */
/** @typedef {import("./my_shelf_state.js").Limits} Limits */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */
/** @typedef {import("./kept_store.js").KeptStore<MyShelf>} Store */
/** @typedef {(says: string, canUndo: boolean) => void} Say */

const MOST_FOUND = 8;

/** What is wrong with a frame, in words. @type {Record<string, string>} */
export const TROUBLES = {
  gone: "This book has no such frame any more: it was renamed or taken out. It stays in your list until you take it out.",
  older: "Its data are of another edition: open its page once while online.",
  "not loaded": "It could not be loaded: open its page once while online.",
};

/**
 * @param {Store} store
 * @param {ShelfBook} book
 * @param {Limits} limits
 * @param {Say} say
 */
export function framesView(store, book, limits, say) {
  const add = (/** @type {readonly string[]} */ slugs) => {
    const before = store.value.frames.length;
    const named = slugs.map((slug) => ({ slug, name: book.frameName(slug) || slug }));
    store.change((shelf) => withFrames(shelf, named, limits.frames));
    const added = store.value.frames.length - before;
    const full = store.value.frames.length === limits.frames ? ` A shelf has ${limits.frames} frames at most.` : "";
    say(added === 1 && named.length === 1 ? `Added: ${named[0].name}.${full}` : `${counted(added, "frame")} added.${full}`, added > 0);
  };
  const finder = finderBox(store, book, add);
  const offers = el("div", { tabindex: "-1" });
  const list = framesTable(store, book, limits, say);

  const showOffers = () => {
    const { frames } = store.value;
    const had = new Set(frames.map(({ slug }) => slug));
    const mine = kept().filter((slug) => !had.has(slug));
    fill(
      offers,
      sentOffer(book, had, add, () => {
        showOffers();
        offers.focus();
      }),
      mine.length
        ? el(
            "p",
            {},
            button(`Add my ${counted(mine.length, "kept frame")}`, () => {
              add(mine);
              offers.focus();
            }),
          )
        : null,
    );
  };
  onKept(showOffers);
  addEventListener("hashchange", showOffers);
  return {
    element: el("div", {}, offers, finder.element, list.element),
    /** @param {MyShelf} shelf */
    show(shelf) {
      showOffers();
      finder.show();
      list.show(shelf.frames);
    },
  };
}

/**
 * Frames that the address of the page names: offered, never added by themselves.
 * @param {ShelfBook} book
 * @param {ReadonlySet<string>} had
 * @param {(slugs: readonly string[]) => void} add
 * @param {() => void} again
 */
function sentOffer(book, had, add, again) {
  const sent = slugsInHash(location.hash);
  if (!sent.length) return null;
  const gone = sent.filter((slug) => book.index && !book.frames.has(slug));
  const fresh = sent.filter((slug) => !had.has(slug) && !gone.includes(slug));
  const done = () => {
    showHash("");
    again();
  };
  const names = fresh.map((slug) => book.frameName(slug) || slug);
  return el(
    "div",
    { class: "rb-board-sent" },
    el(
      "p",
      {},
      fresh.length
        ? `The address of this page names ${counted(fresh.length, "frame")} that you have not: ${listed(names)}.`
        : "Every frame that the address of this page names is in your list already.",
      gone.length ? ` This book has no ${listed(gone)}.` : "",
    ),
    el(
      "p",
      { class: "rb-prices-buttons" },
      fresh.length
        ? button(`Add ${fresh.length === 1 ? "it" : "them"}`, () => {
            add(fresh);
            done();
          })
        : null,
      button("Leave it", done),
    ),
  );
}

/**
 * @param {Store} store
 * @param {ShelfBook} book
 * @param {(slugs: readonly string[]) => void} add
 */
function finderBox(store, book, add) {
  const box = el("input", {
    id: "rb-my-shelf-find",
    type: "text",
    maxlength: "100",
    autocomplete: "off",
    spellcheck: "false",
    enterkeyhint: "done",
    "aria-controls": "rb-my-shelf-found",
    "aria-describedby": "rb-my-shelf-found-said",
  });
  const said = el("p", { id: "rb-my-shelf-found-said", class: "rb-quiet rb-prices-hint", role: "status" });
  const found = el("ul", { id: "rb-my-shelf-found", class: "rb-plain rb-my-shelf-found" });
  const buttons = () => [...found.querySelectorAll("button")];
  const pick = (/** @type {string} */ slug) => {
    box.value = "";
    add([slug]);
    box.focus();
  };
  const show = () => {
    const typed = box.value.trim();
    const had = new Set(store.value.frames.map(({ slug }) => slug));
    const slugs = book.find(typed, MOST_FOUND);
    fill(
      found,
      ...slugs.map((slug) => {
        const name = book.frameName(slug);
        const about = el("span", { class: "rb-quiet" }, ` ${book.about(slug)}`);
        if (had.has(slug)) return el("li", {}, name, about, ", in your list");
        return el("li", {}, button(`Add ${name}`, () => pick(slug)), about);
      }),
    );
    const says = !typed
      ? ""
      : !book.index
        ? "The list of frames is not loaded: open the finder once while online."
        : slugs.length
          ? `${counted(slugs.length, "frame")} found${slugs.length === MOST_FOUND ? ", the best of them" : ""}.`
          : "No frame found: try a part of its name, or its maker.";
    if (said.textContent !== says) said.textContent = says;
  };
  box.addEventListener("input", show);
  box.addEventListener("keydown", (event) => {
    const [first] = buttons();
    if (event.key === "ArrowDown" && first) first.focus();
    else if (event.key === "Enter" && !event.isComposing && first) first.click();
    else if (event.key === "Escape" && box.value) {
      box.value = "";
      show();
    } else return;
    event.preventDefault();
  });
  found.addEventListener("keydown", (event) => {
    const all = buttons();
    const at = all.findIndex((each) => each === document.activeElement);
    if (event.key === "ArrowDown") all[Math.min(at + 1, all.length - 1)]?.focus();
    else if (event.key === "ArrowUp") (all[at - 1] ?? box).focus();
    else if (event.key === "Escape") box.focus();
    else return;
    event.preventDefault();
  });
  return { element: el("div", {}, el("label", { for: box.id }, "Add a frame by its name"), box, said, found), show };
}

/**
 * @param {Store} store
 * @param {ShelfBook} book
 * @param {Limits} limits
 * @param {Say} say
 */
function framesTable(store, book, limits, say) {
  /** @type {Map<string, ReturnType<typeof row>>} */
  const rows = new Map();
  const body = el("tbody", {});
  const element = el(
    "table",
    { class: "rb-table rb-prices-table rb-my-shelf-frames", hidden: true },
    el("caption", {}, "Your frames"),
    el(
      "thead",
      {},
      el("tr", {}, ...["Frame", "Restrings a year", "How many", "Take out"].map((words) => el("th", { scope: "col" }, words))),
    ),
    body,
  );

  /** @param {string} slug */
  function row(slug) {
    const name = el("span", { class: "rb-my-shelf-name" });
    const trouble = el("p", { class: "rb-prices-wrong", hidden: true });
    const number = (/** @type {"restrings" | "count"} */ what) =>
      typedField(`rb-my-shelf-${what}-${slug}`, what === "count" ? "numeric" : "decimal", (typed) => {
        const asks = what === "count" ? { unit: "", whole: true } : { unit: " of restrings a year" };
        const read = readOptional(typed, { most: limits[what], ...asks });
        if ("problem" in read) return read.problem;
        store.change((shelf) => withFrame(shelf, slug, { [what]: read.value }));
        return "";
      });
    const restrings = number("restrings");
    const count = number("count");
    const out = button("Take out", () => {
      const beside = made.nextElementSibling ?? made.previousElementSibling;
      const called = store.value.frames.find((each) => each.slug === slug)?.name ?? slug;
      store.change((shelf) => ({ ...shelf, frames: shelf.frames.filter((each) => each.slug !== slug) }));
      say(`Taken out: ${called}.`, true);
      const heir = beside?.querySelector("button") ?? document.getElementById("rb-my-shelf-find");
      heir?.focus();
    });
    const cell = (/** @type {string} */ label, /** @type {import("./dom.js").Child[]} */ ...inside) =>
      el("td", { "data-label": label }, ...inside);
    const made = el(
      "tr",
      {},
      el("td", {}, name, trouble, restrings.wrong, count.wrong),
      cell("Restrings a year", restrings.input),
      cell("How many", count.input),
      el("td", {}, out),
    );
    return {
      element: made,
      out,
      /** @param {KeptFrame} frame */
      show(frame) {
        const card = book.cards.get(slug);
        const called = book.frameName(slug) || frame.name;
        const page = book.framePage(slug);
        // Only where it changes: what has the focus stays.
        if (name.textContent !== called || !name.querySelector("a") !== !page) {
          fill(name, page ? el("a", { href: page }, called) : called);
        }
        restrings.input.setAttribute("aria-label", `Restrings a year, ${called}`);
        count.input.setAttribute("aria-label", `How many, ${called}`);
        out.setAttribute("aria-label", `Take out ${called}`);
        trouble.textContent = typeof card === "string" ? TROUBLES[card] : "";
        trouble.hidden = typeof card !== "string";
        restrings.show(frame.restrings === null ? "" : String(frame.restrings));
        count.show(frame.count === null ? "" : String(frame.count));
      },
    };
  }

  return {
    element,
    /** @param {readonly KeptFrame[]} frames */
    show(frames) {
      const slugs = new Set(frames.map(({ slug }) => slug));
      for (const slug of [...rows.keys()]) {
        if (slugs.has(slug)) continue;
        rows.get(slug)?.element.remove();
        rows.delete(slug);
      }
      frames.forEach((frame, at) => {
        const own = rows.get(frame.slug) ?? row(frame.slug);
        rows.set(frame.slug, own);
        if (body.rows[at] !== own.element) body.insertBefore(own.element, body.rows[at] ?? null);
        own.show(frame);
      });
      element.hidden = frames.length === 0;
    },
  };
}
