"""The `pencilwood` command. Exit status: 0 fine, 1 something was found, 2 wrong use."""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

from pencilwood.commands import block, export, field, packing, papers, start, winters
from pencilwood.findings import Finding, has_errors, shown
from pencilwood.site.chapter_report import chapter_report, chapters_as_json
from pencilwood.site.handbook import Opened, open_handbook
from pencilwood.site.lock import BusyError
from pencilwood.site.publish import (
    CONFIG,
    NotOursError,
    make_room_for_chapters,
    mend,
    mkdocs_command,
    mkdocs_environment,
    publish,
)
from pencilwood.site.quiz_report import quiz_report, quizzes_as_json
from pencilwood.site.settings import look_at_settings
from pencilwood.site.single import (
    STATES,
    NoSuchCaseError,
    UnusableCaseError,
    drawing_of,
    measures_of,
    open_case,
    plan_of,
)
from pencilwood.site.trouble import told_of
from pencilwood.words import LANGUAGES, MissingWordsError, say

FINE, FOUND, WRONG_USE = 0, 1, 2
_LONGER = (
    ("case", field, "Make a case of a vine measured in the row."),
    ("print", papers, "Make papers for the workshop as PDFs."),
    ("block", block, "Work out buds, crop, hours and more."),
    ("export", export, "Make packages for a learning system."),
    ("winters", winters, "Follow a vine over three winters, pruned in two ways."),
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    for stream in (sys.stdout, sys.stderr):
        # A terminal of another encoding must not end the program at a Spanish letter.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    given = _parser().parse_args(arguments)
    root: Path = given.root
    try:
        if not root.is_dir():
            return _refuse(say(given.language, "cli.no-folder", folder=str(root)))
        mend(root / "site")
        return int(given.run(given))
    except (NoSuchCaseError, MissingWordsError) as error:
        return _refuse(error.told)
    except UnusableCaseError as error:
        _print_findings(error.findings)
        return FOUND
    except NotOursError as error:
        return _refuse(say(given.language, "cli.not-ours", folder=str(error)))
    except OSError as error:
        return _refuse(told_of(error, given.language))
    except KeyboardInterrupt:
        return 130


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="pencilwood", description="Checks, plans, draws and builds a pruning handbook."
    )
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")

    def command(
        name: str, run: object, about: str, machine: bool = False
    ) -> argparse.ArgumentParser:
        one = commands.add_parser(name, help=about, description=about)
        one.add_argument("--root", type=Path, default=Path(), help="folder of the handbook")
        one.add_argument(
            "--language", choices=LANGUAGES, default="en", help="language of what is printed"
        )
        if machine:
            one.add_argument("--json", action="store_true", help="print JSON for a machine")
        one.set_defaults(run=run)
        return one

    check = command("check", _check, "Prove all of the handbook; build nothing.", machine=True)
    check.add_argument(
        "--chapters", action="store_true", help="tell how hard each chapter is to read"
    )
    check.add_argument("--quizzes", action="store_true", help="tell what was proved of each quiz")
    build = command("build", _build, "Check, then build the site.")
    build.add_argument("--site", type=Path, help="folder to build into (default: ROOT/site)")
    build.add_argument("--zip", type=Path, metavar="FILE", help="pack the site into FILE too")
    preview = command(
        "preview", _preview, "Show the pages on this machine while you write; Ctrl-C ends it."
    )
    preview.add_argument(
        "--address",
        default="127.0.0.1:8000",
        help="where the browser finds them (default: 127.0.0.1:8000)",
    )
    draw = command("draw", _draw, "Draw the vine of a case as an SVG file.")
    draw.add_argument("--state", choices=STATES, default="before", help="how far it is pruned")
    draw.add_argument("-o", "--output", type=Path, help="file to write (default: the terminal)")
    measure = command("measure", _measure, "Print the measures of a case.", machine=True)
    plan = command(
        "plan", _plan, "Print the best pruning of a case, cut by cut, with reasons.", machine=True
    )
    _add_start(commands)
    for name, module, about in _LONGER:
        module.add_arguments(command(name, module.run, about))
    for one in (draw, measure, plan):
        one.add_argument("case", metavar="CASE", help="short name of the case")
    return parser


