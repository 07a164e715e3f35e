"""What a browser module hands out, another one takes; what only a test takes is said here."""

import re
from collections import defaultdict
from pathlib import Path

# Worked out apart from all else, so a test holds it by itself.
FOR_TESTS = {
    ("bud_goal.mjs", "budGoal"),
    ("drawn_names.mjs", "asidesInRow"),
    ("moved_lines.mjs", "asideOf"),
    ("place_names.mjs", "movesOf"),
    ("practice_frame.mjs", "endsOf"),
    ("quiz/review.mjs", "GAPS_DAYS"),
    ("quiz/review.mjs", "freshMemory"),
    ("winters.mjs", "combinationOf"),
    ("winters.mjs", "lookUp"),
    ("winters.mjs", "numberOf"),
    ("wood.mjs", "cutWood"),
}
EXPORT = re.compile(r"^export (?:async )?(?:function\*?|class|const|let) (\w+)", re.MULTILINE)
IMPORT = re.compile(r"""import\s+(\{[^}]*\}|\*\s+as\s+\w+)\s+from\s+"([^"]+)";""")

Names = dict[Path, set[str]]


def texts(folder: Path) -> dict[Path, str]:
    return {path.resolve(): path.read_text("utf-8") for path in sorted(folder.rglob("*.mjs"))}


def handed_out(modules: dict[Path, str]) -> Names:
    return {path: set(EXPORT.findall(text)) for path, text in modules.items()}


def taken(modules: dict[Path, str]) -> Names:
    """By the module they come from. Types in comments are no use: a build leaves them out."""
    found: Names = defaultdict(set)
    for path, text in modules.items():
        bare = re.sub(r"/\*\*.*?\*/", "", text, flags=re.DOTALL)
        for names, address in IMPORT.findall(bare):
            source = (path.parent / address).resolve()
            if names.startswith("{"):
                found[source] |= {
                    one.split()[0] for one in names.strip("{}").split(",") if one.strip()
                }
            else:
                found[source] |= set(re.findall(rf"\b{names.split()[-1]}\.(\w+)", bare))
    return found


def only_handed_out(project: Path) -> set[tuple[str, str]]:
    root = (project / "site_assets/js").resolve()
    modules = texts(root)
    used = taken(modules)
    return {
        (path.relative_to(root).as_posix(), name)
        for path, names in handed_out(modules).items()
        for name in names - used[path]
    }


def test_what_is_handed_out_is_taken(project: Path) -> None:
    assert only_handed_out(project) == FOR_TESTS


def test_what_is_handed_out_for_tests_is_taken_by_one(project: Path) -> None:
    used = taken(texts(project / "tests"))
    root = (project / "site_assets/js").resolve()
    assert [one for one in sorted(FOR_TESTS) if one[1] not in used[root / one[0]]] == []


def test_what_nobody_takes_is_found(tmp_path: Path) -> None:
    (tmp_path / "site_assets/js").mkdir(parents=True)
    for name, text in {
        "a.mjs": "export function seen() {}\nexport const UNSEEN = 1;\nexport class Shown {}\n",
        "b.mjs": 'import { seen } from "./a.mjs";\nimport * as all from "./a.mjs";\nall.Shown;\n',
    }.items():
        (tmp_path / "site_assets/js" / name).write_text(text, "utf-8")
    assert only_handed_out(tmp_path) == {("a.mjs", "UNSEEN")}
