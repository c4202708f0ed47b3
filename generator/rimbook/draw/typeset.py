"""Pages to print: Typst source becomes a PDF or an SVG.

Nothing from a map may be read as Typst: words go through `literal`, drawings through `files`,
which the source finds as `bytes(sys.inputs.at(name))`. A document of `document` is tagged
for readers of the screen (PDF/UA-1), so that every picture needs its `alt`. Fonts of the machine are
never used, and no clock is read: the same input gives the same bytes everywhere.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from importlib.machinery import ModuleSpec
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import typst

FONT = "Source Sans Pro"
CAP_HEIGHT = 0.66
"""Height of a capital letter or a figure of FONT, in font sizes (its OS/2 table: 660 of 1000)."""

_FONT_PACKAGE = "font_source_sans_pro"
_UNSEEN = frozenset(range(0x20)) | {0x7F}


class Unprintable(Exception):
    """The source makes no document; the text is what it said by `panic`, or what Typst said."""


def typeset(source: str, files: Mapping[str, bytes] = {}, *, fonts: Sequence[Path] = ()) -> bytes:
    """A PDF with embedded fonts, tagged. `files` are texts such as SVG; `fonts` are folders with more fonts.

    Raises Unprintable.
    """
    return _compiled(source, files, fonts, "pdf")[0]


def typeset_svg(
    source: str, files: Mapping[str, bytes] = {}, *, fonts: Sequence[Path] = ()
) -> tuple[bytes, ...]:
    """The same as one SVG a page, its letters drawn as outlines. Raises Unprintable."""
    return _compiled(source, files, fonts, "svg")


def document(title: str, body: str, *, lang: str = "en", families: Sequence[str] = ()) -> str:
    """Source with title, language and font set, ready for `body` to set its own pages.

    `families` are asked in their order where FONT lacks a letter.
    """
    asked = ", ".join(map(literal, (FONT, *families)))
    return (
        f"#set document(title: {literal(title)}, date: none)\n"
        f"#set text(lang: {literal(lang)}, font: ({asked},), fallback: true, number-width: "
        f'"tabular", number-type: "lining", hyphenate: false)\n{body}'
    )


def literal(text: str) -> str:
    """Any words as a string of Typst: whatever they hold, they stay words."""
    return '"' + "".join(map(_escaped, text)) + '"'


def _escaped(character: str) -> str:
    code = ord(character)
    if code in _UNSEEN:
        return " "
    if character in '"\\':
        return f"\\{character}"
    # A lone half of a pair cannot be written as UTF-8.
    return "\ufffd" if 0xD800 <= code <= 0xDFFF else character


def font_folder() -> Path:
    """The folder of FONT's files. Raises Unprintable where it is not installed."""
    found = _needed(_FONT_PACKAGE)
    return Path(next(iter(found.submodule_search_locations or ()))) / "files"


def families(folders: Sequence[Path]) -> tuple[str, ...]:
    """The font families found in folders, in order of name."""
    return tuple(sorted(_fonts(tuple(folders)).families())) if folders else ()


def _needed(package: str) -> ModuleSpec:
    found = find_spec(package)
    if found is None or not found.submodule_search_locations:
        raise Unprintable(f"To print, install {package} as well: pip install 'rimbook[print]'.")
    return found


def _compiled(
    source: str, files: Mapping[str, bytes], fonts: Sequence[Path], form: typst.OutputFormat
) -> tuple[bytes, ...]:
    _needed("typst")
    import typst  # 80 MB, and only a printed page needs them

    compiler = typst.Compiler(
        input=source.encode(),
        font_paths=_fonts((font_folder(), *fonts)),
        ignore_system_fonts=True,
        sys_inputs={name: data.decode() for name, data in files.items()},
    )
    try:
        made = compiler.compile(format=form, timestamp=0, pdf_standards=["ua-1"] if form == "pdf" else [])
    except typst.TypstError as error:
        message = error.message.removeprefix("panicked with: ").strip('"')
        raise Unprintable(message) from error
    return tuple(made) if isinstance(made, list) else (made or b"",)


@lru_cache(maxsize=8)
def _fonts(folders: tuple[Path, ...]) -> typst.Fonts:
    import typst

    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(each) for each in folders]
    )
