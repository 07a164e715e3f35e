"""Nothing is kept that nobody says or shows: each sentence has its speaker, each class its page."""

import ast
import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

import pytest

from pencilwood.vine.forms import OWN_WORDS
from pencilwood.words import catalogue

# What the functions of a part of the program put before the keys that they are given.
BEGINNINGS: Mapping[str, tuple[str, ...]] = {
    "block": ("block", "block.step", "block.remark", "block.problem"),
    "cases": (
        *("cases", "credits", "field.comment", "field.column", "field.frame", "field.word"),
        "site",  # why a photograph cannot be shown
    ),
    "cli.py": ("help",),
    "commands": (
        *("field.ask", "field.word", "start", "help", "help.metavar", "help.argparse"),
        *{key.rpartition(".")[0] for key in catalogue("en") if key.startswith("help.")},
    ),
    "drawing": (
        "drawing",
        *{f"plates.{key.split('.')[1]}" for key in catalogue("en") if key.startswith("plates.")},
    ),
    "js": ("exercise", "exercise.tool", "exercise.stub", "quiz", "block", "pages"),
    "mkdocs_plugin": ("pages",),
    "packages": ("scorm.note", "qti", "quiz"),
    "pages": ("pages", "chapters"),
    "proof": ("proof",),
    "quiz": ("asking", "asking.problem", "asking.proof"),
    "readability": ("chapters",),
    "rules": ("rules.heading",),
    "site": ("site", "chapters", "cases", "start", "start.archive", "proof"),
    "units.py": ("cases",),
    "vine": ("cases",),
    "worksheets": (
        *("print", "print.worksheet", "print.key", "print.sheet", "print.booklet", "print.qr"),
        *("print.card", "print.poster", "pages.wood"),
    ),
}
# What they put behind: the parts of a finding, one or many, what some vines or readers of pounds
# have of their own, and the second sentence of a pair.
OF_FORMS = "|".join(OWN_WORDS)
ENDING = re.compile(rf"\.(?:what|expected|found|one|many|{OF_FORMS}|us|lead|why|looks)$")
HOLE = r"[^.]+(?:\.[^.]+)?"


class Texts:
    """The texts that stand in some files: whole ones, and those with something filled in."""

    def __init__(self) -> None:
        self.whole: set[str] = set()
        self.filled: set[str] = set()

    def add(self, parts: list[str | None]) -> None:
        """Note a text; None is a hole. Those that would fit too much are left out."""
        if None not in parts:
            self.whole.add("".join(part or "" for part in parts))
        elif re.match("[a-z]{2}", parts[0] or "") or len(parts[-1] or "") > len(".expected"):
            self.filled.add("".join(HOLE if part is None else re.escape(part) for part in parts))

    def has(self, text: str) -> bool:
        return text in self.whole or any(re.fullmatch(one, text) for one in self.filled)


def texts_of_python(text: str) -> Iterator[list[str | None]]:
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield [node.value]
        elif isinstance(node, ast.JoinedStr):
            yield [str(one.value) if isinstance(one, ast.Constant) else None for one in node.values]


def texts_of_others(text: str) -> Iterator[list[str | None]]:
    """Texts of a script or a template."""
    yield from ([one] for one in re.findall(r"[\"']([\w. -]+)[\"']", text))
    yield from ([one] for one in re.findall(r"\bwords\.([a-z][a-z_-]*)\b", text))
    for one in re.findall(r"`((?:[\w. -]|\$\{[^{}`]*\})+)`", text):
        yield [None if part.startswith("$") else part for part in re.split(r"(\$\{[^}]*\})", one)]
    for start, end in re.findall(r'"([\w.-]+\.)"\s*~\s*[^"~]+(?:~\s*"([\w.-]*)")?', text):
        yield [start, None, end] if end else [start, None]


@cache
def program(project: Path) -> Mapping[str, Texts]:
    """The texts of each part of the program; under "" all those that are whole keys."""
    engine, scripts = project / "generator/pencilwood", project / "site_assets/js"
    parts = {"": Texts()}
    for pattern in ("*.py", "*.html", "*.typ", "*.mjs"):
        for path in (*engine.rglob(pattern), *scripts.rglob(pattern)):
            part = "js" if path.suffix == ".mjs" else path.relative_to(engine).parts[0]
            read = texts_of_python if path.suffix == ".py" else texts_of_others
            for one in read(path.read_text("utf-8")):
                parts.setdefault(part, Texts()).add(one)
                # `pages.{key}` is a function that puts something before a key, and no key.
                if (one[0] or "").count(".") >= (1 if len(one) == 1 else 2):
                    parts[""].add(one)
    return parts


def is_said(key: str, parts: Mapping[str, Texts]) -> bool:
    """Whether some text of the program, with what its functions add to it, makes this key."""
    while True:
        if parts[""].has(key):
            return True
        for part, beginnings in BEGINNINGS.items():
            for beginning in beginnings:
                tail = key.removeprefix(f"{beginning}.")
                if tail != key and parts[part].has(tail):
                    return True
        if not ENDING.search(key):
            return False
        key = ENDING.sub("", key)


def test_every_sentence_is_said_somewhere(project: Path) -> None:
    parts = program(project)
    assert [key for key in catalogue("en") if not is_said(key, parts)] == []


@pytest.mark.parametrize(
    "key", ["pages.case.nobody-says-this", "exercise.never", "cases.not-a-finding.what"]
)
def test_a_sentence_that_nobody_says_is_found(project: Path, key: str) -> None:
    assert not is_said(key, program(project))


def classes_of(style: str) -> set[str]:
    """Our own classes in a style sheet; the theme's are made by the theme."""
    bare = re.sub(r"/\*.*?\*/", "", style, flags=re.DOTALL)
    return set(re.findall(r"\.(pw-[\w-]+)", bare))


def is_shown(name: str, text: str) -> bool:
    """Whether a page or a script names the class, or puts it together from its beginning."""
    if re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", text):
        return True
    beginnings = (name[: dash.end()] for dash in re.finditer("-", name) if dash.end() > len("pw-"))
    return any(re.search(rf"{re.escape(one)}(?:\$?\{{|[\"'])", text) for one in beginnings)


@cache
def all_markup(project: Path) -> str:
    folders = (project / "generator/pencilwood", project / "site_assets/js")
    paths = (
        path
        for folder in folders
        for pattern in ("*.py", "*.html", "*.mjs")
        for path in folder.rglob(pattern)
    )
    return "\n".join(path.read_text("utf-8") for path in paths)


def test_every_class_of_the_styles_is_on_some_page(project: Path) -> None:
    styles = sorted((project / "site_assets").rglob("*.css"))
    named = {(path.name, one) for path in styles for one in classes_of(path.read_text("utf-8"))}
    assert len(named) > 100
    assert [one for one in sorted(named) if not is_shown(one[1], all_markup(project))] == []


def test_a_class_that_no_page_has_is_found(project: Path) -> None:
    assert not is_shown("pw-nowhere", all_markup(project))
