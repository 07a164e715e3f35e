"""The chapter on training language says of each rule how it was read, as the sources do."""

import re
from pathlib import Path

import pytest

from pencilwood.cases.sources_file import read_sources

CHAPTER = "content/chapters/{language}/training-language-and-records.md"
_ROW = re.compile(r"^\| (\{\{ cite.*?) \| .* \| ([^|]+) \|$", re.MULTILINE)
_CITED = re.compile(r'cite\("([a-z0-9-]+)"\)')
# The word in the last column that a source of each sort calls for.
_WORDS = {
    "en": {"from memory": "from memory", "second hand": "second hand", "read": "read|titles"},
    "es": {"from memory": "de memoria", "second hand": "de segunda mano", "read": "leíd|títulos"},
}


@pytest.mark.parametrize("language", ["en", "es"])
def test_each_rule_says_how_it_was_read(project: Path, language: str) -> None:
    sources, problems = read_sources(project / "content/sources.yml")
    assert not problems
    rows = _ROW.findall((project / CHAPTER.format(language=language)).read_text("utf-8"))
    assert len(rows) >= 10
    for cited, how in rows:
        for key in _CITED.findall(cited):
            source = sources[key]
            sort = "from memory" if source.kind == "from memory" else source.read
            assert re.search(_WORDS[language][sort], how), (key, sort, how)


@pytest.mark.parametrize("language", ["en", "es"])
def test_no_federal_rule_is_said_to_bind_a_vineyard_ladder(project: Path, language: str) -> None:
    """Washington binds its farms and California has its own order; the federal rules do not."""
    folder = project / "content/chapters" / language
    wrong = r"OSHA (requires|exige)[^.|]*(ladder|escalera)"
    for path in sorted(folder.glob("*.md")):
        assert not re.search(wrong, path.read_text("utf-8")), path.name
