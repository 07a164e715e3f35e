"""How many columns a table has, and what each is, is told on it for narrow screens."""

import html
import re

import markdown
import pytest

from pencilwood.pages.column_counts import with_column_counts


def table(columns: int, attributes: str = "") -> str:
    cells = "\n".join(f'<th style="text-align: left;">{number}</th>' for number in range(columns))
    return f"<table{attributes}>\n<thead>\n<tr>\n{cells}\n</tr>\n</thead>\n</table>"


@pytest.mark.parametrize("columns", [1, 2, 3, 4])
def test_each_table_tells_its_own(columns: int) -> None:
    told = with_column_counts(f"<p>a</p>{table(columns)}<p>b</p>{table(3)}")
    assert told.count(f'<table data-columns="{columns}">') == 1 + (columns == 3)
    assert told.count('<table data-columns="3">') >= 1


def test_nothing_else_is_changed() -> None:
    text = f"<p>&lt;table></p>{table(3, ' class=pw-table')}<table><tr><td>1</td></tr></table>"
    assert with_column_counts(text) == text
    assert with_column_counts(table(3)).replace(' data-columns="3"', "") == table(3)


def written(*lines: str) -> str:
    """A table as Markdown makes it."""
    return str(markdown.markdown("\n".join(lines), extensions=["tables"]))


def cells(told: str) -> list[tuple[str, str]]:
    """What stands in each cell of the body, with what it is labelled by."""
    found = re.findall(r'<td(?: data-label="([^"]*)")?[^>]*>(.*?)</td>', told)
    return [(html.unescape(label), text) for label, text in found]


@pytest.mark.parametrize(
    ("lines", "expected", "why"),
    [
        (
            ["| Measure | Target |", "|---|---|", "| Spurs | 12 |", "| Buds | 2 |"],
            [("Measure", "Spurs"), ("Target", "12"), ("Measure", "Buds"), ("Target", "2")],
            "each row begins with the first column again",
        ),
        (
            ["| A | B | C |", "|:--|:-:|--:|", "| 1 | 2 | 3 |"],
            [("A", "1"), ("B", "2"), ("C", "3")],
            "a column that is set to a side has its label as well",
        ),
        (
            ['| *How* [we](x.html) know | "Read" & <3 |', "|---|---|", "| 1 | 2 |"],
            [("How we know", "1"), ('"Read" & <3', "2")],
            "a label is words alone, and nothing in it ends it early",
        ),
        (
            ["|  | Target |", "|---|---|", "| Spurs | 12 |"],
            [("", "Spurs"), ("Target", "12")],
            "a column without a head has no label",
        ),
        (
            ["| A | B | C | D |", "|---|---|---|---|", "| 1 | 2 | 3 | 4 |"],
            [("", "1"), ("", "2"), ("", "3"), ("", "4")],
            "a table that stays a table keeps its head in view",
        ),
    ],
)
def test_each_cell_tells_its_column(
    lines: list[str], expected: list[tuple[str, str]], why: str
) -> None:
    assert cells(with_column_counts(written(*lines))) == expected, why


def test_two_tables_do_not_share_their_heads() -> None:
    one, two = (written(f"| {a} | {b} |", "|---|---|", "| 1 | 2 |") for a, b in ("AB", "CD"))
    labels = [label for label, _ in cells(with_column_counts(one + two))]
    assert labels == ["A", "B", "C", "D"]
