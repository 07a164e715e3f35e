"""What the tests of quiz pages share."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from browser import watched_page
from quiz_page import QuizPage


@pytest.fixture
def narrow(browser: Browser) -> Iterator[Page]:
    """The narrowest phone that must work."""
    size = {"width": 320, "height": 640}
    yield from watched_page(browser, viewport=size, has_touch=True, is_mobile=True)


@pytest.fixture(scope="session")
def quiz() -> QuizPage:
    """A small quiz with every kind of question."""
    return QuizPage("en")
