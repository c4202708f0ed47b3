"""The plugin in MkDocs: a strict build with the theme, links and all."""

from __future__ import annotations

import gzip
import json
import logging
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
from lxml import html
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort, ConfigurationError

from rimbook.site.pages import Asset, Page
from rimbook.site.publish import Source, publish
from rimbook.site.settings import Settings
from tests.hosts.sample import book

SITE = "https://example.org/book/"


@pytest.fixture(autouse=True)
def _quiet_theme(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    before = logging.getLogger("mkdocs").handlers[:]
    yield
    logging.getLogger("mkdocs").handlers[:] = before


def project(tmp_path: Path, home: str = "# Home\n\n[Plover](frames/plover-76/index.html)\n") -> Path:
    """A small project: a book, a written page, and no configuration but what is needed."""
    book(tmp_path)
    (tmp_path / "docs").mkdir()
    (tmp_path / "docs" / "index.md").write_text(home, "utf-8")
    return tmp_path


def built(folder: Path, options: Mapping[str, Any] | None = None) -> Path:
    """Build it as `mkdocs build --strict` does."""
    own = {"book": "frames", "cache": "cache", **(options or {})}
    config = {
        "site_name": "Book",
        "site_url": SITE,
        "docs_dir": "docs",
        "site_dir": "site",
        "use_directory_urls": False,
        "strict": True,
        "edit_uri": "https://example.org/forge/edit/main/docs/",
        "theme": {"name": "material", "font": False, "features": ["content.action.edit", "navigation.tabs"]},
        "nav": [
            {"Home": "index.md"},
            {"Frames": ["frames/index.md", "sports/index.md", "makers/index.md"]},
            {"Parts": ["parts/index.md", "sets/index.md"]},
            {"Rules": "rules/index.md"},
        ],
        "plugins": ["search", {"rimbook": own}],
    }
    file = folder / "mkdocs.yml"
    file.write_text(json.dumps(config), "utf-8")
    loaded = load_config(str(file))
    loaded.plugins.on_startup(command="build", dirty=False)
    try:
        build(loaded)
    finally:
        loaded.plugins.on_shutdown()
    return folder / "site"


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One built project for all tests that only look."""
    folder = project(tmp_path_factory.mktemp("project"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("NO_MKDOCS_2_WARNING", "1")
        built(folder)
    return folder


def test_every_page_wears_the_theme(made: Path) -> None:
    tree = html.parse(made / "site" / "frames" / "plover-76" / "index.html").getroot()
    assert tree.findtext("head/title") == "Plover 76 (2024) – Saltmarsh Works - Book"
    assert tree.xpath("//meta[@name='description']/@content")[0].startswith("Grommet map of Plover 76")
    assert tree.xpath("//link[@rel='canonical']/@href") == [f"{SITE}frames/plover-76/index.html"]
    assert [heading.text for heading in tree.xpath("//h1")] == ["Plover 76 (2024)"]
    assert tree.xpath("//a[@rel='edit']/@href") == [
        "https://example.org/forge/edit/main/frames/maps/plover-76.yaml"
    ]
    assert tree.xpath("//a[text()='Correct this map']/@href") == tree.xpath("//a[@rel='edit']/@href")
    assert "Frames" in tree.xpath("string(//li[contains(@class, 'md-tabs__item--active')])")


def test_a_written_page_may_lead_to_every_kind_of_generated_page(tmp_path: Path) -> None:
    paths = (
        "bores/2.7/index.html",
        "makers/saltmarsh-works/index.html",
        "matrix/bores/badminton/index.html",
        "matrix/parts/badminton/index.html",
        "sports/badminton/index.html",
        "parts/barrel-21-short/index.html",
        "numbers/pull/index.html",
        "offline/index.html",
        "data/frames/plover-76.csv",
    )
    links = "\n".join(
        f"- [{path}]({path.replace('offline/index.html', 'offline/index.md')})" for path in paths
    )
    site = built(project(tmp_path, f"# Home\n\n{links}\n"))
    for path in paths:
        assert (site / path).is_file(), path


def test_every_link_of_every_page_leads_somewhere(made: Path) -> None:
    site, checked = made / "site", 0
    for file in site.rglob("*.html"):
        if file.name == "404.html":
            continue
        tree = html.parse(file).getroot()
        for address in tree.xpath("//@href | //@src"):
            if re.match(r"[a-z]+:", address):
                assert address.startswith(
                    (SITE, "https://example.org/forge/", "https://squidfunk.github.io/")
                ), address
                continue
            path, _, anchor = address.partition("#")
            target = (file.parent / path).resolve() if path else file
            assert target.is_file(), f"{file}: {address}"
            if anchor and "=" not in anchor and target.suffix == ".html":
                assert html.parse(target).getroot().xpath(f"//*[@id='{anchor}']") or anchor == "__skip"
            checked += 1
    assert checked > 2000


def test_no_shell_and_no_slot_is_left(made: Path) -> None:
    for file in (made / "site").rglob("*"):
        assert "shell." not in file.name
        if file.suffix in (".html", ".xml", ".json") and file.is_file():
            text = file.read_text("utf-8")
            assert "rimbook-slot" not in text
            assert "shell." not in re.sub(r"<code>.*?</code>", "", text)


def test_the_map_of_the_site_names_every_page_once(made: Path) -> None:
    text = (made / "site" / "sitemap.xml").read_text("utf-8")
    named = re.findall(r"<loc>(.*?)</loc>", text)
    pages = [file.relative_to(made / "site").as_posix() for file in (made / "site").rglob("*.html")]
    assert sorted(named) == sorted(f"{SITE}{page}" for page in pages if page != "404.html")
    assert gzip.decompress((made / "site" / "sitemap.xml.gz").read_bytes()).decode() == text


def test_the_page_for_lost_addresses_loads_from_the_top_of_the_site(made: Path) -> None:
    tree = html.parse(made / "site" / "404.html").getroot()
    loaded = tree.xpath("//link[@rel='stylesheet']/@href | //script/@src")
    assert len(loaded) > 3
    for address in loaded:
        assert address.startswith("/book/"), address
        assert (made / "site" / address.removeprefix("/book/")).is_file(), address


def test_nothing_is_written_among_the_documents(made: Path) -> None:
    assert [file.name for file in (made / "docs").rglob("*")] == ["index.md"]


def test_two_builds_give_the_same_bytes(made: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def contents() -> dict[str, bytes]:
        files = [
            file
            for file in (made / "site").rglob("*")
            if file.is_file() and not file.name.startswith("sitemap")
        ]
        return {file.relative_to(made / "site").as_posix(): file.read_bytes() for file in files}

    first = contents()
    built(made)
    assert contents() == first


def test_a_written_page_that_names_a_frame_that_is_gone_fails_the_build(tmp_path: Path) -> None:
    project(tmp_path, "# Home\n\n[Heron](frames/heron-60/index.html)\n")
    with pytest.raises(Abort, match="strict mode"):
        built(tmp_path)


@pytest.mark.parametrize(
    ("written", "named"),
    [
        ('<p style="color: red">Red</p>', "<p style>"),
        ('<p onclick="alert(1)">Press</p>', "<p onclick>"),
        ('<script type="module">1</script>', "<script> without src"),
    ],
)
def test_a_written_page_that_breaks_the_policy_fails_the_build(
    tmp_path: Path, caplog: pytest.LogCaptureFixture, written: str, named: str
) -> None:
    project(tmp_path, f"# Home\n\n{written}\n")
    with pytest.raises(Abort, match="strict mode"):
        built(tmp_path)
    assert f"index.md: {named} will not work under the site's policy" in caplog.text


def test_a_wrong_map_fails_the_build_with_the_words_of_check(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    project(tmp_path)
    (tmp_path / "frames" / "maps" / "weir-72.yaml").write_text("format: 1\nname: [\n")
    with pytest.raises(Abort):
        built(tmp_path)
    assert re.search(r"frames/maps/weir-72\.yaml:\d+:\d+  error", caplog.text)
    assert "Traceback" not in caplog.text


def test_fewer_pages_than_maps_fail_the_build(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def lossy(source: Source, settings: Settings) -> Iterator[Page | Asset]:
        return (each for each in publish(source, settings) if each.file != "frames/weir-72/index.html")

    monkeypatch.setattr("rimbook.hosts.mkdocs_plugin.publish", lossy)
    project(tmp_path)
    with pytest.raises(Abort):
        built(tmp_path)
    assert "There are 4 maps, but only 3 pages of frames." in caplog.text


def test_a_written_page_in_the_way_is_named(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    project(tmp_path)
    (tmp_path / "docs" / "rules").mkdir()
    (tmp_path / "docs" / "rules" / "index.md").write_text("# Mine")
    with pytest.raises(Abort):
        built(tmp_path)
    assert "rules/index.md stands where a generated page goes" in caplog.text


@pytest.mark.parametrize("options", [{"book": "nowhere"}, {"book": 7}])
def test_wrong_options_are_refused_by_the_host(tmp_path: Path, options: Mapping[str, Any]) -> None:
    project(tmp_path)
    with pytest.raises((Abort, ConfigurationError)):
        built(tmp_path, options)
