"""Shells are cut once and filled often, and nothing that is filled in is ever taken for a slot."""

from __future__ import annotations

import html

import pytest

from rimbook.hosts.shell import BODY, SLOTS, Shell, shell_path
from rimbook.site.pages import KINDS, Page
from rimbook.site.scripts import script_tag

KIND = KINDS["frame"]
MADE = (
    f"<title>{SLOTS['title']} - Book</title><meta content='{SLOTS['description']}'>"
    f"<link href='https://example.org/frames/shell.frame/index.html'>"
    f"<a href='{SLOTS['edit']}'>{SLOTS['title']}</a>"
    f"<main>{BODY}</main>"
)


def test_every_slot_is_filled_everywhere() -> None:
    page = Page("frames/plover-76/", "frame", "Plover & co", 'A "map"', lambda: "<h1>Body</h1>")
    assert Shell.cut(KIND, MADE).fill(page, "https://example.org/edit?a=1&b=2") == (
        "<title>Plover &amp; co - Book</title><meta content='A &quot;map&quot;'>"
        "<link href='https://example.org/frames/plover-76/index.html'>"
        "<a href='https://example.org/edit?a=1&amp;b=2'>Plover &amp; co</a>"
        f"<main><h1>Body</h1>{script_tag('frame', '../../')}</main>"
    )


def test_what_is_filled_in_is_not_read_for_slots() -> None:
    words = f"{SLOTS['description']} {BODY} {SLOTS['title']} frames/shell.frame/index.html"
    page = Page("frames/a/", "frame", words, words, lambda: words)
    filled = Shell.cut(KIND, MADE).fill(page, words)
    assert f"<main>{words}<script " in filled
    assert f"<title>{html.escape(words)} - Book</title>" in filled
    assert "'https://example.org/frames/a/index.html'" in filled


@pytest.mark.parametrize("made", ["<main></main>", f"{BODY}{BODY}"])
def test_a_theme_that_loses_or_repeats_the_body_is_refused(made: str) -> None:
    with pytest.raises(ValueError, match="no single place for the body"):
        Shell.cut(KIND, made)


def test_shells_lie_as_deep_as_their_pages_and_on_none_of_them() -> None:
    paths = [shell_path(kind) for kind in KINDS.values()]
    assert len(set(paths)) == len(paths)
    for kind in KINDS.values():
        assert shell_path(kind).count("/") == kind.pattern.count("/")
        assert kind.single or "." in shell_path(kind)
