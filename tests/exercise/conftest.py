"""What the tests of the exercise share: the narrowest phone, and a page with a tidy vine."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from browser import watched_page
from exercise_page import ExercisePage


@pytest.fixture
def narrow(browser: Browser) -> Iterator[Page]:
    """The narrowest phone that must work."""
    size = {"width": 320, "height": 640}
    yield from watched_page(browser, viewport=size, has_touch=True, is_mobile=True)


@pytest.fixture(scope="session")
def tidy() -> ExercisePage:
    """A page with a vine that gives no trouble."""
    return ExercisePage("tidy", "en")
