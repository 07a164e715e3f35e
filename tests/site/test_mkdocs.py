"""MkDocs by itself, as somebody uses it who knows MkDocs."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from pencilwood.pages.finished import finish

pytestmark = pytest.mark.slow


def mkdocs(root: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "mkdocs", *arguments],
        cwd=root,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
    )


def test_mkdocs_build_works_by_itself(sample: Path) -> None:
    done = mkdocs(sample, "build")
    assert done.returncode == 0, done.stderr
    assert "WARNING" not in done.stderr
    assert (sample / "site" / "es" / "cases" / "tidy-vine.html").is_file()


def test_broken_link_in_a_chapter_fails_the_build(sample: Path) -> None:
    chapter = sample / "content" / "chapters" / "en" / "warm-up.md"
    chapter.write_text("# Warm up\n\n[away](no-such-page.md)\n", "utf-8")
    done = mkdocs(sample, "build")
    assert done.returncode == 1
    assert "no-such-page.md" in done.stderr


def test_a_chapter_leads_to_a_place_of_a_page_of_ours(sample: Path) -> None:
    chapter = sample / "content" / "chapters" / "en" / "warm-up.md"
    chapter.write_text("# Warm up\n\n[prices](scores.md#prices)\n", "utf-8")
    done = mkdocs(sample, "build")
    assert done.returncode == 0, done.stderr
    assert "WARNING" not in done.stderr
    page = (sample / "site" / "warm-up.html").read_text("utf-8")
    assert 'href="scores.html#prices"' in page
    chapter.write_text("# Warm up\n\n[prices](scores.md#price)\n", "utf-8")
    done = mkdocs(sample, "build")
    assert done.returncode == 1
    assert "warm-up.md:3:1: the page has no heading or other place of this name" in done.stderr
    assert 'did you mean "#prices"?' in done.stderr
    assert "WARNING" not in done.stderr


def test_failed_proof_fails_the_build_and_keeps_the_site(sample: Path) -> None:
    (sample / "site").mkdir()
    (sample / "site" / "index.html").write_text("the last good site", "utf-8")
    profile = sample / "content" / "profile.yml"
    profile.write_text(profile.read_text("utf-8").replace("metric", "metrik"), "utf-8")
    done = mkdocs(sample, "build")
    assert done.returncode == 1
    assert "content/profile.yml:" in done.stderr
    assert 'did you mean "metric"?' in done.stderr
    assert "Traceback" not in done.stderr
    assert (sample / "site" / "index.html").read_text("utf-8") == "the last good site"


def test_a_page_in_preview_has_the_script_of_its_headings_and_keeps_nothing() -> None:
    """The list of headings folds there too; no worker would show a page before it is changed."""
    page = "<head><meta charset=utf-8></head><body></body>"
    shown = finish(page, "..", "es/", live=True)
    assert '<script src="../assets/pencilwood/offline.js" defer></script>' in shown
    assert "data-manifest" not in shown
    assert "offline.js?v=" in (published := finish(page, "..", "es/"))
    assert 'data-manifest="../es/manifest.webmanifest"' in published
