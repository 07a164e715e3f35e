"""A language that the program speaks is whole: words, rules, figures and a handbook to start with.

Each check tells all that is missing, so that somebody who adds a language can go down the list.
`tests/cases/test_words.py` holds the sentences themselves against the first language's.
"""

import json
import subprocess
from importlib.util import find_spec
from pathlib import Path

import pytest
import yaml

from pencilwood.rules import RULES
from pencilwood.site.theme_files import is_of_use
from pencilwood.words import LANGUAGES, catalogue
from pencilwood.words.languages import NUMBER_MARKS

OTHERS = LANGUAGES[1:]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_rule_speaks_it(language: str) -> None:
    missing = [
        *(f"{one.name}: title" for one in RULES if language not in one.title),
        *(f"{one.name}: page" for one in RULES if language not in one.page),
        *(
            f"{one.name}: {name}"
            for one in RULES
            for name, said in one.messages.items()
            if language not in said
        ),
    ]
    assert missing == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_its_name_is_known_in_every_language(language: str) -> None:
    keys = (f"pages.language.{language}", f"quiz.language.{language}")
    missing = [(one, key) for one in LANGUAGES for key in keys if key not in catalogue(one)]
    assert missing == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_handbook_can_start_in_it(project: Path, language: str) -> None:
    files = project / "generator/pencilwood/site/starter/files"
    wanted = (f"blocks.{language}.yml", f"profile.{language}.yml", f"readme.{language}.md")
    assert [name for name in wanted if not (files / name).is_file()] == []
    assert catalogue(language)["start.second-readme"].endswith(".md")


def test_no_two_languages_name_their_readme_alike() -> None:
    names = [catalogue(language)["start.second-readme"] for language in LANGUAGES]
    assert len({*names, "README.md"}) == len(names) + 1


@pytest.mark.parametrize("language", OTHERS)
def test_what_every_handbook_shares_is_written_in_it(project: Path, language: str) -> None:
    """Trade words, safety notes and rule examples come with the package."""
    found = []
    shared = [*(project / "content").glob("*.yml"), *(project / "content/safety").glob("*.yml")]
    shared += (project / "content/rules").glob("*/*.yml")
    for path in sorted(shared):
        text = path.read_text("utf-8")
        found += [
            f"{path.relative_to(project)}:{line}"
            for line in _without(yaml.compose(text), language)
            if path.name not in ("profile.yml", "blocks.yml")
        ]
    assert found == []


def _without(node: yaml.Node | None, language: str) -> list[int]:
    """Lines of texts that are there in the first language and not in this one."""
    if isinstance(node, yaml.SequenceNode):
        return [line for one in node.value for line in _without(one, language)]
    if not isinstance(node, yaml.MappingNode):
        return []
    names = [name.value for name, _ in node.value]
    here = [node.start_mark.line + 1] if LANGUAGES[0] in names and language not in names else []
    return here + [line for _, one in node.value for line in _without(one, language)]


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_theme_speaks_it_and_can_search_in_it(project: Path, language: str) -> None:
    spec = find_spec("material")
    assert spec is not None
    assert spec.origin is not None
    theme = Path(spec.origin).parent / "templates"
    assert (theme / f"partials/languages/{language}.html").is_file()
    stems = f"assets/javascripts/lunr/min/lunr.{language}.min.js"
    # English needs no stems of its own.
    assert language == "en" or (theme / stems).is_file()
    assert is_of_use(stems)
    settings = yaml.safe_load((project / "mkdocs.yml").read_text("utf-8"))
    (search,) = [one["search"] for one in settings["plugins"] if "search" in one]
    assert language in search["lang"]


@pytest.mark.node
def test_the_script_writes_numbers_as_the_program_does(project: Path, node: str) -> None:
    module = (project / "site_assets/js/languages.mjs").as_uri()
    code = f"import('{module}').then((m) => console.log(JSON.stringify(m.NUMBER_MARKS)))"
    told = subprocess.run([node, "-e", code], capture_output=True, text=True, check=True).stdout
    ours = {
        code: {"decimal": marks.decimal, "thousands": marks.thousands, "percent": marks.percent}
        for code, marks in NUMBER_MARKS.items()
    }
    assert json.loads(told) == ours
