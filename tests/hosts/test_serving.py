"""A saved map is seen soon: the host looks often, compiles once, and shows the page that was asked for."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any, cast

import pytest
from jinja2 import DictLoader, Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer
from mkdocs.structure.pages import Page

from rimbook.hosts.mkdocs_plugin import RimbookPlugin
from rimbook.hosts.policy import META
from rimbook.hosts.serving import Compiled, look_more_often
from tests.hosts.sample import book
from tests.speed.served import seconds_until_seen


@pytest.fixture
def server(tmp_path: Path) -> Iterator[LiveReloadServer]:
    server = LiveReloadServer(builder=lambda: None, host="127.0.0.1", port=0, root=str(tmp_path))
    for name in ("docs", "mkdocs.yml"):
        (tmp_path / name).mkdir()
        server.watch(str(tmp_path / name))
    yield server
    server.server_close()


@pytest.mark.parametrize(("maps", "seconds"), [(0, 0.1), (17, 0.1), (1_000, 0.2), (10_000, 0.5)])
def test_a_host_looks_as_often_as_the_book_allows(
    server: LiveReloadServer, tmp_path: Path, maps: int, seconds: float
) -> None:
    theme = SimpleNamespace(dirs=[str(tmp_path / "theme")])
    config = SimpleNamespace(
        docs_dir=str(tmp_path / "docs"), config_file_path=str(tmp_path / "mkdocs.yml"), theme=theme
    )
    look_more_often(server, cast(MkDocsConfig, config), maps)
    assert server.observer.timeout == seconds
    watched = {emitter.watch.path for emitter in server.observer.emitters}
    assert watched == {config.docs_dir, config.config_file_path}


def test_a_template_is_compiled_once_and_again_when_it_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    compiled: list[str] = []

    def counting(self: Environment, source: str, *rest: Any, **more: Any) -> Any:
        compiled.append(source)
        return whole(self, source, *rest, **more)

    whole = Environment.compile
    monkeypatch.setattr(Environment, "compile", counting)
    kept = Compiled()
    for text in ("one", "one", "two", "two"):
        environment = Environment(
            loader=DictLoader({"page.html": text}), bytecode_cache=kept, autoescape=True
        )
        assert environment.get_template("page.html").render() == text
    assert compiled == ["one", "two"]


@pytest.mark.parametrize(("command", "ruled"), [("serve", False), ("build", True)])
def test_while_serving_there_is_no_policy_since_the_host_adds_a_script(command: Any, ruled: bool) -> None:
    plugin = RimbookPlugin()
    plugin.on_startup(command=command, dirty=False)
    page = SimpleNamespace(file=SimpleNamespace(dest_uri="index.html", src_uri="index.md"))
    made = plugin.on_post_page('<meta charset="utf-8">', page=cast(Page, page), config=MkDocsConfig())
    assert (META in made) is ruled


def test_a_saved_map_is_seen_while_the_site_is_served(tmp_path: Path) -> None:
    frames = book(tmp_path)
    (tmp_path / "docs").mkdir()
    (tmp_path / "docs" / "index.md").write_text("# Home\n", "utf-8")
    config = {
        "site_name": "Book",
        "docs_dir": "docs",
        "use_directory_urls": False,
        "theme": {"name": "material", "font": False},
        "plugins": [{"rimbook": {"book": "frames", "cache": "cache"}}],
    }
    (tmp_path / "mkdocs.yml").write_text(json.dumps(config), "utf-8")
    (seconds,) = seconds_until_seen(tmp_path, frames, "plover-76", saves=1)
    assert 0 < seconds < 20
