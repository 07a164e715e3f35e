"""Hands a handbook to MkDocs; nothing outside this folder knows MkDocs.

The plugin is called event by event, in the order in which its methods stand here. What the theme
puts around a page is set by `surround`, how a file is written by `files`.
"""

from __future__ import annotations

import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Literal

from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.utils.templates import TemplateContext

from pencilwood.mkdocs_plugin.files import finished_file, makers_of, waiting_file
from pencilwood.mkdocs_plugin.surround import dress, head, menu_of, other_languages, speak
from pencilwood.mkdocs_plugin.telling import (
    keep_others_folders,
    language_asked_for,
    not_built,
    papers_asked_for,
    refuse_papers,
    root_of,
    tell,
)
from pencilwood.pages.menu import around
from pencilwood.pages.page import Page
from pencilwood.pages.policy import with_policy
from pencilwood.site.assemble import Site, assemble
from pencilwood.site.finished_pages import Docs, FinishedPages, docs_by_page, surroundings
from pencilwood.site.handbook import open_handbook
from pencilwood.site.live import LiveSite
from pencilwood.site.offline import OFFLINE_WORKER, offline_worker
from pencilwood.site.search import INDEX, divide_index, point_search_at, read_index
from pencilwood.site.theme_files import is_of_use
from pencilwood.site.trouble import told_of
from pencilwood.site.workers import collect_rarely, one_crew

WATCHED = ("content", "quizzes", "site_assets")


class NoSettings(Config):  # type: ignore[no-untyped-call]
    """Everything is set in the trainer's own files."""


