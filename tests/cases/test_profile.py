"""The trainer's profile: what it holds, and what is said of its slips."""

from pathlib import Path

import pytest

from case_files import lines, sample, with_slip
from pencilwood.cases import profile_file
from pencilwood.cases.case import Profile
from pencilwood.cases.profile_file import read_profile
from pencilwood.findings import Finding
from pencilwood.places import Place
from pencilwood.vine.bands import Band
from pencilwood.vine.model import Form

BANDS = (
    Band(
        "spur spacing at least",
        "length",
        100,
        80,
        150,
        "published",
        {"en": "A handbook", "es": "Un manual"},
    ),
    Band("buds per spur at most", "count", 3, 1, 2, "from memory", {"en": "Larkfell"}),
    Band("blank at most", "length", 300, 200, 400, "common practice, no source", {"en": "growers"}),
)


def read(text: str, folder: Path, language: str = "en") -> tuple[Profile | None, list[Finding]]:
    (folder / "profile.yml").write_text(text, encoding="utf-8")
    return read_profile(folder / "profile.yml", BANDS, "profile.yml", language=language)


def test_a_good_profile(tmp_path: Path) -> None:
    profile, findings = read(sample("profile.yml"), tmp_path)
    assert lines(findings) == []
    assert profile == Profile(
        vineyard="Larkfell",
        languages=("en", "es"),
        units="metric",
        limits={
            "spur spacing at least": 90,
            "buds per spur at most": 2,
            "blank at most": 300,
        },
        pass_mark=80,
        place=Place("profile.yml", 2, 1),
        plan_distance=12,
        budbreak_percent=85,
        latent_shoots_per_wound=2,
        site_address="https://larkfell.example/handbook/",
    )


def test_what_may_be_left_out(tmp_path: Path) -> None:
    text = "vineyard: Larkfell\nlanguages: [es]\nunits: us\npass mark: 75\n"
    profile, findings = read(text, tmp_path)
    assert lines(findings) == []
    assert profile is not None
    assert (profile.plan_distance, profile.budbreak_percent) == (10, 90)
    assert profile.limits == {band.name: band.default for band in BANDS}


def test_nothing_shall_be_allowed(tmp_path: Path) -> None:
    """A zero that the trainer gives is no reason to take the usual figure."""
    text = with_slip("plan distance: 12", "plan distance: 0", "profile.yml")
    profile, _ = read(text.replace("wound: 2", "wound: 0"), tmp_path)
    assert profile is not None
    assert (profile.plan_distance, profile.latent_shoots_per_wound) == (0, 0)


def test_a_band_outside_its_range_is_a_warning(tmp_path: Path) -> None:
    text = with_slip("at least: 9 cm", "at least: 20 cm", "profile.yml")
    profile, findings = read(text, tmp_path)
    assert profile is not None
    assert profile.limits["spur spacing at least"] == 200
    assert lines(findings) == [
        'profile.yml:11:3: warning: "spur spacing at least" is outside the usual range; '
        "usual: 8 cm to 15 cm (published: A handbook); found 20 cm (outside-the-range)"
    ]
    (spanish,) = read(text, tmp_path, "es")[1]
    assert spanish.expected == "habitual: de 8 cm a 15 cm (publicado: Un manual)"


SLIPS = [
    # A band is misspelt.
    (
        "spur spacing at least",
        "spur spacing at leest",
        '11:3: "spur spacing at leest" is not known here; did you mean "spur spacing at least"? '
        "(unknown-key)",
    ),
    # A band of lengths without its unit.
    (
        "at least: 9 cm",
        "at least: 9",
        '11:26: "spur spacing at least" has no unit; expected a length with its unit, '
        'such as 10 cm; found "9" (no-unit)',
    ),
    # A length for a band of counts.
    (
        "at most: 2",
        "at most: 2 cm",
        '12:26: "buds per spur at most" is not a number that fits; '
        'expected a whole number from 0 to 10000; found "2 cm" (not-such-a-number)',
    ),
    # A language that the program does not speak.
    (
        "[en, es]",
        "[en, fr]",
        '3:17: "languages" cannot be "fr"; expected one of en, es (not-a-choice)',
    ),
    # One language twice.
    (
        "[en, es]",
        "[en, en]",
        '3:17: "en" is named twice; expected it once; the first stands on line 3 (named-twice)',
    ),
    # Units that nobody measures in.
    (
        "units: metric",
        "units: imperial",
        '4:8: "units" cannot be "imperial"; expected one of metric, us (not-a-choice)',
    ),
    # More than all points.
    (
        "pass mark: 80",
        "pass mark: 101",
        '5:12: "pass mark" is not a number that fits; expected a whole number from 1 to 100; '
        'found "101" (not-such-a-number)',
    ),
    # An address that is none.
    (
        "https://larkfell.example/handbook/",
        "larkfell.example",
        '6:15: "site address" is not a web address; expected it to begin with https:// or http://; '
        'found "larkfell.example" (not-an-address)',
    ),
    # A share without its sign.
    (
        "budbreak: 85 %",
        "budbreak: 0.85",
        '8:11: "budbreak" is not a count that fits; expected 1 to 100 with its word, '
        'such as 90 %; found "0.85" (not-so-many)',
    ),
    # No name for the vineyard.
    ("vineyard: Larkfell\n", "", '2:1: "vineyard" is missing (missing-key)'),
]


