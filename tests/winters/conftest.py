"""The demo's vine of three winters, proved once."""

from __future__ import annotations

import pytest

from pencilwood.cases.case import Case, Profile
from pencilwood.proof.renewal import Renewal
from pencilwood.proof.winters import Winters
from pencilwood.site.handbook import read_one_case
from workshop import PROJECT

CASE = "four-spurs"


@pytest.fixture(scope="session")
def profile_and_case() -> tuple[Profile, Case]:
    profile, case, findings = read_one_case(PROJECT, CASE)
    assert profile is not None, findings
    assert case is not None, findings
    return profile, case


@pytest.fixture(scope="session")
def winters(profile_and_case: tuple[Profile, Case]) -> Winters:
    profile, case = profile_and_case
    return Winters(case, profile)


@pytest.fixture(scope="session")
def worn() -> tuple[Profile, Case]:
    """The demo's vine with a worn-out arm."""
    profile, case, findings = read_one_case(PROJECT, "a-worn-out-arm")
    assert profile is not None, findings
    assert case is not None, findings
    return profile, case


@pytest.fixture(scope="session")
def renewal(worn: tuple[Profile, Case]) -> Renewal:
    profile, case = worn
    assert case.renewed_arm is not None
    return Renewal(case, profile, case.renewed_arm)
