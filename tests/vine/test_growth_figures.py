"""The figures of simulated growth say where they come from, in every language."""

import pytest

from pencilwood.vine.growth_figures import GROWTH_FIGURES, GrowthFigure
from pencilwood.words import LANGUAGES


@pytest.mark.parametrize("figure", GROWTH_FIGURES, ids=lambda figure: str(figure.name))
def test_each_says_where_it_is_from_in_every_language(figure: GrowthFigure) -> None:
    assert set(figure.source) == set(LANGUAGES)
    assert all(figure.source.values())
