"""The drafting page as it is written, and the maps that it opens: each means the frame that it came from."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from random import Random
from typing import Any

import pytest
from lxml import html

from rimbook.book.model import Catalogue, Frame, Part
from rimbook.book.reader import read
from rimbook.book.settle import settle_frame
from rimbook.book.shape import hold
from rimbook.book.written import WrittenFrame
from rimbook.draw import palette
from rimbook.site.draft_maps import PIECE, piece_file, pieces, written_value
from rimbook.site.draft_page import SITE_FILE, Forge, draft_link, forge_of
from rimbook.site.pages import Asset, Page
from tests.site.sample import demo_book, demo_site

FRAMES = demo_book().frames


def settled(value: dict[str, Any], catalogue: Catalogue) -> Frame:
    """What a written value means to the book."""
    slug = "anything"
    given = {**value, "fitted": dict(value["fitted"])}
    document = read(json.dumps(given), f"frames/maps/{slug}.yaml")
    written, problems = hold(document, WrittenFrame)
    assert written is not None, problems
    frame, problems = settle_frame(slug, written, document, catalogue)
    assert frame is not None, problems
    return frame


def alike(frame: Frame) -> Frame:
    return replace(frame, slug="", source="")


@pytest.mark.parametrize("slug", FRAMES)
def test_a_map_means_the_same_when_it_is_written_anew(slug: str) -> None:
    frame = FRAMES[slug]
    assert alike(settled(written_value(frame, demo_book().parts), demo_book().parts)) == alike(frame)


@pytest.mark.parametrize("seed", range(60))
def test_so_does_any_map(seed: int) -> None:
    """Bores, depths, parts and places at random, on two sides that differ, with twins that do not pair up."""
    draw = Random(seed)
    catalogue = {
        "one": Part("one", "One", "single"),
        "two": Part("two", "Two", "single"),
        "pair": Part("pair", "Pair", "twin-even"),
    }
    places = draw.randint(4, 9)
    walk = " ".join(draw.choice(["m1", "c1", "m2+c3", ".", "x"]) for _ in range(places))
    bores = [draw.choice(["2.1", "2.75", "3", "unknown"]) for _ in range(2 * places)]
    words = [f"R{n}" for n in range(1, places + 1)] + [f"L{n}" for n in range(1, places + 1)]
    lines = [
        [draw.choice(words), draw.choice(["one", "two", "pair", "unknown"])]
        for _ in range(draw.randint(0, 9))
    ]
    for start in range(1, places - 3):
        side, end = draw.choice(["", "R", "L"]), start + draw.randint(0, 3)
        lines.append([f"{side}{start}-{side}{end}", draw.choice(["pair", "two"])])
    lines += [["R1", "one"]] if draw.random() < 0.5 else [["L1-R1", "pair"]]
    first, last = sorted(draw.sample(range(1, places + 1), 2))
    value = {
        "format": 1,
        "name": "Any",
        "maker": "Any",
        "sport": "squash",
        "head": {"outline": "ellipse", "inside_mm": [200, 300]},
        "mains": 4,
        "crosses": 3,
        "walk": walk,
        "left": {"walk": walk, "places_mm": [draw.choice([n + 0.5, "unknown"]) for n in range(places)]},
        "bore_mm": {"default": 2.1}
        | {
            bore: [word for word, has in zip(words, bores, strict=True) if has == bore] for bore in set(bores)
        },
        "rim_depth_mm": {"default": "unknown", "9.4": [draw.choice(words)]},
        "fitted": [["default", draw.choice(["one", "unknown"])], ["bore 2.75", "two"], *lines],
        "strips": draw.choice([[], [{"name": "side", "holes": [first, last], "part": "unknown"}]])
        if "x" not in walk
        else [],
        "stringing": {"tie_offs": draw.sample(words, 2)},
    }
    frame = settled(value, catalogue)
    assert settled(written_value(frame, catalogue), catalogue) == frame


def test_the_page_stands_without_its_script() -> None:
    page = demo_site()["draft/index.html"]
    assert isinstance(page, Page)
    tree = html.fromstring(f"<main>{page.body}</main>")
    (host,) = tree.xpath("//*[@data-rb-draft]")
    assert host.get("data-rb-root") == "../"
    assert "needs JavaScript" in host.text_content()
    assert "cracks first" in tree.text_content()


def test_the_page_knows_what_it_draws_with() -> None:
    given = known_site()
    assert [each["outline"] for each in given["marks"]["classes"]] == [
        each.outline for each in palette.CLASSES
    ]
    assert given["folder"] == "frames/maps"
    assert given["forge"] is None  # nobody said where maps are mended
    assert given["typical"]["badminton"] == sorted(given["typical"]["badminton"])
    assert 2.7 in given["typical"]["badminton"]


def test_every_map_is_in_the_piece_where_the_page_looks_for_it() -> None:
    site, first = demo_site(), known_site()["pieces"]
    found: dict[str, Any] = {}
    for name in first:
        file = site[f"data/drafts/{name}.js"]
        assert isinstance(file, Asset)
        written = re.fullmatch(rf'rimbook\.put\("drafts/{name}",(.*)\);\n', file.data.decode())
        assert written
        found |= json.loads(written[1])
    assert found.keys() == FRAMES.keys()


def test_a_new_map_moves_no_other_into_another_piece() -> None:
    slugs = [f"frame-{number}" for number in range(10_000)]
    old, new = pieces(slugs), pieces([*slugs, "frame-5000-b"])
    assert sum(piece not in old for piece in new) <= 2
    assert PIECE / 2 < len(slugs) / len(old) < PIECE * 2
    assert piece_file(old[0]) == "data/drafts/frame-0.js"


@pytest.mark.parametrize(
    ("base", "expected"),
    [
        (None, None),
        (
            "https://forge.example/a/book/edit/main/",
            Forge("https://forge.example/a/book/new/main", "frames/maps"),
        ),
        (
            "https://forge.example/a/book/edit/main/deep/er/",
            Forge("https://forge.example/a/book/new/main", "deep/er/frames/maps"),
        ),
        ("https://forge.example/a/book/-/edit/main/", None),
        ("https://forge.example/a/book/src/branch/main/", None),
        ("javascript:alert(1)/edit/main/", None),
    ],
)
def test_a_new_map_begins_where_old_ones_are_mended(base: str | None, expected: Forge | None) -> None:
    """The address as GitHub gives it, whose file is then named by `filename` and filled by `value`."""
    assert forge_of(base, "frames/maps") == expected


def test_a_frame_leads_to_its_own_draft() -> None:
    page = demo_site()["frames/plover-76/index.html"]
    assert isinstance(page, Page)
    assert f'href="{draft_link("../../", "plover-76")}"' in page.body
    assert draft_link("../../", "plover-76") == "../../draft/index.html#map=plover-76"


def known_site() -> dict[str, Any]:
    file = demo_site()[SITE_FILE]
    assert isinstance(file, Asset)
    written = re.fullmatch(r'rimbook\.put\("draft-site",(.*)\);\n', file.data.decode())
    assert written
    value: dict[str, Any] = json.loads(written[1])
    return value
