/**
 * The board: a reader's frames side by side, and one parts list for all of them.
 *
 * `<div data-rb-board data-rb-root="../">what a reader without JavaScript gets</div>` becomes the board. The finder is
 * at `finder/index.html`, or where `data-rb-finder-page` says.
 * `#frames=plover-76,bobbin-64` names a set that someone else chose; without it the board shows the kept frames.
 */

import { fetchFrames } from "./board_fetch.js";
import { sum } from "./board_sum.js";
import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { showHash } from "./hash.js";
import { MOST_FRAMES, hashOf, keepAll, kept, onKept, slugsInHash } from "./kept.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./board_fetch.js").Absent} Absent */
/** @typedef {import("./board_sum.js").Card} Card */
/** @typedef {import("./board_sum.js").Line} Line */

/** @param {HTMLElement} host */
export function startBoard(host) {
  const root = host.dataset["rbRoot"] ?? "";
  const finder = host.dataset["rbFinderPage"] ?? `${root}finder/index.html`;
  const said = el("p", { class: "rb-board-said", role: "status" });
  const body = el("div", {});
  fill(host, said, body);
  let sent = slugsInHash(location.hash);
  let turn = 0;
  /** @type {Map<string, string>} what was renamed since the page was opened: old slug → slug */
  const renames = new Map();

  const draw = async () => {
    const mine = kept();
    const slugs = sent.length ? sent : mine;
    const isMine = slugs.join() === mine.join();
    if (isMine) showHash(hashOf(slugs));
    turn += 1;
    const thisTurn = turn;
    const { there, cards, absent, renamed } = await fetchFrames(slugs, root);
    if (thisTurn !== turn) return;
    if (renamed.size) {
      for (const [old, slug] of renamed) renames.set(old, slug);
      follow([...new Set(slugs.map((slug) => renamed.get(slug) ?? slug))]);
      return;
    }
    said.textContent = slugs.length
      ? [`${counted(cards.length, "frame")} on this board.`, ...renameWords(renames, cards)].join(" ")
      : "No frame is kept yet.";
    fill(
      body,
      slugs.length ? null : emptyBoard(finder),
      isMine ? null : sentBoard(there, cards.length > 0, mine, take),
      absent.length ? absentList(absent, isMine, drop, finder) : null,
      cards.length ? boardTools(there, root) : null,
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

  /**
   * New names take the place of old ones, on the device or in the address.
   * @param {string[]} slugs
   */
  const follow = (slugs) => {
    if (!sent.length) keepAll(slugs);
    else {
      sent = slugs.join() === kept().join() ? [] : slugs;
      showHash(hashOf(slugs));
      void draw();
    }
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
 * @param {ReadonlyMap<string, string>} renames old slug → slug
 * @param {readonly Card[]} cards
 */
function renameWords(renames, cards) {
  return [...renames].flatMap(([old, slug]) =>
    cards.filter((card) => card.slug === slug).map(({ name }) => `${old} is ${name} now.`),
  );
}

/**
 * @param {readonly string[]} there what the book has of the set
 * @param {boolean} isSeen whether any of it stands on the board
 * @param {readonly string[]} mine
 * @param {(slugs: readonly string[]) => void} take
 */
function sentBoard(there, isSeen, mine, take) {
  const both = [...new Set([...mine, ...there])];
  return el(
    "div",
    { class: "rb-board-sent" },
    el("p", {}, "This set came with the address. It is not kept on this device."),
    el(
      "p",
      {},
      isSeen
        ? button(mine.length ? `Replace my ${counted(mine.length, "frame")} with it` : "Keep it", () =>
            take(there),
          )
        : null,
      isSeen && mine.length && both.length <= MOST_FRAMES
        ? button("Add it to my frames", () => take(both))
        : null,
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
