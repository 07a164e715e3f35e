"""A preview reads a case once, until its file or anything else that counts changes."""

from pathlib import Path

import pytest

from pencilwood.site import handbook as reading
from pencilwood.site.handbook import open_handbook

ALL = {"climbing-spurs", "one-arm-vine", "tidy-vine"}


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The cases whose files were read, in their order."""
    names: list[str] = []
    read_case = vars(reading)["read_case"]

    def counted(path: Path, *given: object, **named: object) -> object:
        names.append(path.stem)
        return read_case(path, *given, **named)

    monkeypatch.setattr(reading, "read_case", counted)
    return names


def test_only_the_case_that_changed_is_read_again(sample: Path, read: list[str]) -> None:
    first = open_handbook(sample)
    assert set(read) == ALL
    read.clear()
    again = open_handbook(sample)
    assert read == []
    assert [one.case for one in again.proofs] == [one.case for one in first.proofs]
    case = sample / "content" / "cases" / "tidy-vine.yml"
    case.write_text(case.read_text("utf-8").replace("A tidy vine", "A well-kept vine"), "utf-8")
    edited = open_handbook(sample).handbook
    assert read == ["tidy-vine"]
    assert edited is not None
    assert edited.case_by_slug["tidy-vine"].case.title["en"] == "A well-kept vine"


def test_slips_are_told_each_time_and_the_profile_counts(sample: Path, read: list[str]) -> None:
    case = sample / "content" / "cases" / "tidy-vine.yml"
    case.write_text(case.read_text("utf-8").replace("level: easy", "level: eesy"), "utf-8")
    told = open_handbook(sample).findings
    assert any("eesy" in one.render() for one in told)
    read.clear()
    assert open_handbook(sample).findings == told
    assert read == []
    profile = sample / "content" / "profile.yml"
    fewer = profile.read_text("utf-8").replace("languages: [en, es]", "languages: [en]")
    profile.write_text(fewer, "utf-8")
    open_handbook(sample)
    assert set(read) == ALL
