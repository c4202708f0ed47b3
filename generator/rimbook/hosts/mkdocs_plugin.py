"""The plugin for MkDocs, and for hosts that run MkDocs plugins: the book's pages inside a theme.

The theme renders one shell of each kind of page; when everything else is built, each page
is its shell with the body filled in. Nothing is ever written into the folder of documents.
"""

from __future__ import annotations

from itertools import chain
from pathlib import Path
from typing import Any, Literal
from urllib.parse import urlsplit

from jinja2 import Environment
from mkdocs.config import config_options as options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority, get_plugin_logger
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as HostPage
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils import write_file

from rimbook.bench.thresholds import Thresholds, changed
from rimbook.hosts import sitemap
from rimbook.hosts.mkdocs_files import edit_base, promised_files, shell_file, taken_shell
from rimbook.hosts.offline import all_files, worker, worker_meta, write_farewell, write_list
from rimbook.hosts.on_demand import OnDemand
from rimbook.hosts.policy import META, offences, strict
from rimbook.hosts.serving import Compiled, look_more_often
from rimbook.hosts.shell import BODY, SLOTS, shell_path
from rimbook.hosts.workshop import Workshop, WrongBook
from rimbook.hosts.written_places import written_places
from rimbook.site.finder_index import FinderPlace
from rimbook.site.pages import KINDS, Kind, to_root
from rimbook.site.publish import STYLE, Source, publish
from rimbook.site.scripts import script_tag, written_page_kind
from rimbook.site.settings import Settings

log = get_plugin_logger("rimbook")


class RimbookConfig(Config):
    """Options of the plugin in the host's configuration file; folders start from that file."""

    book = options.Dir(exists=True, default="frames")
    """The folder with `maps` and `parts`."""

    cache = options.Dir(default=".cache/rimbook")
    """Where finished entries are kept between builds."""

    prints = options.Type(bool, default=True)
    """Whether the site carries charts and tapes as PDF; needs the extra `print`."""

    thresholds = options.Type(dict, default={})
    """Thresholds of the bench that differ from the usual ones, by their names on the sheet of formulas."""


