"""Every rule is written down whole: page, messages, bands and prices."""

from __future__ import annotations

import random
import re
import string
from collections import defaultdict
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from cane_vines import cane_vine, random_cane_vine
from case_files import usual_tool
from heads import head_vine
from pencilwood import rules
from pencilwood.cases.example_file import read_example
from pencilwood.rules import BANDS, FORM_BANDS, RULE_BY_NAME, RULES
from pencilwood.rules.rulebook import RULEBOOK
from pencilwood.rules.shapes import (
    Broken,
    BudTotal,
    CaneTied,
    CutInPass,
    Gap,
    PieceLeft,
    Rule,
    StubLeft,
    TallyTotal,
    ToolUse,
    WoundTotal,
    headings,
    sections,
)
from pencilwood.score.judge import judge, judge_cuts, target_for
from pencilwood.vine.bands import Band
from pencilwood.vine.forms import FORMS
from pencilwood.vine.model import Side, Vine
from pencilwood.vine.passes import PASSES, DoneCut, Stub, Tool
from pencilwood.vine.wood import ThinningOut, divide, uncut
from pencilwood.words import LANGUAGES
from rule_bench import LIMITS
from vines import SAMPLES, random_vine

NAMES = [rule.name for rule in RULES]
MESSAGES = sorted((rule.name, message) for rule in RULES for message in rule.messages)
HELPERS = {"__init__", "arm_rules", "shapes", "rulebook"}
STATUSES = {"published", "common practice, no source", "from memory"}
AN_HONEST_SOURCE = re.compile(
    r"common practice, no source|from memory|práctica común, sin fuente|de memoria"
    r"|Extension|Wines & Vines|Oxford Companion|University|This Old House|Commission|OENO One",
    re.IGNORECASE,
)


def bad_vines() -> list[Vine]:
    """The vine of each rule's page on which it is broken."""
    folder = Path(__file__).parents[2] / "content" / "rules"
    read = (read_example(folder / name / "bad.yml", name, tool_for=usual_tool)[0] for name in NAMES)
    return [example.vine for example in read if example is not None]


def every_fact() -> Iterator[object]:
    """Facts of every shape, wide enough for each message to be met."""
    yield from (Gap(mm) for mm in range(0, 400, 10))
    yield from (BudTotal(buds, 10, 20) for buds in range(30))
    yield from (WoundTotal(wounds) for wounds in range(10))
    yield from (
        CutInPass(one, buds, backwards)
        for one in PASSES
        for buds in (None, *range(1, 9))
        for backwards in (False, True)
    )
    yield from (ToolUse(mm, tool) for mm in range(1, 60) for tool in Tool)
    yield from (StubLeft(stub) for stub in Stub)
    yield from (
        TallyTotal(one.name, count, one.wanted)
        for form in FORMS
        for one in form.tallies
        for count in range(5)
    )
    yield from (
        CaneTied(side, has_room, others)
        for side in (None, Side.LEFT, Side.RIGHT)
        for has_room in (False, True)
        for others in range(2)
    )
    vines = [make() for make in SAMPLES.values()] + [cane_vine()]
    vines += [random_vine(random.Random(seed)) for seed in range(40)]
    vines += [random_cane_vine(random.Random(seed)) for seed in range(20)]
    vines += bad_vines()
    for vine in vines:
        parts = divide(vine)
        for number, part in enumerate(parts.parts):
            for state in range(part.most + 1):
                yield from (PieceLeft(parts, number, state, above) for above in (False, True))


@pytest.fixture(scope="module")
def met() -> Mapping[tuple[str, str], list[Broken]]:
    """Everything the rules have to say of those facts, by rule and message."""
    said: dict[tuple[str, str], list[Broken]] = defaultdict(list)
    for facts in every_fact():
        for rule in RULES:
            if isinstance(facts, rules.shapes.FACTS_OF_SHAPE[rule.shape]):
                for broken in rule.check(facts, LIMITS):
                    said[rule.name, broken.message].append(broken)
    return said


def placeholders(sentence: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(sentence) if name is not None}


def words_per_sentence(text: str) -> float:
    found = [one for one in re.split(r"[.;:?](?:\s|$)", text) if one.strip()]
    return sum(len(one.split()) for one in found) / len(found)


def test_every_module_is_in_the_list_and_the_list_is_in_order() -> None:
    folder = Path(rules.__file__).parent
    modules = {path.stem for path in folder.glob("*.py")} - HELPERS
    assert {name.replace("-", "_") for name in NAMES} == modules
    assert sorted(NAMES) == NAMES


def test_messages_and_prices_are_the_same_list() -> None:
    assert sorted(RULEBOOK) == MESSAGES


@pytest.mark.parametrize("price", RULEBOOK, ids=" ".join)
def test_a_fault_never_costs_less_the_further_it_goes(price: tuple[str, str]) -> None:
    points = [RULEBOOK[price].points(excess) for excess in range(2000)]
    assert points == sorted(points)
    assert points[1] > 0, "a fault that costs nothing teaches nothing"
    assert points[0] < 20, "a first small step past a limit must not decide a whole vine"


