"""What an editor is told: a schema for each kind of file, from the settings and from the files themselves."""

from __future__ import annotations

import json
import re
from fnmatch import fnmatch
from pathlib import Path

import pytest

from rimbook.book.first_map import SCHEMA
from tests.project.tree import ROOT, text, tracked

SETTINGS = json.loads(text(".vscode/settings.json"))["yaml.schemas"]
BOOK = [path.as_posix() for path in tracked() if path.parts[0] == "frames" and path.suffix == ".yaml"]
KINDS = {"maps": "map", "parts": "parts", "clubs": "club", "moved.yaml": "moved"}


@pytest.mark.parametrize("path", BOOK)
def test_every_file_of_the_book_has_the_schema_of_its_kind(path: str) -> None:
    found = [schema for schema, pattern in SETTINGS.items() if fnmatch(path, pattern)]
    kind = KINDS[path.split("/")[1]]
    assert found == [f"./generator/rimbook/schemas/{kind}.schema.json"]
    assert (ROOT / found[0]).is_file()


@pytest.mark.parametrize("path", BOOK)
def test_a_line_for_editors_leads_to_the_same_schema(path: str) -> None:
    told = re.match(r"# yaml-language-server: \$schema=(\S+)\n", text(path))
    if told:
        kind = KINDS[path.split("/")[1]]
        target = (ROOT / Path(path).parent / told[1]).resolve()
        assert target == ROOT / "generator" / "rimbook" / "schemas" / f"{kind}.schema.json"


def test_the_template_and_a_begun_map_have_the_line() -> None:
    assert f"# yaml-language-server: $schema={SCHEMA}\n" in text("frames/maps/plover-76.yaml")
    assert text("frames/moved.yaml").startswith("# yaml-language-server: ")