def _add_start(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """The one command that has no handbook yet."""
    about = "Make a new handbook in a folder of its own."
    one = commands.add_parser("start", help=about, description=about)
    start.add_arguments(one)
    one.set_defaults(run=start.run)


def _check(given: argparse.Namespace) -> int:
    opened = open_handbook(given.root, given.language)
    if given.json:
        print(json.dumps(_as_json(opened), ensure_ascii=False, indent=2))
    else:
        _print_findings(opened.findings)
        if given.chapters:
            print(*chapter_report(opened, given.language), sep="\n")
        if given.quizzes:
            print(*quiz_report(opened, given.language), sep="\n")
        print(_summary(opened, given.language))
    return FOUND if has_errors(opened.findings) else FINE


def _as_json(opened: Opened) -> dict[str, object]:
    return {
        "fine": not has_errors(opened.findings),
        "findings": [finding.as_json() for finding in opened.findings],
        "cases": [
            {
                "case": proof.case.slug,
                "plan_lost": proof.plan.lost,
                "answer_score": proof.answer_score,
                "random_tries": proof.luck.tries,
                "random_passes": proof.luck.passes,
                "lucky_pass_interval": list(proof.luck.interval),
                "habit_scores": dict(proof.habit_scores),
            }
            for proof in opened.proofs
        ],
        "chapters": chapters_as_json(opened),
        "quizzes": quizzes_as_json(opened),
    }


def _summary(opened: Opened, language: str) -> str:
    errors = sum(finding.level == "error" for finding in opened.findings)
    if errors:
        return say(language, "cli.found", n=errors)
    return say(language, "cli.fine", cases=len(opened.proofs), warnings=len(opened.findings))


def _build(given: argparse.Namespace) -> int:
    root = given.root
    if not (root / CONFIG).is_file():
        return _refuse(say(given.language, "cli.no-config", file=str(root / CONFIG)))
    site: Path = given.site or root / "site"
    if given.zip and (refusal := packing.refusal(given.zip, root, site, given.language)):
        return _refuse(refusal)
    try:
        published = publish(root, site, given.language)
    except BusyError as error:
        print(say(given.language, "cli.busy", site=str(error)), file=sys.stderr)
        return FOUND
    if published.told:
        print(published.told, file=sys.stderr)
    if not published.succeeded:
        print(say(given.language, "cli.not-built", site=str(published.site)), file=sys.stderr)
        return FOUND
    print(say(given.language, "cli.built", page=str(published.site / "index.html")))
    if given.zip:
        print(packing.pack(published.site, given.zip, root, given.language))
    return FINE


def _preview(given: argparse.Namespace) -> int:
    if not (given.root / CONFIG).is_file():
        return _refuse(say(given.language, "cli.no-config", file=str(given.root / CONFIG)))
    settings, findings = look_at_settings(given.root, given.language)
    if settings is None:
        _print_findings(findings)
        return FOUND
    make_room_for_chapters(given.root)
    command = mkdocs_command(given.root, "serve", "--dev-addr", given.address)
    return subprocess.run(  # noqa: S603 - our own interpreter, and no shell
        command, env=mkdocs_environment(given.language), check=False
    ).returncode


def _draw(given: argparse.Namespace) -> int:
    opened = open_case(given.root, given.case, given.language)
    svg = drawing_of(opened, given.state, given.language)
    if given.output is None:
        sys.stdout.write(svg)
    else:
        given.output.write_text(svg, encoding="utf-8", newline="\n")
    return FINE


def _measure(given: argparse.Namespace) -> int:
    opened = open_case(given.root, given.case, given.language)
    measures = measures_of(opened)
    if given.json:
        print(json.dumps(measures, ensure_ascii=False, indent=2))
    else:
        for name, value in measures["answer"].items():
            print(f"{name}: {measures['before'].get(name, '-')} -> {value}")
    return FINE


def _plan(given: argparse.Namespace) -> int:
    opened = open_case(given.root, given.case, given.language)
    plan = plan_of(opened, given.language)
    if given.json:
        print(json.dumps(plan, ensure_ascii=False, indent=2))
        return FINE
    for cut in plan["cuts"]:
        to = f" -> {cut['buds']}" if cut["buds"] is not None else ""
        print(
            f"{cut['pass']}: {cut['part']}{to} [{cut['tool']}] {' '.join(cut['reasons'])}".rstrip()
        )
    print(say(given.language, "cli.plan-lost", lost=plan["lost"]))
    return FINE


def _print_findings(findings: Sequence[Finding]) -> None:
    for finding in findings:
        print(finding.render())


def _refuse(told: str) -> int:
    # What was typed may hold signs that a terminal obeys.
    print(f"pencilwood: {shown(told)}", file=sys.stderr)
    return WRONG_USE


if __name__ == "__main__":
    sys.exit(main())