def test_only_wood_that_is_kept_can_break_a_must() -> None:
    musts = {rule for (rule, _), price in RULEBOOK.items() if price.must}
    assert musts == {"diseased-wood", "neither-spur-nor-cane", "spur-too-long", "wood-too-old"}
    gone = (facts for facts in every_fact() if isinstance(facts, PieceLeft) and facts.state == 0)
    for facts in gone:
        for name in musts:
            assert list(RULE_BY_NAME[name].check(facts, LIMITS)) == []


@pytest.mark.parametrize(("rule", "message"), MESSAGES)
def test_a_message_says_the_same_facts_in_every_language_and_no_others(
    met: Mapping[tuple[str, str], list[Broken]], rule: str, message: str
) -> None:
    sentences = RULE_BY_NAME[rule].messages[message]
    assert set(sentences) == set(LANGUAGES)
    assert met[rule, message], "no vine breaks this rule so"
    for broken in met[rule, message]:
        given = {name.removesuffix("_mm") for name in broken.facts}
        for sentence in sentences.values():
            assert placeholders(sentence) == given


def test_no_rule_says_what_it_has_no_message_for(
    met: Mapping[tuple[str, str], list[Broken]],
) -> None:
    assert sorted(met) == MESSAGES
    assert all(broken.excess >= 0 for said in met.values() for broken in said)


@pytest.mark.parametrize("rule", RULES, ids=NAMES)
def test_the_page_is_written_in_every_language(rule: Rule) -> None:
    assert set(rule.title) == set(rule.page) == set(LANGUAGES)
    for language, page in rule.page.items():
        assert tuple(page) == headings(language)
        for heading, text in page.items():
            assert "TODO" not in text
            assert text.endswith("."), f"{language}, {heading}"
            assert len(text.split()) >= 3, f"{language}, {heading}"


@pytest.mark.parametrize("rule", RULES, ids=NAMES)
def test_the_page_is_easy_to_read(rule: Rule) -> None:
    for language, page in rule.page.items():
        most = 15 if language == "en" else 18
        for heading in headings(language)[:-1]:
            assert words_per_sentence(page[heading]) <= most, heading


@pytest.mark.parametrize("rule", RULES, ids=NAMES)
def test_the_page_says_where_its_figures_come_from(rule: Rule) -> None:
    for language, page in rule.page.items():
        source = page[headings(language)[-1]]
        assert AN_HONEST_SOURCE.search(" ".join(source.split())), language


def test_a_page_without_a_heading_is_refused() -> None:
    with pytest.raises(ValueError, match="needs the headings"):
        sections("What it checks:\n    Wood.\n", headings("en"))


@pytest.mark.parametrize(
    "band",
    [*BANDS, *(band for bands in FORM_BANDS.values() for band in bands)],
    ids=lambda band: str(band.name),
)
def test_a_band_has_its_default_in_its_range_and_says_where_that_is_from(
    band: Band,
) -> None:
    assert 0 < band.lowest <= band.default <= band.highest
    assert band.lowest < band.highest
    assert band.kind in {"length", "count", "density"}
    assert band.status in STATUSES
    assert set(band.source) == set(LANGUAGES)
    assert all(band.source.values())
    assert not (band.status == "published" and "no source that we read" in band.source["en"])


def test_no_two_bands_share_a_name() -> None:
    assert len({band.name for band in BANDS}) == len(BANDS)


class _ReadLimits(dict[str, int]):
    """Limits that note which of them were asked for."""

    def __init__(self) -> None:
        super().__init__(LIMITS)
        self.asked: set[str] = set()

    def __getitem__(self, name: str) -> int:
        self.asked.add(name)
        return super().__getitem__(name)


def test_every_band_changes_something() -> None:
    limits = _ReadLimits()
    for make in SAMPLES.values():
        vine = make()
        parts = divide(vine)
        judge(uncut(parts), limits, target_for(vine, limits))
        done = [DoneCut(ThinningOut(part.name), PASSES[1]) for part in parts.parts]
        judge_cuts(parts, done, limits)
    target_for(head_vine(), limits)
    for facts in every_fact():
        for rule in RULES:
            if isinstance(facts, rules.shapes.FACTS_OF_SHAPE[rule.shape]):
                list(rule.check(facts, limits))
    assert limits.asked == set(LIMITS)


SINGULAR = re.compile(r"\b(?:[Tt]his (?!tool)|[Ee]st[ea] (?!herramienta))")


def test_what_is_told_of_several_cuts_at_once_speaks_of_no_single_one() -> None:
    for rule in RULES:
        for sentences in rule.messages.values() if rule.family == "cutting" else ():
            for told in sentences.values():
                assert not SINGULAR.search(told), told
