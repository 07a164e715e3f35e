"""The pages of `--help` and what is said of wrong arguments: whole, and in one language each."""

import argparse
import ast
import re
import shlex
from collections.abc import Iterator
from pathlib import Path

import pytest

from pencilwood.block.questions import QUESTIONS
from pencilwood.cli import _COMMANDS, _parser, main
from pencilwood.commands.argparse_words import ARGPARSE_SAYS
from pencilwood.commands.export import _PACKERS
from pencilwood.commands.help_page import asked_language
from pencilwood.words import LANGUAGES, say

STEPS = ("from-csv", "new", "to-csv", "replan")
PAGES = (
    (),
    *((name,) for name in _COMMANDS),
    *(("case", step) for step in STEPS),
    *(("block", name) for name in QUESTIONS),
)
WITHOUT_EXAMPLE = (("case",), *(("block", name) for name in QUESTIONS))
"""A page that leads on to others, and those on which the option names say all."""
OTHERS = [language for language in LANGUAGES if language != "en"]
ALIKE = {
    *("a", "no", "kilo", "kg", "pencilwood", "handbook"),  # of both languages; and our name
    *("csv", "json", "pdf", "qti", "scorm", "svg", "usb", "readme", "ctrl", "c"),
    *("content", "cases", "yml", "profile", "blocks", "index", "html", "site", "md", "packages"),
    *("terminal", "extra", "x"),  # 17 x 22
}
"""What stands on the page of either language."""
NEVER_SAID = {
    # Slips of whoever writes the program.
    ".__call__() not defined", "'required' is an invalid argument for positionals",
    "cannot have multiple subparser arguments", "cannot merge actions - two groups are named %r",
    "conflicting option string: %s", "conflicting option strings: %s", "conflicting subparser: %s",
    "conflicting subparser alias: %s", "dest= is required for options like %r",
    "invalid conflict_resolution value: %r", "%r is not callable",
    "invalid option string %(option)r: must start with a character %(prefix_chars)r",
    "mutually exclusive arguments must be optional",
    # Ours go before them: `HelpParser.error` and `_check_value`, and a title of our own.
    "%(prog)s: error: %(message)s\n", "subcommands",
    "invalid choice: %(value)r (choose from %(choices)s)",
    "invalid choice: %(value)r, maybe you meant %(closest)r? (choose from %(choices)s)",
    "unknown parser %(parser_name)r (choices: %(choices)s)",
    # Kinds of arguments that we do not have: files that are opened, deprecated options, versions.
    'argument "-" with mode %r', "can't open '%(filename)s': %(error)s",
    "%(prog)s: warning: %(message)s\n", "option '%(option)s' is deprecated",
    "command '%(parser_name)s' is deprecated", "argument '%(argument_name)s' is deprecated",
    "show program's version number and exit", " (default: %(default)s)",
    # A frame without words, around headings that are ours: since Python 3.13.
    "%(heading)s:",
}  # fmt: skip


def page(
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    names: tuple[str, ...],
    language: str,
) -> str:
    monkeypatch.setenv("COLUMNS", "80")
    with pytest.raises(SystemExit) as ended:
        main([*names, "--help", "--language", language])
    told = capsys.readouterr()
    assert (ended.value.code, told.err) == (0, "")
    return told.out


def parser_of(names: tuple[str, ...], language: str) -> argparse.ArgumentParser:
    """The parser of a command or of a step of it."""
    parser: argparse.ArgumentParser = _parser(language=language)
    for name in names:
        (below,) = (one for one in parser._actions if isinstance(one, argparse._SubParsersAction))
        parser = below.choices[name]
    return parser


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("names", PAGES, ids=" ".join)
def test_a_page_of_help_is_whole(
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    names: tuple[str, ...],
    language: str,
) -> None:
    told = page(capsys, monkeypatch, names, language)
    assert "%(" not in told
    assert "help." not in told, "the key of a text instead of the text"
    assert max(map(len, told.splitlines())) < 100
    assert (say(language, "help.examples") in told) is (names not in WITHOUT_EXAMPLE)
    if names[:1] != ("block",) or len(names) == 1:
        actions = parser_of(names, language)._actions
        without = [
            one.dest for one in actions if not one.help and one.dest not in ("command", "step")
        ]
        assert without == []
    # Whoever cannot read this page finds the other one.
    for other in OTHERS:
        typed = f"{' '.join(('pencilwood', *names))} --help --language {other}"
        line = say(other, "help.in-this-language", command=typed)
        assert (line in told) is (language == "en")


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_page_of_export_says_what_each_standard_is(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, language: str
) -> None:
    told = " ".join(page(capsys, monkeypatch, ("export",), language).split())
    assert [one for one in _PACKERS if f"{one} (" not in told] == []
    assert [one for one in _PACKERS if f"pencilwood export {one}" not in told] == []


