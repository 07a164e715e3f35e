"""What the package lends every handbook, and how a trainer's own files go before it."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from pencilwood.cases.case import Profile
from pencilwood.cases.profile_file import read_profile
from pencilwood.rules import BANDS, FORM_BANDS
from pencilwood.site.handbook import PROFILE, all_safety_notes, open_handbook
from pencilwood.site.hints import Notes
from pencilwood.site.reference import read_reference
from pencilwood.site.rule_examples import read_examples

OWN_WORD = """\
spur:
  en: {word: knob, plural: knobs, meaning: What we call a spur.}
  es: {word: pitón, plural: pitones, meaning: Así llamamos al pulgar.}
  source: grandmother
hanger:
  en: {word: hanger, plural: hangers, meaning: A cane that hangs.}
  es: {word: colgante, plural: colgantes, meaning: Un sarmiento que cuelga.}
  source: grandmother
"""
OWN_SOURCE = 'grandmother: {title: "Grandmother", kind: common practice, read: not read}\n'


@pytest.fixture
def root(started: Path, tmp_path: Path) -> Path:
    """A new handbook that a test may change."""
    return Path(shutil.copytree(started / "content", tmp_path / "book" / "content")).parent


@pytest.fixture
def profile(root: Path) -> Profile:
    found, _ = read_profile(root / PROFILE, BANDS, form_bands=FORM_BANDS)
    assert found is not None
    return found


def test_own_words_and_sources_go_before_ours(root: Path, profile: Profile) -> None:
    (root / "content" / "glossary.yml").write_text(OWN_WORD, "utf-8")
    (root / "content" / "sources.yml").write_text(OWN_SOURCE, "utf-8")
    notes = Notes("en")
    reference = read_reference(root, profile, notes)
    assert notes.findings == []
    assert reference.terms["spur"].words["en"].word == "knob"
    assert reference.terms["hanger"].words["es"].plural == "colgantes"
    assert reference.terms["cane"].words["en"].word == "cane", "ours stay"


def test_a_slip_in_an_own_file_is_told_at_its_place(root: Path, profile: Profile) -> None:
    (root / "content" / "glossary.yml").write_text(OWN_WORD, "utf-8")
    notes = Notes("en")
    read_reference(root, profile, notes)
    assert [str(finding.place) for finding in notes.findings] == [
        "content/glossary.yml:4:3",
        "content/glossary.yml:8:3",
    ]


def test_an_own_safety_note_goes_before_ours(root: Path) -> None:
    folder = root / "content" / "safety"
    folder.mkdir()
    (folder / "notes.yml").write_text(
        """\
notes:
  - note: cold
    signal: caution
    about: you
    title: {en: Frost at the gate, es: Helada en la puerta}
    advice:
      - say: {en: Warm up in the shed., es: Caliéntese en el galpón.}
        status: from memory
""",
        "utf-8",
    )
    notes, findings = all_safety_notes(root, ("en", "es"))
    assert findings == ()
    titles = {note.name: note.title["en"] for note in notes}
    assert titles["cold"] == "Frost at the gate"
    assert len(titles) > 5


def test_an_example_that_does_not_fit_the_trainers_figures_is_left_out(
    root: Path, profile: Profile
) -> None:
    """The package's good vine has spurs that stand closer than this trainer allows."""
    wide = {"spur spacing at least": 250}
    of_forms = {name: {**limits, **wide} for name, limits in profile.form_limits.items()}
    tight = replace(profile, limits={**profile.limits, **wide}, form_limits=of_forms)
    notes = Notes("en")
    examples = read_examples(root, tight, notes)
    assert "good" not in examples.get("crowded-spurs", {})
    assert examples["old-stub"]["good"].kind == "good", "the others stay"
    # It is in no file of the trainer's, so there is nothing that they could put right.
    assert notes.findings == []


def test_an_own_example_goes_before_ours(root: Path, profile: Profile, project: Path) -> None:
    folder = root / "content" / "rules" / "old-stub"
    folder.mkdir(parents=True)
    ours = (project / "content" / "rules" / "old-stub" / "good.yml").read_text("utf-8")
    caption = ours[ours.index("caption:") : ours.index("vine:")]
    own = ours.replace(caption, "caption: {en: Ours., es: La nuestra.}\n")
    (folder / "good.yml").write_text(own, "utf-8")
    notes = Notes("en")
    examples = read_examples(root, profile, notes)
    assert notes.findings == []
    assert examples["old-stub"]["good"].caption["en"] == "Ours."
    assert examples["old-stub"]["bad"].place.file == "pencilwood/content/rules/old-stub/bad.yml"


@pytest.mark.parametrize(("language", "says"), [("en", "has no good vine"), ("es", "le falta")])
def test_a_rule_without_an_example_anywhere_is_an_error(
    root: Path,
    profile: Profile,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    language: str,
    says: str,
) -> None:
    monkeypatch.setattr("pencilwood.site.shared.handbook_root", lambda: tmp_path / "nothing")
    notes = Notes(language)
    assert read_examples(root, profile, notes) == {}
    told = [finding.render() for finding in notes.findings]
    assert any(line.startswith("content/rules/old-stub/good.yml:1:1: ") for line in told)
    assert says in told[0]
    assert {finding.level for finding in notes.findings} == {"error"}


def test_texts_may_stay_in_a_language_that_is_not_used_any_more(root: Path) -> None:
    """Who drops Spanish from the profile need not go through every vine."""
    profile = root / PROFILE
    profile.write_text(profile.read_text("utf-8").replace("[en, es]", "[en]"), "utf-8")
    shutil.rmtree(root / "content" / "chapters" / "es")
    assert [finding.render() for finding in open_handbook(root).findings] == []
