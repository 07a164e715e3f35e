"""A trainer's folder for the tests of papers and measuring sheets, and the command in it."""

from __future__ import annotations

import io
import shutil
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from pencilwood.cli import main

PROJECT = Path(__file__).resolve().parent.parent


@dataclass(frozen=True)
class Ran:
    """How a command ended and what it said."""

    status: int
    out: str
    err: str


@dataclass(frozen=True)
class Workshop:
    """A small handbook's folder."""

    root: Path
    capture: pytest.CaptureFixture[str]
    patch: pytest.MonkeyPatch

    def run(self, *arguments: str, typed: str = "") -> Ran:
        """Run `pencilwood` here, with `typed` at the keyboard."""
        self.patch.setattr(sys, "stdin", io.StringIO(typed))
        status = main([*arguments, "--root", str(self.root)])
        said = self.capture.readouterr()
        return Ran(status, said.out, said.err)

    def set_address(self, address: str) -> None:
        """Give the profile a site address."""
        profile = self.root / "content" / "profile.yml"
        profile.write_text(f"{profile.read_text('utf-8')}\nsite address: {address}\n", "utf-8")


def make_workshop(root: Path, *cases: str) -> Path:
    """A folder with the demo's profile and safety notes, and some of its cases."""
    (root / "content" / "cases").mkdir(parents=True)
    shutil.copy(PROJECT / "content" / "profile.yml", root / "content")
    shutil.copytree(PROJECT / "content" / "safety", root / "content" / "safety")
    for case in cases:
        shutil.copy(PROJECT / "content" / "cases" / f"{case}.yml", root / "content" / "cases")
    return root
