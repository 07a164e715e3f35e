"""Sample files of a trainer, whole or with one slip typed into them."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from pencilwood.cases.case import Case
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.findings import Finding
from pencilwood.rules import BANDS
from pencilwood.rules.wrong_tool import tool_for
from pencilwood.vine.bands import default_limits

FOLDER = Path(__file__).parent / "cases"
LANGUAGES = ("en", "es")
RULES = ("spur-too-long", "wood-too-old", "crowded-spurs")
SAFETY = ("hand-shears", "saw", "ladder")
usual_tool = partial(tool_for, limits=default_limits(BANDS))
"""The tool where an author names none, and a trainer has changed no figure."""


@dataclass(frozen=True)
class Slip:
    """One change to the good sample, and all that must be said of it."""

    reason: str
    old: str
    new: str
    said: tuple[str, ...]


def slips(name: str) -> Iterator[Slip]:
    """The slips of `slips/<name>.txt`.

    `#` begins a slip with its reason, `-` and `+` are lines of the sample before and after (no
    `+`: the line is left out), `!` are the findings without the file's name.
    """
    blocks = (FOLDER / "slips" / f"{name}.txt").read_text(encoding="utf-8").split("\n# ")
    for block in blocks[1:]:
        reason, *rows = block.splitlines()
        marked = {mark: [row[2:] for row in rows if row.startswith(mark)] for mark in "-+!"}
        old, new = "\n".join(marked["-"]), "\n".join(marked["+"])
        yield Slip(reason, old if marked["+"] else f"{old}\n", new, tuple(marked["!"]))


def sample(name: str = "tidy-vine.yml") -> str:
    """The text of a sample without any slip."""
    return (FOLDER / "samples" / name).read_text(encoding="utf-8")


def with_slip(old: str, new: str, name: str = "tidy-vine.yml") -> str:
    """A sample in which `old`, which it holds just once, is typed as `new`."""
    text = sample(name)
    assert text.count(old) == 1, f"{name} holds {text.count(old)} times: {old}"
    return text.replace(old, new)


def read(
    content: str | bytes, folder: Path, language: str = "en"
) -> tuple[Case | None, list[Finding]]:
    """The case of a text, read from a file as a trainer's case is."""
    path = folder / "tidy-vine.yml"
    path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
    return read_case(
        path, CaseSurroundings(LANGUAGES, RULES, SAFETY, usual_tool), "vine.yml", language=language
    )


def lines(findings: list[Finding]) -> list[str]:
    """Findings as `pencilwood check` prints them."""
    return [finding.render() for finding in findings]
