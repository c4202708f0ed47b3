"""What MkDocs is told of pages that it does not make: shells, promises, and where to edit."""

from __future__ import annotations

import posixpath
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urljoin

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, InclusionLevel

from rimbook.hosts.shell import SLOTS, Shell
from rimbook.site.book_files import BOOK_FILES
from rimbook.site.cross import maker_slugs
from rimbook.site.csv_files import frame_table
from rimbook.site.data_files import frame_file
from rimbook.site.links import bore_path, club_path, frame_path, part_path, shelf_path
from rimbook.site.matrix_places import WHATS, matrix_path
from rimbook.site.numbers.links import topic_path
from rimbook.site.numbers.topics import TOPICS
from rimbook.site.pages import Kind
from rimbook.site.publish import STYLE, Source
from rimbook.site.shelf_csv import shelf_table

_FRONT = """\
---
title: {title}
description: {description}
hide: [toc]
search: {{exclude: true}}
---
"""


class Promised(File):
    """A file that is written at the very end. Until then it only lets links to it be checked."""

    def copy_file(self, dirty: bool = False) -> None:
        """Nothing to copy yet."""


def shell_file(path: str, kind: Kind, config: MkDocsConfig) -> File:
    """The document from which the host makes a shell."""
    front = _FRONT.format(title=kind.title or SLOTS["title"], description=SLOTS["description"])
    inclusion = InclusionLevel.INCLUDED if kind.single else InclusionLevel.NOT_IN_NAV
    return File.generated(config, path, content=front, inclusion=inclusion)


def taken_shell(site: Path, path: str, kind: Kind) -> Shell:
    """Cut a shell out of the built site: what stays there is only what is written into it later."""
    file = site / path.replace("index.md", "index.html")
    shell = Shell.cut(kind, file.read_text("utf-8"))
    file.unlink()
    for folder in file.parents:
        if folder == site or any(folder.iterdir()):
            break
        folder.rmdir()
    return shell


def promised_files(source: Source, config: MkDocsConfig) -> Iterator[File]:
    """Files that a written page may link to, beside the index pages."""
    paths = dict.fromkeys((STYLE, *BOOK_FILES))
    for frame in source.summaries:
        paths |= dict.fromkeys(
            (
                f"{frame_path(frame.slug)}index.html",
                frame_file(frame.slug),
                frame_table(frame.slug),
                f"sports/{frame.sport}/index.html",
            )
        )
    for club in source.clubs:
        pages = club_path(club), shelf_path(club)
        paths |= dict.fromkeys((*(f"{page}index.html" for page in pages), shelf_table(club)))
    paths |= dict.fromkeys(f"{path}index.html" for path in _listed(source))
    paths |= dict.fromkeys(f"{part_path(part)}index.html" for part in source.catalogue)
    paths |= dict.fromkeys(f"{topic_path(topic.slug)}index.html" for topic in TOPICS)
    for path in paths:
        yield Promised(
            path, None, config.site_dir, config.use_directory_urls, inclusion=InclusionLevel.INCLUDED
        )


def _listed(source: Source) -> Iterator[str]:
    """Pages that stand for what frames have in common: bores, makers, matrices."""
    makers = maker_slugs(source.summaries, source.catalogue)
    yield from (f"makers/{slug}/" for slug in makers.values())
    yield from (bore_path(bore) for frame in source.summaries for bore in frame.uses)
    sports = {frame.sport for frame in source.summaries}
    yield from (matrix_path(what, sport) for what in WHATS for sport in sorted(sports))


def edit_base(config: MkDocsConfig, parent: Path) -> str | None:
    """The web address of the folder that holds the book, as the host's `edit_uri` gives it for documents."""
    if not config.edit_uri:
        return None
    documents = urljoin(f"{(config.repo_url or '').rstrip('/')}/", config.edit_uri)
    way = posixpath.relpath(parent.resolve().as_posix(), Path(config.docs_dir).resolve().as_posix())
    return urljoin(documents, f"{way}/")
