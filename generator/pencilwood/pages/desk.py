"""The desk at which one page is written: its words, its addresses, its template."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Mapping
from functools import cache

import jinja2
from markupsafe import Markup

from pencilwood.pages.finished import OUR_FILES, finish
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Addresses, Heading, Page
from pencilwood.units import format_length
from pencilwood.words import fitting, say

ASSETS = OUR_FILES
"""Folder of the site that holds everything of ours that is not a page."""
_CELL_ENDS = re.compile(r"</(?:td|th|dt|dd|li|p)>(?=<)")


@cache
def _templates() -> jinja2.Environment:
    # StrictUndefined: a misspelt name in a template stops the build instead of printing nothing.
    return jinja2.Environment(
        loader=jinja2.PackageLoader("pencilwood.pages"),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


class Desk:
    """Writes one page in one language; templates see it as `desk`."""

    def __init__(self, handbook: Handbook, path: str, language: str) -> None:
        self.handbook = handbook
        self.path = path
        self.language = language
        self.profile = handbook.profile
        self._addresses = Addresses(handbook.profile.languages)
        self._fragments: dict[str, str] = {}
        self._headings: list[Heading] = []

    def say(self, key: str, /, **facts: str | int) -> str:
        """A sentence of the pages in the page's language."""
        return say(self.language, f"pages.{key}", **facts)

    def say_of(self, own: str, key: str, /, **facts: str | int) -> str:
        """The sentence that vines with `own_words` have for it, else the usual one."""
        return say(self.language, fitting(f"pages.{key}", own), **facts)

    def length(self, mm: int) -> str:
        """A length in the profile's units."""
        return format_length(mm, self.profile.units, self.language)

    def own(self, text: Mapping[str, str]) -> str:
        """A trainer's words in the page's language."""
        return text[self.language]

    def href(self, path: str, anchor: str = "") -> str:
        """The way from this page to another page in the same language; empty where there is none.

        Only a package holds less than the whole handbook.
        """
        holds = self.handbook.holds
        if holds is not None and path not in holds:
            return ""
        to = self._from_here(self._addresses.of(path, self.language))
        return f"{to}#{anchor}" if anchor else to

    def twins(self) -> tuple[tuple[str, str, str], ...]:
        """This page in each language: code, name and the way there; nothing with one language."""
        languages = self.profile.languages
        return tuple(
            (
                code,
                say(self.language, f"pages.language.{code}"),
                self._from_here(self._addresses.of(self.path, code)),
            )
            for code in languages
            if len(languages) > 1
        )

    def published_address(self) -> str:
        """Where this page is found, for paper; empty where the handbook does not know its site."""
        home = self.profile.site_address
        return f"{home.rstrip('/')}/{self._addresses.of(self.path, self.language)}" if home else ""

    def asset(self, path: str) -> str:
        """The way from this page to one of our own files."""
        return self._from_here(f"{ASSETS}/{path}")

    def file(self, address: str) -> str:
        """The way from this page to a file of the site."""
        return self._from_here(address)

    def _from_here(self, address: str) -> str:
        here = posixpath.dirname(self._addresses.of(self.path, self.language))
        # As if from the root: else the system is asked each time which folder we are in.
        return posixpath.relpath(f"/{address}", f"/{here}")

    def late(self, html: str) -> Markup:
        """A mark for HTML that goes in when the site generator is done with the page."""
        mark = f"<!--pencilwood-{len(self._fragments) + 1}-->"
        # As plain text: a page that was kept has nothing else.
        self._fragments[mark] = str(html)
        return Markup(mark)  # noqa: S704 - made here, of nothing but a number

    def complete(self, html: str) -> str:
        """A page that no site generator touches, with everything that goes in late."""
        for mark, fragment in self._fragments.items():
            html = html.replace(mark, fragment)
        return html

    def alone(self, html: str, *, frames: bool = False) -> str:
        """The same, ready to be published; `frames` lets it open another page of ours in itself."""
        folder = self._addresses.folder(self.language)
        return finish(self.complete(html), self._from_here("."), folder, frames=frames)

    def h2(self, anchor: str, title: str, *, opens: bool = False) -> Markup:
        """A heading that the page's table of contents names.

        One that `opens` the page stands above the trainer's own words.
        """
        self._headings.append(Heading(anchor, title, opens))
        return Markup('<h2 id="{}">{}</h2>').format(anchor, title)

    def render(self, template: str, **values: object) -> str:
        """HTML that a template makes of `values`."""
        return _templates().get_template(template).render(desk=self, **values)

    def write(
        self,
        template: str,
        title: str,
        *,
        description: str = "",
        opening: str = "",
        markdown: str = "",
        menu_title: str = "",
        **values: object,
    ) -> Page:
        """The page that a template makes of `values`."""
        # A search reads the text alone: without a space the words of two cells are one word to it.
        body = _CELL_ENDS.sub(r"\g<0> ", self.render(template, **values))
        return Page(
            path=self.path,
            language=self.language,
            title=title,
            body=body,
            fragments=dict(self._fragments),
            opening=opening,
            markdown=markdown,
            headings=tuple(self._headings),
            description=description,
            menu_title=menu_title,
        )


def paragraphs(text: str) -> tuple[str, ...]:
    """Plain text with blank lines between its paragraphs, each on one line."""
    return tuple(" ".join(block.split()) for block in text.split("\n\n") if block.strip())
