/**
 * The board: a reader's frames side by side, and one parts list for all of them.
 *
 * `<div data-rb-board data-rb-root="../">what a reader without JavaScript gets</div>` becomes the board. The finder is
 * at `finder/index.html`, or where `data-rb-finder-page` says.
 * `#frames=plover-76,bobbin-64` names a set that someone else chose; without it the board shows the kept frames.
 */

import { readCard, sum } from "./board_sum.js";
import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { showHash } from "./hash.js";
import { unpackFrames } from "./index_data.js";
import { MOST_FRAMES, hashOf, keepAll, kept, onKept, slugsInHash } from "./kept.js";
import { load } from "./registry.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./board_sum.js").Card} Card */
/** @typedef {import("./board_sum.js").Line} Line */

/**
 * @typedef {object} Absent
 * @property {string} slug
 * @property {boolean} gone whether the book surely has no such frame
 */

/** @param {HTMLElement} host */
export function startBoard(host) {
  const root = host.dataset["rbRoot"] ?? "";
  const finder = host.dataset["rbFinderPage"] ?? `${root}finder/index.html`;
  const said = el("p", { class: "rb-board-said", role: "status" });
  const body = el("div", {});
  fill(host, said, body);
  let sent = slugsInHash(location.hash);
  let turn = 0;

  const draw = async () => {
    const mine = kept();
    const slugs = sent.length ? sent : mine;
    const isMine = slugs.join() === mine.join();
    if (isMine) showHash(hashOf(slugs));
    turn += 1;
    const thisTurn = turn;
    const { cards, absent } = await fetchCards(slugs, root);
    if (thisTurn !== turn) return;
    said.textContent = slugs.length
      ? `${counted(cards.length, "frame")} on this board.`
      : "No frame is kept yet.";
    fill(
      body,
      slugs.length ? null : emptyBoard(finder),
      isMine ? null : sentBoard(slugs, mine, take),
      absent.length ? absentList(absent, isMine, drop, finder) : null,
      slugs.length ? boardTools(slugs, root) : null,
      cards.length
        ? el(
            "div",
            { class: "rb-board-frames" },
            ...cards.map((card) => cardView(card, root, isMine ? drop : null)),
          )
        : null,
      cards.length ? partsTable(sum(cards), cards, root) : null,
    );
  };

  /** @param {string} slug */
  const drop = (slug) => {
    keepAll(kept().filter((other) => other !== slug));
  };

  /** @param {readonly string[]} slugs */
  const take = (slugs) => {
    sent = [];
    keepAll(slugs);
  };

  onKept(() => {
    const mine = kept();
    if (sent.length && mine.join() === sent.join()) sent = [];
    if (!sent.length) showHash(hashOf(mine));
    void draw();
  });
  addEventListener("hashchange", () => {
    sent = slugsInHash(location.hash);
    void draw();
  });
  if (sent.join() === kept().join()) sent = [];
  void draw();
}

/**
 * @param {readonly string[]} slugs
 * @param {string} root
 * @returns {Promise<{cards: Card[], absent: Absent[]}>}
 */
async function fetchCards(slugs, root) {
  const found = await Promise.all(
    slugs.map((slug) => load(`frame:${slug}`, `${root}data/board/${slug}.js`).then(readCard, () => null)),
  );
  const cards = found.filter((card) => card !== null);
  const missing = slugs.filter((_, at) => found[at] === null);
  if (!missing.length) return { cards, absent: [] };
  const known = await knownSlugs(root);
  return { cards, absent: missing.map((slug) => ({ slug, gone: known !== null && !known.has(slug) })) };
}

/**
 * All slugs of the book, or null where the list itself cannot be loaded.
 * @param {string} root
 */
async function knownSlugs(root) {
  try {
    const index = unpackFrames(await load("finder", `${root}data/finder.js`));
    return new Set(index.names.map((_, frame) => index.slug(frame)));
  } catch {
    return null;
  }
}

/** @param {string} finder the finder's page */
function emptyBoard(finder) {
  return el(
    "p",
    {},
    "Press Keep on the page of a frame or in the ",
    el("a", { href: finder }, "finder"),
    ". Kept frames stay on this device, and the address of this page carries them to another.",
  );
}

