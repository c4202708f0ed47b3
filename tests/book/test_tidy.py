"""Tidying orders keys and takes blanks away; comments follow, facts stay."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML

from rimbook.book.reader import read
from rimbook.book.tidy import CannotTidy, tidy
from rimbook.book.written import WrittenFrame, WrittenParts

ROOT = Path(__file__).parents[2]
MAP_ORDER = tuple(WrittenFrame.model_fields)
MAPS = sorted((ROOT / "frames" / "maps").glob("*.yaml"))
PARTS = sorted((ROOT / "frames" / "parts").glob("*.yaml"))


def tidied(text: str, order: tuple[str, ...] = ("format", "name", "maker", "note")) -> str:
    return tidy(read(text, "a.yaml"), order)


def test_keys_come_in_order_and_bring_their_comments() -> None:
    text = "# About the file.\nformat: 1\n# Whose it is.\nmaker: B  # here\nname: A\n"
    assert tidied(text) == "# About the file.\nformat: 1\nname: A\n# Whose it is.\nmaker: B  # here\n"


def test_stray_blanks_go() -> None:
    assert tidied("format: 1   \r\n\r\n\r\n\r\nname: A\r\n\r\n") == "format: 1\n\nname: A\n"


def test_a_key_nobody_knows_goes_to_the_end() -> None:
    assert tidied("format: 1\nnmae: A\nmaker: B\n") == "format: 1\nmaker: B\nnmae: A\n"


def test_what_is_one_flow_stays_one() -> None:
    assert tidied("{maker: B, format: 1}") == "{maker: B, format: 1}\n"


def test_a_fact_is_never_touched() -> None:
    with pytest.raises(CannotTidy):
        tidied("format: 1\nnote: |\n  one  \n\n\n\n  two\n")


@pytest.mark.parametrize("file", MAPS + PARTS, ids=lambda file: file.stem)
def test_the_book_is_tidy(file: Path) -> None:
    order = MAP_ORDER if file.parent.name == "maps" else tuple(WrittenParts.model_fields)
    text = file.read_text("utf-8")
    assert tidy(read(text, file.name), order) == text


@settings(deadline=None)
@given(st.permutations(range(10)))
def test_any_order_is_brought_back_with_all_facts_and_comments(order: list[int]) -> None:
    """Facts as ruamel.yaml reads them."""
    keys = MAP_ORDER[:10]
    lines = [f"# on {keys[at]}\n{keys[at]}: [{at}, # inside\n  {at}]\n" for at in order]
    text = "".join(lines)
    found = tidied(text, MAP_ORDER)
    again = YAML(typ="safe").load(found)
    assert again == YAML(typ="safe").load(text)
    assert [*again] == [*keys]
    assert all(f"# on {key}\n{key}:" in found for key in keys[1:])
    assert found.count("# inside") == 10
    assert tidied(found, MAP_ORDER) == found
