"""The smallest handbook there is: a profile, the settings and one case, in one language."""

import re
import shutil
from pathlib import Path
from typing import Any

import pytest
import yaml

from html_reading import leads_to_nothing, pages
from pencilwood.site.publish import publish
from pencilwood.words import say
from small_handbook import check

pytestmark = pytest.mark.slow

PROFILE = "vineyard: River Farm\nlanguages: [{language}]\nunits: metric\npass mark: 80\n"
# Pages that make sense only where there is something to show on them.
LEFT_OUT = ("practice.html", "quizzes.html", "crew.html", "blocks.html")


def in_one_language(value: Any, language: str) -> Any:
    """A case without its texts in other languages."""
    if isinstance(value, dict):
        kept = {language} if {"en", "es"} == set(value) else set(value)
        return {key: in_one_language(one, language) for key, one in value.items() if key in kept}
    if isinstance(value, list):
        return [in_one_language(one, language) for one in value]
    return value


@pytest.fixture(scope="module", params=["en", "es"])
def smallest(
    request: pytest.FixtureRequest, project: Path, tmp_path_factory: pytest.TempPathFactory
) -> tuple[Path, str]:
    """The folder with its built site; and the one language."""
    language: str = request.param
    root = tmp_path_factory.mktemp("smallest") / "book"
    cases = root / "content" / "cases"
    cases.mkdir(parents=True)
    case = yaml.safe_load((project / "content/cases/tidy-vine.yml").read_text("utf-8"))
    text = yaml.safe_dump(in_one_language(case, language), allow_unicode=True, sort_keys=False)
    (cases / "tidy-vine.yml").write_text(text, "utf-8")
    (root / "content" / "profile.yml").write_text(PROFILE.format(language=language), "utf-8")
    shutil.copy(project / "mkdocs.yml", root)
    assert check(root, language) == []
    published = publish(root, root / "site", language)
    assert (published.succeeded, published.told) == (True, "")
    return root, language


def menu_of(html: str) -> str:
    return html.split('<nav class="pw-menu"')[1].split("</nav>")[0]


def test_nothing_leads_to_nothing(smallest: tuple[Path, str]) -> None:
    root, language = smallest
    assert leads_to_nothing(root / "site") == []
    there = pages(root / "site")
    assert not set(LEFT_OUT) & set(there)
    assert {name for name, page in there.items() if page.languages != [language]} == set()
    assert all(page.alternates == {} for page in there.values()), "no other language to change to"


def test_the_front_page_has_a_vine_and_three_doors(smallest: tuple[Path, str]) -> None:
    root, language = smallest
    html = (root / "site" / "index.html").read_text("utf-8")
    assert "River Farm" in html
    assert html.count('class="pw-first-vine"') == 1
    assert "data-pencilwood-exercise" in html
    assert re.findall(r'<li><a href="(\w+)\.html"><strong>', html) == [
        "workers",
        "trainers",
        "teachers",
    ]
    promised = say(language, "pages.home.door.workers.vines").capitalize()
    assert f"<span>{promised}</span>" in html, "no chapter, no practice and no quiz to promise"


def test_no_group_of_the_menu_is_empty(smallest: tuple[Path, str]) -> None:
    root, language = smallest
    menu = menu_of((root / "site" / "index.html").read_text("utf-8"))
    groups = menu.split('<div class="pw-menu-group">')[1:]
    titles = [
        say(language, f"pages.menu.{one}") for one in ("learn", "practise", "train", "look-up")
    ]
    assert [re.findall(r'pw-menu-title"[^>]*>([^<]+)<', one) for one in groups] == [
        [title] for title in titles
    ]
    assert all("<li>" in one for one in groups)


def test_no_heading_stands_over_nothing(smallest: tuple[Path, str]) -> None:
    root, _ = smallest
    for door in ("workers", "trainers", "teachers"):
        html = (root / "site" / f"{door}.html").read_text("utf-8")
        article = html.split("<article")[1].split("</article>")[0]
        parts = re.split(r"<h2.*?</h2>", article, flags=re.DOTALL)[1:]
        assert parts, door
        assert all(re.sub(r"<[^>]*>", "", one).strip() for one in parts), door


def test_the_folder_for_chapters_is_made_where_git_has_dropped_it(
    smallest: tuple[Path, str],
) -> None:
    root, _ = smallest
    assert list((root / "content" / "chapters").iterdir()) == []
