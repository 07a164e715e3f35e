"""One finished page, before any site generator has seen it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from markupsafe import escape

from pencilwood.pages.column_counts import with_column_counts
from pencilwood.pages.finished import finish
from pencilwood.pages.policy import OWN_TEXT

_MARKS = re.compile(r"[\\`*_{}\[\]()#+!|]")


@dataclass(frozen=True)
class Heading:
    """A heading that the page's own table of contents names."""

    anchor: str
    title: str
    opens: bool = False
    """Whether it stands above the trainer's own words."""


@dataclass(frozen=True)
class Page:
    """A page in one language.

    `body` is HTML with a mark (an HTML comment) wherever one of the `fragments` goes in. The
    fragments, drawings above all, stay out of the way of the site generator and of its search.
    """

    path: str
    """Where it stands, with neither language nor ending: `cases/tidy-vine`."""
    language: str
    title: str
    body: str = ""
    fragments: Mapping[str, str] = field(default_factory=dict)
    """What goes in late, by its mark."""
    opening: str = ""
    """HTML that stands right under the title."""
    markdown: str = ""
    """The trainer's own words, which stand between the opening and the body."""
    headings: tuple[Heading, ...] = ()
    description: str = ""
    menu_title: str = ""
    """What the menu calls it; empty when it is not in the menu."""
    waits: str = ""
    """A name for its fragments while they lie in the folder of what is kept; else empty."""

    def source(self) -> str:
        """What the page is before a site generator has seen it, in Markdown."""
        # A title is words on one line: nothing in it is markup, of whatever sort.
        title = _MARKS.sub(r"\\\g<0>", str(escape(" ".join(self.title.split()))))
        return f"# {title}\n\n{self.markdown}\n"

    def content(self, written: str) -> str:
        """All that the page is about: the trainer's own words, as HTML, and what goes with them."""
        opened = with_column_counts(written).replace("</h1>", f"</h1>{self.opening}", 1)
        return f"{OWN_TEXT[0]}{opened}{self.body}{OWN_TEXT[1]}"

    def complete(self, html: str, folder: str, *, live: bool = False) -> str:
        """The page that a site generator made around `content`, ready to be published.

        Every fragment is put where its mark stands. `folder` is that of the page's language.
        """
        for mark, fragment in self.fragments.items():
            html = html.replace(mark, fragment)
        return finish(html, self.up(folder), folder, live=live)

    def up(self, folder: str) -> str:
        """The way from the page to the site's root."""
        return "/".join([".."] * f"{folder}{self.path}".count("/")) or "."


@dataclass(frozen=True)
class Addresses:
    """Where pages are found: the first language at the root, each other in its own folder."""

    languages: tuple[str, ...]

    def folder(self, language: str) -> str:
        """The folder of a language, with a slash behind it, or nothing."""
        return "" if language == self.languages[0] else f"{language}/"

    def of(self, path: str, language: str) -> str:
        """The address of a page from the site's root."""
        return f"{self.folder(language)}{path}.html"
