"""How many columns a table has is told on it, for narrow screens."""

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
