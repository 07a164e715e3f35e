"""A vine may be large, and there is an end to it."""

from pathlib import Path

from case_files import lines, read, sample
from pencilwood.cases.vine_keys import MOST_PARTS, MOST_POSITIONS


def with_positions(count: int, canes: int) -> str:
    """The sample with so many positions on a long left arm, each with so many canes."""
    cane = "        - {{cane: {letter}, buds: 8, internode: 6 cm, thickness: 7 mm}}\n"
    wood = "".join(cane.format(letter=letter) for letter in "abcdefghijklmnop"[:canes])
    rows = "".join(
        f"    - position: L{number}\n      at: {10 * number} cm\n      wood:\n{wood}"
        for number in range(1, count + 1)
    )
    text = sample().replace("left: {length: 90 cm", "left: {length: 15 m")
    start, end = text.index("    - position: L1"), text.index("target:")
    answer = "answer:\n  fine pass:\n    - {cut: L1a, to: 2 buds, why: {en: A, es: B}}\n"
    return text[:start] + rows + text[end : text.index("answer:")] + answer


def test_the_largest_vine_is_read(tmp_path: Path) -> None:
    case, findings = read(with_positions(MOST_POSITIONS, 4), tmp_path)
    assert lines(findings) == []
    assert case is not None
    assert len(case.vine.arms[0].positions) == MOST_POSITIONS


def test_too_many_positions(tmp_path: Path) -> None:
    case, findings = read(with_positions(MOST_POSITIONS + 1, 1), tmp_path)
    assert case is None
    assert lines(findings) == [
        'vine.yml:19:5: "positions" has too few or too many parts; expected 1 to 60; found 61 '
        "(wrong-count)"
    ]


def test_too_much_wood(tmp_path: Path) -> None:
    case, findings = read(with_positions(MOST_POSITIONS, 5), tmp_path)
    assert case is None
    assert MOST_PARTS < 60 * 5
    assert lines(findings) == [
        "vine.yml:18:3: the vine has too many pieces that can be cut; expected at most 250; "
        "found 300 (too-much-wood)"
    ]
