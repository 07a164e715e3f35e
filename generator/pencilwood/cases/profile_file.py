"""Reads `profile.yml`: the trainer's own vineyard, languages, units and bands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from pencilwood.cases.case import Profile
from pencilwood.cases.fields import Key, Kind, ListOf, Row, Schema, Table, typed_text
from pencilwood.cases.given import YesNo
from pencilwood.cases.kinds import Choice, Counted, Density, Length, Text, Whole
from pencilwood.cases.one_or_each import OneOrEach, Said
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding
from pencilwood.places import Place
from pencilwood.units import PER_FOOT, PER_METRE, UnitSystem
from pencilwood.vine.bands import Band, Limits, default_limits
from pencilwood.words import LANGUAGES, knows, say, unwritten

_UNITS: dict[str, UnitSystem] = {"metric": "metric", "us": "us"}
_LANGUAGE = Choice({language: language for language in LANGUAGES})

LONGEST_NAME = 80
UNNAMED = {one: say(one, "start.unnamed") for one in LANGUAGES if knows("start.unnamed", one)}
"""By first language, what a new handbook calls a vineyard; its front page asks for a name."""
VINEYARD = Key(
    "vineyard", Text(longest=LONGEST_NAME), "Name of the vineyard, as the pages show it."
)
INVENTED = Key(
    "invented", YesNo(), "Whether the vineyard is made up, as in a demo; the pages say so.", False
)
LANGUAGES_KEY = Key("languages", ListOf(_LANGUAGE, 1, 10), "Languages, the first one first.")
UNITS: Key[UnitSystem] = Key("units", Choice(_UNITS), "Units that the pages show.")
PASS_MARK = Key("pass mark", Whole(1, 100), "Points that pass a vine.")
SITE_ADDRESS = Key(
    "site address",
    Text("https?://[^\\s\"'<>]+", "not-an-address", 300),
    "Where the handbook is published, if anywhere.",
    False,
)
PLAN_DISTANCE = Key(
    "plan distance",
    Whole(0, 100),
    "Points by which your answer may be behind the computed plan without a reason.",
    False,
)
BUDBREAK = Key(
    "budbreak", Counted("%", "%", 1, 100, "90 %"), "Share of buds that push in spring.", False
)
LATENT_SHOOTS = Key(
    "latent shoots per wound",
    Whole(0, 20),
    "Shoots that a large wound is assumed to wake.",
    False,
)

PRACTICE_VINES = Key(
    "practice vines",
    Whole(0, 1000),
    "How many vines the practice page can draw; each takes up to 15 kB of the site.",
    False,
)

_EMPLOYER_FIELDS: Mapping[str, tuple[Kind[int] | Kind[Said], str]] = {
    "distance between workers": (Length(1, 100_000, "3 m"), "How far apart workers prune."),
    "off-hand distance": (Length(1, 5000, "20 cm"), "How far the other hand stays from a blade."),
    "glove cut level": (OneOrEach(80), "Cut level of the gloves, as the maker prints it."),
    "break every": (OneOrEach(80), "How often the crew rests."),
    "first aider": (OneOrEach(120), "Who gives first aid, and where."),
    "emergency number": (OneOrEach(80), "The number to call in an emergency."),
    "assembly point": (OneOrEach(160), "Where everybody meets in an emergency."),
    "spray contact": (OneOrEach(160), "Who knows what was sprayed, where and when."),
}
EMPLOYER_FIELDS = tuple(_EMPLOYER_FIELDS)
"""What no published figure settles: each employer's own word, which chapters leave a line for."""
EMPLOYER_NAME = "employer"
_EMPLOYER = Table(
    "What the employer settles; a page shows an empty line for what is left out.",
    tuple(Key(name, kind, about, False) for name, (kind, about) in _EMPLOYER_FIELDS.items()),
)

_BAND_KINDS: Mapping[str, Kind[int]] = {
    "length": Length(0, 20_000, "10 cm"),
    "count": Whole(0, 10_000),
    "density": Density(PER_METRE, 0),
}
_BY_THE_FOOT = Density(PER_FOOT, 1)


BANDS_NAME = "bands"
FORMS_NAME = "forms"

FormBands = Mapping[str, Sequence[Band]]
"""By the name of a form, the figures that differ there."""


def any_bands_schema() -> Schema:
    """Bands of any name, for the published schema: their names belong to the rules."""
    kinds = [kind.schema() for kind in _BAND_KINDS.values()]
    return {"type": "object", "additionalProperties": {"anyOf": kinds}}


def band_keys(bands: Sequence[Band]) -> Mapping[str, Key[int]]:
    """The keys under `bands:`, by name."""
    kinds = {band.name: (_BAND_KINDS[band.kind], band) for band in bands}
    kinds |= {band.name_in_feet: (_BY_THE_FOOT, band) for band in bands if band.kind == "density"}
    return {
        name: Key(name, kind, f"{band.source['en']} ({band.status})", False)
        for name, (kind, band) in kinds.items()
    }


def _bands_of_form(bands: Sequence[Band], own: Sequence[Band]) -> tuple[Band, ...]:
    names = {band.name for band in own}
    return (*own, *(band for band in bands if band.name not in names))


def _forms_table(bands: Sequence[Band], form_bands: FormBands) -> Table:
    keys = (
        Key(
            name,
            Table(
                f"Figures for vines of the form {name} alone.",
                tuple(band_keys(_bands_of_form(bands, own)).values()),
            ),
            f"Figures for vines of the form {name} alone.",
            False,
        )
        for name, own in form_bands.items()
    )
    return Table("Figures that differ with the form of the vine.", tuple(keys))