@pytest.mark.parametrize(("old", "new", "said"), SLIPS)
def test_slips(tmp_path: Path, old: str, new: str, said: str) -> None:
    profile, findings = read(with_slip(old, new, "profile.yml"), tmp_path)
    assert profile is None
    assert lines(findings) == [f"profile.yml:{said}"]
    assert read(with_slip(old, new, "profile.yml"), tmp_path, "es")[1][0].what != findings[0].what


def test_an_example_of_a_length_is_in_the_units_of_the_file(tmp_path: Path) -> None:
    text = with_slip("at least: 9 cm", "at least: 9", "profile.yml")
    for units, example in (("metric", "such as 10 cm;"), ("us", "such as 4 in;")):
        (finding,) = read(text.replace("units: metric", f"units: {units}"), tmp_path)[1]
        assert example in finding.render()


def test_a_missing_profile_is_told(tmp_path: Path) -> None:
    profile, findings = read_profile(tmp_path / "profile.yml", BANDS, "profile.yml")
    assert profile is None
    assert lines(findings) == ["profile.yml:1:1: there is no such file (missing-file)"]


OWN_BAND = Band(
    "blank at most", "length", 90, 50, 200, "from memory", {"en": "made up for this test"}
)
"""A figure that a made-up form sets otherwise than the handbook does for all vines."""

FORM_FIGURES = {
    "own figure stands before the shared one": ("", 90),
    "even where the trainer set the shared one": ("bands: {blank at most: 25 cm}", 90),
    "the trainer's word on the form stands before all": (
        "bands: {blank at most: 25 cm}\nforms: {bush: {blank at most: 7 cm}}",
        70,
    ),
    "other forms keep what they had": ("forms: {bush: {blank at most: 7 cm}}", 70),
}
HEAD = "vineyard: Larkfell\nlanguages: [en]\nunits: metric\npass mark: 80\n"


@pytest.mark.parametrize(("given", "blank_mm"), FORM_FIGURES.values(), ids=FORM_FIGURES)
def test_figures_of_one_form(given: str, blank_mm: int, tmp_path: Path) -> None:
    path = tmp_path / "profile.yml"
    path.write_text(f"{HEAD}{given}\n", encoding="utf-8")
    profile, _ = read_profile(path, BANDS, form_bands={"bush": [OWN_BAND]})
    assert profile is not None
    shared_mm = 250 if "bands" in given else 300
    bush, cordon = (profile.limits_of(Form(name, ())) for name in ("bush", "cordon"))
    assert profile.limits["blank at most"] == cordon["blank at most"] == shared_mm
    assert bush["blank at most"] == blank_mm
    assert bush["spur spacing at least"] == 100


def test_a_form_that_is_none(tmp_path: Path) -> None:
    path = tmp_path / "profile.yml"
    path.write_text(f"{HEAD}forms: {{bosh: {{blank at most: 7 cm}}}}\n", encoding="utf-8")
    profile, findings = read_profile(path, BANDS, "profile.yml", form_bands={"bush": [OWN_BAND]})
    assert profile is None
    (told,) = lines(findings)
    assert told.startswith("profile.yml:5:9: ")
    assert '"bush"' in told


@pytest.mark.parametrize(
    ("language", "said"),
    [
        (
            "en",
            "the program does not speak this language in full yet; expected every sentence in its "
            "words/*.json; found that 2 are missing, the first: cli.built (language-not-whole)",
        ),
        (
            "es",
            "el programa todavía no habla este idioma por completo; se esperaban todas las frases "
            "en sus words/*.json; faltan 2, la primera: cli.built (language-not-whole)",
        ),
    ],
)
def test_a_language_with_few_words_is_told_before_a_page_breaks_off(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, language: str, said: str
) -> None:
    missing = {"es": ("cli.built", "pages.home")}
    monkeypatch.setattr(profile_file, "unwritten", lambda one: missing.get(one, ()))
    profile, findings = read(sample("profile.yml"), tmp_path, language)
    assert profile is None
    (only,) = lines(findings)
    assert only.startswith("profile.yml:")
    assert only.endswith(f": {said}")