def words_of(text: str) -> set[str]:
    """The words that somebody reads; those that are typed as they stand are left out."""
    typed = {*_COMMANDS, *STEPS, *QUESTIONS, "metric", "us"}
    for names in PAGES:
        if names[:1] != ("block",) or len(names) == 1:
            for one in parser_of(names, "en")._actions:
                typed |= {str(choice) for choice in one.choices or ()}
    as_it_stands = "|".join(re.escape(one) for one in sorted(typed, key=len, reverse=True))
    lines = r"(?m)^  (?:pencilwood|cd) .*$|^.* --help --language [a-z]+$"
    for pattern in (lines, rf"(?<![\w-])(?:{as_it_stands})(?![\w-])", r"--?[a-z][a-z-]*"):
        text = re.sub(pattern, " ", text)
    return set(re.findall(r"[^\W\d_]+", text.lower())) - ALIKE


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("names", PAGES, ids=" ".join)
def test_no_english_is_left_on_a_page_in_another_language(
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    names: tuple[str, ...],
    language: str,
) -> None:
    english = words_of(page(capsys, monkeypatch, names, "en"))
    other = words_of(page(capsys, monkeypatch, names, language))
    assert len(english) > 15
    assert len(other) > 15
    assert english & other == set()


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_example_can_be_typed(
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    project: Path,
    language: str,
) -> None:
    seen = 0
    for names in PAGES:
        told = page(capsys, monkeypatch, names, language)
        _, _, examples = told.partition(f"{say(language, 'help.examples')}\n")
        for line in re.findall(r"(?m)^  pencilwood (.*)$", examples):
            typed = shlex.split(line)
            given = _parser(typed[0], language).parse_args(typed)
            assert names[:1] in ((), typed[:1], (typed[0],))
            # Who copies an example goes on in the language of its page.
            spoken = given.languages[0] if typed[0] == "start" else asked_language(typed)
            assert spoken == language
            case = getattr(given, "case", None)
            assert case is None or (project / f"content/cases/{case}.yml").is_file()
            seen += 1
    assert seen > len(_COMMANDS)


WRONG = [
    (("prune",), '"prune" no se puede usar aquí', "COMANDO"),
    (("biuld",), '¿quiso decir "build"?', "COMANDO"),
    ((), "falta esto: COMANDO", "pencilwood --help"),
    (("measure",), "falta esto: CASO", "pencilwood measure --help"),
    (("draw", "tidy-vine", "--state", "fin"), '¿quiso decir "fine"?', "--state"),
    (("check", "--root"), "falta algo detrás", "--root"),
    (("check", "--json=3"), 'detrás no va nada, y se encontró "3"', "--json"),
    (("check", "--colour"), "no se pidió o está mal escrito: --colour", "--colour"),
    (("case", "new", "x"), "no se pidió o está mal escrito: x", "pencilwood"),
    (("print", "--pa", "a4", "--r", ".", "--paper", "a9"), '"a9" no se puede usar aquí', "--paper"),
    (("block", "crew", "--p", "3"), "puede ser varias opciones: --people, --pay", "--p"),
    (("start", "x", "--language", "es,xx"), '"xx" no es un idioma de Pencilwood', "--language"),
]


