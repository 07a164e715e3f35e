"""Links that an author types as Markdown has them: to another chapter, by its file."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator

from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.handbook import Chapter

_LINK = re.compile(r"(!?)\[[^\[\]\n]*\]\(([^()\s:/#]+)(?:#[^()\s]*)?\)")
"""A picture or not, and a file beside this one; an address with a folder is left to MkDocs."""
_CODE = re.compile(r"`[^`]*`")
_FENCES = ("```", "~~~")
_SOURCE = ".md"


def check_links(chapter: Chapter, pages: Collection[str], problems: Problems) -> None:
    """No link to a chapter that is not there, and no picture file, which no chapter can have.

    `pages` are the names of what stands beside the chapter: chapters and the handbook's own pages.
    """
    for line, text in _prose(chapter.markdown):
        for link in _LINK.finditer(text):
            where = (line, link.start() + 1)
            if link[1]:
                problems.add(where, "picture-by-file", found=link[2])
            elif link[2].endswith(_SOURCE) and link[2].removesuffix(_SOURCE) not in pages:
                sources = (f"{name}{_SOURCE}" for name in pages)
                hint = problems.hint(link[2], sources)
                problems.add(where, "unknown-link", found=link[2], hint=hint)


def _prose(markdown: str) -> Iterator[tuple[int, str]]:
    """Each line that is no code, with its number; code in it gives way to spaces."""
    is_code = False
    for number, text in enumerate(markdown.split("\n"), start=1):
        if text.lstrip().startswith(_FENCES):
            is_code = not is_code
        elif not is_code:
            yield number, _CODE.sub(lambda found: " " * len(found[0]), text)
