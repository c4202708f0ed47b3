"""Imports go one way through the house, and each library has its own room."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "generator" / "rimbook"

# A room may use itself and every room before it. What stands in no room, the commands, may use all.
ROOMS = ("book", "rim", "bench", "draw", "browser", "site", "hosts")

LIBRARIES = {
    "jinja2": ("site", "hosts"),
    "markupsafe": ("site",),
    "minify": ("browser",),
    "mkdocs": ("hosts",),
    "pydantic": ("book", "site", "hosts"),
    "pydantic_core": ("book",),
    "segno": ("draw",),
    "typst": ("draw",),
    "yaml": ("book",),
}


@cache
def modules() -> dict[str, str]:
    """Each module's dotted name without `rimbook.`, and its source."""
    found = {}
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(PACKAGE).with_suffix("").parts
        found[".".join(part for part in parts if part != "__init__")] = path.read_text(encoding="utf-8")
    return found


@cache
def imported(module: str, source: str) -> tuple[str, ...]:
    """The dotted names that a module imports, wherever in its text it does so."""
    return tuple(_imported(module, source))


def _imported(module: str, source: str) -> Iterator[str]:
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = ("rimbook." + module).split(".")[: -node.level] if node.level else []
            base = ".".join([*above, *filter(None, [node.module])])
            yield base
            yield from (f"{base}.{alias.name}" for alias in node.names if base == "rimbook")


def floor(name: str) -> int:
    """How far from the front a module stands."""
    room = name.split(".")[0]
    return ROOMS.index(room) if room in ROOMS else len(ROOMS)


def users(library: str) -> list[str]:
    """The modules that import a library or a part of it."""
    return [
        module
        for module, source in modules().items()
        if any(name.split(".")[0] == library for name in imported(module, source))
    ]


def faults(module: str, source: str) -> list[str]:
    """Every import of a module that goes against the house."""
    found = []
    for name in imported(module, source):
        top, _, inside = name.partition(".")
        if top == "rimbook" and inside and inside != "__version__" and floor(inside) > floor(module):
            found.append(f"{module} imports {name}, which stands further on")
        elif top in LIBRARIES and module.split(".")[0] not in LIBRARIES[top]:
            found.append(f"{module} imports {top}, which belongs to {' and '.join(LIBRARIES[top])}")
        elif top not in {"rimbook", *LIBRARIES, *sys.stdlib_module_names}:
            found.append(f"{module} imports {top}, which has no room")
    return found


def test_imports_go_one_way() -> None:
    found = [fault for module, source in modules().items() for fault in faults(module, source)]
    assert found == []


def test_one_module_alone_knows_the_yaml_library() -> None:
    assert users("yaml") == ["book.reader"]


def test_every_library_is_used() -> None:
    assert [library for library in LIBRARIES if not users(library)] == []


@pytest.mark.parametrize(
    ("module", "source"),
    [
        ("book.load", "from rimbook.rim.place import place"),
        ("rim.place", "def late():\n    import rimbook.draw.face"),
        ("bench.pins", "from rimbook import site"),
        ("draw.face", "from ..site import pages"),
        ("site.pages", "from mkdocs.plugins import BasePlugin"),
        ("rim.path", "import yaml"),
        ("site.pages", "import requests"),
    ],
)
def test_an_import_against_the_house_is_found(module: str, source: str) -> None:
    assert len(faults(module, source)) == 1


@pytest.mark.parametrize(
    ("module", "source"),
    [
        ("rim.place", "from rimbook.book.model import Frame\nimport math"),
        ("draw.face", "from rimbook.draw import svg"),
        ("hosts.mkdocs_plugin", "from mkdocs.plugins import BasePlugin\nfrom rimbook import __version__"),
        ("cli", "from rimbook.commands import check"),
    ],
)
def test_an_import_with_the_house_is_not(module: str, source: str) -> None:
    assert faults(module, source) == []
