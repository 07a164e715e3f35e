"""A number keeps its unit on its line, and what is copied keeps its plain spaces."""

import pytest

from pencilwood.pages.unbroken import keep_units_together, keep_whole

JOINED = "\u00a0"


@pytest.mark.parametrize(
    ("html", "kept"),
    [
        ("<p>8 mm or 10 cm</p>", f"<p>8{JOINED}mm or 10{JOINED}cm</p>"),
        ("<td>0.6 kg</td>", f"<td>0.6{JOINED}kg</td>"),
        ("<b>30</b> %", f"<b>30</b>{JOINED}%"),
        # Copied into a file, where only a plain space is read.
        (
            "<pre><span>at: 12 cm</span></pre> 5 cm",
            f"<pre><span>at: 12 cm</span></pre> 5{JOINED}cm",
        ),
        # Who reads "--" at a line's end types it with a space behind it.
        (
            "<code>block --spacing 9 cm</code>",
            '<code><span class="pw-whole">block --spacing 9 cm</span></code>',
        ),
        (
            "<code>pencilwood export qti --language es --all</code>",
            '<code>pencilwood export qti <span class="pw-whole">--language es</span>'
            ' <span class="pw-whole">--all</span></code>',
        ),
        (
            "<p>33 a 37 (lo más probable: 35)</p>",
            f"<p>33 a 37 (lo{JOINED}más{JOINED}probable:{JOINED}35)</p>",
        ),
        ("<code>a/folder/of-cases/and-its-files.yml</code>",) * 2,
        (
            '<code class="x-y">a-b &lt;c</code> d-e',
            '<code class="x-y"><span class="pw-whole">a-b &lt;c</span></code> d-e',
        ),
        ("<textarea>8 mm</textarea>", "<textarea>8 mm</textarea>"),
        # Read by a program, whose hash is in the page's policy.
        ("<script>a = b % c</script>", "<script>a = b % c</script>"),
        ("<style>a { width: calc(9 %) }</style>", "<style>a { width: calc(9 %) }</style>"),
        ("<p>a code of 3 parts</p>", "<p>a code of 3 parts</p>"),
        # What is counted, in every language.
        ("<p>14 buds, <b>10</b> hojas</p>", f"<p>14{JOINED}buds, <b>10</b>{JOINED}hojas</p>"),
        ("<p>3 to 6 in apart</p>", f"<p>3 to 6{JOINED}in apart</p>"),
        ("<p>3 1/2 pulgadas</p>", f"<p>3{JOINED}1/2{JOINED}pulgadas</p>"),
        ("<p>8.1 ft²/lb</p>", f"<p>8.1{JOINED}ft²/lb</p>"),
        ("<p>3 budding shoots</p>", "<p>3 budding shoots</p>"),
        ("<p>6 h (most likely 3.5).</p>", f"<p>6 h (most{JOINED}likely{JOINED}3.5).</p>"),
        ('<g transform="translate(1 2)"/>', '<g transform="translate(1 2)"/>'),
        # A class of two words, and a curve: no other space may stand in them.
        ('<p class="of-2 buds">a</p>', '<p class="of-2 buds">a</p>'),
        ('<path d="M 1 2 1/2 in"/>', '<path d="M 1 2 1/2 in"/>'),
    ],
)
def test_only_units_in_text_are_kept_together(html: str, kept: str) -> None:
    assert keep_units_together(html) == kept


def test_a_name_with_a_hyphen_stays_whole_in_a_sentence() -> None:
    said = keep_whole("Only for: two-arm cordon & bush, high cordon", ("two-arm cordon", "bush"))
    assert said == (
        'Only for: <span class="pw-whole">two-arm cordon</span> &amp; bush, high cordon'
    )
