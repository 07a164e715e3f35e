"""The assets are found in a checkout and in an installed package alike."""

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from pencilwood.assets import asset_root


def test_checkout(project: Path) -> None:
    assert asset_root() == project / "site_assets"


def test_installed_package_uses_its_own_copy(tmp_path: Path) -> None:
    package = tmp_path / "lib" / "pencilwood"
    (package / "site_assets").mkdir(parents=True)
    (tmp_path / "site_assets").mkdir()
    assert asset_root(package) == package / "site_assets"


def test_missing_assets_are_named(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError, match="site assets are missing"):
        asset_root(tmp_path / "lib" / "pencilwood")


@pytest.mark.slow
def test_wheel_carries_assets_and_package_data(project: Path, tmp_path: Path) -> None:
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)]
    subprocess.run(build, cwd=project, check=True, capture_output=True)
    (wheel,) = tmp_path.glob("*.whl")
    held = set(zipfile.ZipFile(wheel).namelist())
    folders = (("site_assets", "pencilwood/site_assets"), ("generator/pencilwood", "pencilwood"))
    for folder, prefix in folders:
        for path in (project / folder).rglob("*"):
            if path.suffix in {".js", ".css", ".json", ".svg", ".png", ".j2", ".html", ".woff2"}:
                inside = path.relative_to(project / folder).as_posix()
                assert f"{prefix}/{inside}".lstrip("/") in held
