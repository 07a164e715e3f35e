"""The command line: what each command prints and returns."""

import json
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from chapter_files import FIGURES
from pencilwood.cli import main
from pencilwood.rules import rules_of
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    try:
        status = main(arguments)
    except SystemExit as ended:  # argparse ends the program itself
        status = int(str(ended.code))
    told = capsys.readouterr()
    return status, told.out, told.err


@pytest.mark.parametrize(
    ("arguments", "status", "says"),
    [
        # wrong use
        ((), 2, "COMMAND"),
        (("prune",), 2, '"prune" cannot be used here'),
        (("measure",), 2, "CASE"),
        (("draw", "tidy-vine", "--state", "fin"), 2, 'did you mean "fine"?'),
        (("measure", "tidy-vin"), 2, 'there is no case "tidy-vin"; did you mean "tidy-vine"?'),
        (("plan", "tidy-vin", "--language", "es"), 2, '¿quiso decir "tidy-vine"?'),
        (("draw", "../profile"), 2, 'there is no case "../profile"'),
        (("draw", "tidy-vine", "-o", "no/such/folder.svg"), 2, "there is no such file or folder"),
        (("build", "--site", "content"), 2, "something else than a built handbook"),
        # fine
        (("check",), 0, "Cases proved: 3"),
        (("check", "--language", "es"), 0, "Casos probados: 3"),
        (("measure", "tidy-vine"), 0, "Buds: 183 before; "),
        (("measure", "tidy-vine", "--language", "es"), 0, "Yemas: 183 antes; "),
        (("plan", "tidy-vine"), 0, "Rough pass\n  all long canes: leave 5 buds [hand shears]"),
        (("plan", "tidy-vine", "--language", "es"), 0, "dejar 5 yemas [tijera de mano]"),
        (("draw", "tidy-vine"), 0, "<svg"),
    ],
)
def test_commands(
    sample: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    arguments: tuple[str, ...],
    status: int,
    says: str,
) -> None:
    monkeypatch.chdir(sample)
    ended, out, err = run(capsys, *arguments)
    assert ended == status, out + err
    assert says in out + err
    if status == 2:
        assert out == ""


@pytest.mark.parametrize("command", ["check", "build", "preview"])
def test_missing_folder_is_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], command: str
) -> None:
    status, out, err = run(capsys, command, "--root", str(tmp_path / "nowhere"))
    assert (status, out) == (2, "")
    assert err == f"pencilwood: there is no folder {tmp_path / 'nowhere'}\n"


def test_folder_without_settings_cannot_be_built(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, _, err = run(capsys, "build", "--root", str(tmp_path))
    assert status == 2
    assert err.count("\n") == 1
    assert "mkdocs.yml" in err


def test_findings_are_told_and_returned(sample: Path, capsys: pytest.CaptureFixture[str]) -> None:
    case = sample / "content" / "cases" / "tidy-vine.yml"
    case.write_text(case.read_text("utf-8").replace("level: easy", "level: eazy"), "utf-8")
    for arguments in (("check",), ("measure", "tidy-vine"), ("build",)):
        status, out, err = run(capsys, *arguments, "--root", str(sample))
        assert status == 1, arguments
        assert 'did you mean "easy"?' in out + err
        assert "Traceback" not in err
    status, out, _ = run(capsys, "check", "--json", "--root", str(sample))
    told = json.loads(out)
    assert status == 1
    assert told["fine"] is False
    assert "content/cases/tidy-vine.yml" in {one["file"] for one in told["findings"]}


def test_check_json_gives_the_chance_of_a_lucky_pass(
    sample: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, _ = run(capsys, "check", "--json", "--root", str(sample))
    (first, *_) = json.loads(out)["cases"]
    low, high = first["lucky_pass_interval"]
    share = first["random_passes"] / first["random_tries"]
    assert 0 <= low <= share + 1e-9
    assert share < high < 0.05


@pytest.mark.parametrize("state", ["before", "rough", "thinning-out", "fine", "plan"])
def test_drawings_stand_alone(
    sample: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], state: str
) -> None:
    file = tmp_path / "vine.svg"
    arguments = ("--root", str(sample), "--state", state, "--language", "es", "-o", str(file))
    assert run(capsys, "draw", "tidy-vine", *arguments)[0] == 0
    root = ET.parse(file).getroot()  # noqa: S314 - our own file
    assert root.find("{http://www.w3.org/2000/svg}style") is not None
    gone = [one for one in root.iter() if "pw-gone" in one.get("class", "")]
    assert bool(gone) is (state != "before")


def test_measures_and_plan_for_a_machine(sample: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "measure", "tidy-vine", "--json", "--root", str(sample))
    measures = json.loads(out)
    assert measures["before"]["buds"] > measures["answer"]["buds"] > 0
    _, out, _ = run(capsys, "plan", "tidy-vine", "--json", "--root", str(sample))
    plan = json.loads(out)
    assert {cut["pass"] for cut in plan["cuts"]} <= {"rough", "thinning-out", "fine"}
    assert plan["lost"] >= 0


def test_the_installed_command_runs() -> None:
    tool = Path(sys.executable).with_name("pencilwood")
    done = subprocess.run([str(tool), "--help"], capture_output=True, text=True, check=False)
    assert done.returncode == 0
    for command in ("check", "build", "preview", "draw", "measure", "plan"):
        assert command in done.stdout


def test_check_tells_how_hard_the_chapters_are(
    project: Path, sample: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, told, _ = run(capsys, "check", "--chapters", "--root", str(sample))
    assert status == 0
    assert "spurs (en, worker): grade " in told
    assert "spurs (es, worker): INFLESZ " in told
    # The figures of the package, which the sample's own six are added to or take the place of.
    ours = re.findall(r"^([\w-]+):", (project / "content" / "figures.yml").read_text("utf-8"), re.M)
    own = re.findall(r"^([\w-]+):", FIGURES, re.M)
    assert f"{len({*ours, *own})} figures: " in told
    _, told, _ = run(capsys, "check", "--json", "--root", str(sample))
    chapters = json.loads(told)["chapters"]
    assert {one["chapter"] for one in chapters} == {"spurs", "targets"}
    assert all("inflesz" in one or "flesch_kincaid_grade" in one for one in chapters)


def test_check_tells_what_was_proved_of_each_quiz(
    sample: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, told, _ = run(capsys, "check", "--quizzes", "--root", str(sample))
    assert status == 0
    (line,) = [line for line in told.splitlines() if "passed by guessing" in line]
    _, told, _ = run(capsys, "check", "--json", "--root", str(sample))
    (quiz,) = json.loads(told)["quizzes"]
    assert line.startswith(f"{quiz['quiz']}: passed by guessing in ")
    assert 0 < quiz["chance_of_passing_by_guessing"] <= 0.01
    assert len(quiz["covers"]) + len(quiz["leaves_out"]) == len(rules_of(TWO_ARM_CORDON))
