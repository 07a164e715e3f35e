"""Whatever stands in a file, reading it raises nothing and tells where it is wrong."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from case_files import Slip, read, sample, slips, with_slip
from pencilwood.cases import yaml_nodes
from pencilwood.cases.case import Case
from pencilwood.cases.syntax import NAMES
from pencilwood.findings import Finding

GOOD = sample()
WORDS = sorted(set(GOOD.replace(",", " ").replace(":", " ").split()))
SCRAPS = st.one_of(
    st.sampled_from(["", ":", ": ", "- ", "{", "}", "[", "]", '"', "'", "#", "&a ", "*a", "!x "]),
    st.sampled_from(["\n", "\t", "\r", "\\", "|", ">", "%", "@", "? ", "<<: ", "---", "...", "~"]),
    st.sampled_from(["0", "-1", "9" * 30, "1/0 in", "1e9 mm", "٣ mm", "L1m above a", "all canes"]),
    st.sampled_from(WORDS),
    st.text(max_size=4),
)
QUICK = settings(
    max_examples=250,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)


@st.composite
def mistyped(draw: st.DrawFn) -> str:
    """The good sample with a few stretches typed over."""
    text = GOOD
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        length = draw(st.integers(0, 12))
        text = text[:start] + draw(SCRAPS) + text[start + length :]
    return text


@st.composite
def swapped_words(draw: st.DrawFn) -> str:
    """The good sample with some words in the place of others: mostly well-formed."""
    pieces = GOOD.split(" ")
    for _ in range(draw(st.integers(1, 6))):
        pieces[draw(st.integers(0, len(pieces) - 1))] = draw(st.sampled_from(pieces))
    return " ".join(pieces)


def check(case: Case | None, findings: list[Finding], text: str) -> None:
    assert (case is None) == bool(findings)
    lines = text.count("\n") + text.count("\r") + 1
    for finding in findings:
        assert finding.place.file == "vine.yml"
        assert 1 <= finding.place.line <= lines + 1
        assert finding.place.column >= 1
        assert finding.what
        assert "\n" not in finding.render()


@QUICK
@given(mistyped())
@example('author: "\\UFFFFFFFF"')
@example("%YAML 9.9\n---\na: b")
@example("? - a\n: b")
@example("{{{}}}")
@example("- - - {a: [}")
def test_mistyped_files(tmp_path: Path, text: str) -> None:
    content = text.encode("utf-8", errors="surrogatepass")
    check(*read(content, tmp_path), text)


@QUICK
@given(swapped_words())
def test_swapped_words(tmp_path: Path, text: str) -> None:
    check(*read(text, tmp_path), text)


@QUICK
@given(mistyped())
@example(GOOD.replace("from: n,", "from: ,"))
@example(GOOD.replace("from: n,", "from:   ,"))
@example(GOOD.replace("from: n,", "from : ,"))
@example(GOOD.replace("trunk thickness: 55 mm", "trunk thickness:   # to be measured"))
def test_both_parsers_say_the_same(tmp_path: Path, text: str) -> None:
    content = text.encode("utf-8", errors="surrogatepass")
    quick = read(content, tmp_path)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(yaml_nodes, "QUICK_PARSER", None)
        careful = read(content, tmp_path)
    # What only the careful parser refuses (a stray directive) may pass where the other reads it.
    if not {one.name for one in careful[1]} & NAMES:
        assert quick == careful


@pytest.mark.parametrize(
    "slip", [slip for group in ("yaml", "fields", "wood", "answer") for slip in slips(group)]
)
def test_both_parsers_say_the_same_of_a_slip(
    tmp_path: Path, slip: Slip, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert yaml_nodes.QUICK_PARSER is not None, "the pinned library has the parser in C"
    quick = read(with_slip(slip.old, slip.new), tmp_path)
    monkeypatch.setattr(yaml_nodes, "QUICK_PARSER", None)
    assert read(with_slip(slip.old, slip.new), tmp_path) == quick


@QUICK
@given(st.binary(max_size=200))
def test_any_bytes(tmp_path: Path, content: bytes) -> None:
    case, findings = read(content, tmp_path)
    assert case is None
    assert findings


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_cut_off_file_is_told(tmp_path: Path, language: str) -> None:
    """A file whose end got lost, at every tenth letter."""
    whole = GOOD.index("exceptions:")
    for end in range(0, whole - 2, 10):
        case, findings = read(GOOD[:end], tmp_path, language)
        if case is None:
            check(case, findings, GOOD[:end])
        else:
            # Only what may be left out is missing.
            assert case.answer, GOOD[end - 20 : end]
