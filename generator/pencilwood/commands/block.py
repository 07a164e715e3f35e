"""`pencilwood block`: the sums of every block, of one block, or one sum by itself.

    pencilwood block                                  every block of content/blocks.yml
    pencilwood block mill-terrace --json              one block, for a machine
    pencilwood block buds --prunings "2.5 lb" --formula 20+10
    pencilwood block vines --row "8 ft" --vine "6 ft"

A single sum needs no file. Flags are the names of the figures in `blocks.yml` with hyphens, and
may be cut short as long as they stay clear. What `--json` prints is described, key by key, in
`block.schema.json` beside this module.
"""

from __future__ import annotations

import argparse
import json
import re
import sys
from collections.abc import Iterator, Mapping, Sequence

from pencilwood.block.answer import Answer, as_json, as_texts
from pencilwood.block.errors import BlockError
from pencilwood.block.field import Value
from pencilwood.block.field_list import FIELDS
from pencilwood.block.for_browser import usual_words
from pencilwood.block.questions import QUESTIONS, Question
from pencilwood.block.whole_block import Refusal, Worked, work_block
from pencilwood.cases.blocks_file import Block
from pencilwood.commands.help_page import OPTION, HelpParser, asked_language, page
from pencilwood.findings import has_errors, in_order
from pencilwood.pages.block_pages import figures_of
from pencilwood.site.blocks import BLOCKS, open_blocks
from pencilwood.site.handbook import own_profile
from pencilwood.site.hints import Notes
from pencilwood.units import UnitSystem
from pencilwood.words import LANGUAGES, say

FINE, FOUND, WRONG_USE = 0, 1, 2
FORMAT = 1
"""Goes up when a reader of the JSON would have to change."""

_US_UNITS = re.compile(r"(?<![a-z])(lb|oz|ft|in|ac|ton|in2|ft2)(?![a-z])")
_UNIT_SYSTEMS: tuple[UnitSystem, ...] = ("metric", "us")


def add_arguments(parser: HelpParser) -> None:
    """What `block` takes before it is known whether a block or a sum is meant."""
    what = parser.metavar("block-or-sum")
    parser.add_argument("what", nargs="?", metavar=what, help=parser.said("block.what"))
    parser.add_argument("--json", action="store_true", help=parser.said("json"))
    parser.add_argument("rest", nargs=argparse.REMAINDER, help=argparse.SUPPRESS)
    parser.epilog = f"{_list_of_sums(parser)}\n\n{parser.epilog}"


def _list_of_sums(parser: HelpParser) -> str:
    asked = ((name, say(parser.language, f"block.question.{name}")) for name in QUESTIONS)
    width = max(map(len, QUESTIONS))
    return "\n".join(
        (parser.said("block.sums"), *(f"  {name:{width}}  {text}" for name, text in asked))
    )


def run(given: argparse.Namespace) -> int:
    """Answer one sum, one block, or all blocks."""
    question = QUESTIONS.get(given.what)
    if question is not None:
        return _one_sum(question, _rest_of(given, question))
    return _blocks(_rest_of(given, None))


def _rest_of(given: argparse.Namespace, question: Question | None) -> argparse.Namespace:
    """The flags behind the name, which depend on the sum."""
    language = asked_language([OPTION, given.language, *given.rest])
    parser = HelpParser(
        language,
        prog=f"pencilwood block {given.what or ''}".strip(),
        description=say(language, f"block.question.{given.what}")
        if question
        else page(language, "block")["description"],
    )
    parser.add_usual(root=given.root, language=given.language)
    told, metavar = parser.said, parser.metavar
    parser.add_argument(
        "--units", choices=_UNIT_SYSTEMS, metavar=metavar("units"), help=told("block.units")
    )
    parser.add_argument("--json", action="store_true", default=given.json, help=told("json"))
    for field in question.fields if question else ():
        about = field.label("metric", language).replace("%", "%%")
        flag = f"--{field.key.replace(' ', '-')}"
        parser.add_argument(flag, dest=field.name, metavar=metavar("figure"), help=about)
    rest = parser.parse_args(given.rest)
    rest.what = given.what
    return rest


def _one_sum(question: Question, rest: argparse.Namespace) -> int:
    texts = {
        field.name: text
        for field in question.fields
        if (text := getattr(rest, field.name)) is not None
    }
    try:
        values = {name: FIELDS[name].read(text) for name, text in texts.items()}
        answer = question.work(values)
    except BlockError as error:
        return _refuse(_said_of(error, texts, rest.language))
    us = any(_US_UNITS.search(text) for text in texts.values())
    units: UnitSystem = rest.units or ("us" if us else "metric")
    if rest.json:
        _print_json({"format": FORMAT, "units": units, **as_json(answer, units)})
    else:
        _print_answer(answer, values, units, rest.language)
    return FINE