def profile_table(bands: Sequence[Band], form_bands: FormBands | None = None) -> Table:
    """The keys of the profile when the rules have these bands."""
    table = Table("The figures that your rules go by.", tuple(band_keys(bands).values()))
    return Table(
        "The trainer's own vineyard.",
        (
            VINEYARD,
            INVENTED,
            LANGUAGES_KEY,
            UNITS,
            PASS_MARK,
            SITE_ADDRESS,
            PLAN_DISTANCE,
            BUDBREAK,
            LATENT_SHOOTS,
            PRACTICE_VINES,
            Key(EMPLOYER_NAME, _EMPLOYER, "What you as the employer settle.", False),
            Key(BANDS_NAME, table, "Figures that you set; the rest stay as they are.", False),
            Key(
                FORMS_NAME,
                _forms_table(bands, form_bands or {}),
                "Figures that you set for vines of one form alone.",
                False,
            ),
        ),
    )


def read_profile(
    path: Path,
    bands: Sequence[Band],
    shown_as: str | None = None,
    *,
    language: str = "en",
    form_bands: FormBands | None = None,
) -> tuple[Profile | None, list[Finding]]:
    """The profile of a file, or None and every reason why it is none.

    A band outside its published range is a warning, not an error.
    """
    report = Report(language)
    root = read_nodes(path, report, shown_as)
    of_forms = form_bands or {}
    report.units = _UNITS.get(typed_text(root, UNITS.name), report.units)
    row = None if root is None else profile_table(bands, of_forms).read(root, "", report)
    if row is None:
        return None, report.findings()
    limits = _limits(row.values.get(BANDS_NAME), bands, default_limits(bands), report)
    form_limits = {
        name: _form_limits(row, name, bands, own, limits, report) for name, own in of_forms.items()
    }
    _check_languages(row, report)
    if report.errors:
        return None, report.findings()
    return _profile(row, limits, form_limits), report.findings()


def _form_limits(
    row: Row,
    form: str,
    bands: Sequence[Band],
    own: Sequence[Band],
    limits: Limits,
    report: Report,
) -> Limits:
    """A form's own figures stand before those for all vines, and the trainer's before both."""
    forms = row.values.get(FORMS_NAME)
    given = forms.values.get(form) if isinstance(forms, Row) else None
    before = {**limits, **default_limits(own)}
    return _limits(given, _bands_of_form(bands, own), before, report)


def _limits(
    set_bands: object, bands: Sequence[Band], before: Limits, report: Report
) -> dict[str, int]:
    """What each band is set to."""
    limits = dict(before)
    if not isinstance(set_bands, Row):
        return limits
    keys = band_keys(bands)
    for band in bands:
        for name in dict.fromkeys((band.name, band.name_in_feet)):
            value = set_bands.get(keys[name])
            if value is not None:
                limits[band.name] = value
                _check_range(band, name, value, set_bands.place_of(keys[name]), report)
        _check_given_once(band, set_bands, report)
    return limits


def _check_given_once(band: Band, set_bands: Row, report: Report) -> None:
    """By the metre or by the foot: of two figures the handbook cannot choose."""
    metre, foot = (set_bands.places.get(name) for name in (band.name, band.name_in_feet))
    if band.name != band.name_in_feet and metre and foot:
        first, second = sorted((metre, foot), key=lambda place: place.line)
        report.add(second, "named-twice", name=f'"{band.name}"', line=first.line)


def _check_range(band: Band, name: str, value: int, place: Place, report: Report) -> None:
    """Warn of a band outside its range: the trainer may have a reason."""
    units: UnitSystem = "metric" if name == band.name else "us"
    if band.holds(value, units):
        return
    lowest, highest = band.ends(units)
    report.warn(
        place,
        "outside-the-range",
        band=name,
        source=band.source[report.language],
        status=report.say(f"status.{band.status}"),
        found=band.words(value, units, report.language),
        lowest=band.words(lowest, units, report.language),
        highest=band.words(highest, units, report.language),
    )


def _check_languages(row: Row, report: Report) -> None:
    seen: dict[str, int] = {}
    for one in row.get(LANGUAGES_KEY) or ():
        if one.value in seen:
            report.add(one.place, "named-twice", name=f'"{one.value}"', line=seen[one.value])
        seen.setdefault(one.value, one.place.line)
        if missing := unwritten(one.value):
            # A page would break off at the first of them.
            report.add(one.place, "language-not-whole", n=len(missing), key=missing[0])


def _profile(row: Row, limits: Limits, form_limits: Mapping[str, Limits]) -> Profile:
    def given(key: Key[int], otherwise: int) -> int:
        value = row.get(key)
        return otherwise if value is None else value

    return Profile(
        vineyard=row.need(VINEYARD),
        languages=tuple(one.value for one in row.need(LANGUAGES_KEY)),
        units=row.need(UNITS),
        limits=limits,
        form_limits=form_limits,
        pass_mark=row.need(PASS_MARK),
        place=row.place,
        plan_distance=given(PLAN_DISTANCE, Profile.plan_distance),
        budbreak_percent=given(BUDBREAK, Profile.budbreak_percent),
        latent_shoots_per_wound=given(LATENT_SHOOTS, Profile.latent_shoots_per_wound),
        practice_vines=given(PRACTICE_VINES, Profile.practice_vines),
        site_address=row.get(SITE_ADDRESS) or "",
        invented=row.get(INVENTED) or False,
        employer=_employer(row),
    )


def _employer(row: Row) -> Mapping[str, int | Mapping[str, str]]:
    settled = row.values.get(EMPLOYER_NAME)
    if not isinstance(settled, Row):
        return {}
    employer: dict[str, int | Mapping[str, str]] = {}
    for name, value in settled.values.items():
        if isinstance(value, Said):
            employer[name] = value.words
        elif isinstance(value, int):
            employer[name] = value
    return employer
