"""A chapter with HTML or a link that runs something is refused, at the right place."""

from pathlib import Path

import pytest

from chapter_files import small_handbook, told
from pencilwood.pages.handbook import Handbook
from pencilwood.site.handbook import open_handbook

# After the CommonMark specification, https://spec.commonmark.org/0.31.2/: raw HTML (6.6),
# links (6.3), images (6.4), autolinks (6.5) and link reference definitions (4.7).
REFUSED = {
    "Words <script>alert(1)</script>": (1, 7, "html-in-text"),
    "One.\n\n<img src=x onerror=alert(1)>": (3, 1, "html-in-text"),
    "One <!-- two -->": (1, 5, "html-in-text"),
    "See <javascript:alert(1)>": (1, 5, "html-in-text"),
    "[go](javascript:alert(1))": (1, 1, "no-page-link"),
    "a [go](<java&#115;cript:alert(1)>)": (1, 3, "no-page-link"),
    "[go](&#106;avascript:alert(1))": (1, 1, "no-page-link"),
    "[go](data:text/html,x)": (1, 1, "no-page-link"),
    "[go][here]\n\n[here]: JavaScript:alert(1)": (3, 1, "no-page-link"),
    "![x](https://example.org/spy.png)": (1, 1, "picture-from-elsewhere"),
    "![x](//example.org/spy.png)": (1, 1, "picture-from-elsewhere"),
    # Brackets within brackets, a picture as a link, and spaces and lines that a browser drops.
    "[go [on] now](javascript:alert(1))": (1, 1, "no-page-link"),
    "[a\\]](javascript:alert(1))": (1, 1, "no-page-link"),
    "[![a hand](hand.png)](javascript:alert(1))": (1, 1, "no-page-link"),
    "[go](< javascript:alert(1)>)": (1, 1, "no-page-link"),
    "[go](<\njavascript:alert(1)>)": (1, 1, "no-page-link"),
    "- [here]: javascript:alert(1)\n\n[here]": (1, 3, "no-page-link"),
    "> [here]: javascript:alert(1)\n\n[here]": (1, 3, "no-page-link"),
    "![a [b] c](https://example.org/spy.png)": (1, 1, "picture-from-elsewhere"),
    "![x][Here]\n\n[here]: https://example.org/spy.png": (3, 1, "picture-from-elsewhere"),
    # What looks like code, and is none to the Markdown reader.
    "\\`[go](javascript:alert(1))\\`": (1, 3, "no-page-link"),
    "~~~ a b\n[go](javascript:alert(1))\n~~~": (2, 1, "no-page-link"),
    "`` ` [go](javascript:alert(1)) ` b": (1, 6, "no-page-link"),
    "## Look {: onclick=alert(1) }": (1, 9, "html-in-text"),
}
ALLOWED = (
    "Keep a < b, and 5 > 4.",
    "[the page](warm-up.md#look) and [outside](https://example.org/a)",
    "![a hand](hand.png)",
    "[![a hand](hand.png)](https://example.org/a)",
    "[x][here] and ![a hand](hand.png)\n\n[here]: https://example.org/a",
    "[note]: said: as above",
    "`![x](https://example.org/spy.png)`",
    "Write `<b>` so.",
    "```yaml\ntitle: {en: A, es: B}\n<b>\n```",
    "# {not attributes}",
)


@pytest.fixture(scope="module")
def handbook(project: Path, tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    opened = open_handbook(small_handbook(project, tmp_path_factory.mktemp("small")))
    assert opened.handbook is not None, opened.findings
    return opened.handbook


@pytest.mark.parametrize("text", REFUSED)
def test_refused(handbook: Handbook, text: str) -> None:
    found = [(one.place.line, one.place.column, one.name) for one in told(handbook, text)]
    assert REFUSED[text] in found


@pytest.mark.parametrize("text", ALLOWED)
def test_allowed(handbook: Handbook, text: str) -> None:
    names = {one.name for one in told(handbook, text)}
    assert not names & {"html-in-text", "no-page-link", "picture-from-elsewhere"}
