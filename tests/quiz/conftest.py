"""The demo's quizzes, worked out and proved once."""

from pathlib import Path

import pytest

from pencilwood.site.handbook import open_handbook
from quiz_demo import Demo


@pytest.fixture(scope="session")
def demo(project: Path) -> Demo:
    opened = open_handbook(project)
    assert opened.handbook is not None, [finding.render() for finding in opened.findings]
    return Demo(
        opened.handbook.profile,
        opened.handbook.case_by_slug,
        {proof.quiz.slug: proof for proof in opened.handbook.quizzes},
    )
