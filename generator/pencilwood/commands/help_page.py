"""The pages of `--help`, and what is said of wrong arguments, in the language asked for."""

from __future__ import annotations

import argparse
import textwrap
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, NoReturn, TypedDict

from pencilwood.commands.telling import WRONG_USE
from pencilwood.findings import shown
from pencilwood.site.hints import Notes
from pencilwood.words import LANGUAGES, knows, say

OPTION = "--language"


def asked_language(typed: Sequence[str]) -> str:
    """The language of the option, which is needed before anything is read; else the usual one.

    The option may be cut short, as all may, and the last one counts. Of several languages for a
    new handbook it is the first.
    """
    asked = LANGUAGES[0]
    for one, following in zip(typed, [*typed[1:], ""], strict=False):
        name, _, behind = one.partition("=")
        if len(name) > len("--") and OPTION.startswith(name):
            code = (behind or following).split(",")[0]
            asked = code if code in LANGUAGES else LANGUAGES[0]
    return asked


class Page(TypedDict):
    """The texts of a page, as a parser takes them."""

    description: str
    epilog: str


def page(language: str, name: str) -> Page:
    """What stands on the page of a command, for the parser: what it does, and examples.

    A step of a command is `case.new`.
    """
    about, more, example = (
        say(language, key) if knows(key) else ""
        for key in (f"help.{name}.{part}" for part in ("about", "more", "example"))
    )
    lines = textwrap.indent(example, "  ")
    return Page(
        description=f"{about}\n\n{more}".strip(),
        epilog=f"{say(language, 'help.examples')}\n{lines}" if lines else "",
    )


class HelpParser(argparse.ArgumentParser):
    """A parser that speaks a language, keeps the lines of its texts and refuses in one line."""

    def __init__(self, language: str, **named: Any) -> None:
        super().__init__(formatter_class=_LinesKept, **named)
        self.language = language
        if language == LANGUAGES[0]:
            # Whoever needs another language does not look for it on a page in this one.
            self.epilog = "\n\n".join(filter(None, (self.epilog, *_in_others(self.prog))))

    def said(self, key: str, /, **facts: str | int) -> str:
        """A text of the page."""
        return say(self.language, f"help.{key}", **facts)

    def metavar(self, key: str) -> str:
        """What stands for something that is typed."""
        return self.said(f"metavar.{key}")

    def add_usual(self, *, root: Path | str = Path(), language: str = argparse.SUPPRESS) -> None:
        """What nearly every command takes: whose handbook, and which language."""
        self.add_argument(
            "--root",
            type=Path,
            default=root,
            metavar=self.metavar("folder"),
            help=self.said("root"),
        )
        self.add_language(language)

    def add_language(self, usual: str) -> None:
        """The language of what is told and made."""
        names = (f"{code} ({say(self.language, f'quiz.language.{code}')})" for code in LANGUAGES)
        self.add_argument(
            OPTION,
            choices=LANGUAGES,
            default=usual,
            metavar=self.metavar("language"),
            help=self.said("language", languages=", ".join(names), usual=LANGUAGES[0]),
        )

    def add_case(self) -> None:
        """A case by its short name."""
        self.add_argument("case", metavar=self.metavar("case"), help=self.said("case-name"))

    def add_output_file(self) -> None:
        """Where one file is written."""
        self._add_output("file", "output-file")

    def add_output_folder(self, key: str) -> None:
        """Where files are written; `key` names the text that says so."""
        self._add_output("folder", key)

    def _add_output(self, what: str, key: str) -> None:
        self.add_argument(
            "-o", "--output", type=Path, metavar=self.metavar(what), help=self.said(key)
        )

    def error(self, message: str) -> NoReturn:
        """End with one line, and the command that shows the page."""
        told = self.said("refused", message=message, command=help_command(self.prog, self.language))
        self.exit(WRONG_USE, f"{shown(told)}\n")

    def _check_value(self, action: argparse.Action, value: Any) -> None:
        if action.choices is None or value in action.choices:
            return
        hint = Notes(self.language).hint(str(value), map(str, action.choices))
        told = self.said("none-of-these", found=str(value), hint=hint)
        raise argparse.ArgumentError(action, told)


def _in_others(prog: str) -> Iterator[str]:
    for other in LANGUAGES[1:]:
        yield say(other, "help.in-this-language", command=help_command(prog, other))


def help_command(prog: str, language: str) -> str:
    """What is typed to see the page of a command in a language."""
    asked = "" if language == LANGUAGES[0] else f" {OPTION} {language}"
    return f"{prog} --help{asked}"


class _LinesKept(argparse.HelpFormatter):
    """Wraps every line of a text by itself, and leaves those that are set in as they are."""

    def _fill_text(self, text: str, width: int, indent: str) -> str:
        lines = (
            [line] if line.startswith(" ") else self._split_lines(line, width) or [""]
            for line in text.splitlines()
        )
        return "\n".join(f"{indent}{one}".rstrip() for line in lines for one in line)

    def _split_lines(self, text: str, width: int) -> list[str]:
        # A name such as `thinning-out` is typed whole, so it is shown whole.
        return textwrap.wrap(text, width, break_on_hyphens=False)
