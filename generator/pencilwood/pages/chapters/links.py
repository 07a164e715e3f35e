"""Links that an author types as Markdown has them: to another chapter, by its file."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator

from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.handbook import Chapter

_LINK = re.compile(r"\[[^\[\]\n]*\]\(([^()\s:/#]+)(?:#[^()\s]*)?\)")
"""A file beside this one; an address with a folder is left to MkDocs."""
_CODE = re.compile(r"`[^`]*`")
_FENCES = ("```", "~~~")
_SOURCE = ".md"


def check_links(chapter: Chapter, pages: Collection[str], problems: Problems) -> None:
    """No link to a chapter that is not there.

    `pages` are the names of what stands beside the chapter: chapters and the handbook's own pages.
    """
    for line, text in _prose(chapter.markdown):
        for link in _LINK.finditer(text):
            file = link[1]
            if file.endswith(_SOURCE) and file.removesuffix(_SOURCE) not in pages:
                hint = problems.hint(file, (f"{name}{_SOURCE}" for name in pages))
                problems.add((line, link.start() + 1), "unknown-link", found=file, hint=hint)


def _prose(markdown: str) -> Iterator[tuple[int, str]]:
    """Each line that is no code, with its number; code in it gives way to spaces."""
    is_code = False
    for number, text in enumerate(markdown.split("\n"), start=1):
        if text.lstrip().startswith(_FENCES):
            is_code = not is_code
        elif not is_code:
            yield number, _CODE.sub(lambda found: " " * len(found[0]), text)
