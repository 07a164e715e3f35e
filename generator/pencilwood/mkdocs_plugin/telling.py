"""What we say to those who run MkDocs, and in which language."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort

from pencilwood.commands.papering import refusal
from pencilwood.findings import Finding
from pencilwood.site.publish import LANGUAGE, PAPERS_SIZE, NotOursError, check_replaceable
from pencilwood.words import LANGUAGES, say
from pencilwood.worksheets.typeset import HAND_SIZES, PaperSize


def root_of(config: MkDocsConfig) -> Path:
    """The handbook's folder."""
    return Path(config.config_file_path or "mkdocs.yml").resolve().parent


def language_asked_for() -> str:
    """What our own command asked for; English for those who run MkDocs themselves."""
    asked = os.environ.get(LANGUAGE, "")
    return asked if asked in LANGUAGES else "en"


def papers_asked_for() -> PaperSize | None:
    """The size of the papers that the site is to carry; None for a site without any."""
    asked = os.environ.get(PAPERS_SIZE, "")
    return next((size for size in HAND_SIZES if size == asked), None)


def refuse_papers(config: MkDocsConfig) -> None:
    """Stop where papers are asked for and what makes them is not installed."""
    if told := refusal(root_of(config), language_asked_for()):
        sys.stderr.write(f"{told}\n")
        raise not_built()


def not_built() -> Abort:
    """What ends a build."""
    # Our own command says so itself, in its language.
    told = "" if LANGUAGE in os.environ else "The handbook was not built; the last one stays."
    return Abort(told)


def tell(findings: tuple[Finding, ...]) -> None:
    """Print what was found."""
    # Not through the log, which would put its own words before each line.
    language = language_asked_for()
    for finding in findings:
        sys.stderr.write(f"{finding.render(language)}\n")


def keep_others_folders(config: MkDocsConfig) -> None:
    """Stop before MkDocs clears a folder that holds something else than a site of ours."""
    try:
        check_replaceable(root_of(config), Path(config.site_dir).resolve())
    except NotOursError as error:
        language = language_asked_for()
        sys.stderr.write(f"{say(language, 'cli.not-ours', folder=str(error))}\n")
        raise not_built() from error
