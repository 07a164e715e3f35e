"""What tests of new handbooks share."""

from pathlib import Path


def make_quick(root: Path) -> None:
    """Practice vines take most of the time of a build, and have tests of their own."""
    profile = root / "content" / "profile.yml"
    profile.write_text(
        profile.read_text("utf-8").replace("practice vines: 100", "practice vines: 0"), "utf-8"
    )
