"""Reads a trainer's blocks, and finds figures in them that do not fit together."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from pencilwood.block.field_list import FIELDS
from pencilwood.block.whole_block import Refusal, work_block
from pencilwood.cases.blocks_file import Block, read_blocks
from pencilwood.pages.block_pages import figures_of
from pencilwood.site.hints import Notes
from pencilwood.words import say

BLOCKS = "content/blocks.yml"


def open_blocks(root: Path, languages: Sequence[str], notes: Notes) -> tuple[Block, ...]:
    """The blocks of a handbook's folder; none where the trainer keeps none."""
    path = root / BLOCKS
    if not path.exists():
        return ()
    figures = tuple(FIELDS.values())
    blocks, findings = read_blocks(path, figures, languages, BLOCKS, language=notes.language)
    notes.findings.extend(findings)
    for block in blocks:
        _check(block, notes)
    return blocks


def _check(block: Block, notes: Notes) -> None:
    for worked in work_block(figures_of(block)):
        if isinstance(worked, Refusal) and worked.is_slip:
            place = block.figure_places.get(worked.error.field, block.place)
            question = say(notes.language, f"block.question.{worked.question}")
            why = worked.error.told(notes.language).rstrip(".")
            notes.add(place, "block-sum", question=question, why=why)
