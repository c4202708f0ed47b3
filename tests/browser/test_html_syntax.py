"""Every page against the syntax of the HTML Standard, as html5lib reads it: not one parse error."""

from __future__ import annotations

from pathlib import Path

import html5lib
import pytest


def errors(text: str) -> list[str]:
    parser = html5lib.HTMLParser()
    parser.parse(text)
    return [f"{place}: {code}" for place, code, _ in parser.errors]


@pytest.mark.parametrize("site", ["built_site", "plain_site"])
def test_no_page_has_a_parse_error(site: str, request: pytest.FixtureRequest) -> None:
    folder: Path = request.getfixturevalue(site)
    files = sorted(folder.rglob("*.html"))
    assert len(files) > 100
    found = {file.relative_to(folder).as_posix(): errors(file.read_text("utf-8")) for file in files}
    assert {name: wrong for name, wrong in found.items() if wrong} == {}


@pytest.mark.parametrize(
    "wrong", ["<p>a</b>", '<a href="x" href="y">z</a>', "<table><p>a</p></table>", "<div", "<p>&nosuch;"]
)
def test_a_parse_error_is_seen(wrong: str) -> None:
    assert errors(f"<!doctype html><title>a</title>{wrong}")
