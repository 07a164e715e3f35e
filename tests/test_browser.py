"""The browser fixtures are what they say, and notice what they must."""

import pytest
from playwright.sync_api import Browser, Page

from browser import watched_page

pytestmark = pytest.mark.browser

SIZE = "[innerWidth, matchMedia('(pointer: coarse)').matches]"
VIEWPORT = "<meta name='viewport' content='width=device-width'>"


def test_phone(phone_page: Page) -> None:
    phone_page.set_content(VIEWPORT)
    assert phone_page.evaluate(SIZE) == [390, True]


def test_desktop(desktop_page: Page) -> None:
    desktop_page.set_content(VIEWPORT)
    assert desktop_page.evaluate(SIZE) == [1280, False]


@pytest.mark.parametrize(
    ("html", "trouble"),
    [
        ("<img src='https://elsewhere.invalid/a.png'>", "elsewhere.invalid"),
        ("<script>noSuchThing()</script>", "noSuchThing"),
    ],
)
def test_a_page_in_trouble_fails_its_test(browser: Browser, html: str, trouble: str) -> None:
    visit = watched_page(browser)
    next(visit).set_content(html)
    with pytest.raises(AssertionError, match=trouble):
        next(visit)
