"""Slips of several files come at once, and quote what stands there."""

import shutil
from pathlib import Path

from small_handbook import CASES, PROJECT, change, check, make_small


def test_a_wrong_profile_hides_no_slip_of_the_blocks(tmp_path: Path) -> None:
    root = make_small(tmp_path / "handbook", "tidy-vine")
    blocks = root / "content" / "blocks.yml"
    shutil.copy(PROJECT / "content" / "blocks.yml", blocks)
    change(root / "content" / "profile.yml", "units: metric", "units: imperial")
    assert [line.split(":")[0] for line in check(root)] == ["content/profile.yml"]
    blocks.write_text(blocks.read_text("utf-8") + "\nno such line\n", "utf-8")
    files = [line.split(":")[0] for line in check(root)]
    assert set(files) == {"content/profile.yml", "content/blocks.yml"}


def test_a_reason_for_no_place_is_quoted_by_its_rule(tmp_path: Path) -> None:
    root = make_small(tmp_path / "handbook", "tidy-vine")
    reason = "exceptions:\n  - {rule: head-wood, why: {en: Because., es: Porque.}}\nsafety: ["
    change(root / CASES / "tidy-vine.yml", "safety: [", reason)
    told = [line for line in check(root) if "reason-not-needed" in line]
    assert len(told) == 1
    assert "found rule: head-wood" in told[0]
