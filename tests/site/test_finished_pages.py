"""A page that is finished is taken as it is, and made anew as soon as anything in it may differ."""

import shutil
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from pencilwood import kept
from pencilwood.pages.page import Page
from pencilwood.site import finished_pages
from pencilwood.site.finished_pages import FinishedPages, Makers, surroundings
from pencilwood.site.live import LiveSite
from pencilwood.site.publish import publish

Snapshot = Callable[[Path], dict[str, bytes]]
MARK = "taken as it was kept"
MAKERS = Makers("material", False, ("search", "offline", "pencilwood"), ("tables",), "theme: {}")


@pytest.fixture
def entries(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """The folder of what is kept, for one test alone."""
    before = kept.folder()
    monkeypatch.setenv(kept.WHERE, str(tmp_path / "kept"))
    yield tmp_path / "kept"
    kept.keep_in_folder(before)


def built_from(root: Path, snapshot: Snapshot) -> dict[str, bytes]:
    published = publish(root, root / "site")
    assert published.succeeded, published.told
    return snapshot(root / "site")


def mark_all(entries: Path) -> int:
    """Write a mark into each page that is kept, so that a build shows which ones it took."""
    pages = list((entries / "finished-page").iterdir())
    for path in pages:
        text = kept._read(path)
        assert text is not None
        kept._write(path, text.replace("</body>", f"<!-- {MARK} --></body>"))
    return len(pages)


def marked(site: Mapping[str, bytes]) -> set[str]:
    return {name for name, data in site.items() if MARK.encode() in data}


@pytest.mark.slow
def test_bytes_are_the_same_and_what_changed_is_made_anew(
    sample: Path, entries: Path, snapshot: Snapshot, monkeypatch: pytest.MonkeyPatch
) -> None:
    profile = sample / "content" / "profile.yml"
    named = "site address: https://larkfell.example/handbook/\n"
    profile.write_text(f"{named}{profile.read_text('utf-8')}", "utf-8")
    cold = built_from(sample, snapshot)
    assert b"cases/tidy-vine.html" in cold["sitemap.xml"]
    assert built_from(sample, snapshot) == cold
    # The pages of three cases, of all rules and of a quiz, in two languages; none of the menu.
    count = mark_all(entries)
    taken = marked(built_from(sample, snapshot))
    assert len(taken) == count
    assert {"cases/tidy-vine.html", "es/cases/tidy-vine.html", "quizzes/small.html"} <= taken
    assert not {"index.html", "rules.html", "warm-up.html", "spurs.html"} & taken
    # A case is edited: its own pages, and those that name it, are made anew.
    case = sample / "content" / "cases" / "tidy-vine.yml"
    case.write_text(case.read_text("utf-8").replace("A tidy vine", "A well-kept vine"), "utf-8")
    edited = built_from(sample, snapshot)
    assert "cases/tidy-vine.html" not in marked(edited)
    assert "es/cases/one-arm-vine.html" in marked(edited)
    assert not [name for name in marked(edited) if b"A tidy vine" in edited[name]]
    shutil.rmtree(entries / "finished-page")
    built_from(sample, snapshot)
    for change in (rename_the_vineyard, add_a_chapter_to_the_menu, turn_a_setting):
        mark_all(entries)
        change(sample)
        changed = built_from(sample, snapshot)
        assert not marked(changed), change.__name__
    monkeypatch.setenv(kept.WHERE, "off")
    assert built_from(sample, snapshot) == changed


def rename_the_vineyard(root: Path) -> None:
    profile = root / "content" / "profile.yml"
    text = profile.read_text("utf-8")
    assert "vineyard: Larkfell" in text
    profile.write_text(text.replace("vineyard: Larkfell", "vineyard: Larkfell Hill"), "utf-8")


def add_a_chapter_to_the_menu(root: Path) -> None:
    for language in ("en", "es"):
        chapter = root / "content" / "chapters" / language / "frost.md"
        chapter.write_text("# Frost\n\nWait.\n", "utf-8")


def turn_a_setting(root: Path) -> None:
    settings = root / "mkdocs.yml"
    text = settings.read_text("utf-8")
    assert "material/content-cut" in text
    settings.write_text(text.replace("material/content-cut", "material/leaf"), "utf-8")


@pytest.mark.slow
def test_a_chapter_links_to_finished_pages_as_to_others(sample: Path, entries: Path) -> None:
    chapter = sample / "content" / "chapters" / "en" / "warm-up.md"
    chapter.write_text("# Warm up\n\n[Prune](cases/tidy-vine.md)\n", "utf-8")
    assert publish(sample, sample / "site").succeeded
    assert publish(sample, sample / "site").succeeded
    assert 'href="cases/tidy-vine.html"' in (sample / "site" / "warm-up.html").read_text("utf-8")
    chapter.write_text("# Warm up\n\n[Prune](cases/tidy-vine.md#no-such-place)\n", "utf-8")
    published = publish(sample, sample / "site")
    assert not published.succeeded
    assert "no-such-place" in published.told


@pytest.mark.slow
def test_preview_writes_only_what_changed_and_shows_what_a_fresh_one_would(
    sample: Path, entries: Path, tmp_path: Path, snapshot: Snapshot
) -> None:
    def preview(shown: Path) -> None:
        made = load_config(str(sample / "mkdocs.yml"), site_dir=str(shown))
        made.plugins.on_startup(command="serve", dirty=False)
        made.site_url = "http://127.0.0.1:8000/"
        build(made, serve_url=made.site_url)

    shown = tmp_path / "shown"
    preview(shown)
    before = {path: path.stat().st_mtime_ns for path in shown.rglob("cases/*.html")}
    case = sample / "content" / "cases" / "tidy-vine.yml"
    case.write_text(case.read_text("utf-8").replace("A tidy vine", "A well-kept vine"), "utf-8")
    (sample / "content" / "cases" / "climbing-spurs.yml").unlink()
    (sample / "quizzes" / "small.yml").unlink()
    preview(shown)
    changed = {
        path.relative_to(shown).as_posix()
        for path, time_ns in before.items()
        if not path.exists() or path.stat().st_mtime_ns != time_ns
    }
    assert "cases/tidy-vine.html" in changed
    assert "cases/climbing-spurs.html" in changed
    fresh = tmp_path / "fresh"
    shutil.rmtree(entries)
    preview(fresh)
    assert snapshot(shown) == snapshot(fresh)


def test_names_follow_versions_settings_plugins_and_our_own_styles(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    usual = surroundings(MAKERS, ["menu"])
    assert usual is not None
    assert usual == surroundings(MAKERS, ["menu"])
    assert usual != surroundings(MAKERS, ["another menu"])
    assert usual != surroundings(replace(MAKERS, settings="theme: {icon: leaf}"), ["menu"])
    with monkeypatch.context() as patched:
        patched.setattr(finished_pages, "version", lambda _: "99")
        assert surroundings(MAKERS, ["menu"]) != usual
    with monkeypatch.context() as patched:
        patched.setattr(finished_pages, "our_versions", lambda: "another style")
        assert surroundings(MAKERS, ["menu"]) != usual


@pytest.mark.parametrize(
    "makers",
    [
        replace(MAKERS, theme="mkdocs"),
        replace(MAKERS, has_own_ways=True),
        replace(MAKERS, plugins=("search", "offline", "pencilwood", "minify")),
        replace(MAKERS, extensions=("tables", "my_own")),
        replace(MAKERS, settings="INHERIT: ../base.yml"),
        replace(MAKERS, settings="copyright: !ENV OWNER"),
    ],
)
def test_nothing_is_kept_where_others_do_what_we_do_not_know(makers: Makers) -> None:
    assert surroundings(makers, ()) is None


def test_page_is_found_by_all_it_says_and_only_whole(entries: Path) -> None:
    kept.keep_in_folder(entries)
    page = Page("rules/one", "en", "One", body="<p>Cut.</p>")
    docs = [{"location": "rules/one.html", "text": "Cut."}]
    first = FinishedPages()
    first.begin("usual", entries)
    assert first.found(page, "rules/one.html") is None
    first.keep("rules/one.html", "<html>\nCut.</html>", docs, {"one"})
    second = FinishedPages()
    second.begin("usual", entries)
    found = second.found(page, "rules/one.html")
    assert found is not None
    assert (found.html, list(found.docs), found.anchors) == ("<html>\nCut.</html>", docs, ("one",))
    assert second.all_docs((), ["rules/one.html"]) == docs
    for other in (
        Page("rules/one", "en", "One", body="<p>Leave.</p>"),
        Page("rules/one", "en", "One", body="<p>Cut.</p>", markdown="[far](away.md)"),
        Page("rules/one", "en", "One", body="<p>Cut.</p>", menu_title="One"),
    ):
        assert second.found(other, "rules/one.html") is None
    second.begin("another menu", entries)
    assert second.found(page, "rules/one.html") is None
    second.begin(None, entries)
    assert second.found(page, "rules/one.html") is None
    (entry,) = (entries / "finished-page").iterdir()
    kept._write(entry, "no page")
    second.begin("usual", entries)
    assert second.found(page, "rules/one.html") is None


def test_live_site_keeps_what_is_still_there_and_takes_the_rest_away(tmp_path: Path) -> None:
    site = LiveSite(tmp_path)
    (tmp_path / "cases").mkdir()
    for name in ("cases/old.html", "cases/same.html", "cases/new.html"):
        (tmp_path / name).write_text("before", "utf-8")
    fresh = site.fresh()
    (fresh / "cases").mkdir()
    (fresh / "cases" / "new.html").write_text("after", "utf-8")
    assert (tmp_path / "cases" / "new.html").read_text("utf-8") == "before"
    site.show(["cases/same.html"])
    there = {path.name: path.read_text("utf-8") for path in tmp_path.rglob("*.html")}
    assert there == {"same.html": "before", "new.html": "after"}
    assert not fresh.exists()