/**
 * @param {readonly string[]} slugs
 * @param {readonly string[]} mine
 * @param {(slugs: readonly string[]) => void} take
 */
function sentBoard(slugs, mine, take) {
  const both = [...new Set([...mine, ...slugs])];
  return el(
    "div",
    { class: "rb-board-sent" },
    el("p", {}, "This set came with the address. It is not kept on this device."),
    el(
      "p",
      {},
      button(mine.length ? `Replace my ${counted(mine.length, "frame")} with it` : "Keep it", () =>
        take(slugs),
      ),
      mine.length && both.length <= MOST_FRAMES ? button("Add it to my frames", () => take(both)) : null,
      mine.length ? button("Show my frames instead", () => take(mine)) : null,
    ),
  );
}

/**
 * @param {readonly Absent[]} absent
 * @param {boolean} isMine
 * @param {(slug: string) => void} drop
 * @param {string} finder
 */
function absentList(absent, isMine, drop, finder) {
  const lines = absent.map(({ slug, gone }) =>
    el(
      "li",
      {},
      el("code", {}, slug),
      gone ? ": this book has no such frame; it was renamed or taken out. " : ": could not be loaded. ",
      el("a", { href: `${finder}#q=${slug.replaceAll("-", "+")}` }, "Look for it"),
      " ",
      isMine ? button("Let go", () => drop(slug), `Let go of ${slug}`) : null,
    ),
  );
  return el(
    "div",
    { class: "rb-board-absent", role: "note" },
    el("p", {}, `${counted(absent.length, "frame")} of this set not shown:`),
    el("ul", {}, ...lines),
  );
}

/**
 * @param {Card} card
 * @param {string} root
 * @param {((slug: string) => void) | null} drop
 */
function cardView(card, root, drop) {
  return el(
    "article",
    { class: "rb-board-frame" },
    el("h2", {}, el("a", { href: root + card.path }, card.name)),
    el("img", {
      src: root + card.drawing,
      alt: `Drawing of ${card.name}, face on`,
      class: "rb-board-drawing",
    }),
    el(
      "dl",
      { class: "rb-facts" },
      ...card.facts.map(([term, fact]) => el("div", {}, el("dt", {}, term), el("dd", {}, fact))),
    ),
    drop
      ? el(
          "p",
          { class: "rb-board-tools" },
          button("Let go", () => drop(card.slug), `Let go of ${card.name}`),
        )
      : null,
  );
}

/**
 * @param {readonly Line[]} lines
 * @param {readonly Card[]} cards
 * @param {string} root
 */
function partsTable(lines, cards, root) {
  const heading = el("h2", { id: "rb-board-parts" }, "Parts for a full regrommet of them all");
  const caption = el("caption", {}, `Everything that is fitted to ${listed(cards.map((card) => card.name))}`);
  const head = ["Count", "Part", "Kind", "Sold", "For"].map((title) => el("th", { scope: "col" }, title));
  const rows = lines.map(({ part, total, frames }) =>
    el(
      "tr",
      {},
      el("td", { class: "rb-number" }, String(total)),
      el("th", { scope: "row" }, part.path ? el("a", { href: root + part.path }, part.name) : part.name),
      el("td", {}, part.kind),
      el("td", {}, part.sold),
      el("td", {}, frames.map(({ name, count }) => `${name}: ${count}`).join("; ")),
    ),
  );
  const table = el(
    "table",
    { class: "rb-table" },
    caption,
    el("thead", {}, el("tr", {}, ...head)),
    el("tbody", {}, ...rows),
  );
  const frame = el(
    "div",
    { class: "rb-scroll", role: "region", "aria-labelledby": "rb-board-parts", tabindex: "0" },
    table,
  );
  return el("section", { class: "rb-board-parts" }, heading, frame);
}

/**
 * @param {readonly string[]} slugs
 * @param {string} root
 */
function boardTools(slugs, root) {
  return el(
    "p",
    { class: "rb-board-tools" },
    button("Print this board", () => print()),
    el("a", { href: `${root}my-shelf/index.html${hashOf(slugs)}` }, "Plan a shelf for these frames"),
  );
}
