"""What a build does with a file that was taken; nothing here may end in a traceback."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import cast

import markdown
from mkdocs.config.defaults import MkDocsConfig

from fuzz.ground import Ground
from pencilwood.block.whole_block import work_block
from pencilwood.cases.blocks_file import Block
from pencilwood.cases.case import Case, Profile, RuleExample
from pencilwood.cases.case_writer import case_title, write_case
from pencilwood.cases.field_columns import SHEET_FORMS
from pencilwood.cases.field_writer import field_sheet
from pencilwood.cases.profile_file import EMPLOYER_FIELDS
from pencilwood.cases.quiz import Quiz
from pencilwood.cases.reference import Figure, Source, Term
from pencilwood.cases.safety import SafetyNote
from pencilwood.cases.settings_file import PLUGINS, Settings
from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine
from pencilwood.findings import Finding, has_errors
from pencilwood.pages.block_pages import block_page, figures_of
from pencilwood.pages.case_page import case_page
from pencilwood.pages.chapters.chapter_page import filled_in
from pencilwood.pages.chapters.vine_states import STATES
from pencilwood.pages.desk import Desk
from pencilwood.pages.figure_words import figure_words
from pencilwood.pages.handbook import Chapter, Handbook
from pencilwood.pages.quiz_pages import quiz_page
from pencilwood.pages.renewal_page import renewal_page
from pencilwood.pages.rule_pages import rule_page
from pencilwood.pages.safety_page import safety_page
from pencilwood.pages.sources_page import sources_page
from pencilwood.pages.winters_page import winters_page
from pencilwood.pages.words_page import words_page
from pencilwood.places import Place
from pencilwood.proof import CaseProof, prove_case, prove_example
from pencilwood.proof.draft import draft_case
from pencilwood.quiz.making import make_quiz, vines_of
from pencilwood.quiz.quiz_proof import prove_quiz
from pencilwood.rules import RULE_BY_NAME
from pencilwood.site.settings import broke_off, wrong_value
from pencilwood.vine.model import Vine
from pencilwood.worksheets.case_papers import answer_key, worksheet
from pencilwood.worksheets.house_papers import wall_poster

Found = Sequence[Finding]


def use_case(read: object, on: Ground, language: str) -> Found:
    """Prove it, draw it, make its page."""
    case = cast("Case", read)
    proof = prove_case(case, on.profile, language)
    write_case(case, language)
    _show(proof, on, language, STATES)
    if not has_errors(proof.findings):
        wall_poster(proof, on.profile, language)
        worksheet(proof, on.profile, language)
        answer_key(proof, on.profile, language)
    return proof.findings


def _show(proof: CaseProof, on: Ground, language: str, states: Sequence[str]) -> None:
    left = proof.plan.left
    describe_vine(proof.parts, left, language, on.profile.units)
    handbook = replace(on.handbook, cases=(proof,))
    case_page(handbook, proof, language)
    if not has_errors(proof.findings):
        _draw_near(proof, handbook, language, states)
    if proof.case.three_winters:
        winters_page(handbook, proof, language)
    # Of an arm that is not there, or not of this kind, a finding tells and no page is made.
    found = {one.name for one in proof.findings}
    if proof.case.renewed_arm and not found & {"form-cannot-be-renewed", "no-arm-to-renew"}:
        renewal_page(handbook, proof, language)


def _draw_near(proof: CaseProof, handbook: Handbook, language: str, states: Sequence[str]) -> None:
    """Its vine in a chapter, from near."""
    name = proof.case.slug
    calls = (f'{{{{ draw("{name}", state="{one}", caption="A") }}}}' for one in states)
    _fill_in("\n\n".join(calls), handbook, language)


def _fill_in(text: str, handbook: Handbook, language: str) -> str:
    chapter = Chapter("a", language, "A", text, Place("a.md"))
    return filled_in(Desk(handbook, "a", language), chapter)


def use_example(read: object, on: Ground, language: str) -> Found:
    """Prove it, show it beside the other of its rule, and make a whole case of its vine."""
    example = cast("RuleExample", read)
    found = prove_example(example, on.profile, language)
    if not has_errors(found):
        rule = RULE_BY_NAME[example.rule]
        shown = {**on.handbook.examples[rule.name], example.kind: example}
        rule_page(replace(on.handbook, examples={rule.name: shown}), rule, language)
    use_vine(example.vine, on, language)
    return found


def use_vine(read: object, on: Ground, language: str) -> Found:
    """Plan it, prove it with the plan for answer, draw it, write its sheet."""
    vine = cast("Vine", read)
    names = ("en", "es")
    case = draft_case(vine, on.profile, "a-vine", case_title("a-vine", names), on.safety)
    write_case(case, language)
    if vine.form.name in SHEET_FORMS:
        field_sheet(vine, language)
    proof = prove_case(case, on.profile, language)
    # All of its pictures would take a large vine too long.
    _show(proof, on, language, ("plan",))
    return ()  # They stand at places of a file that was never written.


def use_quiz(read: object, on: Ground, language: str) -> Found:
    """Make its questions, prove it, make its page."""
    quiz = cast("Quiz", read)
    vines = on.handbook.case_by_slug
    if any(vine not in vines for vine in vines_of(quiz)):
        return ()
    made, findings = make_quiz(quiz, vines, on.profile, language)
    if made is None:
        assert findings, "a quiz that cannot be made, and no reason"
        return findings
    proof = prove_quiz(made, vines, language)
    quiz_page(on.handbook, proof, language)
    return (*findings, *proof.findings)


_ALL_TO_FILL = "\n\n".join(f'{one}: {{{{ to_fill("{one}") }}}}' for one in EMPLOYER_FIELDS)


def use_profile(read: object, on: Ground, language: str) -> Found:
    """Prove a vine by its figures, and draw it in its units."""
    profile = cast("Profile", read)
    proof = prove_case(on.case().case, profile, language)
    handbook = replace(on.handbook, profile=profile, cases=(proof,))
    for spoken in profile.languages:
        draw_vine(
            WoodShown(proof.parts),
            Paper("vine", spoken, title="A", description="B", units=profile.units),
        )
        sources_page(handbook, spoken)
        case_page(handbook, proof, spoken)
        _fill_in(_ALL_TO_FILL, handbook, spoken)
    return ()  # They stand in another file.


def use_blocks(read: object, on: Ground, language: str) -> Found:
    """Work out every sum and make the pages."""
    blocks = cast("tuple[Block, ...]", read)
    handbook = replace(on.handbook, blocks=blocks)
    for block in blocks[:5]:
        work_block(figures_of(block))
        block_page(handbook, block, language)
    return ()


def use_safety(read: object, on: Ground, language: str) -> Found:
    """Make their page."""
    safety_page(replace(on.handbook, notes=cast("tuple[SafetyNote, ...]", read)), language)
    return ()


def use_sources(read: object, on: Ground, language: str) -> Found:
    """Make their page; a source that a figure needs may be gone, as a finding elsewhere says."""
    sources = cast("Mapping[str, Source]", read)
    known = {**on.handbook.reference.sources, **sources}
    reference = replace(on.handbook.reference, sources=known)
    sources_page(replace(on.handbook, reference=reference), language)
    return ()


def use_figures(read: object, on: Ground, language: str) -> Found:
    """Show each in both kinds of units."""
    for units in ("metric", "us"):
        profile = replace(on.profile, units=cast("object", units))  # type: ignore[arg-type]
        desk = Desk(replace(on.handbook, profile=profile), "a", language)
        for figure in cast("Mapping[str, Figure]", read).values():
            figure_words(desk, figure)
    return ()


def use_glossary(read: object, on: Ground, language: str) -> Found:
    """Make its page, and mark its words in a chapter."""
    terms = cast("Mapping[str, Term]", read)
    handbook = replace(on.handbook, reference=replace(on.handbook.reference, terms=terms))
    words_page(handbook, language)
    text = "A spur is cut short. Canes grow from a spur on the cordon."
    chapter = Chapter("a", "en", "A", text, on.case().case.place, "worker")
    filled_in(Desk(handbook, "a", "en"), chapter)
    return ()


@dataclass(frozen=True)
class Given:
    """Settings that were taken, and their file."""

    path: Path
    settings: Settings


def use_settings(read: object, on: Ground, language: str) -> Found:
    """Hand them to the site generator: what it clears and reads stays what a handbook means."""
    given = cast("Given", read)
    config = MkDocsConfig(config_file_path=str(given.path))
    try:
        with given.path.open("rb") as file:
            config.load_file(file)
        wrong, _ = config.validate()
    except Exception as error:  # It breaks off in many ways; a build tells each in our words.
        return [broke_off(f"{type(error).__name__}: {error}", given.settings, language)]
    if wrong:
        return [wrong_value(key, str(why), given.settings, language) for key, why in wrong]
    root = given.path.parent.resolve()
    site = Path(config.site_dir).resolve()
    assert Path(config.docs_dir).resolve() == root / "content/chapters"
    assert site.is_relative_to(root)
    assert site.relative_to(root).parts[:1] not in ((), ("content",), ("quizzes",))
    assert not config.hooks
    assert config.theme.name == "material"
    assert config.theme.custom_dir is None
    assert {name.rpartition("/")[2] for name in config.plugins} == set(PLUGINS)
    return ()


def use_chapter(read: object, on: Ground, language: str) -> Found:
    """Fill in what was checked, and turn it into HTML."""
    chapter = cast("Chapter", read)
    filled = filled_in(Desk(on.handbook, chapter.name, chapter.language), chapter)
    markdown.markdown(filled, extensions=["admonition", "attr_list", "tables", "toc"])
    return ()
