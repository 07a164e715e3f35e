"""What a new handbook holds for trainers, and that its front page promises no more."""

from dataclasses import replace
from pathlib import Path

import pytest

from pencilwood.cli import main
from pencilwood.pages.desk import Desk
from pencilwood.pages.doors import doors
from pencilwood.site.handbook import open_handbook
from pencilwood.site.starter.passages import Passages


def test_the_front_page_promises_a_trainer_what_the_trainers_page_has(started: Path) -> None:
    home = (started / "site" / "index.html").read_text("utf-8")
    assert "The pruning day, targets, your own vines, the block, results" in home
    trainers = (started / "site" / "trainers.html").read_text("utf-8")
    for chapter in ("running-a-pruning-day", "setting-targets", "block-numbers"):
        assert f'href="{chapter}.html"' in trainers


@pytest.mark.parametrize("deleted", ["setting-targets", "running-a-pruning-day"])
def test_a_front_page_promises_no_chapter_that_was_deleted(tmp_path: Path, deleted: str) -> None:
    root = tmp_path / "handbook"
    assert main(["start", str(root), "--language", "en"]) == 0
    whole = open_handbook(root).handbook
    assert whole is not None
    fewer = replace(whole, chapters=tuple(one for one in whole.chapters if one.name != deleted))
    promised = [doors(Desk(book, "index", "en"))[1].words for book in (whole, fewer)]
    assert promised[0].startswith("The pruning day, targets, your own vines")
    assert promised[1].startswith("Your own vines")


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ('Look twice. Practise on {{ vine("far") }}. Then go.', ["Look twice. Then go."]),
        ('- **Old.** See {{ chapter("away") }}. Change it.', ["- **Old.** Change it."]),
        ('Practise on {{ vine("far") }}.', []),
        ('It keeps {{ measured("far", "buds_kept") }}. Or not.', ["Or not."]),
        ('See {{ chapter("here") }} and {{ vine("near") }}.', None),
        ("", None),
    ],
)
def test_a_sentence_that_leads_elsewhere_is_cut_whole(line: str, kept: list[str] | None) -> None:
    there = Passages(["near"], ["here"])
    assert there.kept(line).split("\n") == ([line] if kept is None else kept or [""])
