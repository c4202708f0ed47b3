"""The pages of the tapes, on a site with files to print."""

from __future__ import annotations

from functools import cache

import html5lib
import pytest

from rimbook.site.pages import Asset, Page
from rimbook.site.publish import site
from rimbook.site.settings import Settings
from tests.site.sample import demo_book


@cache
def printed() -> dict[str, Page | Asset]:
    """The demo site with files to print, by path; nothing is made yet."""
    settings = Settings(prints=True, site_url="https://example.org/")
    return {each.file: each for each in site(demo_book(), settings)}


@pytest.mark.parametrize("slug", demo_book().frames)
def test_every_frame_has_its_tape(slug: str) -> None:
    page = printed()[f"frames/{slug}/tape/index.html"]
    assert isinstance(page, Page)
    assert page.edit == f"frames/maps/{slug}.yaml"
    tree = html5lib.parse(page.body, namespaceHTMLElements=False)
    labels = [box.attrib["aria-label"] for box in tree.iter("div") if "data-rb-width" in box.attrib]
    assert labels[0] == "Proof bar"
    assert len(labels) == len(set(labels)) > 2
    addresses = {text.text for text in tree.iter() if str(text.tag).endswith("text")}
    assert {str(hole.address) for hole in demo_book().frames[slug].holes} <= addresses
    assert f"prints/{slug}-tape.pdf" in printed()


def test_drawings_carry_their_true_size() -> None:
    page = printed()["frames/plover-76/tape/index.html"]
    assert isinstance(page, Page)
    tree = html5lib.parse(page.body, namespaceHTMLElements=False)
    for box in tree.iter("div"):
        if "data-rb-width" in box.attrib:
            (drawing,) = [each for each in box.iter() if str(each.tag).endswith("svg")]
            for side, at in (("width", 2), ("height", 3)):
                size = float(box.attrib[f"data-rb-{side}"])
                assert drawing.attrib[side] == f"{size:.3f}mm"
                assert float(drawing.attrib["viewBox"].split()[at]) == pytest.approx(size * 4, abs=0.06)


def test_the_page_of_a_frame_leads_to_its_tape() -> None:
    page = printed()["frames/plover-76/index.html"]
    assert isinstance(page, Page)
    assert 'href="../../frames/plover-76/tape/index.html"' in page.body


def test_a_site_without_files_to_print_has_no_tape() -> None:
    assert not [each.file for each in site(demo_book(), Settings()) if "tape" in each.file.split("/")]


def test_a_club_has_its_labels() -> None:
    labels = printed()["prints/club.weir-lane-labels.pdf"]
    assert isinstance(labels, Asset)
    assert labels.data.startswith(b"%PDF-")
