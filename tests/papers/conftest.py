"""What the tests of papers share."""

from pathlib import Path

import pytest

from workshop import Workshop, make_workshop


@pytest.fixture
def workshop(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> Workshop:
    root = make_workshop(tmp_path / "handbook", "tidy-vine", "one-arm-vine")
    return Workshop(root, capsys, monkeypatch)