class PencilwoodPlugin(BasePlugin[NoSettings]):  # type: ignore[no-untyped-call]
    """The handbook as a plugin."""

    _site: Site
    _site_dir = ""
    _ours: dict[str, Page]
    _listed: dict[str, list[Page]]
    """The pages that the menu of each language names."""
    _menus: dict[str, Navigation]
    _files: Files
    _pages: list[File]
    """Those of them that are our pages, in their order."""
    _live = False
    _shown: LiveSite
    """Where a preview shows the site."""

    def __init__(self) -> None:
        super().__init__()
        self._finished = FinishedPages()

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """While a handbook is written, MkDocs puts a script into each page, to load it anew."""
        self._live = command == "serve"
        collect_rarely()

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read and prove everything first: MkDocs clears the old site only after this."""
        self._site_dir = config.site_dir
        with one_crew():
            self._site = self._made(config)
        self._ours = {self._source(page): page for page in self._site.pages}
        self._listed = {
            language: [
                one for one in self._site.pages if one.menu_title and one.language == language
            ]
            for language in self._languages
        }
        dress(config, self._site.handbook.profile)
        if self._live:
            self._shown = LiveSite(Path(self._site_dir))
            config.site_dir = str(self._shown.fresh())
        config.nav = [
            {language: [self._source(page) for page in self._listed[language]]}
            for language in self._languages
        ]
        speak(config, self._site.handbook.profile, self._languages[0])
        return config

    def _made(self, config: MkDocsConfig) -> Site:
        """All that we have to say; told what is wrong where it cannot be made."""
        papers = None if self._live else papers_asked_for()
        if papers:
            # Before the handbook is proved, which takes long.
            refuse_papers(config)
        opened = open_handbook(root_of(config), language_asked_for())
        tell(opened.findings)
        if opened.handbook is None:
            raise not_built()
        if not self._live:
            keep_others_folders(config)
        return assemble(opened.handbook, papers)

    # After other plugins: what they add to the trainer's folder is not ours to publish.
    @event_priority(-100)
    def on_files(self, files: Files, config: MkDocsConfig) -> Files:
        """Put our pages in place of the chapters' folder, which is only their source."""
        docs = Path(config.docs_dir)
        for file in list(files):
            from_docs = file.abs_src_path and Path(file.abs_src_path).is_relative_to(docs)
            if from_docs or not is_of_use(file.dest_uri):
                files.remove(file)
        if not config.site_url and (site_map := files.get_file_from_path("sitemap.xml")):
            files.remove(site_map)
        self._finished.begin(self._surroundings(config), Path(self._site_dir))
        self._pages = [self._page_file(page, config) for page in self._site.pages]
        for file in self._pages:
            files.append(file)
        for path, data in self._site.files.items():
            files.append(File.generated(config, path, content=data))
        for path, make in self._site.waiting.items():
            files.append(waiting_file(config, path, make))
        self._files = files
        return files

    def _page_file(self, page: Page, config: MkDocsConfig) -> File:
        """A page to finish, or one that is finished already."""
        source, address = self._source(page), self._address(page)
        finished = self._finished.found(page, address)
        if finished is not None:
            html = finished.html.encode() if finished.html else None
            return finished_file(config, source, address, html, finished.anchors)
        inclusion = InclusionLevel.INCLUDED if page.menu_title else InclusionLevel.NOT_IN_NAV
        return File.generated(config, source, content=page.source(), inclusion=inclusion)

    def on_nav(self, nav: Navigation, config: MkDocsConfig, files: Files) -> Navigation:
        """Make one menu of each language; a page's neighbours speak its own language."""
        menus = (menu_of(section.children or ()) for section in nav.items)
        self._menus = dict(zip(self._languages, menus, strict=True))
        return self._menus[self._languages[0]]

    def on_page_content(
        self, html: str, page: MkDocsPage, config: MkDocsConfig, files: Files
    ) -> str:
        """Add the body, without its drawings, where the search can read it."""
        ours = self._ours[page.file.src_uri]
        head(page, ours)
        return ours.content(html)

    def on_page_context(
        self, context: TemplateContext, page: MkDocsPage, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Let the theme speak the page's language."""
        ours = self._ours[page.file.src_uri]
        speak(config, self._site.handbook.profile, ours.language)
        context["nav"] = self._menus[ours.language]
        extra: dict[str, Any] = context  # type: ignore[assignment]
        extra["pencilwood"] = around(self._listed[ours.language], self._site.handbook, ours)
        config.extra["alternate"] = other_languages(self._site.addresses, ours.path)
        return context

    def on_post_page(self, output: str, page: MkDocsPage, config: MkDocsConfig) -> str:
        """Put drawings, scoring sheets and scripts in, past Markdown and search."""
        # The theme's script would look for a site map beside each alternate whose rel is just
        # that, to guess where the other language has this page. We know, so it need not ask.
        output = output.replace('<link rel="alternate"', '<link rel=" alternate"')
        ours = self._site.whole(self._ours[page.file.src_uri])
        folder = self._site.addresses.folder(ours.language)
        return ours.complete(point_search_at(output, ours.up("")), folder, live=self._live)

    def on_template_context(
        self, context: TemplateContext, template_name: str, config: MkDocsConfig
    ) -> TemplateContext:
        """A site map names the finished pages too."""
        context["pages"] = self._pages
        return context

    def on_post_template(self, output: str, template_name: str, config: MkDocsConfig) -> str:
        """The theme's own page for what is not there may do no more than ours."""
        is_page = template_name.endswith(".html")
        return with_policy(output, live=self._live) if is_page else output

    # After the offline plugin, which writes one index for everybody.
    @event_priority(-200)
    def on_post_build(self, config: MkDocsConfig) -> None:
        """Give each language a search of its own."""
        site = Path(config.site_dir)
        whole = site / INDEX
        index, read = read_index(whole.read_text("utf-8")) if whole.is_file() else (None, ())
        self._keep_finished(site, docs_by_page(read))
        if index is not None:
            docs = self._finished.all_docs(read, map(self._address, self._site.pages))
            for path, text in divide_index(index, docs, self._site.addresses):
                (site / path).parent.mkdir(parents=True, exist_ok=True)
                (site / path).write_text(text, encoding="utf-8", newline="\n")
        if self._live:
            self._shown.show([file.dest_uri for file in self._files])
            self._finished.hold()
        else:
            worker = offline_worker(site)
            (site / OFFLINE_WORKER).write_text(worker, encoding="utf-8", newline="\n")

    def _keep_finished(self, site: Path, docs: Mapping[str, Docs]) -> None:
        for file in self._pages:
            if file.dest_uri in self._finished.making and file.page is not None:
                html = (site / file.dest_uri).read_bytes().decode()
                anchors = file.page.present_anchor_ids or ()
                self._finished.keep(file.dest_uri, html, docs.get(file.dest_uri, ()), anchors)

    def on_build_error(self, error: Exception) -> None:
        """Say in plain words that the disk is full or may not be written to."""
        # A template that is not there counts as such an error too, but has no number.
        if isinstance(error, OSError) and error.errno is not None:
            sys.stderr.write(f"{told_of(error, language_asked_for(), self._site_dir)}\n")
            raise not_built() from error

    def on_serve(
        self, server: LiveReloadServer, config: MkDocsConfig, builder: Any
    ) -> LiveReloadServer:
        """Build again when a case, the profile, a quiz or a style changes."""
        for folder in WATCHED:
            path = root_of(config) / folder
            if path.is_dir():
                server.watch(str(path))
        return server

    @property
    def _languages(self) -> tuple[str, ...]:
        return self._site.addresses.languages

    def _source(self, page: Page) -> str:
        return f"{self._site.addresses.folder(page.language)}{page.path}.md"

    def _address(self, page: Page) -> str:
        return self._site.addresses.of(page.path, page.language)

    def _surroundings(self, config: MkDocsConfig) -> str | None:
        """A name for all that goes around a page; None where we do not know all of it."""
        profile = self._site.handbook.profile
        menus = [[(one.path, one.menu_title) for one in some] for some in self._listed.values()]
        more = [profile.vineyard, profile.invented, self._languages, config.site_url, menus]
        return surroundings(makers_of(config), [*more, self._live])
