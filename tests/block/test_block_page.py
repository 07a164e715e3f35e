"""The page of a block tells its numbers apart: each stands under a name of its own."""

import re
from html import unescape

import pytest

from pencilwood.block.answer import Answer, as_texts
from pencilwood.block.numbers import Range
from pencilwood.block.whole_block import work_block
from pencilwood.cases.blocks_file import Block
from pencilwood.pages.block_pages import block_page, blocks_page, figures_of
from pencilwood.pages.handbook import Handbook
from pencilwood.site.handbook import open_handbook
from pencilwood.units import PER_METRE
from small_handbook import PROJECT, make_small

MM_PER_METRE = 1000


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    """A small handbook with the demo's blocks."""
    root = make_small(tmp_path_factory.mktemp("blocks") / "book", "tidy-vine")
    blocks = (PROJECT / "content" / "blocks.yml").read_text("utf-8")
    (root / "content" / "blocks.yml").write_text(blocks, "utf-8")
    opened = open_handbook(root, "en")
    assert opened.handbook is not None, opened.findings
    return opened.handbook


def block(handbook: Handbook, slug: str) -> Block:
    return next(one for one in handbook.blocks if one.slug == slug)


def text_of(body: str) -> str:
    return unescape(re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", body)))


def told(handbook: Handbook, slug: str, language: str) -> tuple[list[str], str]:
    """Names of the first figures of the sums, and all the text with the plots in it."""
    page = block_page(handbook, block(handbook, slug), language)
    firsts = re.findall(r'<div class="pw-answer">\s*<dl[^>]*>\s*<div><dt>(.*?)</dt>', page.body)
    plots = " ".join(page.fragments.values())
    return firsts, text_of(f"{page.body} {plots}")


@pytest.mark.parametrize("language", ["en", "es"])
def test_no_two_sums_answer_under_one_name(handbook: Handbook, language: str) -> None:
    for one in handbook.blocks:
        firsts, _ = told(handbook, one.slug, language)
        assert len(firsts) > 5
        assert len(set(firsts)) == len(firsts), one.slug


def test_what_is_asked_for_is_the_same_in_words_and_bars(handbook: Handbook) -> None:
    """After a hard winter the formula's number is not what is compared with the arms."""
    _, english = told(handbook, "long-row", "en")
    assert "24 buds, 35 buds are asked for: leave 24 buds." in english.replace("\u00a0", " ")
    assert english.count("(asked for)") == 1
    assert re.search(r"The arms hold 24\sbuds Leave 24\sbuds", english)
    assert "After the winter (asked for)" in english
    _, without_winter = told(handbook, "mill-terrace", "en")
    assert "By the prunings (asked for)" in without_winter


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_page_and_the_command_name_a_number_alike(handbook: Handbook, language: str) -> None:
    for one in handbook.blocks:
        page = text_of(block_page(handbook, one, language).body).replace("\u00a0", " ")
        for worked in work_block(figures_of(one)):
            assert isinstance(worked, Answer)
            for label, value in as_texts(worked, "metric", language)["figures"]:
                assert f"{label} {value}".replace("\u00a0", " ") in page, worked.question


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", "Crop lost in all, over 5 years"),
        ("es", "Cosecha perdida en total, en 5 años"),
    ],
)
def test_lost_crop_says_over_how_many_years(handbook: Handbook, language: str, said: str) -> None:
    """Old Orchard is renewed in years 1 and 3; from year 6 it bears a full crop."""
    assert said in text_of(blocks_page(handbook, language).body).replace("\u00a0", " ")
    assert said in told(handbook, "old-orchard", language)[1].replace("\u00a0", " ")


def test_the_numbers_that_the_demo_says_of_its_long_row_are_those_of_its_sums(
    handbook: Handbook,
) -> None:
    """The trainer's words of a block hold no placeholder; so they are held to the sums here."""
    row = block(handbook, "long-row")
    figures = figures_of(row)
    dead = figures["dead_share"]
    assert isinstance(dead, Range)
    worked = {one.question: one for one in work_block(figures)}
    fit = worked["fit"]
    assert isinstance(fit, Answer)
    on_arms = fit.figure("density").likely * MM_PER_METRE
    most = handbook.profile.limits["buds per metre at most"] // PER_METRE
    told = {
        str(most),
        str(round(dead.likely * 100)),
        "100",
        str(round(on_arms)),
        str(round(on_arms * (1 - dead.likely))),
    }
    assert on_arms > most
    for language in handbook.profile.languages:
        assert set(re.findall(r"\d+", row.about[language])) == told
