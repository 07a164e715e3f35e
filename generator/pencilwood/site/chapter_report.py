"""Tells how hard each chapter is to read, and what the handbook's figures rest on."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from pencilwood.site.handbook import Opened
from pencilwood.words import say


def chapters_as_json(opened: Opened) -> list[dict[str, object]]:
    """The score of every chapter, for a machine."""
    return [
        {
            "chapter": one.chapter,
            "language": one.language,
            "for": one.audience,
            "words": one.size.words,
            "words_per_sentence": round(one.size.words_per_sentence, 1),
            one.scale.name: round(one.score, 1),
        }
        for one in opened.readings
    ]


def chapter_report(opened: Opened, language: str) -> Iterator[str]:
    """The same in lines, then one about figures and sources."""
    for one in sorted(opened.readings, key=lambda one: (one.audience, one.chapter, one.language)):
        yield say(
            language,
            f"chapters.report.{one.language}",
            chapter=one.chapter,
            audience=one.audience,
            score=f"{one.score:.1f}",
            band=one.band,
            words=one.size.words,
            mean=f"{one.size.words_per_sentence:.1f}",
        )
    if opened.handbook is not None:
        yield _about_sources(opened, language)


def _about_sources(opened: Opened, language: str) -> str:
    reference = opened.handbook.reference if opened.handbook else None
    if reference is None:
        return ""
    kinds = Counter(reference.sources[one.source].kind for one in reference.figures.values())
    read = Counter(one.read for one in reference.sources.values() if one.kind == "published")
    return say(
        language,
        "chapters.report.sources",
        figures=len(reference.figures),
        published=kinds["published"],
        practice=kinds["common practice"],
        memory=kinds["from memory"],
        sources=len(reference.sources),
        read=read["read"],
        second=read["second hand"],
        unread=read["not read"],
    )
