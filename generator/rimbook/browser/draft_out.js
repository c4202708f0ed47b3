/** The way out: the map as YAML, to copy, to download, or to send to the forge. */

import { button } from "./button.js";
import { el } from "./dom.js";
import { writeYaml } from "./draft_yaml.js";
import { download } from "./files.js";
import { copyText } from "./sheet_copy.js";

/** @typedef {import("./draft_store.js").DraftStore} DraftStore */
/** @typedef {import("./draft_store.js").State} State */

/** Servers refuse longer addresses. */
export const LONGEST_ADDRESS = 7_500;

/**
 * Where a new file is begun, and the folder of the maps there.
 * @typedef {{new: string, folder: string}} Forge
 */

/**
 * The file name for a frame's name: `Plover 76` gives `plover-76`; empty where no letter is left.
 * @param {string} name
 */
export function slugOf(name) {
  const plain = name.normalize("NFKD").replace(/[^\x00-\x7f]/g, "").toLowerCase();
  return (plain.match(/[a-z0-9]+/g) ?? []).join("-").slice(0, 60).replace(/^-+|-+$/g, "");
}

/** @param {State} state */
export function fileOf({ draft, slug }) {
  return `${slugOf(slug) || slugOf(String(draft["name"] ?? "")) || "new-frame"}.yaml`;
}

/**
 * The address that begins a new file with a text in it.
 * @param {Forge} forge
 * @param {string} file
 * @param {string} text
 * @returns {string | null} null where it would be too long
 */
export function newFileAddress(forge, file, text) {
  const address = `${forge.new}?filename=${encodeURIComponent(`${forge.folder}/${file}`)}&value=${encodeURIComponent(text)}`;
  return address.length > LONGEST_ADDRESS ? null : address;
}

/**
 * @param {DraftStore} store
 * @param {{forge: Forge | null, edit: string | null, folder: string, say: (says: string, isUrgent?: boolean) => void}} host
 */
export function outView(store, { forge, edit, folder, say }) {
  const text = el("pre", {});
  const slug = el("input", { type: "text", id: "rb-draft-slug", autocomplete: "off", spellcheck: "false", autocapitalize: "none" });
  const path = el("code", {});
  slug.addEventListener("input", () => store.change({ slug: slug.value.trim() }, "slug"));
  const copy = button("Copy", async () => {
    say((await copyText(writeYaml(store.draft))) ? "The map is copied." : "This browser does not let a page copy: mark the text and copy it yourself.", true);
  });
  const save = button("Download", () => {
    download(fileOf(store.state), "application/yaml", writeYaml(store.draft));
    say(`${fileOf(store.state)} is saved where your browser saves files.`);
  });
  const send = el("a", { class: "rb-button rb-draft-main", target: "_blank", rel: "noopener noreferrer" }, "Send it in");
  const sendWords = el("p", { class: "rb-draft-hint" });
  let isTooLong = false;
  send.addEventListener("click", async (event) => {
    if (isTooLong || store.state.opened) {
      const isCopied = copyText(writeYaml(store.draft)); // before the other page takes the focus
      say((await isCopied) ? "The map is copied: paste it there." : "Copy the text below and paste it there.", true);
    }
    if (send.getAttribute("href") === null) event.preventDefault();
  });
  const comments = el("p", { class: "rb-draft-hint" });
  return {
    element: el(
      "div",
      {},
      el("div", { class: "rb-draft-fields" }, el("div", { class: "rb-draft-field" }, el("label", { for: "rb-draft-slug" }, "File name"), slug, el("p", { class: "rb-draft-hint" }, "It lies at ", path))),
      comments,
      el("p", { class: "rb-draft-buttons" }, copy, save, forge ? send : null),
      sendWords,
      el("div", { class: "rb-scroll rb-draft-yaml", role: "region", "aria-label": "The map as YAML", tabindex: "0" }, text),
    ),
    /** @param {State} state */
    show(state) {
      const yaml = writeYaml(state.draft);
      const file = fileOf(state);
      text.textContent = yaml;
      path.textContent = `${folder}/${file}`;
      slug.placeholder = file.replace(/\.yaml$/, "");
      if (slug !== document.activeElement) slug.value = state.slug;
      comments.textContent = state.opened
        ? "Comments of the file are not kept here. Where it has some, merge by hand: take over only the lines that changed."
        : "";
      if (!forge) {
        sendWords.textContent = "This site names no forge to send a map to: download the file and give it to whoever keeps the book.";
        return;
      }
      const target = state.opened && edit ? `${edit}${folder}/${state.opened}.yaml` : newFileAddress(forge, file, yaml);
      isTooLong = target === null;
      send.setAttribute("href", target ?? `${forge.new}?filename=${encodeURIComponent(`${forge.folder}/${file}`)}`);
      sendWords.textContent = state.opened
        ? "“Send it in” copies the map and opens its file on the forge: put the copied text in its place."
        : isTooLong
          ? "This map is too long for an address: “Send it in” copies it and opens a new file on the forge, to paste it in."
          : "“Send it in” opens a new file on the forge with the map in it. Nothing is sent before you confirm there.";
    },
  };
}
