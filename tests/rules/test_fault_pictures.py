"""The small picture of each rule in their list: what has the ring, and how little it weighs."""

import gzip
from collections.abc import Sequence
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from pencilwood.drawing.plate import Plate
from pencilwood.drawing.signs import strokes_of
from pencilwood.drawing.views.fault import RING, Spot, draw_fault
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.rule_pages import rules_page
from pencilwood.pages.rule_pictures import fault_picture
from pencilwood.rules import RULE_BY_NAME, RULES
from pencilwood.site.handbook import open_handbook
from pencilwood.vine.passes import DoneCut, Pass, Stub, Tool
from pencilwood.vine.wood import Shortening, divide
from small_handbook import make_small
from svg_reading import of_class, points, read, view_box

MOST_BYTES = 1_220
"""Compressed: 33 of them stand on one page, for phones."""

Box = tuple[float, float, float, float]


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    opened = open_handbook(make_small(tmp_path_factory.mktemp("faults"), "tidy-vine"), "en")
    assert opened.handbook is not None, opened.findings
    return opened.handbook


def picture(handbook: Handbook, rule: str) -> str:
    return fault_picture(RULE_BY_NAME[rule], handbook.examples[rule]["bad"], handbook.profile)


def inline(svg: str) -> ElementTree.Element:
    """A drawing in a page needs no name of its language, a reader of files does."""
    return read(svg.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1))


def rings(svg: str) -> list[Box]:
    """Left, top, right and bottom of each ring."""
    found = []
    for one in of_class(inline(svg), RING):
        xs, ys = zip(*points(one), strict=True)
        found.append((min(xs), min(ys), max(xs), max(ys)))
    return found


def around(box: Box, place: Sequence[float]) -> bool:
    x, y = place
    return box[0] < x < box[2] and box[1] < y < box[3]


@pytest.mark.parametrize("rule", [rule.name for rule in RULES])
def test_each_rule_has_a_light_picture_that_says_nothing_twice(
    handbook: Handbook, rule: str
) -> None:
    svg = picture(handbook, rule)
    assert len(gzip.compress(svg.encode(), 9)) < MOST_BYTES
    # The title beside it is its name; an id would be there once for every picture of the page.
    assert 'aria-hidden="true"' in svg
    assert "<text" not in svg
    assert " id=" not in svg
    left, top, right, bottom = view_box(inline(svg))
    assert (right - left) / (bottom - top) == pytest.approx(4 / 3, rel=0.02)


@pytest.mark.parametrize("rule", [rule.name for rule in RULES])
def test_what_is_wrong_has_a_ring_or_a_bracket_inside_the_picture(
    handbook: Handbook, rule: str
) -> None:
    svg = picture(handbook, rule)
    found = rings(svg)
    assert found
    left, top, right, bottom = view_box(inline(svg))
    for one in found:
        assert left <= one[0] < one[2] <= right
        assert top <= one[1] < one[3] <= bottom


@pytest.mark.parametrize(
    ("rule", "inside", "outside"),
    [
        ("crowded-spurs", ("R2", "R3"), ("R1", "R4")),
        ("doubled-spur", ("R2",), ("R1", "R3")),
        ("diseased-wood", ("R2",), ("R1", "R3")),
        ("blank-on-arm", ("R2", "R3", "R4"), ("R1", "R5")),
    ],
)
def test_the_ring_is_around_what_the_rule_finds(
    handbook: Handbook, rule: str, inside: Sequence[str], outside: Sequence[str]
) -> None:
    plate = Plate(divide(handbook.examples[rule]["bad"].vine))
    feet = {one.name: plate.foot(one).x for one in plate.parts.positions}
    (ring,) = rings(picture(handbook, rule))
    assert [name for name in feet if ring[0] < feet[name] < ring[2]] == list(inside)
    assert not [name for name in outside if ring[0] < feet[name] < ring[2]]


@pytest.mark.parametrize(
    ("rule", "inside", "outside"),
    [
        # The spur that stands too high, not the cane that the rule charges: it begins below.
        ("spur-above-cane", ("R1b", 100.0), ("R1a", 30.0)),
        ("cane-not-tied", ("L1b", 150.0), ("R1b", 150.0)),
        ("cane-far-from-head", ("R2b", 20.0), ("R1a", 20.0)),
    ],
)
def test_on_a_vine_with_canes_the_ring_is_around_the_wrong_wood(
    handbook: Handbook, rule: str, inside: tuple[str, float], outside: tuple[str, float]
) -> None:
    plate = Plate(divide(handbook.examples[rule]["bad"].vine))
    (ring,) = rings(picture(handbook, rule))
    for (name, along_mm), is_inside in ((inside, True), (outside, False)):
        assert around(ring, plate.stems[name].curve.at(along_mm)) is is_inside


@pytest.mark.parametrize(
    ("rule", "missing", "there"),
    [("wrong-cane-count", "R1b", "L1b"), ("wrong-spur-count", "R1a", "R1b")],
)
def test_of_what_a_form_counts_the_place_of_one_that_is_missing_has_the_ring(
    handbook: Handbook, rule: str, missing: str, there: str
) -> None:
    plate = Plate(divide(handbook.examples[rule]["bad"].vine))
    (ring,) = rings(picture(handbook, rule))
    assert around(ring, plate.stems[missing].curve.at(20.0))
    assert not around(ring, plate.stems[there].curve.at(60.0))