class RimbookPlugin(BasePlugin[RimbookConfig]):
    """Checks the book, lends its pages the theme's shells, and writes them.

    A build writes every page. A `serve` writes a page when a browser first asks for it,
    so that a saved map is shown at once however many maps there are.
    """

    def __init__(self) -> None:
        self.workshop: Workshop | None = None
        self.source: Source | None = None
        self.kinds: dict[str, Kind] = {}
        self.moved: dict[str, bytes] = {}
        self.places: list[FinderPlace] = []
        self.compiled = Compiled()
        self.on_demand: OnDemand | None = None

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Being here at all makes the host keep one plugin for all builds of a `serve`."""
        self.on_demand = OnDemand() if command == "serve" else None

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Watch the book, and put our styles before the user's own."""
        if self.config.book not in config.watch:
            config.watch.append(self.config.book)
        if STYLE not in config.extra_css:
            config.extra_css.insert(0, STYLE)
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Begin anew, and let nobody ask for pages while they change."""
        self.moved.clear()
        self.places.clear()
        if self.on_demand:
            self.on_demand.close()

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Check and make the book; add a shell for each kind of page."""
        book, cache = Path(self.config.book), Path(self.config.cache)
        asked = (book, cache, self._thresholds())
        if self.workshop is None or asked != (
            self.workshop.folder,
            self.workshop.cache,
            self.workshop.thresholds,
        ):
            self.workshop = Workshop(book, cache, log.info, asked[2])
        try:
            self.source = self.workshop.source()
        except WrongBook as wrong:
            raise PluginError(f"The book has errors.\n\n{wrong}") from None
        self.kinds = {f"{shell_path(kind)}index.md": kind for kind in KINDS.values()}
        for path, kind in self.kinds.items():
            if files.get_file_from_path(path) is not None:
                raise PluginError(f"{path} stands where a generated page goes: rename it.")
            files.append(shell_file(path, kind, config))
        for file in promised_files(self.source, config):
            files.append(file)
        return files

    def _thresholds(self) -> Thresholds:
        try:
            return changed(self.config.thresholds)
        except ValueError as wrong:
            raise PluginError(f"Option “thresholds” of the plugin rimbook: {wrong}") from None

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        """Let shells belong to the section of their index page, so that the theme marks it as open."""
        for path, kind in self.kinds.items():
            file = files.get_file_from_path(path)
            index = files.get_file_from_path(f"{kind.under}index.md")
            if file is None or kind.single:
                continue
            page = file.page or HostPage(None, file, config)
            page.parent = index.page.parent if index is not None and index.page is not None else None
        return nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """Compile the theme's templates once for all builds of a `serve`."""
        env.bytecode_cache = self.compiled
        return env

    @event_priority(-100)
    def on_page_content(self, html: str, *, page: HostPage, config: MkDocsConfig, files: Files) -> str:
        """Let the finder find a written page, and give the page its script."""
        if page.file.src_uri in self.kinds:
            return html
        path = page.file.dest_uri
        headings = [(item.title, item.id) for first in page.toc for item in first.children]
        self.places += written_places(page.title or path, path, headings, html)
        return html + script_tag(written_page_kind(html), to_root(path))

    @event_priority(-100)
    def on_page_context(self, context: Any, *, page: HostPage, config: MkDocsConfig, nav: Navigation) -> Any:
        """Put slots into a shell, after every other plugin has looked at it."""
        kind = self.kinds.get(page.file.src_uri)
        if kind is not None:
            page.content = BODY
            page.toc = TableOfContents([AnchorLink(kind.title or SLOTS["title"], "page", 1)])
            page.edit_url = SLOTS["edit"] if kind.edited and config.edit_uri else None
        return context

    @event_priority(-100)
    def on_post_template(self, output: str, *, template_name: str, config: MkDocsConfig) -> str:
        """Put pages of the theme itself under the policy: a page of an error may be shown at any depth."""
        if not template_name.endswith(".html"):
            return output
        lost = template_name.startswith("404.")
        root = urlsplit(config.site_url or "/").path if lost else to_root(template_name)
        return self._under_policy(output, root, template_name)

    @event_priority(-100)
    def on_post_page(self, output: str, *, page: HostPage, config: MkDocsConfig) -> str:
        """Put a written page or a shell under the policy, after every other plugin has added its own."""
        root = to_root(page.file.dest_uri)
        output = self._under_policy(output, root, page.file.src_uri)
        return output.replace(META, META + worker_meta(root), 1)

    def _under_policy(self, output: str, root: str, name: str) -> str:
        """A page that keeps to the policy. While serving, the host adds a script, so that there is none."""
        if self.on_demand:
            return output
        output, moved = strict(output, root)
        self.moved |= moved
        for offence in offences(output):
            log.warning(f"{name}: {offence} will not work under the site's policy")
        return output

    @event_priority(-100)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Fill every page into its shell and write it, or have it ready for who asks."""
        if self.source is None:
            raise PluginError("The book was never read: another plugin stopped the build.")
        site = Path(config.site_dir)
        for path, content in self.moved.items():
            write_file(content, str(site / path))
        base = edit_base(config, Path(self.config.book).parent)
        address = f"{config.site_url.rstrip('/')}/" if config.site_url else None
        settings = Settings(
            base, tuple(self.places), self._thresholds(), site_url=address, prints=self.config.prints
        )
        shells = {kind.name: taken_shell(site, path, kind) for path, kind in self.kinds.items()}
        on_demand = self.on_demand or OnDemand()
        made = publish(self.source, settings)
        if self.on_demand is None:
            made = chain([worker()], made)
        pages = on_demand.offer(made, shells, settings, site)
        maps = sum(page.kind == "frame" for page in pages)
        expected = len(list(self.source.summaries))
        if maps < expected:
            raise PluginError(f"There are {expected} maps, but only {maps} pages of frames.")
        written = {}
        if self.on_demand is None:
            try:
                written = on_demand.write_all(log.info)
            except WrongBook as wrong:
                raise PluginError(f"The book has errors.\n\n{wrong}") from None
        old = [f"{shell_path(kind)}index.html" for kind in KINDS.values()]
        stay = [page.file for page in pages if page.leads_to is None]
        sitemap.replace(site, config.site_url, old, stay)
        log.info(f"{maps:,} frames on {len(pages):,} pages")
        if self.on_demand:
            write_farewell(site)
            self.on_demand.open()
        else:
            write_list(site, all_files(site, written))

    def on_build_error(self, *, error: Exception) -> None:
        """After a build that failed, what was there before is not asked for for ever."""
        if self.on_demand:
            self.on_demand.open()

    def on_serve(self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Any) -> LiveReloadServer:
        """Look for saved maps often, and stand between browser and host: a page is written when asked for."""
        look_more_often(server, config, len(list(self.source.summaries)) if self.source else 0)
        app = server.get_app()
        if self.on_demand and app:
            server.set_app(self.on_demand.before(app, server.mount_path))
        return server
