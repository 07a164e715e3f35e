"""Odd arguments on the command line end in a status and a line of words, never in a traceback."""

from __future__ import annotations

import io
import random
import shutil
import sys
from pathlib import Path

import pytest

from fuzz.scraps import LENGTHS, NUMBERS, SEEN, UNSEEN, WORDS
from pencilwood.cli import main
from pencilwood.findings import shown
from workshop import make_workshop

PROJECT = Path(__file__).resolve().parent.parent.parent
COMMANDS = (
    ("check",), ("check", "--json"), ("check", "--chapters"), ("draw",), ("measure",), ("plan",),
    ("plan", "--json"), ("case", "from-csv"), ("case", "to-csv"), ("case", "new"), ("case",),
    ("print", "--what"), ("print", "--case"), ("block",), ("block", "buds"), ("block", "crop"),
    ("build", "--site"), ("export",), ("start",), ("nonsense",), (),
)  # fmt: skip
ODD = (
    *(one for one in (*NUMBERS, *LENGTHS, *WORDS, *UNSEEN, *SEEN) if len(one) < 200),
    *(
        "tidy-vine",
        "--name",
        "--name=",
        "--language",
        "es",
        "fr",
        "--json",
        "--root",
        "-o",
        "/",
        ".",
    ),
    *(
        "content",
        "content/profile.yml",
        "content/cases",
        "x" * 300,
        "\udc80",
        "--prunings",
        "2.5 lb",
    ),
    *(
        "2.5 lb",
        ".",
        "--formula",
        "30+10",
        "mill-terrace",
        "--units",
        "us",
        "--state",
        "fine",
        "/dev/null",
        "~",
    ),
)
SEED, TRIES = 7, 300


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = make_workshop(tmp_path_factory.mktemp("odd") / "handbook", "tidy-vine")
    shutil.copy(PROJECT / "content" / "blocks.yml", root / "content")
    return root


def arguments(rng: random.Random) -> list[str]:
    return [*rng.choice(COMMANDS), *(rng.choice(ODD) for _ in range(rng.randint(0, 4)))]


def is_safe(given: list[str]) -> bool:
    """Whether nothing outside the handbook's folder could be written; a test must not risk it."""
    risky = ("--root", "-o", "--output", "--site", "--folder", "start", "export")
    return not any(one.startswith(risky) for one in given)


def test_odd_arguments(
    handbook: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(handbook)
    rng, statuses = random.Random(SEED), []
    before = sorted(handbook.rglob("*"))
    given = [one for one in (arguments(rng) for _ in range(TRIES)) if is_safe(one)]
    for one in given:
        monkeypatch.setattr(sys, "stdin", io.StringIO("x\n\n"))
        try:
            status = main(one)
        except SystemExit as ended:  # argparse ends the program itself
            status = int(str(ended.code))
        told = capsys.readouterr()
        statuses.append(status)
        assert status in (0, 1, 2), one
        assert status == 0 or told.out or told.err, one
        assert "Traceback" not in told.out + told.err, one
    assert {0, 1, 2} <= set(statuses)
    assert len(given) > TRIES / 2
    assert sorted(handbook.rglob("*")) == before


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (["measure", "tidy\0vine"], 'there is no case "tidy<U+0000>vine"'),
        (["measure", "tidy\x1b[31m"], "<U+001B>"),
        (["draw", "../../etc/passwd"], 'there is no case "../../etc/passwd"'),
        (["check", "--root", "x" * 5000], "no file can have so long a name"),
        (["case", "from-csv", "no\0where.csv", "--name", "a-b"], "(unreadable-file)"),
        (["case", "from-csv", "x" * 5000, "--name", "a-b"], "(unreadable-file)"),
        (["draw", "tidy-vine", "-o", "content"], "content: this is a folder; name a file"),
    ],
)
def test_names_that_no_file_can_have(
    handbook: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    given: list[str],
    said: str,
) -> None:
    monkeypatch.chdir(handbook)
    assert main(given) in (1, 2)
    told = capsys.readouterr()
    whole = told.out + told.err
    assert said in whole
    assert whole == "".join(f"{shown(row)}\n" for row in whole.splitlines())