def test_of_what_a_form_counts_each_one_that_is_left_has_a_ring_where_it_is_too_much(
    handbook: Handbook,
) -> None:
    example = handbook.examples["wrong-spur-count"]["good"]
    both_short = tuple(
        DoneCut(Shortening(part, 2), in_pass=Pass.FINE, tool=Tool.SHEARS) for part in ("R1a", "R1b")
    )
    svg = fault_picture(
        RULE_BY_NAME["wrong-spur-count"], replace(example, cuts=both_short), handbook.profile
    )
    plate = Plate(divide(example.vine))
    found = rings(svg)
    assert len(found) == 2
    for name, ring in zip(("R1a", "R1b"), found, strict=True):
        assert around(ring, plate.stems[name].curve.at(60.0))


def test_a_tied_cane_has_no_ring_beside_one_that_tells_something(handbook: Handbook) -> None:
    plate = Plate(divide(handbook.examples["neither-spur-nor-cane"]["bad"].vine))
    (ring,) = rings(picture(handbook, "neither-spur-nor-cane"))
    assert around(ring, plate.stems["R1a"].curve.at(200.0))


def test_a_spur_over_the_middle_of_a_head_is_drawn_over_its_arm(handbook: Handbook) -> None:
    svg = picture(handbook, "wood-in-the-middle")
    before, after = svg.split("pw-frame-wood")
    assert (before.count("pw-cane"), after.count("pw-cane")) == (4, 1)


def test_a_ring_is_never_so_small_that_it_hides_what_is_in_it(handbook: Handbook) -> None:
    for rule in RULES:
        svg = picture(handbook, rule.name)
        left, _, right, _ = view_box(inline(svg))
        for ring in rings(svg):
            assert ring[2] - ring[0] > 0.11 * (right - left), rule.name


def test_no_standing_wood_is_cut_in_half_by_the_side_of_a_picture(handbook: Handbook) -> None:
    example = handbook.examples["wood-too-old"]["bad"]
    plate = Plate(divide(example.vine))
    left, _, right, _ = view_box(inline(picture(handbook, "wood-too-old")))
    for name in ("R1a", "R3a", "R4a"):
        x = plate.stems[name].curve.at(100.0).x
        assert left + 10 < x < right - 10


@pytest.mark.parametrize("rule", ["wrong-cane-count", "wrong-spur-count", "cane-not-tied"])
def test_a_vine_with_canes_is_seen_around_its_head(handbook: Handbook, rule: str) -> None:
    left, _, right, _ = view_box(inline(picture(handbook, rule)))
    room_mm = max(arm.length_mm for arm in handbook.examples[rule]["bad"].vine.arms)
    assert right - left < 1.1 * room_mm


def test_an_open_side_has_its_ring_where_wood_is_missing(handbook: Handbook) -> None:
    plate = Plate(divide(handbook.examples["open-side"]["bad"].vine))
    assert plate.second is not None
    above = plate.second
    (ring,) = rings(picture(handbook, "open-side"))
    inside = [one.name for one in plate.parts.positions if around(ring, above.foot(one))]
    assert inside == ["H3"]


def test_how_much_stands_above_the_last_bud_is_seen(handbook: Handbook) -> None:
    example = handbook.examples["stub-too-long"]["bad"]
    parts = divide(example.vine)
    tops = []
    for stub in Stub:
        cuts = tuple(replace(done, stub=stub) for done in example.cuts)
        (ring,) = rings(draw_fault(parts, cuts, [Spot(("R2a",), "cut", near=True)]))
        tops.append(ring[1])
    close, right, long = tops
    assert close > right > long  # y grows downward


def test_a_cut_made_too_late_is_shown_before_the_later_ones_hide_it(handbook: Handbook) -> None:
    example = handbook.examples["passes-out-of-order"]["bad"]
    late = rings(picture(handbook, "passes-out-of-order"))
    in_the_end = rings(draw_fault(divide(example.vine), example.cuts, [Spot(("R3a",), "cut")]))
    # Five buds stand there, and in the end two.
    assert late[0][1] < in_the_end[0][1] - 100


def test_a_wrong_tool_is_drawn_beside_its_cut(handbook: Handbook) -> None:
    example = handbook.examples["wrong-tool"]["bad"]
    svg = picture(handbook, "wrong-tool")
    assert strokes_of("hand-shears") in svg
    assert len(rings(svg)) == 1
    with_a_saw = tuple(replace(done, tool=Tool.SAW) for done in example.cuts)
    sawn = fault_picture(
        RULE_BY_NAME["wrong-tool"], replace(example, cuts=with_a_saw), handbook.profile
    )
    assert strokes_of("saw") in sawn
    # Elsewhere the tool is not what is wrong.
    assert "pw-fault-tool" not in picture(handbook, "crowded-spurs")


def test_without_spots_all_wood_is_in_the_picture(handbook: Handbook) -> None:
    example = handbook.examples["too-many-buds"]["bad"]
    parts = divide(example.vine)
    left, top, right, bottom = view_box(inline(draw_fault(parts, example.cuts, ())))
    plate = Plate(parts)
    for position in plate.parts.positions:
        foot = plate.foot(position)
        assert left < foot.x < right
        assert top < foot.y < bottom


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_list_shows_them_all_as_one_link_a_row(handbook: Handbook, language: str) -> None:
    page = rules_page(handbook, language)
    drawn = [text for text in page.fragments.values() if RING in text or "pw-fault" in text]
    assert len(drawn) == len(RULES)
    rows = page.body.split('<li class="pw-row">')[1:]
    assert len(rows) == len(RULES)
    assert all(row.count("<a ") == 1 for row in rows)
    assert len(gzip.compress((page.body + "".join(drawn)).encode(), 9)) < 25_000


def test_a_rule_whose_example_is_missing_still_has_its_row(handbook: Handbook) -> None:
    bare = replace(handbook, examples={})
    page = rules_page(bare, "en")
    assert page.fragments == {}
    assert page.body.count('<li class="pw-row">') == len(RULES)
