"""A started handbook under version control."""

import subprocess
from pathlib import Path

from pencilwood.cli import main
from pencilwood.site.lock import only_builder
from pencilwood.site.swap import waiting_folder


def test_what_a_build_leaves_behind_is_no_part_of_the_handbook(tmp_path: Path) -> None:
    # A build that was killed leaves its waiting folder and its lock beside the site.
    root = tmp_path / "handbook"
    assert main(["start", str(root), "--language", "en"]) == 0
    site = root / "site"
    left = [site, waiting_folder(site)]
    for folder in left:
        folder.mkdir()
        (folder / "index.html").touch()
    with only_builder(site):
        git = ["git", "-C", str(root)]
        subprocess.run([*git, "init", "-q"], check=True)
        told = subprocess.run([*git, "status", "--porcelain"], check=True, capture_output=True)
    unknown = told.stdout.decode().split()[1::2]
    assert [name for name in unknown if "site" in name] == []
    assert "content/" in unknown
