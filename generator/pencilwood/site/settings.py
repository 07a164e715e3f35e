"""Looks at `mkdocs.yml` before the site generator does, and says in our words what that says."""

from __future__ import annotations

import re
from pathlib import Path

from pencilwood.cases.report import Report
from pencilwood.cases.settings_file import Settings, read_settings
from pencilwood.findings import Finding, in_order
from pencilwood.places import Place
from pencilwood.site.folders import CONFIG, look_over

_WRONG_VALUE = re.compile(r"(?:ERROR|WARNING)\s+-\s+Config value '([^']*)': (.*)")
_WRONG_PAGE = re.compile(r"ERROR\s+-\s+Error (?:building|reading) page '[^']*': (.*)")
_ICON = re.compile(r"\.icons/(.+?)\.svg")
_CLASS = re.compile(r"<class '(\w+)'>")
_BROKE_OFF = "Traceback (most recent call last)"
# A mistake of ours is no setting's fault, and whoever mends it needs all that was said.
_OURS = re.compile(r'File ".*[/\\]pencilwood[/\\](?!mkdocs_plugin)')
_LONGEST_WORDS = 300


def look_at_settings(root: Path, language: str) -> tuple[Settings | None, list[Finding]]:
    """The settings of a handbook's folder, and everything wrong with them."""
    barred = look_over(root, language)
    if barred:
        return None, barred
    return read_settings(root / CONFIG, CONFIG, language=language)


def in_our_words(told: str, settings: Settings, language: str) -> str:
    """What the site generator said of a build that failed, with the places of its complaints."""
    lines = told.splitlines()
    wrong = [found for line in lines if (found := _WRONG_VALUE.fullmatch(line))]
    if wrong:
        # It stops there, so that all else that was said is of no use to a trainer.
        findings = [wrong_value(one[1], one[2], settings, language) for one in wrong]
        return "\n".join(one.render(language) for one in in_order(findings))
    if _BROKE_OFF in told and not _OURS.search(told):
        before, _, after = told.partition(_BROKE_OFF)
        last = next((line for line in reversed(after.splitlines()) if line.strip()), "")
        kept = [line for line in before.splitlines() if not line.startswith("ERROR")]
        return "\n".join([*kept, broke_off(last, settings, language).render(language)])
    return "\n".join(_page_in_our_words(line, settings, language) for line in lines)


def _page_in_our_words(line: str, settings: Settings, language: str) -> str:
    wrong = _WRONG_PAGE.fullmatch(line)
    return line if wrong is None else broke_off(wrong[1], settings, language).render(language)


def broke_off(why: str, settings: Settings, language: str) -> Finding:
    """The site generator ended in the middle, for a reason that it tells in its own words."""
    why = why.partition(" in search paths")[0]
    icon = _ICON.search(why)
    place = settings.values.get(icon[1], Place(CONFIG)) if icon else Place(CONFIG)
    return _finding("settings-broke-off", place, why, language)


def wrong_value(key: str, why: str, settings: Settings, language: str) -> Finding:
    """One complaint of the site generator about one setting."""
    report = Report(language)
    plain = _CLASS.sub(lambda kind: report.say(_kind_of(kind[1])), why).strip()
    place = settings.places.get(re.split(r"[.\[]", key)[0], Place(CONFIG))
    return _finding("settings-refused", place, f"{key}: {plain}", language)


def _kind_of(name: str) -> str:
    known = {"str": "text", "int": "number", "float": "number", "bool": "yes-or-no"}
    lines = {"list": "several", "dict": "lines", "NoneType": "nothing"}
    return f"kind-of-setting.{(known | lines).get(name, 'other')}"


def _finding(name: str, place: Place, found: str, language: str) -> Finding:
    report = Report(language)
    line = " ".join(found.split())
    more = "..." if len(line) > _LONGEST_WORDS else ""
    report.add(place, name, found=f'"{line[:_LONGEST_WORDS]}{more}"')
    return report.findings()[0]