@pytest.mark.parametrize(("typed", "says", "where"), WRONG)
def test_wrong_arguments_are_told_in_one_line(
    capsys: pytest.CaptureFixture[str], typed: tuple[str, ...], says: str, where: str
) -> None:
    asked = () if "--language" in typed else ("--language", "es")
    with pytest.raises(SystemExit) as ended:
        main([*asked, *typed])
    told = capsys.readouterr()
    assert (ended.value.code, told.out) == (2, "")
    assert told.err.count("\n") == 1
    assert told.err.startswith("pencilwood: ")
    assert says in told.err
    assert where in told.err
    assert told.err.endswith("--help --language es\n")
    english = {"argument", "expected", "invalid", "usage", "error", "the", "required", "could"}
    assert not english & set(re.findall(r"\w+", told.err))


@pytest.mark.parametrize(
    ("typed", "language"),
    [
        ((), "en"),
        (("check", "--language", "es"), "es"),
        (("--language=es", "check"), "es"),
        (("check", "--lang", "es"), "es"),
        (("check", "--language", "es", "--language", "en"), "en"),
        (("start", "x", "--language", "es,en"), "es"),
        (("check", "--language", "xx"), "en"),
        (("check", "--language"), "en"),
        (("block", "buds", "--", "es"), "en"),
    ],
)
def test_the_language_is_known_before_anything_is_read(
    typed: tuple[str, ...], language: str
) -> None:
    assert asked_language(typed) == language


def test_argparse_says_its_own_words_again_afterwards(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["--help", "--language", "es"])
    assert capsys.readouterr().out.startswith("uso: ")
    assert argparse.ArgumentParser(prog="x").format_usage() == "usage: x [-h]\n"


def said_by_argparse() -> Iterator[str]:
    """Every sentence that it translates, in the source of the Python that runs this."""
    for call in ast.walk(ast.parse(Path(argparse.__file__).read_text("utf-8"))):
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name):
            texts = call.args[: {"_": 1, "ngettext": 2}.get(call.func.id, 0)]
            yield from (str(one.value) for one in texts if isinstance(one, ast.Constant))


def test_every_sentence_of_argparse_is_ours() -> None:
    """Those of newer Pythons stand in both tables too, so none need be there today."""
    said = set(said_by_argparse())
    assert len(said) > 30
    assert said - {*ARGPARSE_SAYS, *NEVER_SAID, "None"} == set()


def test_every_text_of_the_command_line_goes_through_the_words(project: Path) -> None:
    engine = project / "generator/pencilwood"
    written = []
    for path in (engine / "cli.py", *sorted((engine / "commands").glob("*.py"))):
        for call in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(call, ast.Call):
                continue
            shown = [one.value for one in call.keywords if one.arg in SHOWN]
            name = getattr(call.func, "id", getattr(call.func, "attr", ""))
            shown += call.args if name in ("print", "write", "ArgumentTypeError", "refuse") else []
            written += [f"{path.name}:{one.lineno}" for one in shown if is_written_out(one)]
    assert written == []


SHOWN = ("help", "description", "epilog", "title", "metavar")


def is_written_out(text: ast.AST) -> bool:
    """Whether letters of a text stand in the code itself, and not in the call that fetches it."""
    if isinstance(text, ast.Call):
        return False
    if isinstance(text, ast.Subscript):
        return is_written_out(text.value)
    if isinstance(text, ast.Constant) and isinstance(text.value, str):
        return bool(re.search("[A-Za-z]{2}", text.value.replace("pencilwood: ", "")))
    return any(is_written_out(part) for part in ast.iter_child_nodes(text))


@pytest.mark.parametrize(
    ("code", "written"),
    [
        ('print("Two words")', True),
        ('print(f"{n} buds")', True),
        ('print(f"pencilwood: {told}")', False),
        ('print(say(language, "cli.fine"))', False),
        ('print(f"  {name} [{tool}]")', False),
    ],
)
def test_a_text_in_the_code_is_found(code: str, written: bool) -> None:
    (expression,) = ast.parse(code).body
    assert isinstance(expression, ast.Expr)
    assert isinstance(expression.value, ast.Call)
    assert any(is_written_out(one) for one in expression.value.args) is written
