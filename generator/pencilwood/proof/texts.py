"""A case's words: every number is a placeholder, and every placeholder is known."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from difflib import get_close_matches

from pencilwood.cases.case import Case, Text
from pencilwood.places import Place
from pencilwood.proof.report import ProofReport
from pencilwood.words.filling import names_in, typed_number


def check_texts(case: Case, facts: Mapping[str, str], report: ProofReport) -> None:
    """No number typed by hand but in a title, no unknown placeholder, the same in all languages."""
    for text, place in _texts(case):
        places = case.story_places if text is case.story else {}
        for language, words in text.items():
            at = places.get(language, place)
            _check_names(words, at, facts, report)
            # Rows and vines have numbers, and a title is a name.
            if text is not case.title and (typed := typed_number(words)):
                report.add(at, "number-typed-by-hand", number=typed)
        used = {language: sorted(names_in(words)) for language, words in text.items()}
        if len({tuple(names) for names in used.values()}) > 1:
            listed = "; ".join(f"{lang}: {', '.join(names)}" for lang, names in used.items())
            report.add(place, "placeholders-differ", used=listed)


def _texts(case: Case) -> Iterator[tuple[Text, Place]]:
    yield case.title, case.place
    yield case.story, case.story_places.get("en", case.place)
    for one in case.answer:
        yield one.why, one.place
    for excuse in case.excuses:
        yield excuse.why, excuse.place
    if case.far_from_plan is not None:
        yield case.far_from_plan, case.places.get("far from plan", case.place)
    if case.photo is not None:
        yield case.photo.alt, case.photo.place


def _check_names(words: str, place: Place, facts: Mapping[str, str], report: ProofReport) -> None:
    for name in names_in(words):
        if name not in facts:
            near = get_close_matches(name, facts, n=1)
            report.add(place, "unknown-placeholder", name=name, near=near[0] if near else "-")
