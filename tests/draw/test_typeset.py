"""Typesetting: words stay words, documents say what they are, and letters without a font are seen."""

from __future__ import annotations

from pathlib import Path

import fontpkg_noto_sans_thai
import pypdfium2
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rimbook.draw.chart import Look, chart_pdf, unprinted
from rimbook.draw.glyphs import INSTEAD, missing, printable, replaced
from rimbook.draw.paper import PAPERS
from rimbook.draw.qr import qr
from rimbook.draw.typeset import Unprintable, document, families, font_folder, literal, typeset, typeset_svg
from tests.draw.printed import catalog, parts, reader, shown, words

THAI = Path(fontpkg_noto_sans_thai.__file__).parent / "files"
SMALL = "#set page(width: 100mm, height: 100mm)\n"

ATTACKS = (
    '#panic("read as Typst")',
    '"; panic("out of the string")',
    '\\"; panic("behind a backslash"); "',
    "$ x $ *bold* _it_ @ref <label> // comment",
    '#read("/etc/hostname")',
    "\\u{41} \\n",
)


@pytest.mark.parametrize("attack", ATTACKS)
def test_words_are_never_read_as_typst(attack: str) -> None:
    (page,) = words(typeset(document("t", f"{SMALL}#{literal(attack)}")))
    assert page == " ".join(attack.split())


@given(st.text(alphabet=st.characters(codec="utf-8", categories=("L", "N", "P", "S", "Z", "C")), max_size=60))
@settings(max_examples=60, deadline=None)
def test_any_words_make_a_string(text: str) -> None:
    typeset(document(f"t{text}", f"{SMALL}#let words = {literal(text)}\n#assert(type(words) == str)\nx"))


def test_a_document_has_title_and_language_and_the_same_bytes_each_time() -> None:
    source = document('Reed "Street" #1', f"{SMALL}= Reed", lang="da")
    pdf = typeset(source)
    assert typeset(source) == pdf
    found = reader(pdf)
    assert found.metadata is not None
    assert found.metadata.title == 'Reed "Street" #1'
    assert catalog(pdf)["/Lang"] == "da"


def test_a_document_that_refuses_says_so() -> None:
    with pytest.raises(Unprintable, match=r"^too small: 3$"):
        typeset('#panic("too small: 3")')
    with pytest.raises(Unprintable):
        typeset("#nothing-of-the-kind()")


def test_svg_comes_by_the_page() -> None:
    assert len(typeset_svg(document("t", f"{SMALL}a #pagebreak() b"))) == 2


def test_the_font_has_the_letters_of_europe_but_not_of_asia() -> None:
    known = printable((font_folder(),))
    assert replaced("Ærø Łódź Ελλάδα Москва ×–’", known) == "Ærø Łódź Ελλάδα Москва ×–’"
    assert replaced("ก球", known) == INSTEAD * 2
    assert ord(INSTEAD) in known


def test_marks_on_a_letter_without_a_font_go_with_it() -> None:
    assert replaced("ที่", printable((font_folder(),))) == INSTEAD


def test_what_has_no_font_is_named_by_script() -> None:
    known = printable((font_folder(),))
    assert missing(["Ærø", "กข ก", "球"], known) == ("Chinese characters: U+7403", "Thai: U+0E01 U+0E02")


def test_a_file_that_is_no_font_has_no_letters(tmp_path: Path) -> None:
    (tmp_path / "broken.ttf").write_bytes(b"\x00\x01\x00\x00\x00\x09cut")
    (tmp_path / "empty.otf").write_bytes(b"")
    assert printable((tmp_path,)) == frozenset()


def named(title: str, *folders: Path) -> Look:
    return Look(PAPERS["A4"], title, fonts=folders)


def test_a_name_without_a_font_falls_back_where_everybody_sees_it() -> None:
    asked = named("ชมรม Ærø 球")
    (page,) = words(chart_pdf(shown("alder-56"), parts(), asked))
    assert f"{INSTEAD * 4} Ærø {INSTEAD}" in page
    assert "No font for Chinese characters: U+7403; Thai: U+0E0A U+0E21 U+0E23" in page
    assert unprinted(shown("alder-56"), parts(), asked) == (
        "Chinese characters: U+7403",
        "Thai: U+0E0A U+0E21 U+0E23",
    )


def test_a_folder_with_the_font_prints_the_name() -> None:
    asked = named("ชมรม Ærø", THAI)
    (page,) = words(chart_pdf(shown("alder-56"), parts(), asked))
    assert "ชมรม Ærø" in page
    assert "No font" not in page
    assert unprinted(shown("alder-56"), parts(), asked) == ()
    assert families((THAI,))


@pytest.mark.parametrize("title", ["W" * 80, "ab " * 26, "x" * 200])
def test_a_long_name_is_broken_and_not_cut(title: str) -> None:
    pdf = chart_pdf(shown("alder-56"), parts(), named(title.strip()))
    with pypdfium2.PdfDocument(pdf) as read:
        text = read[0].get_textpage()
        plain = "".join(text.get_text_range().split()).replace("\ufffe", "").replace("\u200b", "")
        right = max(text.get_charbox(at)[2] for at in range(text.count_chars()))
    assert title.replace(" ", "") in plain
    assert right <= (210 - PAPERS["A4"].margin_mm) / 25.4 * 72 + 3


def test_a_code_that_is_too_long_is_refused() -> None:
    with pytest.raises(ValueError, match="too many for a code"):
        qr("x" * 4000)
