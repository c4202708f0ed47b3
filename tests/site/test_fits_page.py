"""The page of measured holes, as it is written, and the data that it is given."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from typing import Any

import pytest
from lxml import html

from rimbook.bench.serves import Wanted, ranked
from rimbook.bench.thresholds import DEFAULT, as_data, changed
from rimbook.bench.uncertainty import barrel_size
from rimbook.book.model import Part
from rimbook.site.fits_data import CAUTIONS, COARSEST_STEP_MM, FITS_FILE, fits_data, fits_file
from rimbook.site.fits_link import fits_link
from rimbook.site.pages import Asset, Page
from rimbook.site.scripts import script_tag
from tests.site.sample import demo_book, demo_site

PART = Part("a", "A", "single", None, 2.05, 1.3, (10.5,), 4.2, packs=(1,))


def data_of(*parts: Part) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(json.dumps(fits_data({part.id: part for part in parts})))
    return found


def test_the_page_stands_without_its_script() -> None:
    page = demo_site()["fits/index.html"]
    assert isinstance(page, Page)
    tree = html.fromstring(f"<main>{page.body}</main>")
    (host,) = tree.xpath("//*[@data-rb-fits]")
    assert host.get("data-rb-root") == "../"
    assert "needs JavaScript" in host.text_content()
    assert host.xpath(".//a/@href") == ["../bores/index.html", "../parts/index.html"]


def test_the_page_loads_its_own_script() -> None:
    assert script_tag("fits", "../") == '<script defer src="../assets/scripts/fits.js"></script>'
    assert isinstance(demo_site()["assets/scripts/fits.js"], Asset)


def test_the_data_are_one_script() -> None:
    file = demo_site()[FITS_FILE]
    assert isinstance(file, Asset)
    written = re.fullmatch(r'rimbook\.put\("fits",(.*)\);\n', file.data.decode())
    assert written
    data = json.loads(written[1])
    assert data == json.loads(json.dumps(fits_data(demo_book().parts)))
    assert data["thresholds"] == json.loads(json.dumps(as_data(DEFAULT)))


def test_every_part_of_one_barrel_is_judged_or_said_not_to_be() -> None:
    parts = demo_book().parts
    data = fits_data(parts)
    alone = [part for part in parts.values() if part.kind in ("single", "wide")]
    assert len(data["parts"]) + len(data["unjudged"]) == len(alone)
    assert {each["id"] for each in data["parts"]} <= {part.id for part in alone}


def test_a_part_brings_what_the_ranking_asks() -> None:
    [part] = data_of(replace(PART, tolerance_mm=0.05, material="PA12"))["parts"]
    size = barrel_size(replace(PART, tolerance_mm=0.05))
    assert size is not None
    assert part == {
        "id": "a",
        "name": "A",
        "path": "parts/a/index.html",
        "kind": "single",
        "barrel_mm": 2.05,
        "barrel_u_mm": size.u_mm,
        "bore_mm": 1.3,
        "length_mm": 10.5,
        "alone": True,
        "sold": "singly",
        "pin": "about 1.7 mm (over 1.3, under 2.05)",
        "material": "PA12",
        "swells": True,
    }


@pytest.mark.parametrize(
    ("part", "why"),
    [
        (replace(PART, barrel_mm=None), "Nobody has measured its barrel."),
        (replace(PART, flange_mm=2.0), "it would pull through"),
        (replace(PART, bore_mm=2.1), "measure it again"),
        (replace(PART, length_mm=(10.5, 12.0)), "two lengths of post"),
    ],
)
def test_a_part_without_a_fit_says_why(part: Part, why: str) -> None:
    data = data_of(part)
    assert data["parts"] == []
    assert why in data["unjudged"][0]["why"]
    assert ranked(Wanted(2.1), [part]) == ()


def test_parts_of_more_than_one_barrel_are_left_out() -> None:
    data = data_of(replace(PART, kind="strip"), replace(PART, id="b", kind="twin-even"))
    assert (data["parts"], data["unjudged"]) == ([], [])


def test_a_site_may_set_its_own_thresholds() -> None:
    own = changed({"finger_over_mm": 0.12})
    assert fits_data({}, own)["thresholds"]["finger_over_mm"] == 0.12
    assert b'"finger_over_mm":0.12' in fits_file({}, own)


def test_the_most_that_may_be_typed_is_what_the_bench_takes() -> None:
    most = fits_data({})["most"]
    Wanted(most["bore"], most["step"], most["depth"], (most["string"],) * most["strings"])
    for wanted in (
        {"bore_mm": most["bore"] + 0.1},
        {"bore_mm": 2.0, "resolution_mm": COARSEST_STEP_MM + 0.01},
        {"bore_mm": 2.0, "depth_mm": most["depth"] + 0.1},
        {"bore_mm": 2.0, "string_mm": (most["string"] + 0.1,)},
    ):
        with pytest.raises(ValueError, match="expected more than 0"):
            Wanted(**wanted)


def test_the_cautions_name_the_risks() -> None:
    words = " ".join(CAUTIONS.values()).lower()
    for risk in ("cracked frame is not strung", "eye protection", "sharp blade", "swells", "drill"):
        assert risk in words


def test_a_link_holds_what_is_known() -> None:
    assert fits_link("../../", 2.1, 9.4, (0.68,), 1) == (
        "../../fits/index.html#bore=2.1&depth=9.4&strings=1&string=0.68"
    )
    assert fits_link("", 2.7, None, (0.62, 0.7), 2, 0.05) == (
        "fits/index.html#bore=2.7&strings=2&step=0.05&string=0.62+0.7"
    )
    assert fits_link("", None) == "fits/index.html"
