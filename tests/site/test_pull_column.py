"""The pull on every hole in its row, and the hardest-worked holes at a glance."""

from __future__ import annotations

import re

import pytest

from rimbook.book.model import Address
from rimbook.site.frame_view import NAMED, _hardest
from tests.site.reading import text_of, tree_of
from tests.site.sample import demo_book, demo_site

SLUGS = ("plover-76", "sluice-66", "bodkin-60", "bobbin-64")


def pulls_of(slug: str) -> dict[str, str]:
    """What the hole table of a frame says of each hole."""
    tree = tree_of(demo_site()[f"frames/{slug}/index.html"])
    (table,) = tree.xpath("//table[@data-rb-table='holes']")
    column = [text_of(cell) for cell in table.xpath("./thead/tr/th")].index("Pull")
    return {row.get("data-hole"): text_of(row[column]) for row in table.xpath("./tbody/tr")}


@pytest.mark.parametrize("slug", SLUGS)
def test_each_hole_has_its_pull_as_a_multiple_of_the_tension(slug: str) -> None:
    found = pulls_of(slug)
    frame = demo_book().frames[slug]
    assert found.keys() == {str(hole.address) for hole in frame.drilled}
    for hole in frame.drilled:
        assert re.fullmatch(r"\d\.\d\d", found[str(hole.address)])
        strings = len(hole.passes) + hole.tie_off
        # 2·sin(θ/2) is at most 2 for each string: the table of block loads of Kulkoni's catalogue, p. 87.
        assert float(found[str(hole.address)]) <= 2 * strings
        assert (float(found[str(hole.address)]) == 0) == (not hole.passes)


def test_a_main_at_the_middle_of_the_head_turns_about_a_right_angle() -> None:
    """From inside the head to R1, then along the rim to L1: a right angle, but for the curve of the head.

    The table of block loads of Kulkoni's catalogue, p. 87, has 1.41 for a right angle.
    """
    assert demo_book().frames["plover-76"].stringing.mains_start == "head"
    assert float(pulls_of("plover-76")["R1"]) == pytest.approx(1.41, abs=0.02)


@pytest.mark.parametrize("slug", SLUGS)
def test_the_hardest_worked_holes_are_named_at_a_glance(slug: str) -> None:
    tree = tree_of(demo_site()[f"frames/{slug}/index.html"])
    (answer,) = tree.xpath("//section[@id='glance']//dt[.='Hardest worked']/following-sibling::dd")
    highest = sorted(set(pulls_of(slug).values()), key=float, reverse=True)[:NAMED]
    assert re.findall(r"\d\.\d\d", text_of(answer)) == highest
    named = {href.removeprefix("#") for href in answer.xpath(".//a/@href") if href.startswith("#")}
    assert {pulls_of(slug)[hole] for hole in named} == set(highest)
    assert answer.xpath(".//a[contains(@href, 'numbers/pull/index.html')]")


def test_holes_that_work_alike_are_named_together() -> None:
    pulls = {
        Address("R", 1): 1.414, Address("L", 1): 1.4142, Address("R", 2): 2.0, Address("R", 3): 0.5,
        Address("L", 3): 0.1, Address("R", 4): 0.0,
    }  # fmt: skip
    found = [(each.pull, [span.text for span in each.holes]) for each in _hardest(pulls)]
    assert found == [("2.00", ["R2"]), ("1.41", ["1"]), ("0.50", ["R3"])]
    assert _hardest({Address("R", 1): 0.0}) == []
