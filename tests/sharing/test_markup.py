"""Words that came from others hold no markup, and nothing that was taken out goes untold."""

from html.parser import HTMLParser

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from pencilwood.cases.report import Report
from pencilwood.cases.sanitise import plain_text, without_markup
from pencilwood.cases.yaml_nodes import ListNode, MapNode, Node, TextNode, parse_nodes


class Tags(HTMLParser):
    """What the standard library's parser, which is not ours, takes for markup."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append(f"{tag} {attrs}")

    def handle_endtag(self, tag: str) -> None:
        self.found.append(tag)

    def handle_comment(self, data: str) -> None:
        self.found.append(data)

    def handle_decl(self, decl: str) -> None:
        self.found.append(decl)

    def handle_pi(self, data: str) -> None:
        self.found.append(data)


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("two <b>strong</b> buds", "two strong buds"),
        ("<script>alert(1)</script>Two buds", "Two buds"),
        ("<img src=x onerror=alert(1)>", ""),
        ("<a href='javascript:alert(1)'>here</a>", "here"),
        ("<svg><script>alert(1)</script></svg>x", "x"),
        ("a <!-- pencilwood-1 --> b", "a  b"),
        ("&lt;script&gt;alert(1)&lt;/script&gt;Two", "Two"),
        ("&amp;lt;img src=x onerror=alert(1)&amp;gt;", ""),
        ("<scr<script>ipt>alert(1)</scr</script>ipt>", "ipt>alert(1)ipt>"),
        ("&#60;b&#62;x", "x"),
        ("<style>p {color: red}</style>x", "x"),
        ("<iframe src='file:///etc/passwd'></iframe>x", "x"),
    ],
)
def test_markup_is_taken_out(text: str, plain: str) -> None:
    assert plain_text(text) == plain
    assert Tags(plain_text(text)).found == []


@pytest.mark.parametrize(
    "text",
    [
        "Keep {buds_kept} buds.",
        "5 < 6, and 7 > 6",
        "Smith & Sons, R&D",
        "¿Qué vara queda? ñ á ü",
        "one line\nand another",
        "  spaces stay ",
        "8 mm × 2 – “good”",
        "{{ draw('x') }} {% include 'x' %}",
    ],
)
def test_plain_words_stay_as_they_are(text: str) -> None:
    assert plain_text(text) == text


@given(st.text(max_size=200))
@example("&" + "amp;" * 40 + "lt;b&gt;")
@example("<" * 100)
@example("&lt" * 50)
def test_no_text_keeps_markup_and_a_second_look_changes_nothing(text: str) -> None:
    plain = plain_text(text)
    assert Tags(plain).found == []
    assert plain_text(plain) == plain


HTML_LIKE = st.text(alphabet="<>/&;!-=\"' abimgscrpt#x3C0lt", max_size=60)


@given(HTML_LIKE)
def test_text_that_is_nearly_markup_keeps_none(text: str) -> None:
    assert Tags(plain_text(text)).found == []


@given(st.text(alphabet=st.characters(exclude_characters="<&\r", exclude_categories=["C"])))
def test_text_without_signs_of_markup_is_never_changed(text: str) -> None:
    assert plain_text(text) == text


def test_many_layers_of_coding_end_soon() -> None:
    deep = "&" + "amp;" * 100_000 + "lt;b&gt;"
    assert "<" not in plain_text(deep)


def texts(node: Node | None) -> list[str]:
    if isinstance(node, TextNode):
        return [node.text]
    if isinstance(node, ListNode):
        return [text for item in node.items for text in texts(item)]
    if isinstance(node, MapNode):
        return [text for _, value in node.pairs for text in texts(value)]
    return []


def test_every_change_is_told_with_its_place() -> None:
    report = Report()
    root = parse_nodes("a: <b>bold</b>\nb: [plain, x<i>y</i>]\nc:\n  d: fine\n", report, "x.yml")
    assert root is not None
    assert texts(without_markup(root, report)) == ["bold", "plain", "xy", "fine"]
    assert [finding.render() for finding in report.findings()] == [
        f"x.yml:{place}: warning: HTML stands in words that came from others; they are shown "
        f"without it; expected plain words; found {found} (shared-markup)"
        for place, found in (("1:4", '"<b>bold</b>"'), ("2:12", '"x<i>y</i>"'))
    ]
