"""`pencilwood export qti`: which packages it makes, and what it says."""

from __future__ import annotations

from pathlib import Path

import pytest

from pencilwood.cli import main
from pencilwood.commands import export
from pencilwood.site.exporting import CannotExportError, Chosen
from pencilwood.site.qti import qti_packages
from qti_demo import demo_handbook, packed


def test_the_command_writes_the_package_and_says_what_it_lacks(
    project: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    arguments = ["export", "qti", "crew-leader", "--root", str(project), "--language", "es"]
    assert main([*arguments, "-o", str(tmp_path)]) == 0
    (file,) = tmp_path.iterdir()
    assert file.name == "quiz-crew-leader-es-qti3.zip"
    made = packed("crew-leader", "es")
    assert file.read_bytes() == made.package.content
    said = capsys.readouterr().out
    assert "Una renovación fuerte" in said
    assert all(note in said for note in made.package.notes)


@pytest.mark.parametrize(
    ("language", "said"), [("en", "QTI carries quizzes"), ("es", "QTI lleva exámenes")]
)
def test_a_vine_alone_is_refused_with_the_quizzes_there_are(language: str, said: str) -> None:
    handbook = demo_handbook()
    with pytest.raises(CannotExportError) as refused:
        list(qti_packages(handbook, Chosen(handbook.cases[:1], ()), language))
    assert said in refused.value.told
    assert "first-week" in refused.value.told


def test_vines_that_were_asked_for_in_vain_are_named_once() -> None:
    handbook = demo_handbook()
    shortest = min(handbook.quizzes, key=lambda proof: len(proof.made.pictures))
    made = list(qti_packages(handbook, Chosen(handbook.cases, (shortest, shortest)), "en"))
    titles = [proof.case.title["en"] for proof in handbook.cases]
    assert [all(title in one.notes[0] for title in titles) for one in made] == [True, False]


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", "nothing of what was named can be a package of qti"),
        ("es", "nada de lo nombrado puede ser un paquete de qti"),
    ],
)
def test_an_export_that_makes_nothing_says_so_and_leaves_no_folder(
    project: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    language: str,
    said: str,
) -> None:
    monkeypatch.setitem(export._PACKERS, "qti", lambda *_: iter(()))
    asked = ["export", "qti", "crew-leader", "--root", str(project), "--language", language]
    assert main([*asked, "-o", str(tmp_path / "made")]) == export.WRONG_USE
    assert said in capsys.readouterr().err
    assert not (tmp_path / "made").exists()
