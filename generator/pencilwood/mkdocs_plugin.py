"""Hands a handbook to MkDocs; nothing else in the project knows MkDocs.

One build makes all languages: before each page is rendered, what the theme reads from the
configuration (language, menu, name, language switch) is set for the language of that page.
"""

from __future__ import annotations

import os
import re
import sys
from pathlib import Path
from typing import Any, Literal

from markupsafe import Markup
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils.templates import TemplateContext

from pencilwood.findings import Finding
from pencilwood.pages.desk import ASSETS
from pencilwood.pages.menu import around
from pencilwood.pages.page import Page
from pencilwood.pages.policy import with_policy
from pencilwood.site.assemble import Site, assemble
from pencilwood.site.case_pages import Waiting
from pencilwood.site.handbook import open_handbook
from pencilwood.site.offline import OFFLINE_WORKER, offline_worker
from pencilwood.site.publish import LANGUAGE, NotOursError, check_replaceable
from pencilwood.site.search import INDEX, divide_index, point_search_at
from pencilwood.site.theme_files import is_of_use, put_before_theme
from pencilwood.site.trouble import told_of
from pencilwood.words import LANGUAGES, say

STYLES = (
    "fonts.css",
    "tokens.css",
    "masthead.css",
    "handbook.css",
    "vine.css",
    "exercise.css",
    "block.css",
    "quiz.css",
)
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
    _live = False

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """While a handbook is written, MkDocs puts a script into each page, to load it anew."""
        self._live = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read and prove everything first: MkDocs clears the old site only after this."""
        self._site_dir = config.site_dir
        opened = open_handbook(_root(config), _language())
        _tell(opened.findings)
        if opened.handbook is None:
            raise _not_built()
        if not self._live:
            self._keep_others_folders(config)
        self._site = assemble(opened.handbook)
        self._ours = {self._source(page): page for page in self._site.pages}
        self._listed = {
            language: [
                one for one in self._site.pages if one.menu_title and one.language == language
            ]
            for language in self._languages
        }
        # Also where the settings say so in quotes: no font comes from elsewhere.
        config.theme["font"] = False
        put_before_theme(config.theme.dirs, config.theme.custom_dir)
        config.extra_css = [f"{ASSETS}/css/{name}" for name in STYLES]
        # Instead of the one that the offline plugin would fetch from a foreign address.
        config.extra["polyfills"] = [f"{ASSETS}/iframe-worker.js"]
        config.site_url = config.site_url or opened.handbook.profile.site_address
        if not config.site_url:
            # Neither works without an address; the site map would also carry the day's date.
            config.theme.static_templates -= {"404.html", "sitemap.xml"}
        config.nav = [
            {language: [self._source(page) for page in self._listed[language]]}
            for language in self._languages
        ]
        self._speak(config, self._languages[0])
        return config

    def _keep_others_folders(self, config: MkDocsConfig) -> None:
        """Stop before MkDocs clears a folder that holds something else than a site of ours."""
        try:
            check_replaceable(_root(config), Path(config.site_dir).resolve())
        except NotOursError as error:
            sys.stderr.write(f"{say(_language(), 'cli.not-ours', folder=str(error))}\n")
            raise _not_built() from error

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
        for page in self._site.pages:
            inclusion = InclusionLevel.INCLUDED if page.menu_title else InclusionLevel.NOT_IN_NAV
            text = f"# {_in_markdown(page.title)}\n\n{page.markdown}\n"
            files.append(
                File.generated(config, self._source(page), content=text, inclusion=inclusion)
            )
        for path, data in self._site.files.items():
            files.append(File.generated(config, path, content=data))
        for path, make in self._site.waiting.items():
            files.append(_waiting_file(config, path, make))
        return files

    def on_nav(self, nav: Navigation, config: MkDocsConfig, files: Files) -> Navigation:
        """Make one menu of each language; a page's neighbours speak its own language."""
        self._menus = {}
        for section, language in zip(nav.items, self._languages, strict=True):
            pages = list(section.children or ())
            for before, page, after in zip([None, *pages], pages, [*pages[1:], None], strict=False):
                page.parent = None
                page.previous_page, page.next_page = before, after
            menu = Navigation(pages, pages)
            menu.homepage = pages[0]
            self._menus[language] = menu
        return self._menus[self._languages[0]]

    def on_page_content(
        self, html: str, page: MkDocsPage, config: MkDocsConfig, files: Files
    ) -> str:
        """Add the body, without its drawings, where the search can read it."""
        ours = self._ours[page.file.src_uri]
        # The theme puts these into its pages just as they are.
        page.title = Markup.escape(ours.menu_title or ours.title)
        page.meta["title"] = Markup.escape(ours.title)
        page.meta["description"] = Markup.escape(ours.description)
        items = page.toc.items
        if items:
            items[0].children.extend(
                AnchorLink(Markup.escape(heading.title), heading.anchor, 2)
                for heading in ours.headings
            )
        page.toc = TableOfContents(items)
        return ours.content(html)

    def on_page_context(
        self, context: TemplateContext, page: MkDocsPage, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Let the theme speak the page's language."""
        ours = self._ours[page.file.src_uri]
        self._speak(config, ours.language)
        context["nav"] = self._menus[ours.language]
        extra: dict[str, Any] = context  # type: ignore[assignment]
        extra["pencilwood"] = around(self._listed[ours.language], self._site.handbook, ours)
        config.extra["alternate"] = [
            {
                "name": say(language, f"pages.language.{language}"),
                "link": self._site.addresses.of(ours.path, language),
                "lang": language,
            }
            for language in self._languages
            if len(self._languages) > 1
        ]
        return context

    def on_post_page(self, output: str, page: MkDocsPage, config: MkDocsConfig) -> str:
        """Put drawings, scoring sheets and scripts in, past Markdown and search."""
        # The theme's script would look for a site map beside each alternate whose rel is just
        # that, to guess where the other language has this page. We know, so it need not ask.
        output = output.replace('<link rel="alternate"', '<link rel=" alternate"')
        ours = self._site.whole(self._ours[page.file.src_uri])
        folder = self._site.addresses.folder(ours.language)
        return ours.complete(point_search_at(output, ours.up("")), folder, live=self._live)

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
        if whole.is_file():
            parts = divide_index(whole.read_text(encoding="utf-8"), self._site.addresses)
            for path, text in parts.items():
                (site / path).parent.mkdir(parents=True, exist_ok=True)
                (site / path).write_text(text, encoding="utf-8", newline="\n")
        if not self._live:
            worker = offline_worker(site)
            (site / OFFLINE_WORKER).write_text(worker, encoding="utf-8", newline="\n")

    def on_build_error(self, error: Exception) -> None:
        """Say in plain words that the disk is full or may not be written to."""
        # A template that is not there counts as such an error too, but has no number.
        if isinstance(error, OSError) and error.errno is not None:
            sys.stderr.write(f"{told_of(error, _language(), self._site_dir)}\n")
            raise _not_built() from error

    def on_serve(
        self, server: LiveReloadServer, config: MkDocsConfig, builder: Any
    ) -> LiveReloadServer:
        """Build again when a case, the profile, a quiz or a style changes."""
        for folder in WATCHED:
            path = _root(config) / folder
            if path.is_dir():
                server.watch(str(path))
        return server

    @property
    def _languages(self) -> tuple[str, ...]:
        return self._site.addresses.languages

    def _source(self, page: Page) -> str:
        return f"{self._site.addresses.folder(page.language)}{page.path}.md"

    def _speak(self, config: MkDocsConfig, language: str) -> None:
        """Set what the theme reads anew for each page."""
        vineyard = self._site.handbook.profile.vineyard
        config.theme["language"] = language
        config.site_name = Markup.escape(say(language, "pages.site-name", vineyard=vineyard))
        footer = "footer-invented" if self._site.handbook.profile.invented else "footer"
        config.copyright = Markup.escape(say(language, f"pages.{footer}", vineyard=vineyard))
        for scheme in config.theme.get("palette") or ():
            other = "light" if scheme["scheme"] == "slate" else "dark"
            scheme["toggle"]["name"] = say(language, f"pages.theme.to-{other}")


class _WaitingFile(File):
    """A file whose bytes are made when MkDocs writes it, and not held."""

    make: Waiting

    def copy_file(self, dirty: bool = False) -> None:
        """Write it."""
        path = Path(self.abs_dest_path)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(self.make())


def _waiting_file(config: MkDocsConfig, path: str, make: Waiting) -> File:
    file = _WaitingFile(path, src_dir=None, dest_dir=config.site_dir, use_directory_urls=False)
    file.make = make
    return file


_MARKDOWN = re.compile(r"[\\`*_{}\[\]()#+!|]")


def _in_markdown(title: str) -> str:
    """A title as words on one line: nothing in it is markup, of whatever sort."""
    return _MARKDOWN.sub(r"\\\g<0>", str(Markup.escape(" ".join(title.split()))))


def _root(config: MkDocsConfig) -> Path:
    return Path(config.config_file_path or "mkdocs.yml").resolve().parent


def _language() -> str:
    """What our own command asked for; English for those who run MkDocs themselves."""
    asked = os.environ.get(LANGUAGE, "")
    return asked if asked in LANGUAGES else "en"


def _not_built() -> Abort:
    # Our own command says so itself, in its language.
    told = "" if LANGUAGE in os.environ else "The handbook was not built; the last one stays."
    return Abort(told)


def _tell(findings: tuple[Finding, ...]) -> None:
    # Not through the log, which would put its own words before each line.
    for finding in findings:
        sys.stderr.write(f"{finding.render()}\n")