def _said_of(error: BlockError, texts: Mapping[str, str], language: str) -> str:
    """The refusal behind the flag that it is about."""
    field = FIELDS.get(error.field)
    if field is None:
        return error.told(language)
    told = field.trouble(texts[field.name], language) if field.name in texts else ""
    return f"--{field.key.replace(' ', '-')}: {told or error.told(language)}"


def _blocks(rest: argparse.Namespace) -> int:
    if not (rest.root / BLOCKS).is_file() and rest.what is None:
        return _refuse(say(rest.language, "cli.no-blocks", file=str(rest.root / BLOCKS)))
    notes = Notes(rest.language)
    profile, findings = own_profile(rest.root, rest.language)
    notes.findings.extend(findings)
    languages = profile.languages if profile else LANGUAGES
    blocks = open_blocks(rest.root, languages, notes)
    if has_errors(notes.findings):
        for finding in in_order(notes.findings):
            print(finding.render(rest.language))
        return FOUND
    names = [block.slug for block in blocks]
    if rest.what is not None and rest.what not in names:
        hint = notes.hint(rest.what, [*names, *QUESTIONS])
        return _refuse(say(rest.language, "cli.no-block", found=rest.what, hint=hint))
    chosen = [block for block in blocks if rest.what in (None, block.slug)]
    units: UnitSystem = rest.units or (profile.units if profile else "metric")
    _tell_blocks(chosen, units, rest)
    return FINE


def _tell_blocks(blocks: Sequence[Block], units: UnitSystem, rest: argparse.Namespace) -> None:
    worked = {block.slug: work_block(figures_of(block)) for block in blocks}
    if rest.json:
        told = [_block_json(block, worked[block.slug], units) for block in blocks]
        _print_json({"format": FORMAT, "units": units, "blocks": told})
        return
    for block in blocks:
        print(f"== {block.title.get(rest.language, block.slug)} ({block.slug})\n")
        for one in worked[block.slug]:
            if isinstance(one, Refusal):
                print(say(rest.language, f"block.question.{one.question}"))
                print(f"  {one.error.told(rest.language)}\n")
            else:
                _print_answer(one, figures_of(block), units, rest.language)


def _block_json(block: Block, worked: Sequence[Worked], units: UnitSystem) -> dict[str, object]:
    return {
        "block": block.slug,
        "title": dict(block.title),
        "sums": [
            {"question": one.question, "refused": one.error.problem}
            if isinstance(one, Refusal)
            else as_json(one, units)
            for one in worked
        ],
    }


def _print_answer(
    answer: Answer, given: Mapping[str, Value], units: UnitSystem, language: str
) -> None:
    texts = as_texts(answer, units, language)
    print(say(language, f"block.question.{answer.question}"))
    for label, text in texts["figures"]:
        print(f"  {label}: {text}")
    for (text,) in texts["remarks"]:
        print(f"  {text}")
    if texts["rows"]:
        print("  " + " | ".join(column for (column,) in texts["columns"]))
    for row in texts["rows"]:
        print("  " + " | ".join(row))
    print(f"  {say(language, 'cli.block.steps')}:")
    for (text,) in texts["steps"]:
        print(f"    {text}")
    for line in _usual_lines(QUESTIONS[answer.question], given, units, language):
        print(f"  {line}")
    limits = say(language, "block.form.limits")
    print(f"  {limits}: {say(language, f'block.limits.{answer.question}')}")
    print()


def _usual_lines(
    question: Question, given: Mapping[str, Value], units: UnitSystem, language: str
) -> Iterator[str]:
    for name in question.asked:
        field = FIELDS[name]
        if name not in given and field.default:
            label = field.label(units, language)
            status = say(language, f"block.status.{field.status}")
            known = ": ".join(part for part in (status, field.source_in(language)) if part)
            usual = say(language, "cli.block.usual")
            yield f"{label}: {usual_words(field, language, units)} ({usual}; {known})"


def _print_json(told: Mapping[str, object]) -> None:
    print(json.dumps(told, ensure_ascii=False, indent=2))


def _refuse(told: str) -> int:
    print(f"pencilwood: {told}", file=sys.stderr)
    return WRONG_USE
