/** The part of the page that measures from a photo. The photo stays on the device; only places go into the draft. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { apply, inverse } from "./draft_homography.js";
import { readNumber } from "./draft_fields.js";
import { curve } from "./draft_outline.js";
import { CORNERS, MIDDLES, SHEETS, holeAt, placeDown, readingOf, sightOf } from "./draft_photo.js";
import { Picks } from "./draft_photo_picks.js";
import { outOfOrder, resolutionOf, withPlaces } from "./draft_photo_places.js";
import { resultOf } from "./draft_photo_result.js";
import { photoStage } from "./draft_photo_stage.js";
import { places } from "./draft_places.js";

/** @typedef {import("./draft_outline.js").Point} Point */
/** @typedef {import("./draft_photo.js").Reading} Reading */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_store.js").DraftStore} DraftStore */

const LONGEST_MM = 2000;
const KEYS = "Arrows move the sight by a pixel, with Shift by twenty. Enter picks, s skips, Backspace undoes, Page up and Page down go to another point, + and - zoom.";

/**
 * @param {DraftStore} store
 * @param {(says: string, isUrgent?: boolean) => void} say
 */
export function photoView(store, say) {
  const picks = new Picks();
  let frame = /** @type {DraftFrame | null} */ (null);
  let address = "";

  const file = el("input", { type: "file", accept: "image/*", id: "rb-draft-photo-file" });
  const sheet = el("select", { id: "rb-draft-photo-sheet" }, ...SHEETS.map(([name], index) => el("option", { value: String(index) }, name)), el("option", { value: "" }, "another rectangle"));
  const sides = ["Corner 1 to corner 2, mm", "Corner 2 to corner 3, mm"].map((words, index) => {
    const id = `rb-draft-photo-side-${index}`;
    const control = el("input", { type: "text", inputmode: "decimal", autocomplete: "off", id, value: String(SHEETS[0][index + 1]) });
    return { control, box: box(id, words, control) };
  });
  const strength = el("input", { type: "range", min: "0", max: "100", value: "80", id: "rb-draft-photo-strength" });
  const target = el("select", { id: "rb-draft-photo-target" });
  const result = el("div", { class: "rb-draft-photo-result" });
  const asked = el("p", { class: "rb-draft-now" });
  const wrong = el("p", { class: "rb-draft-wrong" });

  const seen = () => {
    const [corners, middles] = [picks.all(CORNERS), picks.all(MIDDLES)];
    if (!frame || !corners || !middles) return null;
    const line = curve(frame.head);
    const sight = sightOf(corners, sheetSize(), middles, line);
    if (typeof sight === "string") return sight;
    const readings = picks.holes.flatMap(([hole, point]) => readingOf(sight, line, hole, point) ?? []);
    return { line, sight, readings, back: inverse(sight.face), placed: places(frame) };
  };
  const sheetSize = () => /** @type {[number, number]} */ (sides.map(({ control }) => {
    const length = readNumber(control.value);
    return typeof length === "number" && length <= LONGEST_MM ? length : 0;
  })); // prettier-ignore

  const refresh = (isNext = false) => {
    if (!address) return;
    const found = seen();
    const known = found && typeof found !== "string" ? found : null;
    const onto = (/** @type {Point} */ point) => (known ? (apply(known.back, point) ?? []) : []);
    const shown = (/** @type {Point[]} */ points) => points.map(onto).filter(({ length }) => length).map((point) => /** @type {Point} */ (point));
    stage.show({
      marks: [...picks.points].flatMap(([name, at]) => (at ? [/** @type {const} */ ([name, at, shortOf(name)])] : [])),
      line: known ? shown(known.line.points) : [],
      holes: known ? shown([...known.placed.values()].map(({ at }) => at)) : [],
      current: picks.current,
    });
    const expected = picks.points.get(picks.current) ?? (known ? onto(known.placed.get(picks.current)?.at ?? [NaN, NaN]) : []);
    if (isNext && Number.isFinite(expected[0])) stage.aim(/** @type {Point} */ (expected));
    fill(target, ...picks.targets.map((name) => el("option", { value: name, selected: name === picks.current }, `${name}${stateOf(name)}`)));
    asked.textContent = `Pick ${picks.current}`;
    wrong.textContent = typeof found === "string" ? found : "";
    fill(result, ...resultOf(known?.sight ?? null, known?.readings ?? []));
    take.disabled = !known?.readings.length;
  };
  const stateOf = (/** @type {string} */ name) => (picks.points.get(name) ? " – picked" : picks.points.has(name) ? " – skipped" : "");
  const next = () => `Next: ${picks.current}.`;

  const put = (/** @type {Point} */ point) => {
    const name = picks.current;
    picks.put(point);
    refresh(true);
    say(`${name} is picked. ${told(name)}${next()}`);
  };
  /** @param {string} name what there is to say of a pick */
  const told = (name) => {
    const found = seen();
    if (typeof found === "string") return `${found} `;
    const reading = found?.readings.find(({ address: hole }) => hole === name);
    if (!found || !reading) return "";
    const side = name[0] === "R" ? "R" : "L";
    const due = new Map([...found.placed].map(([hole, { along }]) => [hole, placeDown(found.line, hole[0] === "R" ? "R" : "L", along)]));
    const near = holeAt(due, side, reading.place);
    const other = near && near !== name ? ` Nearer to where ${near} is expected.` : "";
    return `${reading.place.toFixed(1)} mm from the middle of the head.${other} `;
  };
  const skip = () => {
    const name = picks.current;
    picks.put(null);
    refresh(true);
    say(`${name} is skipped. ${next()}`);
  };
  const undo = () => {
    if (!picks.undo()) return say("Nothing is picked yet.");
    refresh(true);
    say(`Undone. ${next()}`);
  };
  const choose = (/** @type {string} */ name) => {
    picks.go(name);
    refresh(true);
    say(next());
  };
  const press = (/** @type {string} */ key) => {
    if (key === "Enter" || key === " ") {
      const isMine = stage.isMoved || CORNERS.includes(picks.current) || MIDDLES.includes(picks.current);
      if (isMine) put(stage.sight);
      else say("Move the sight onto the hole first: it stands where the hole is expected, not where it is.", true);
    } else if (key === "s") skip();
    else if (key === "Backspace" || key === "Control+z") undo();
    else if (key === "PageUp" || key === "PageDown") {
      picks.step(key === "PageUp" ? -1 : 1);
      choose(picks.current);
    } else return false;
    return true;
  };
  const move = (/** @type {string} */ name, /** @type {Point} */ point, /** @type {boolean} */ isNew) => {
    picks.move(name, point, isNew);
    refresh();
  };
  const stage = photoStage({ pick: put, move, press });
  stage.strengthen(0.8);

  const take = button("Take these places", () => {
    const found = seen();
    if (!found || typeof found === "string") return;
    const faults = outOfOrder(found.readings);
    if (faults.length) return say(faults[0], true);
    store.change({ draft: withPlaces(store.draft, found.readings) });
    say(`${found.readings.length} places are in the draft, measured with a photo of ${resolutionOf(found.readings)} mm a pixel. Undo takes them out again.`);
  });
  const work = el(
    "div",
    { class: "rb-draft-photo-work", hidden: true },
    el("div", { class: "rb-draft-fields" }, box("rb-draft-photo-sheet", "Rectangle in the photo", sheet), ...sides.map((each) => each.box), box("rb-draft-photo-strength", "Strength of the photo", strength), box("rb-draft-photo-target", "Picked next", target)),
    asked,
    wrong,
    el("p", { class: "rb-draft-help", id: "rb-draft-photo-keys" }, `Tap or click a point to pick it, drag one to mend it, drag elsewhere to move the photo. ${KEYS}`),
    el("div", { class: "rb-draft-buttons" }, button("Undo pick", undo), button("Skip", skip), button("Zoom in", () => stage.zoom(1.5)), button("Zoom out", () => stage.zoom(1 / 1.5)), button("Whole photo", () => stage.zoom(0))),
    stage.element,
    result,
    take,
  );

  file.addEventListener("change", async () => {
    const chosen = file.files?.[0];
    if (!chosen) return;
    const opened = URL.createObjectURL(chosen);
    const size = await sizeOf(opened);
    if (!size) {
      URL.revokeObjectURL(opened);
      return say(`${chosen.name} cannot be shown as a picture: choose a photo in JPEG, PNG or WebP.`, true);
    }
    if (address) URL.revokeObjectURL(address);
    address = opened;
    work.hidden = false;
    picks.clear();
    stage.open(address, size);
    refresh();
    say(`The photo is open: ${size.width} by ${size.height} pixels. ${next()}`);
  });
  sheet.addEventListener("change", () => {
    const known = sheet.value ? SHEETS[Number(sheet.value)] : null;
    if (known) sides.forEach(({ control }, index) => (control.value = String(known[index + 1])));
    refresh();
  });
  for (const { control } of sides) {
    control.addEventListener("input", () => {
      const index = SHEETS.findIndex(([, ...lengths]) => lengths.every((length, each) => length === sheetSize()[each]));
      sheet.value = index < 0 ? "" : String(index);
      refresh();
    });
  }
  strength.addEventListener("input", () => stage.strengthen(Number(strength.value) / 100));
  target.addEventListener("change", () => choose(target.value));

  return {
    element: el(
      "details",
      { class: "rb-draft-photo" },
      el("summary", {}, "Measure places from a photo"),
      el("p", {}, "Lay a sheet of paper inside the head or beside it and take a photo from straight above, from as far as you can, handle down. Pick the corners of the sheet clockwise, so that from corner 1 to corner 2 is the side you state first; then the middle of the head and of the throat on the line of holes, then hole after hole. The photo stays on this device. Picks go when you leave the page; places that you took stay."),
      el("p", { class: "rb-caution" }, "The holes must lie in the plane of the sheet. Seen from 1 m, holes 5 mm above it come out 0.5 % too far apart: over 1 mm from head to throat. Raise the sheet to half the depth of the rim."),
      box("rb-draft-photo-file", "Photo of the frame, face on", file),
      work,
    ),
    /** @param {DraftFrame | null} found null where the draft cannot be read: what is known of it stays */
    show(found) {
      if (!found) return;
      frame = found;
      const down = (/** @type {string} */ side) => found.holes.filter((hole) => hole.drilled && hole.side === side).sort((a, b) => a.number - b.number);
      picks.walk([...down("R"), ...down("L")].map((hole) => hole.address));
      refresh();
    },
  };
}

/** @param {string} name of a target, as it fits beside its mark */
function shortOf(name) {
  return name === MIDDLES[0] ? "head" : name === MIDDLES[1] ? "throat" : name.replace("corner ", "");
}

/**
 * @param {string} address
 * @returns {Promise<{width: number, height: number} | null>} null where it is no picture
 */
async function sizeOf(address) {
  const picture = new Image();
  picture.src = address;
  try {
    await picture.decode();
  } catch {
    return null;
  }
  return picture.naturalWidth ? { width: picture.naturalWidth, height: picture.naturalHeight } : null;
}

/**
 * @param {string} id
 * @param {string} words
 * @param {HTMLElement} control
 */
function box(id, words, control) {
  return el("div", { class: "rb-draft-field" }, el("label", { for: id }, words), control);
}
