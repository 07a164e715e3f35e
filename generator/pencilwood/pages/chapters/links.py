"""Where the links of a chapter lead: to a page, to a place of it, to a file that is there."""

from __future__ import annotations

import posixpath
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import unquote

from pencilwood.cases.report import nearest
from pencilwood.pages.chapters.link_reading import Link, line_and_column, links_in
from pencilwood.pages.chapters.markup import scheme_of
from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.chapters.prose import without_code
from pencilwood.pages.handbook import Chapter
from pencilwood.words import say

_SOURCE = ".md"
_ASSETS = "assets/"
"""What we put there has names that an author need not know; the site generator looks there."""


@dataclass(frozen=True)
class OwnPages:
    """The pages that we make ourselves."""

    names: Collection[str]
    """Their names, the same in every language."""
    places: Callable[[str, str], Collection[str] | None]
    """The places of a page by its name and language; None where they are not known."""
    are_all_known: bool = True
    """False where something is wrong elsewhere: more pages may come once that is put right."""


@dataclass(frozen=True)
class Surroundings:
    """What a link of one chapter can lead to."""

    folders: Mapping[str, str]
    """The folder of each language, from the root of the site."""
    pages: Mapping[str, Collection[str]]
    """By language, the names of its chapters and of our own pages."""
    are_all_known: bool
    files: Collection[str]
    """Pictures, drawings and papers, from the root of the site."""
    places: Callable[[str, str], Collection[str] | None]
    """The places of a page by its name and language; None where they are not known."""


def check_links(chapter: Chapter, around: Surroundings, problems: Problems) -> None:
    """No link to a chapter, a place or a file that is not there, and no such picture."""
    text = without_code(chapter.markdown)
    for link in sorted(links_in(text), key=lambda link: link.at):
        if link.is_certain and not scheme_of(link):
            _Followed(link, chapter, around, problems, line_and_column(text, link.at)).check()


@dataclass(frozen=True)
class _Followed:
    link: Link
    chapter: Chapter
    around: Surroundings
    problems: Problems
    where: tuple[int, int]

    def check(self) -> None:
        path, _, anchor = self._to.partition("#")
        file = posixpath.normpath(posixpath.join(self._beside, path)) if path else self._own_file
        if self.link.is_picture or not file.endswith(_SOURCE):
            self._check_file(file)
            return
        language, name = self._page(file)
        if name in self.around.pages[language] or not path:
            self._check_place(name, language, anchor)
        elif self.around.are_all_known or "/" not in name:
            hint = self.problems.hint(path, map(self._as_typed, self._sources(language)))
            self.problems.add(self.where, "unknown-link", found=path, hint=hint)

    @property
    def _to(self) -> str:
        return unquote(self.link.to)

    @property
    def _home(self) -> str:
        return self.around.folders[self.chapter.language]

    @property
    def _own_file(self) -> str:
        return f"{self._home}{self.chapter.name}{_SOURCE}"

    @property
    def _beside(self) -> str:
        """The folder that the chapter's links begin in."""
        return posixpath.dirname(self._own_file)

    def _as_typed(self, file: str) -> str:
        """A file of the site, as a link of this chapter names it."""
        return posixpath.relpath(file, self._beside or ".")

    def _page(self, file: str) -> tuple[str, str]:
        """Language and name of a page by its file; the first language has no folder."""
        folders = self.around.folders
        within = [one for one, folder in folders.items() if folder and file.startswith(folder)]
        language = within[0] if within else next(iter(folders))
        return language, file.removeprefix(folders[language]).removesuffix(_SOURCE)

    def _sources(self, language: str) -> Iterable[str]:
        folder = self.around.folders[language]
        return (f"{folder}{one}{_SOURCE}" for one in self.around.pages[language])

    def _check_place(self, name: str, language: str, anchor: str) -> None:
        known = self.around.places(name, language) if anchor else None
        if known is not None and anchor not in known:
            hint = self.problems.hint(f"#{anchor}", (f"#{one}" for one in known))
            self.problems.add(self.where, "unknown-anchor", found=self._to, hint=hint)

    def _check_file(self, file: str) -> None:
        if file in self.around.files or file.startswith(_ASSETS):
            return
        problems, language = self.problems, self.chapter.language
        wanted = self._as_typed(file)
        files = [self._as_typed(one) for one in self.around.files if self._page(one)[0] == language]
        sources = () if self.link.is_picture else map(self._as_typed, self._sources(language))
        chapters = list(sources)
        # A chapter is only meant where its name is near: the list of all would help nobody.
        meant = [*files, *(chapters if nearest(wanted, chapters) else ())]
        hint = (
            problems.hint(wanted, meant)
            if meant
            else say(problems.language, "chapters.none-beside")
        )
        problem = "missing-picture" if self.link.is_picture else "unknown-file"
        problems.add(self.where, problem, found=self._to, hint=hint)
