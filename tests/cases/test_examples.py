"""Rule examples: what they hold, and what is said of their slips."""

from pathlib import Path

import pytest

from case_files import lines, sample, usual_tool, with_slip
from pencilwood.cases.case import RuleExample
from pencilwood.cases.example_file import read_example
from pencilwood.findings import Finding
from pencilwood.places import Place
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT
from pencilwood.vine.passes import DoneCut, Pass, Stub, Tool
from pencilwood.vine.wood import Shortening, ThinningOut

MESSAGES = ("too-long", "far-too-long")


def example(text: str, path: Path) -> tuple[RuleExample | None, list[Finding]]:
    path.write_text(text, encoding="utf-8")
    return read_example(
        path, "spur-too-long", path.name, message_names=MESSAGES, tool_for=usual_tool
    )


def test_a_bad_vine(tmp_path: Path) -> None:
    read, findings = example(sample("rule/bad.yml"), tmp_path / "bad.yml")
    assert lines(findings) == []
    assert read is not None
    assert (read.rule, read.kind, read.target_buds) == ("spur-too-long", "bad", (4, 6))
    assert read.vine.form is ONE_ARM_RIGHT
    assert read.vine.trellis.catch_wires_mm == ()
    assert read.cuts == (
        DoneCut(ThinningOut("R1b"), Pass.THINNING_OUT),
        DoneCut(Shortening("R1a", 4), Pass.FINE, stub=Stub.LONG),
        DoneCut(Shortening("R2a", 4), Pass.FINE, stub=Stub.LONG),
        DoneCut(ThinningOut("R2m above a"), Pass.FINE, Tool.LOPPERS),
    )
    assert read.breaks == (
        ("too-long", Place("bad.yml", 26, 10)),
        ("too-long", Place("bad.yml", 26, 20)),
    )


def test_a_good_vine(tmp_path: Path) -> None:
    read, findings = example(sample("rule/good.yml"), tmp_path / "good.yml")
    assert lines(findings) == []
    assert read is not None
    assert (read.kind, read.breaks) == ("good", ())


def test_a_vine_may_be_left_uncut(tmp_path: Path) -> None:
    text = sample("rule/good.yml")
    start, end = text.index("cuts:"), text.index("target:")
    read, _ = example(text[:start] + text[end:], tmp_path / "good.yml")
    assert read is not None
    assert read.cuts == ()


EXAMPLE_SLIPS = [
    # A message that the rule does not have.
    (
        "[too-long, too-long]",
        "[too-long, to-long]",
        '26:20: the rule has no message "to-long"; did you mean "too-long"? (unknown-message)',
    ),
    # A bad vine that names nothing.
    (
        "breaks: [too-long, too-long]\n",
        "",
        "2:1: a bad vine must name what the rule reports; "
        'expected "breaks" with the names of the messages (bad-breaks-what)',
    ),
    # A pass that is no pass.
    (
        "in: fine",
        "in: final",
        '25:28: "in" cannot be "final"; expected one of rough, thinning-out, fine (not-a-choice)',
    ),
    # A reason belongs into a case.
    (
        "- {cut: R1b}",
        "- {cut: R1b, why: high}",
        '23:16: "why" is not known here; expected one of cut, to, tool, stub, in (unknown-key)',
    ),
    # Wood that fell already.
    (
        "- {cut: R1b}",
        "- {cut: R2m}",
        '24:17: "R2a" is already gone; expected wood that is still there; '
        "it fell with the cut on line 23 (already-gone)",
    ),
]


@pytest.mark.parametrize(("old", "new", "said"), EXAMPLE_SLIPS)
def test_slips_of_an_example(tmp_path: Path, old: str, new: str, said: str) -> None:
    read, findings = example(with_slip(old, new, "rule/bad.yml"), tmp_path / "bad.yml")
    assert read is None
    assert lines(findings)[0] == f"bad.yml:{said}"


def test_a_good_vine_breaks_nothing(tmp_path: Path) -> None:
    read, findings = example(sample("rule/bad.yml"), tmp_path / "good.yml")
    assert read is None
    assert lines(findings) == [
        'good.yml:26:1: a good vine breaks no rule; expected no "breaks" here (good-breaks-nothing)'
    ]


def test_an_example_is_good_or_bad(tmp_path: Path) -> None:
    read, findings = example(sample("rule/bad.yml"), tmp_path / "ugly.yml")
    assert read is None
    assert lines(findings) == [
        "ugly.yml:2:1: this file is neither a good nor a bad vine; "
        "expected the file name good.yml or bad.yml (neither-good-nor-bad)"
    ]
