"""The pages have words for everything that the rest of the program can hold."""

import string

import pytest

from pencilwood.cases.field_columns import SHEET_FORMS
from pencilwood.cases.safety_file import ABOUT, SIGNAL, STATUS
from pencilwood.rules import BANDS
from pencilwood.vine.forms import FORM_NAMES
from pencilwood.vine.model import Condition, Lean
from pencilwood.vine.passes import Pass, Tool
from pencilwood.words import LANGUAGES, catalogue

OURS = ("pages.", "site.", "cli.")


def placeholders(text: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(text) if name}


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_name_has_words(language: str) -> None:
    wanted = [
        *(f"pages.band.{band.name}" for band in BANDS),
        *(f"pages.status.{band.status}" for band in BANDS),
        *(f"pages.pass.{one}" for one in Pass),
        *(f"pages.tool.{one}" for one in Tool),
        *(f"pages.wood.condition.{one}" for one in Condition),
        *(f"pages.wood.lean.{one}" for one in Lean),
        *(f"pages.safety.signal.{one}" for one in SIGNAL.kind.schema()["enum"]),
        *(f"pages.safety.{one}" for one in ABOUT.kind.schema()["enum"]),
        *(f"drawing.form.{name.replace(' ', '-')}" for name in FORM_NAMES),
        *(f"field.word.{name}" for name in SHEET_FORMS),
        *(f"pages.status.{one}" for one in STATUS.kind.schema()["enum"]),
    ]
    assert [key for key in wanted if key not in catalogue(language)] == []


def test_both_languages_say_the_same_things_with_the_same_facts() -> None:
    english, spanish = ({k: v for k, v in catalogue(one).items() if k.startswith(OURS)}
                        for one in ("en", "es"))  # fmt: skip
    assert english.keys() == spanish.keys()
    differ = [
        key for key, text in english.items() if placeholders(text) != placeholders(spanish[key])
    ]
    assert differ == []
