"""Reads the sources, the figures and the trade words of a handbook, and looks for idle sources."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from pencilwood.cases.case import Profile
from pencilwood.cases.figures_file import read_figures
from pencilwood.cases.glossary_file import read_glossary
from pencilwood.cases.reference import Figure, Reference, Source, Term
from pencilwood.cases.sources_file import read_sources
from pencilwood.pages.chapters.problems import Problems
from pencilwood.site.hints import Notes
from pencilwood.site.shared import in_turn

SOURCES = "content/sources.yml"
FIGURES = "content/figures.yml"
GLOSSARY = "content/glossary.yml"


def read_reference(root: Path, profile: Profile, notes: Notes) -> Reference:
    """The package's entries, and those of the handbook's own three files."""
    languages, language = profile.languages, notes.language
    sources: dict[str, Source] = {}
    figures: dict[str, Figure] = {}
    terms: dict[str, Term] = {}
    for path, shown in in_turn(root, SOURCES):
        more_sources, found = read_sources(path, languages, shown, language=language)
        notes.findings.extend(found)
        sources |= more_sources
    for path, shown in in_turn(root, FIGURES):
        more_figures, found = read_figures(path, sources, languages, shown, language=language)
        notes.findings.extend(found)
        figures |= more_figures
    for path, shown in in_turn(root, GLOSSARY):
        more_terms, found = read_glossary(path, sources, languages, shown, language=language)
        notes.findings.extend(found)
        terms |= more_terms
    return Reference(sources, figures, terms)


def check_sources_used(reference: Reference, named: Iterable[str], notes: Notes) -> None:
    """Warn of each source of the handbook that no figure, no word and no chapter rests on.

    The package's own serve chapters that a handbook may not have.
    """
    used = {
        *named,
        *(figure.source for figure in reference.figures.values()),
        *(term.source for term in reference.terms.values()),
    }
    problems = Problems(SOURCES, notes.language)
    for key, source in reference.sources.items():
        if key not in used and source.place.file == SOURCES:
            where = (source.place.line, source.place.column)
            problems.warn(where, "unused-source", found=key)
    notes.findings.extend(problems.findings)
