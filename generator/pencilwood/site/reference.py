"""Reads the sources, the figures and the trade words of a handbook, and looks for idle sources."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from pencilwood.cases.case import Profile
from pencilwood.cases.figures_file import read_figures
from pencilwood.cases.glossary_file import read_glossary
from pencilwood.cases.reference import Reference
from pencilwood.cases.sources_file import read_sources
from pencilwood.pages.chapters.problems import Problems
from pencilwood.site.hints import Notes

SOURCES = "content/sources.yml"
FIGURES = "content/figures.yml"
GLOSSARY = "content/glossary.yml"


def read_reference(root: Path, profile: Profile, notes: Notes) -> Reference:
    """All three files; a handbook without chapters may have none of them."""
    languages, language = profile.languages, notes.language
    if not any((root / name).exists() for name in (SOURCES, FIGURES, GLOSSARY)):
        return Reference()
    sources, found = read_sources(root / SOURCES, languages, SOURCES, language=language)
    notes.findings.extend(found)
    figures, found = read_figures(root / FIGURES, sources, languages, FIGURES, language=language)
    notes.findings.extend(found)
    terms, found = read_glossary(root / GLOSSARY, sources, languages, GLOSSARY, language=language)
    notes.findings.extend(found)
    return Reference(sources, figures, terms)


def check_sources_used(reference: Reference, named: Iterable[str], notes: Notes) -> None:
    """Warn of each source that no figure, no word and no chapter rests on."""
    used = {
        *named,
        *(figure.source for figure in reference.figures.values()),
        *(term.source for term in reference.terms.values()),
    }
    problems = Problems(SOURCES, notes.language)
    for key, source in reference.sources.items():
        if key not in used:
            where = (source.place.line, source.place.column)
            problems.warn(where, "unused-source", found=key)
    notes.findings.extend(problems.findings)
