"""What DEVELOPERS.md and README.md tell of the project is so: layers, files, commands."""

import argparse
import re
import tomllib
from collections.abc import Mapping
from pathlib import Path

import pytest

from pencilwood import cli

TOLD = ("DEVELOPERS.md", "README.md")
# Where a path may begin that is told without its folders.
BEGINNINGS = ("", "generator/pencilwood/", "site_assets/js/")
A_FILE = re.compile(r"[\w./-]*/[\w.-]+\.(?:py|mjs|js|yml|html|json|toml|md|txt|csv)|[\w.-]+/")
# What a trainer's own folder has, or is made by a command.
MADE = re.compile(
    r"site/|site/index\.html|site/cases/river-row\.html|dist/|content/cases/river-row\.yml|\.pencilwood-cache/|tests/start/started.*"
    r"|content/shared/|wheels/|\.github/.*|files/"
)


def quoted(project: Path, name: str) -> set[str]:
    """Everything between backticks."""
    text = (project / name).read_text("utf-8")
    return set(re.findall(r"`([^`\n]+)`", text))


def drawn_layers(text: str) -> list[set[str]]:
    """The rows of the drawing: names before the first wide gap."""
    rows = re.findall(r"^    \| (.+?)  .*\|$", text, re.MULTILINE)
    return [set(row.split(", ")) for row in rows]


def enforced_layers(project: Path, contract: str) -> list[set[str]]:
    settings = tomllib.loads((project / "pyproject.toml").read_text("utf-8"))
    contracts = {one["id"]: one for one in settings["tool"]["importlinter"]["contracts"]}
    return [set(re.findall(r"\w+", row)) for row in contracts[contract]["layers"]]


def test_the_groups_of_the_drawing_are_told_in_the_order_that_is_enforced(project: Path) -> None:
    text = (project / "DEVELOPERS.md").read_text("utf-8")
    (table,) = re.findall(r"^\| group \|.*\n\|[-|]+\n((?:\|.*\n)+)", text, re.MULTILINE)
    told = [
        set(re.findall(r"`drawing/(\w+)(?:/|\.py)`", row.split("|")[1]))
        for row in table.splitlines()
    ]
    assert told == enforced_layers(project, "groups-of-drawing")


def test_the_drawing_shows_the_layers_that_are_enforced(project: Path) -> None:
    enforced = enforced_layers(project, "rows")
    drawn = drawn_layers((project / "DEVELOPERS.md").read_text("utf-8"))
    assert drawn == enforced
    in_lowest = {path.stem for path in (project / "generator/pencilwood").glob("[a-z]*.py")}
    folders = {
        path.parent.name for path in (project / "generator/pencilwood").glob("*/__init__.py")
    }
    assert set.union(*drawn) == in_lowest | folders


@pytest.mark.parametrize("name", TOLD)
def test_every_file_that_is_named_is_there(project: Path, name: str) -> None:
    named = {one for one in quoted(project, name) if A_FILE.fullmatch(one)}
    assert len(named) > 3
    missing = [
        one
        for one in sorted(named)
        if not MADE.fullmatch(one)
        and not any((project / beginning / one).exists() for beginning in BEGINNINGS)
    ]
    assert missing == []


def test_a_file_that_is_not_there_would_be_found() -> None:
    assert A_FILE.fullmatch("rules/no_such_rule.py")
    assert not MADE.fullmatch("rules/no_such_rule.py")


@pytest.mark.parametrize("name", TOLD)
def test_every_target_of_make_that_is_named_is_there(project: Path, name: str) -> None:
    text = (project / "Makefile").read_text("utf-8")
    targets = set(re.findall(r"^([\w-]+):", text, re.MULTILINE))
    blocks = re.findall(r"^    make ([\w-]+)", (project / name).read_text("utf-8"), re.MULTILINE)
    named = {
        *blocks,
        *(m[1] for one in quoted(project, name) if (m := re.match(r"make ([a-z-]+)", one))),
    }
    assert named
    assert named <= targets


def commands(parser: argparse.ArgumentParser) -> Mapping[str, argparse.ArgumentParser]:
    (found,) = (one for one in parser._actions if isinstance(one, argparse._SubParsersAction))
    return dict(found.choices)


@pytest.mark.parametrize("name", TOLD)
def test_every_command_and_option_that_is_told_is_known(project: Path, name: str) -> None:
    known = commands(cli._parser())
    text = (project / name).read_text("utf-8")
    told = re.findall(r"(?:`|/bin/)pencilwood ([a-z |]+)((?: [^`\n]*)?)", text)
    assert told
    for names, rest in told:
        for one in names.strip().split(" | "):
            command = one.split()[0]
            assert command in known, f"{name}: pencilwood {one}"
            helped = known[command].format_help()
            for option in re.findall(r"(--[a-z-]+)", rest):
                assert option in helped, f"{name}: pencilwood {one} {option}"
