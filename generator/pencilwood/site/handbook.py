"""Reads a trainer's folder into a handbook and runs every proof."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from pencilwood.cases.case import Case, Profile
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.profile_file import read_profile
from pencilwood.cases.safety import SafetyNote
from pencilwood.cases.safety_file import read_safety
from pencilwood.findings import Finding, has_errors, in_order
from pencilwood.kept import keep_in
from pencilwood.pages.chapters.checks import Reading
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.teaching_order import in_teaching_order
from pencilwood.places import Place
from pencilwood.proof import CaseProof, proof_findings
from pencilwood.rules import BANDS, FORM_BANDS, RULE_BY_NAME
from pencilwood.rules.wrong_tool import tool_for
from pencilwood.site.blocks import open_blocks
from pencilwood.site.case_files import CASES, CaseFile, find_cases
from pencilwood.site.chapter_checks import check_chapters
from pencilwood.site.chapters import read_chapters
from pencilwood.site.folders import CONFIG, look_over, shown_name
from pencilwood.site.hints import Notes
from pencilwood.site.photos import open_photos
from pencilwood.site.quizzes import open_quizzes
from pencilwood.site.reference import read_reference
from pencilwood.site.remembered import ReadCase, remembered
from pencilwood.site.rule_examples import read_examples
from pencilwood.site.settings import look_at_settings
from pencilwood.site.shared import in_turn
from pencilwood.site.workers import spread

PROFILE = "content/profile.yml"
SAFETY = "content/safety/notes.yml"


@dataclass(frozen=True)
class Opened:
    """What could be read of a handbook, and everything found wrong in it."""

    handbook: Handbook | None
    """None while something is wrong that stops a build."""
    findings: tuple[Finding, ...]
    proofs: tuple[CaseProof, ...] = ()
    """The cases that could be read, proved, in teaching order."""
    readings: tuple[Reading, ...] = ()
    """How hard each chapter is to read."""


def open_handbook(root: Path, language: str = "en") -> Opened:
    """Read and prove a whole handbook; findings are worded in `language`."""
    keep_in(root)
    return _Opening(root, Notes(language)).all()


def own_profile(root: Path, language: str) -> tuple[Profile | None, list[Finding]]:
    """The profile of a handbook's folder, with every figure that our rules go by.

    None as well where something leads out of the folder or cannot be opened.
    """
    barred = look_over(root, language)
    return (None, barred) if barred else _read_profile(root, language)


def _read_profile(root: Path, language: str) -> tuple[Profile | None, list[Finding]]:
    path = root / PROFILE
    return read_profile(path, BANDS, PROFILE, language=language, form_bands=FORM_BANDS)


def read_one_case(
    root: Path, slug: str, language: str = "en"
) -> tuple[Profile | None, Case | None, tuple[Finding, ...]]:
    """A single case and the profile it belongs to, unproved."""
    opening = _Opening(root, Notes(language))
    profile = opening.profile()
    case = None
    if profile is not None:
        names = [note.name for note in opening.safety(profile)]
        there = {file.slug: file for file in find_cases(root, Notes(language))}
        file = there.get(slug, CaseFile(root / CASES / f"{slug}.yml", slug))
        case = opening.case(file, profile, names)
    return profile, case, tuple(in_order(opening.notes.findings))


def all_safety_notes(
    root: Path, languages: Sequence[str], language: str = "en"
) -> tuple[tuple[SafetyNote, ...], tuple[Finding, ...]]:
    """The package's safety notes and the handbook's own, and every slip in them."""
    by_name: dict[str, SafetyNote] = {}
    findings: list[Finding] = []
    for path, shown in in_turn(root, SAFETY):
        notes, found = read_safety(path, languages, shown, language=language)
        by_name |= {note.name: note for note in notes}
        findings += found
    return tuple(by_name.values()), tuple(findings)


@dataclass(frozen=True)
class _Opening:
    root: Path
    notes: Notes

    def all(self) -> Opened:
        profile = self.profile()
        if profile is None:
            self._blocks_beside_a_wrong_profile()
            return self._opened(None, ())
        safety = self.safety(profile)
        names = [note.name for note in safety]
        files = self._case_files()
        read = [self.case(file, profile, names) for file in files]
        proofs = self.proved([case for case in read if case is not None], profile)
        by_slug = {proof.case.slug: proof for proof in proofs}
        slugs = tuple(file.slug for file in files)
        quiz_proofs = open_quizzes(self.root, profile, slugs, by_slug, self.notes)
        chapters, pictures = read_chapters(self.root, profile.languages, self.notes)
        handbook = Handbook(
            profile,
            proofs,
            read_examples(self.root, profile, self.notes),
            quiz_proofs,
            safety,
            chapters,
            pictures,
            reference=read_reference(self.root, profile, self.notes),
            blocks=open_blocks(self.root, profile.languages, self.notes),
            photos=open_photos(self.root, [proof.case for proof in proofs], self.notes),
        )
        unread = set(slugs) - set(handbook.case_by_slug)
        self._settings()
        readings = check_chapters(handbook, self.notes, unread)
        return self._opened(handbook, proofs, readings)

    def _opened(
        self,
        handbook: Handbook | None,
        proofs: tuple[CaseProof, ...],
        readings: tuple[Reading, ...] = (),
    ) -> Opened:
        findings = tuple(in_order(self.notes.findings))
        return Opened(None if has_errors(findings) else handbook, findings, proofs, readings)

    def profile(self) -> Profile | None:
        if not self.root.is_dir():
            self.notes.add(Place(str(self.root)), "no-such-folder")
            return None
        barred = look_over(self.root, self.notes.language)
        if barred:
            self.notes.findings.extend(barred)
            return None
        if not (self.root / PROFILE).exists():
            self.notes.add(Place(str(self.root)), "no-content")
            return None
        profile, findings = _read_profile(self.root, self.notes.language)
        self.notes.findings.extend(findings)
        return profile

    def _blocks_beside_a_wrong_profile(self) -> None:
        """Its figures are the trainer's as well and wait for nothing: all slips come at once."""
        if any(one.place.file == PROFILE for one in self.notes.findings):
            # Which languages the handbook has, nobody knows yet; none is missed.
            open_blocks(self.root, (), self.notes)

    def _settings(self) -> None:
        """A folder without settings can be checked all the same, only not be built."""
        if (self.root / CONFIG).exists():
            _, findings = look_at_settings(self.root, self.notes.language)
            self.notes.findings.extend(findings)

    def safety(self, profile: Profile) -> tuple[SafetyNote, ...]:
        notes, findings = all_safety_notes(self.root, profile.languages, self.notes.language)
        self.notes.findings.extend(findings)
        return notes

    def _case_files(self) -> tuple[CaseFile, ...]:
        files = find_cases(self.root, self.notes)
        if not files:
            self.notes.add(Place(CASES), "no-case")
        return files

    def case(self, file: CaseFile, profile: Profile, safety_names: list[str]) -> Case | None:
        facts = [file, profile.languages, profile.limits, profile.units, safety_names]
        shown = shown_name(self.root, file.path)
        read = partial(self._read, file, shown, profile, safety_names)
        case, findings = remembered(file.path, [shown, self.notes.language, *facts], read)
        self.notes.findings.extend(findings)
        return case

    def _read(
        self, file: CaseFile, shown: str, profile: Profile, safety_names: list[str]
    ) -> ReadCase:
        case, findings = read_case(
            file.path,
            CaseSurroundings(
                profile.languages,
                list(RULE_BY_NAME),
                safety_names,
                partial(tool_for, limits=profile.limits),
                profile.units,
            ),
            shown,
            language=self.notes.language,
            from_others=bool(file.shared_in),
        )
        if case is not None:
            case = replace(case, slug=file.slug, shared_in=file.shared_in)
        return case, findings

    def proved(self, cases: list[Case], profile: Profile) -> tuple[CaseProof, ...]:
        in_turn = in_teaching_order(cases)
        one = partial(proof_findings, profile=profile, language=self.notes.language)
        # Only what was found comes back from other cores, not a copy of every case.
        proofs = tuple(
            CaseProof(case, profile, found)
            for case, found in zip(in_turn, spread(one, in_turn), strict=True)
        )
        for proof in proofs:
            self.notes.findings.extend(proof.findings)
        return proofs
