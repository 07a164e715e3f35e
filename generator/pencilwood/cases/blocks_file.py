"""Reads `blocks.yml`: the trainer's blocks and the figures that are known of each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from pencilwood.cases.case_keys import SLUG
from pencilwood.cases.fields import Key, ListOf, Placed, Row, Schema, Table, one_value
from pencilwood.cases.kinds import Words
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import Node, read_nodes
from pencilwood.findings import Finding
from pencilwood.places import Place
from pencilwood.words import LANGUAGES

MOST_BLOCKS = 100


class Figure(Protocol):
    """One figure of a block, as the vineyard sums know it."""

    @property
    def name(self) -> str:
        """Its name in the sums."""

    @property
    def key(self) -> str:
        """Its name in the file."""

    @property
    def source(self) -> str:
        """Where its usual value comes from."""

    def trouble(self, text: str, language: str) -> str:
        """Why a text cannot be read, in one sentence; empty where it can."""

    def read(self, text: str) -> object:
        """The value of a text that can be read."""


@dataclass(frozen=True)
class Block:
    """One of the trainer's blocks."""

    slug: str
    title: Mapping[str, str]
    about: Mapping[str, str]
    """The trainer's own words, in each language; may be empty."""
    figures: Mapping[str, object]
    """What is known of it, by the name of the figure in the sums."""
    place: Place
    figure_places: Mapping[str, Place] = field(default_factory=dict, compare=False)
    """Where each figure stands."""


@dataclass(frozen=True)
class _FigureKind:
    figure: Figure

    def read(self, node: Node, key: str, report: Report) -> object | None:
        """The value of a figure."""
        text = one_value(node, key, report)
        if text is None:
            return None
        trouble = self.figure.trouble(text, report.language)
        if trouble:
            why = trouble[:1].lower() + trouble[1:].rstrip(".")
            report.add(node.place, "not-such-a-figure", key=key, why=why, found=quoted(text))
            return None
        return self.figure.read(text)

    def schema(self) -> Schema:
        """A number or a text with its unit."""
        return {"type": ["string", "number"]}


BLOCK = Key("block", SLUG, "Short name of the block.")
TITLE = Key("title", Words(120), "Name of the block in each language.")
ABOUT = Key("about", Words(), "What a supervisor should know of it, in each language.", False)
FIGURES_NAME = "figures"
BLOCKS_NAME = "blocks"


def any_figures_schema() -> Schema:
    """Figures of any name, for the published schema: their names belong to the sums."""
    return {
        "type": "object",
        "description": "What is known of the block, each figure with its unit.",
        "additionalProperties": {"type": ["string", "number"]},
    }


def figures_key(figures: Sequence[Figure]) -> Key[Row]:
    """The key that holds the figures of a block."""
    keys = tuple(Key(one.key, _FigureKind(one), f"{one.source}.", False) for one in figures)
    table = Table("What is known of the block.", keys)
    return Key(FIGURES_NAME, table, "What is known of the block, each figure with its unit.")


def blocks_key(figures: Sequence[Figure]) -> Key[tuple[Placed[Row], ...]]:
    """The key that holds every block."""
    row = Table("One block.", (BLOCK, TITLE, ABOUT, figures_key(figures)))
    return Key(BLOCKS_NAME, ListOf(row, 1, MOST_BLOCKS), "Every block.")


def blocks_table(figures: Sequence[Figure]) -> Table:
    """The keys of the file when the sums have these figures."""
    return Table("The trainer's blocks.", (blocks_key(figures),))


def read_blocks(
    path: Path,
    figures: Sequence[Figure],
    languages: Sequence[str] = LANGUAGES,
    shown_as: str | None = None,
    *,
    language: str = "en",
) -> tuple[tuple[Block, ...], list[Finding]]:
    """The blocks of a file that could be read, and every slip in it."""
    report = Report(language, languages)
    root = read_nodes(path, report, shown_as)
    row = None if root is None else blocks_table(figures).read(root, "", report)
    if row is None:
        return (), report.findings()
    return tuple(_blocks(row, figures, report)), report.findings()


def _blocks(root: Row, figures: Sequence[Figure], report: Report) -> Iterator[Block]:
    lines: dict[str, int] = {}
    for placed in root.get(blocks_key(figures)) or ():
        row = placed.value
        slug = row.get(BLOCK)
        if slug in lines:
            report.add(row.place_of(BLOCK), "named-twice", name=quoted(slug), line=lines[slug])
        elif slug is not None:
            lines[slug] = row.place_of(BLOCK).line
        if row.sound:
            yield _block(row, figures)


def _block(row: Row, figures: Sequence[Figure]) -> Block:
    given = row.need(figures_key(figures))
    names = {one.key: one.name for one in figures}
    about = row.get(ABOUT)
    return Block(
        slug=row.need(BLOCK),
        title=row.need(TITLE).words,
        about=about.words if about else {},
        figures={names[key]: value for key, value in given.values.items()},
        place=row.place,
        figure_places={names[key]: place for key, place in given.places.items()},
    )
