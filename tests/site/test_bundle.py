"""Modules made into one script: in order, each once, and anything else refused."""

from __future__ import annotations

import re
from itertools import permutations

import pytest

from rimbook.browser.bundle import (
    PAGE_SCRIPTS,
    CannotBundle,
    bundle,
    module_sources,
    script_of,
    stylesheet,
)

FOR_WORKERS = frozenset({"offline_answer", "offline_fetch"})
"""What asks a server for files of the site, in a service worker."""

SOURCES = {
    "page": 'import { twice } from "./sums.js";\nimport "./side.js";\n\nconsole.log(twice(2));\n',
    "sums": (
        'import { base } from "./base.js";\n/** Twice.\n * @param {import("./base.js").X} x */\n'
        "export function twice(x) {\n  return x + x + base; // import nothing\n}\n"
    ),
    "base": "// the base\nexport const base = 0;\nexport class Base {}\nexport async function wait() {}\n",
    "side": 'import { base } from "./base.js";\nglobalThis.side = base;\n',
}


def test_every_module_comes_once_and_after_what_it_imports() -> None:
    script = bundle("page", SOURCES)
    order = re.findall(r"^const \$(\w+) = ", script, re.MULTILINE)
    assert order == ["base", "sums", "side", "page"]


def test_imports_and_exports_become_plain_values() -> None:
    script = bundle("page", SOURCES)
    assert "const { twice } = $sums;" in script
    assert "return { base, Base, wait };" in script
    assert not re.search(r"^(import|export)\b", script, re.MULTILINE)


def test_comments_that_stand_alone_are_left_out() -> None:
    script = bundle("page", SOURCES)
    assert "the base" not in script
    assert "Twice." not in script
    assert "import nothing" in script


def test_the_order_of_the_sources_does_not_matter() -> None:
    assert len({bundle("page", dict(order)) for order in permutations(SOURCES.items())}) == 1


@pytest.mark.parametrize(
    ("source", "message"),
    [
        ('import x from "./base.js";', "is not understood"),
        ('import * as x from "./base.js";', "is not understood"),
        ('import { base as b } from "./base.js";', "“base as b” is imported; expected a plain name"),
        ('import { base } from "https://example.org/base.js";', "is not understood"),
        ('import { base } from "../base.js";', "is not understood"),
        ('import { base } from "base";', "is not understood"),
        ("const x = await import(y);", "is not understood"),
        ("const x = import.meta.url;", "is not understood"),
        ("export default 1;", "is not understood"),
        ("export let x = 1;", "is not understood"),
        ("export { x };", "is not understood"),
        ('export * from "./base.js";', "is not understood"),
        ("export const { a, b } = c;", "is not understood"),
        ("{\n  export const a = 1;\n}", "is not understood"),
        ('import { gone } from "./base.js";', "base.js exports no gone"),
        ('import { x } from "./gone.js";', "there is no module gone.js"),
    ],
)
def test_anything_else_is_refused_with_its_place(source: str, message: str) -> None:
    with pytest.raises(CannotBundle, match=re.escape(message)) as raised:
        bundle("page", {**SOURCES, "page": f"// first\n\n{source}\n"})
    line = 4 if source.startswith("{") else 3
    assert str(raised.value).startswith(f"page.js:{line}: ")


def test_a_ring_of_imports_is_named() -> None:
    ring = {"page": 'import "./a.js";\n', "a": 'import "./b.js";\n', "b": 'import "./a.js";\n'}
    with pytest.raises(CannotBundle, match=re.escape("a.js → b.js → a.js")):
        bundle("page", ring)


@pytest.mark.parametrize(
    "line", ["const { a } = (b);", "let [a, c] = /** @type {string[]} */ (b);", "  const { a } =\n (b);"]
)
def test_what_the_minifier_gets_wrong_is_refused(line: str) -> None:
    """tdewolff-minify 2.24 puts such a declaration before the ones above it."""
    with pytest.raises(CannotBundle, match=r"page\.js:\d+: a name is taken out of something in brackets"):
        bundle("page", {"page": f"const b = 1;\n{line}\n"})


@pytest.mark.parametrize(
    "line", ["c = (a ?? 0) | b;", "d(a, (c.get(a) ?? 0n) | (1n << b));", "c = (a ?? d(b, e(a)))\n| b;"]
)
def test_what_loses_its_brackets_is_refused(line: str) -> None:
    """tdewolff-minify 2.24 writes `a ?? 0 | b`, which means `a ?? (0 | b)`."""
    with pytest.raises(CannotBundle, match=r"page\.js:\d+: “\|” follows “\(a \?\? b\)”"):
        bundle("page", {"page": f"const b = 1;\n{line}\n"})


def test_what_looks_like_it_is_let_pass() -> None:
    for line in (
        "for (const [a, b] of c) d = (e);",
        "const { a } = b(c);",
        "const a = (b);",
        "a = b | (c ?? d);",
        "a = (b ?? c) || d;",
        "a = e(b ?? c) + (d | e);",
    ):
        assert line in bundle("page", {"page": f"{line}\n"})


def test_an_unknown_entry_is_named() -> None:
    with pytest.raises(CannotBundle, match=r"pge\.js is no module here"):
        bundle("pge", SOURCES)


@pytest.mark.parametrize("kind", PAGE_SCRIPTS)
def test_every_page_script_is_made(kind: str) -> None:
    script = script_of(kind).decode()
    assert script.startswith("(()=>{")
    assert "rb-keep" in script


@pytest.mark.parametrize("name", sorted(FOR_WORKERS))
def test_what_may_ask_a_server_is_in_no_page_script(name: str) -> None:
    assert name in module_sources()
    assert not [kind for kind in PAGE_SCRIPTS if f"${name} =" in bundle(kind, module_sources())]
    assert f"${name} =" in bundle("offline_worker", module_sources())


@pytest.mark.parametrize("name", sorted(module_sources()))
def test_no_module_makes_code_or_markup_out_of_text(name: str) -> None:
    source = module_sources()[name]
    assert not re.search(
        r"innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\b|new Function", source
    )
    assert not re.search(r"https?://(?!www\.w3\.org/2000/svg)", source)
    if name not in FOR_WORKERS:
        assert not re.search(r"\bfetch\s*\(|XMLHttpRequest|sendBeacon|WebSocket", source)
    assert len(source.splitlines()) < 300


def test_the_style_sheet_asks_for_nothing() -> None:
    assert not re.search(rb"url\(|@import", stylesheet())
