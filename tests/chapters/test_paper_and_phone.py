"""What pages are on paper and on a phone: nothing without a label, nothing that nobody can use."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]

LEFT_EDGES = "rows => [...new Set(rows.map(row => Math.round(row.getBoundingClientRect().left)))]"
MM = 96 / 25.4
"""Pixels of a style sheet in a millimetre (CSS Values and Units 3, section 6.2)."""


def test_cells_of_a_stacked_table_tell_their_column(phone_page: Page, built_site: Path) -> None:
    page = phone_page
    page.goto((built_site / "setting-targets.html").as_uri())
    table = page.locator("table[data-columns='2']").first
    heads = [head.strip() for head in table.locator("thead th").all_text_contents()]
    told = (
        table.locator("tbody tr")
        .first.locator("td")
        .evaluate_all("cells => cells.map(cell => getComputedStyle(cell, '::before').content)")
    )
    assert all(heads)
    assert len(told) == len(heads) == 2
    for head, content in zip(heads, told, strict=True):
        assert head in content
    box = table.locator("thead").bounding_box()
    assert box is not None
    assert box["height"] <= 1, "the heads stand nowhere alone"
    assert "columnheader" in table.aria_snapshot(), "who listens to the page has them still"


def test_a_wide_screen_shows_the_heads_once(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    page.goto((built_site / "setting-targets.html").as_uri())
    table = page.locator("table[data-columns='2']").first
    cell = table.locator("td").first
    assert cell.evaluate("cell => getComputedStyle(cell, '::before').content") == "none"
    box = table.locator("thead").bounding_box()
    assert box is not None
    assert box["height"] > 10


@pytest.mark.parametrize("name", ["running-a-pruning-day", "es/working-safely"])
def test_lines_on_paper_leave_room_for_a_hand(
    desktop_page: Page, built_site: Path, name: str
) -> None:
    page = desktop_page
    page.set_viewport_size({"width": 680, "height": 900})
    page.emulate_media(media="print")
    page.goto((built_site / f"{name}.html").as_uri())
    text = page.locator(".md-content__inner > p:not(.pw-kicker)").first.bounding_box()
    assert text is not None
    lines = page.locator(".pw-to-fill-row").evaluate_all(
        "all => all.map(one => one.getBoundingClientRect().width)"
    )
    rows = page.locator("li:has(> .pw-to-fill-row)").evaluate_all(
        """all => all.map(one => {
            const { height, left, right } = one.getBoundingClientRect();
            return [height, left, right];
        })"""
    )
    assert lines
    assert min(height for height, _, _ in rows) >= 9 * MM - 0.5
    assert min(lines) >= text["width"] / 2
    # Flush with the text above them, at both of its edges.
    edges = pytest.approx((text["x"], text["x"] + text["width"]), abs=1)
    assert all((left, right) == edges for _, left, right in rows)


def test_on_a_phone_the_line_stands_under_its_label(phone_page: Page, built_site: Path) -> None:
    page = phone_page
    page.goto((built_site / "running-a-pruning-day.html").as_uri())
    row = page.locator("li:has(> .pw-to-fill-row)").first
    across, line = row.bounding_box(), row.locator(".pw-to-fill-row").bounding_box()
    assert across is not None
    assert line is not None
    assert line["width"] == pytest.approx(across["width"], abs=1)


def test_a_quiz_on_paper_offers_no_way_to_start(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    page.goto((built_site / "quizzes" / "before-the-first-day.html").as_uri())
    start = page.locator(".pw-ask-start")
    expect(start.locator(".pw-ask-way").first).to_be_visible()
    page.emulate_media(media="print")
    for gone in ("h2", ".pw-ask-way", ".pw-ask-another"):
        expect(start.locator(gone).first).to_be_hidden()
    expect(start.locator("p").first).to_be_visible()


def test_the_box_for_another_person_has_its_words_in_the_middle(
    phone_page: Page, built_site: Path
) -> None:
    page = phone_page
    page.goto((built_site / "quizzes" / "before-the-first-day.html").as_uri())
    above, below = page.locator(".pw-ask-another").evaluate("""box => {
        const words = document.createRange();
        words.selectNodeContents(box.querySelector("summary"));
        const [outer, inner] = [box.getBoundingClientRect(), words.getBoundingClientRect()];
        return [inner.top - outer.top, outer.bottom - inner.bottom];
    }""")
    assert above == pytest.approx(below, abs=3)


def test_no_page_lists_a_single_heading(built_site: Path) -> None:
    listed = {}
    for path in built_site.rglob("*.html"):
        found = re.search(r'<nav[^>]*pw-headings".*?</nav>', path.read_text("utf-8"), re.DOTALL)
        if found:
            listed[path.name] = found[0].count("<a ")
    assert listed
    assert min(listed.values()) > 1
    assert "blocks.html" not in listed


@pytest.mark.parametrize(("width", "columns"), [(320, 1), (600, 1), (768, 2), (1280, 2), (1920, 2)])
def test_chapters_in_order_stand_in_as_many_columns_as_have_room(
    desktop_page: Page, built_site: Path, width: int, columns: int
) -> None:
    page = desktop_page
    page.set_viewport_size({"width": width, "height": 900})
    page.goto((built_site / "workers.html").as_uri())
    rows = page.locator(".pw-chapters > li")
    assert len(rows.evaluate_all(LEFT_EDGES)) == columns
    # They are read down one column and then down the next.
    lefts = rows.evaluate_all("rows => rows.map(row => row.getBoundingClientRect().left)")
    assert lefts == sorted(lefts)


def test_sources_say_on_paper_where_they_lie(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    page.goto((built_site / "sources.html").as_uri())
    told = """links => links.map(one => [one.href, getComputedStyle(one, '::after').content])"""
    links = page.locator(".pw-source-title a")
    assert {content for _, content in links.evaluate_all(told)} == {"none"}
    page.emulate_media(media="print")
    on_paper = links.evaluate_all(told)
    assert len(on_paper) > 20
    assert all(content.strip('"') in {href, href.rstrip("/")} for href, content in on_paper)
    # In running text an address would only be in the way.
    page.goto((built_site / "cuts-that-heal.html").as_uri())
    inline = page.locator(".md-content p a").evaluate_all(told)
    assert inline
    assert {content for _, content in inline} == {"none"}
