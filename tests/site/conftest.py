"""A small handbook in a folder of its own, and the site made of it."""

import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from chapter_files import FIGURES, GLOSSARY, SOURCES
from pencilwood.pages.handbook import Handbook
from pencilwood.site.handbook import open_handbook
from pencilwood.site.publish import publish
from photo_files import with_facts
from small_handbook import make_small

CASES = ("tidy-vine", "climbing-spurs", "one-arm-vine")
QUIZ = """\
quiz: small
title: {en: Small quiz, es: Examen breve}
intro: {en: Prune both., es: Pode las dos.}
questions: [{prune: tidy-vine}, {prune: climbing-spurs}]
passes needed: 1
"""


CHAPTERS = {
    "en": {
        "spurs": """\
---
title: Spurs and hands
for: worker
order: 10
---
Keep {{ limit("spur spacing at least") }} free. A hand is {{ figure("hand-width") }} wide.

## Look

{{ picture("hand-on-the-arm", caption="A hand from spur to spur.") }}

{{ right_and_wrong("crowded-spurs") }}

{{ safety("hand-shears") }}

Next: {{ chapter("targets") }}. From {{ cite("our-habit") }}.
""",
        "targets": """\
---
title: Setting targets
for: trainer
order: 10
---
See {{ page("sources") }} and {{ rule("crowded-spurs") }}.

{{ draw("tidy-vine", state="answer", at="L1") }}
""",
    },
    "es": {
        "spurs": """\
---
title: Pulgares y manos
for: worker
order: 10
---
Deje {{ limit("spur spacing at least") }} libres. Una mano mide {{ figure("hand-width") }}.

## Mire

{{ picture("hand-on-the-arm", caption="Una mano de pulgar a pulgar.") }}

{{ right_and_wrong("crowded-spurs") }}

{{ safety("hand-shears") }}

Sigue: {{ chapter("targets") }}. De {{ cite("our-habit") }}.
""",
        "targets": """\
---
title: Fijar metas
for: trainer
order: 10
---
Vea {{ page("sources") }} y {{ rule("crowded-spurs") }}.

{{ draw("tidy-vine", state="answer", at="L1") }}
""",
    },
}


def make_sample(project: Path, root: Path) -> Path:
    """The demo handbook with three vines, three chapters (one with a photo), and one quiz."""
    shutil.copytree(project / "content", root / "content")
    for path in (root / "content" / "chapters").rglob("*.md"):
        if path.stem != "home":
            path.unlink()
    for name, text in (("sources", SOURCES), ("figures", FIGURES), ("glossary", GLOSSARY)):
        (root / "content" / f"{name}.yml").write_text(text, "utf-8")
    for path in (root / "content" / "cases").glob("*.yml"):
        if path.stem not in CASES:
            path.unlink()
    for language, title in (("en", "Warm up first"), ("es", "Primero caliente")):
        folder = root / "content" / "chapters" / language
        (folder / "warm-up.md").write_text(f"# {title}\n\n![](stretch.png)\n", "utf-8")
        for name, text in CHAPTERS[language].items():
            (folder / f"{name}.md").write_text(text, "utf-8")
        (folder / "stretch.png").write_bytes(with_facts("PNG"))
        (folder / "rows.svg").write_text("<svg><text>vine</text></svg>\n", "utf-8")
    profile = root / "content" / "profile.yml"
    few = profile.read_text("utf-8").replace("practice vines: 200", "practice vines: 3")
    profile.write_text(few, "utf-8")
    (root / "quizzes").mkdir()
    (root / "quizzes" / "small.yml").write_text(QUIZ, "utf-8")
    shutil.copy(project / "mkdocs.yml", root / "mkdocs.yml")
    return root


@pytest.fixture
def sample(project: Path, tmp_path: Path) -> Path:
    """A handbook that a test may change."""
    return make_sample(project, tmp_path / "sample")


@pytest.fixture(scope="session")
def built(project: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample's site; look, do not touch."""
    root = make_sample(project, tmp_path_factory.mktemp("sample") / "handbook")
    published = publish(root, root / "site")
    assert published.succeeded, published.told
    assert published.told == ""
    return root / "site"


@pytest.fixture(scope="session")
def snapshot() -> Callable[[Path], dict[str, bytes]]:
    """Every file of a folder, by its path."""

    def take(folder: Path) -> dict[str, bytes]:
        return {
            path.relative_to(folder).as_posix(): path.read_bytes()
            for path in sorted(folder.rglob("*"))
            if path.is_file()
        }

    return take


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    """One vine, and neither chapter, quiz, block nor practice."""
    opened = open_handbook(make_small(tmp_path_factory.mktemp("front") / "book", "tidy-vine"))
    assert opened.handbook is not None
    return replace(opened.handbook, chapters=())
