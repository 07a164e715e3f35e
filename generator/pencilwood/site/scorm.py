"""Exercises and quizzes of a handbook as SCORM 1.2 packages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from pencilwood.assets import asset_root
from pencilwood.packages.package import Package
from pencilwood.packages.scorm import Content, scorm_package
from pencilwood.packages.scorm.notes import case_notes, quiz_notes
from pencilwood.pages.desk import ASSETS
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.packaged import Packaged, packaged_case, packaged_quiz
from pencilwood.pages.style_sheet import STYLE_SHEET, package_style_sheet
from pencilwood.proof import CaseProof
from pencilwood.quiz.compiled import version_of
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.score.sheet import as_json
from pencilwood.site.exporting import Chosen


def scorm_packages(handbook: Handbook, chosen: Chosen, language: str) -> Iterator[Package]:
    """One package for each case and each quiz."""
    for case in chosen.cases:
        yield _case_package(handbook, case, language)
    for quiz in chosen.quizzes:
        yield _quiz_package(handbook, quiz, language)


def _case_package(handbook: Handbook, proof: CaseProof, language: str) -> Package:
    slug = proof.case.slug
    sheet = as_json(proof.sheet, slug, proof.plan.lost, handbook.profile.pass_mark)
    packaged = packaged_case(handbook, proof, language)
    notes = case_notes(proof, language)
    return _package("case", slug, str(sheet["version"]), language, packaged, notes)


def _quiz_package(handbook: Handbook, proof: QuizProof, language: str) -> Package:
    packaged = packaged_quiz(handbook, proof, language)
    notes = quiz_notes(proof, handbook.case_by_slug, packaged.rules, language)
    version = version_of(proof.made)
    return _package("quiz", proof.quiz.slug, version, language, packaged, notes)


def _package(
    kind: str, slug: str, version: str, language: str, packaged: Packaged, notes: Iterable[str]
) -> Package:
    pages = {path: html.encode() for path, html in packaged.pages.items()}
    root = asset_root()
    assets = {f"{ASSETS}/{name}": (root / name).read_bytes() for name in packaged.assets}
    style = {f"{ASSETS}/{STYLE_SHEET}": package_style_sheet()}
    content = Content(
        name=slug,
        kind=kind,
        language=language,
        title=packaged.title,
        version=version,
        start=packaged.start,
        files={**pages, **assets, **style, **packaged.pictures},
        notes=tuple(notes),
    )
    return scorm_package(content)
