"""Where a plate stands: beside the words on a wide screen, between them on a narrower one."""

from pathlib import Path

import pytest
from playwright.sync_api import Page

pytestmark = [pytest.mark.browser, pytest.mark.slow]

OVERLAPS = """() => {
  const inner = document.querySelector(".md-content__inner");
  const plates = [...inner.children].filter((one) => one.querySelector(":scope > .pw-plate"));
  const seen = (one) => one.getBoundingClientRect();
  const lines = (one) => {
    const words = document.createRange();
    words.selectNodeContents(one);
    return [...words.getClientRects()].filter((box) => box.width > 1);
  };
  const found = [];
  for (const plate of plates) {
    const at = seen(plate);
    for (const other of inner.children) {
      if (other === plate || other.matches("details")) continue;
      const over = lines(other).some((box) => box.right > at.left + 1 && box.left < at.right - 1
        && box.bottom > at.top + 1 && box.top < at.bottom - 1);
      if (over) found.push(other.outerHTML.slice(0, 80));
    }
    if (at.right > seen(inner).right + 1) found.push("a plate is wider than the page");
  }
  return found;
}"""
BESIDE = """() => [
  ...document.querySelectorAll(".md-content__inner > :has(> .pw-plate:not(.pw-plate-rows))"),
]
  .map((plate) => {
    const words = document.createRange();
    words.selectNodeContents(plate.nextElementSibling);
    const [next, at] = [words.getBoundingClientRect(), plate.getBoundingClientRect()];
    return next.right <= at.left && next.top < at.bottom;
  })"""


ROWS = """() => [...document.querySelectorAll(".pw-plate-rows .pw-plate-row")]
  .map((row) => {
    const [arm, heading] = [row.querySelector(".pw-frame"), row.querySelector("text")];
    const [plate, at, words] = [row.closest("svg"), arm, heading]
      .map((one) => one.getBoundingClientRect());
    return {
      left: at.left, foot: at.bottom, words: words.top,
      inside: at.left >= plate.left && at.right <= plate.right && at.bottom <= plate.bottom,
    };
  })"""


def chapters_with_plates(site: Path) -> list[Path]:
    """The built chapters of both languages that show a plate."""
    return [
        page
        for page in (*site.glob("*.html"), *site.glob("es/*.html"))
        if "pw-plate-figure" in (text := page.read_text("utf-8")) and "pw-vine pw-plate" in text
    ]


@pytest.mark.parametrize(
    ("width", "beside"),
    [
        pytest.param(1280, True, id="a desk has room beside the lines"),
        pytest.param(1920, True, id="so has a wall"),
        pytest.param(820, False, id="a tablet has none"),
        pytest.param(390, False, id="a phone has none"),
    ],
)
def test_plates_stand_beside_the_words_where_there_is_room(
    desktop_page: Page, built_site: Path, width: int, beside: bool
) -> None:
    page = desktop_page
    page.set_viewport_size({"width": width, "height": 800})
    chapters = chapters_with_plates(built_site)
    assert len(chapters) > 10
    for chapter in chapters:
        page.goto(chapter.as_uri())
        assert page.evaluate(OVERLAPS) == [], chapter.name
        assert set(page.evaluate(BESIDE)) <= {beside}, chapter.name


@pytest.mark.parametrize(
    ("width", "side_by_side"),
    [
        pytest.param(1280, True, id="a desk has room"),
        pytest.param(1920, True, id="so has a wall"),
        pytest.param(1000, False, id="beside the words they have none"),
        pytest.param(820, True, id="so has a tablet"),
        pytest.param(390, False, id="a phone has none"),
    ],
)
def test_rows_of_a_plate_stand_side_by_side_where_there_is_room(
    desktop_page: Page, built_site: Path, width: int, side_by_side: bool
) -> None:
    page = desktop_page
    page.set_viewport_size({"width": width, "height": 800})
    page.goto((built_site / "three-passes.html").as_uri())
    rows = page.evaluate(ROWS)
    assert len(rows) == 3
    assert all(row["inside"] for row in rows)
    across, down = (
        max(row[edge] for row in rows) - min(row[edge] for row in rows) for edge in ("left", "foot")
    )
    assert (across > 400, down < 3) == (side_by_side, side_by_side)
    heads = [row["words"] for row in rows]
    assert (max(heads) - min(heads) < 3) == side_by_side
