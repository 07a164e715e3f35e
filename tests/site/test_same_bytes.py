"""The bytes of a site are the same however it is built: what is kept and cores change nothing."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from pencilwood import kept
from pencilwood.site import workers
from pencilwood.site.assemble import Site, assemble
from pencilwood.site.handbook import open_handbook


@pytest.fixture
def as_before() -> Iterator[None]:
    before = kept.folder()
    yield
    kept.keep_in_folder(before)


def made(root: Path) -> tuple[object, ...]:
    handbook = open_handbook(root).handbook
    assert handbook is not None
    site: Site = assemble(handbook)
    return tuple(repr(page) for page in site.pages), dict(site.files)


@pytest.mark.slow
def test_nothing_kept_all_kept_and_two_cores(
    sample: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, as_before: None
) -> None:
    profile = sample / "content" / "profile.yml"
    profile.write_text(
        "".join(
            "practice vines: 6\n" if line.startswith("practice vines:") else line
            for line in profile.read_text("utf-8").splitlines(keepends=True)
        ),
        "utf-8",
    )
    monkeypatch.setenv(workers.CORES, "1")
    monkeypatch.setenv(kept.WHERE, "off")
    plain = made(sample)
    monkeypatch.setenv(kept.WHERE, str(tmp_path / "kept"))
    monkeypatch.setenv(workers.CORES, "2")
    monkeypatch.setattr(workers, "PATIENCE", 0)
    assert made(sample) == plain
    assert list((tmp_path / "kept").glob("drawing/*"))
    monkeypatch.setenv(workers.CORES, "1")
    # All is there now, and what is damaged is made anew.
    for entry in sorted((tmp_path / "kept").glob("*/*"))[::5]:
        entry.write_bytes(b"damaged")
    assert made(sample) == plain
    # One case is edited: what is kept of the others is used, and nothing of the old wording stays.
    case = sample / "content" / "cases" / "tidy-vine.yml"
    text = case.read_text("utf-8")
    assert "A tidy vine" in text
    case.write_text(text.replace("A tidy vine", "A well-kept vine"), "utf-8")
    edited = made(sample)
    monkeypatch.setenv(kept.WHERE, "off")
    assert made(sample) == edited
    assert edited != plain
