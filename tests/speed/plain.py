"""The yardstick: the same frame pages as Markdown files, as most would write them."""

from __future__ import annotations

import shutil
from pathlib import Path

from rimbook.bench.load import pull
from rimbook.book.load import load_book
from rimbook.book.model import Catalogue
from rimbook.draw.face import face
from rimbook.draw.unrolled import unrolled
from rimbook.rim.place import place
from rimbook.rim.types import Rim

CONFIG = """\
site_name: Plain
use_directory_urls: false
theme: {name: material, font: false}
plugins: [search]
markdown_extensions: [attr_list, md_in_html, tables]
not_in_nav: frames/*
nav: [{Home: index.md}]
"""


def write_plain_site(folder: Path, book: Path) -> None:
    """Write a project whose Markdown pages hold both drawings and the hole table of every frame."""
    loaded = load_book(book).book
    pages = folder / "docs" / "frames"
    shutil.rmtree(folder, ignore_errors=True)
    pages.mkdir(parents=True)
    (folder / "mkdocs.yml").write_text(CONFIG, encoding="utf-8")
    (folder / "docs" / "index.md").write_text("# Plain\n", encoding="utf-8")
    for frame in loaded.frames.values():
        (pages / f"{frame.slug}.md").write_text(_page(place(frame), loaded.parts), encoding="utf-8")


def _page(rim: Rim, parts: Catalogue) -> str:
    pulls = pull(rim)
    rows = "\n".join(
        f"| {hole.address} | {' + '.join(map(str, hole.passes))} | {hole.bore_mm} | {hole.part} "
        f"| {rim.holes[hole.address].along_mm:.1f} | {pulls.get(hole.address, 0):.2f} |"
        for hole in rim.frame.drilled
    )
    return (
        f"# {rim.frame.name}\n\n{rim.frame.maker}, {rim.frame.sport}\n\n"
        f"<div>{face(rim, parts)}</div>\n\n<div>{unrolled(rim, parts)}</div>\n\n"
        f"| Hole | String | Bore | Part | Along | Pull |\n| --- | --- | --- | --- | --- | --- |\n{rows}\n"
    )
