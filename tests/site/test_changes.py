"""Two states of a small book, and the sentences that tell them apart."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from rimbook.book.load import Loaded, load_book
from rimbook.book.model import Address, Moved
from rimbook.draw.face import face
from rimbook.draw.ringed import ringed
from rimbook.rim.place import place
from rimbook.site.changes.of_book import Changes, compare
from rimbook.site.changes.page import as_markdown, as_text, changes_page
from tests.book.rules.small_book import MAP, PARTS, changed


def book(folder: Path, maps: dict[str, str] | None = None, parts: str = PARTS) -> Loaded:
    for name in ("maps", "parts"):
        (folder / name).mkdir(parents=True)
    for slug, text in (maps if maps is not None else {"lapwing-20": MAP}).items():
        (folder / "maps" / f"{slug}.yaml").write_text(text, "utf-8")
    (folder / "parts" / "common.yaml").write_text(parts, "utf-8")
    return load_book(folder)


def between(tmp_path: Path, *swaps: tuple[str, str], parts: str = PARTS) -> Changes:
    before = book(tmp_path / "before")
    after = book(tmp_path / "after", {"lapwing-20": changed(MAP, *swaps)}, parts)
    assert not after.problems
    return compare(before.book, after.book)


def sentences(changes: Changes) -> list[str]:
    return [change.text for change in changes.changes]


def test_the_same_book_has_no_changes(tmp_path: Path) -> None:
    assert as_text(between(tmp_path)) == "Nothing in the book changes.\n"


def test_a_changed_limit_is_one_sentence(tmp_path: Path) -> None:
    assert sentences(between(tmp_path, ("28 lb", "26 lb"))) == ["Tension limit 28 lb → 26 lb."]


def test_a_part_sold_alone_is_said_so(tmp_path: Path) -> None:
    parts = PARTS.replace("packs: []", "packs: [1]", 1)
    assert parts != PARTS
    found = between(tmp_path, parts=parts)
    assert any("Now sold alone" in each for each in sentences(found))


def test_a_frame_that_goes_breaks_and_says_who_still_names_it(tmp_path: Path) -> None:
    before = book(tmp_path / "before", {"lapwing-20": MAP, "other": changed(MAP, ("Lapwing 20", "Other"))})
    after = book(tmp_path / "after", {"other": changed(MAP, ("Lapwing 20", "Other"))})
    found = compare(before.book, after.book)
    assert [(change.id, change.breaking) for change in found.changes] == [("lapwing-20", True)]
    assert "! Lapwing 20" in as_text(found)


def test_a_frame_that_moved_is_no_loss(tmp_path: Path) -> None:
    before = book(tmp_path / "before")
    after = book(tmp_path / "after", {"lapwing-twenty": MAP})
    found = compare(before.book, after.book, moved=Moved({"lapwing-20": "lapwing-twenty"}))
    assert sentences(found) == [
        "The page of Lapwing 20 moved from lapwing-20 to lapwing-twenty; the old address leads on."
    ]


def test_a_map_that_cannot_be_read_is_not_taken_for_gone(tmp_path: Path) -> None:
    before = book(tmp_path / "before")
    after = book(tmp_path / "after", {})
    found = compare(before.book, after.book, unread={"lapwing-20"})
    assert not found.breaking
    assert "cannot be read any more" in sentences(found)[0]


def test_clubs_that_use_a_changed_frame_are_named(tmp_path: Path) -> None:
    before = book(tmp_path / "before")
    folder = tmp_path / "after"
    book(folder, {"lapwing-20": changed(MAP, ("28 lb", "26 lb"))})
    (folder / "clubs").mkdir()
    (folder / "clubs" / "ours.yaml").write_text(
        "format: 1\nname: Ours\nframes: [lapwing-20, plover-1]\n", "utf-8"
    )
    after = load_book(folder)
    assert not after.problems
    assert compare(before.book, after.book).follows == (
        "The club ours has lapwing-20 on its chart and shelf.",
    )
    gone = compare(before.book, replace(after.book, frames={}))
    assert gone.follows[-1] == "The club ours still names lapwing-20."


def test_a_stranger_writes_no_markup_into_the_summary(tmp_path: Path) -> None:
    found = between(tmp_path, ("Lapwing 20", '"[x](javascript:y) <b>"'))
    markdown = as_markdown(found)
    assert "[x](" not in markdown
    assert "<b>" not in markdown
    assert r"\[x\]\(javascript:y\) \<b\>" in markdown


def test_the_page_shows_both_states_with_rings(tmp_path: Path) -> None:
    before = book(tmp_path / "before")
    after = book(tmp_path / "after", {"lapwing-20": changed(MAP, BORE)})
    found = compare(before.book, after.book)
    page = changes_page(found, before.book, after.book, {}, "../site/")
    rings = sum(len(change.holes) for change in found.changes if not change.breaking)
    assert page.count("<svg") == 4
    assert rings
    assert 0 < page.count('class="changed"') <= 2 * rings
    assert '<a href="../site/frames/lapwing-20/index.html">' in page


BORE = ("default: 2.1", "default: 2.2")


def test_like_changes_of_many_holes_are_one_sentence(tmp_path: Path) -> None:
    found = sentences(between(tmp_path, BORE))
    assert sum("bore 2.1 → 2.2 mm" in each for each in found) == 1


@pytest.mark.parametrize("address", [Address("R", 1), Address("L", 3)])
def test_a_ring_is_drawn_where_the_hole_is(tmp_path: Path, address: Address) -> None:
    loaded = book(tmp_path / "book")
    drawing = face(place(loaded.maps["lapwing-20"].frame), loaded.book.parts)
    found = ringed(drawing, [address])
    hole = found[: found.index(f'data-address="{address}"')].rindex("<use")
    x = found[hole:].split(' x="')[1].split('"')[0]
    assert f'<circle cx="{x}"' in found
    assert found.count("<circle") == drawing.count("<circle") + 1


def test_the_newer_state_says_itself_what_moved(tmp_path: Path) -> None:
    before = book(tmp_path / "before")
    folder = tmp_path / "after"
    book(folder, {"lapwing-twenty": MAP}, PARTS.replace("barrel-27:", "barrel-27-wide:", 1))
    (folder / "moved.yaml").write_text(
        "format: 1\nframes: {lapwing-20: lapwing-twenty}\nparts: {barrel-27: barrel-27-wide}\n", "utf-8"
    )
    found = compare(before.book, load_book(folder).book)
    assert [each.text for each in found.breaking] == [
        "The page of Lapwing 20 moved from lapwing-20 to lapwing-twenty; the old address leads on.",
        "The page of Barrel 2.7 moved from barrel-27 to barrel-27-wide; the old address leads on.",
    ]


def test_a_map_that_is_given_up_for_another_is_gone_and_leads_on(tmp_path: Path) -> None:
    other = changed(MAP, ("Lapwing 20", "Lapwing 21"))
    before = book(tmp_path / "before", {"lapwing-20": MAP, "lapwing-21": other})
    after = book(tmp_path / "after", {"lapwing-21": other})
    found = compare(before.book, after.book, moved=Moved({"lapwing-20": "lapwing-21"}))
    assert [(each.text, each.breaking) for each in found.changes] == [
        ("Lapwing 20 by Saltmarsh Works is gone, and its address leads on to lapwing-21.", True)
    ]
