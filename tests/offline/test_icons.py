"""The icons of the installed handbook are its drawn icon; `--refresh-golden` draws them anew."""

import base64
from pathlib import Path

import pytest
from playwright.sync_api import Browser

pytestmark = pytest.mark.browser

# A maskable icon may be cut to a circle four fifths as wide as the picture
# (https://www.w3.org/TR/appmanifest/#icon-masks), so its drawing is smaller.
ICONS = {"icon-192": (192, 1.0), "icon-512": (512, 1.0), "icon-maskable-512": (512, 0.72)}
DIFFERENCE = """async ([one, other]) => {
  const pixels = async (data) => {
    const picture = new Image();
    picture.src = `data:image/png;base64,${data}`;
    await picture.decode();
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const pen = canvas.getContext("2d");
    pen.drawImage(picture, 0, 0);
    return pen.getImageData(0, 0, picture.width, picture.height).data;
  };
  const [a, b] = [await pixels(one), await pixels(other)];
  if (a.length !== b.length) return 255;
  return a.reduce((sum, value, at) => sum + Math.abs(value - b[at]), 0) / a.length;
}"""


def drawn(browser: Browser, svg: str, size: int, share: float) -> bytes:
    page = browser.new_page(viewport={"width": size, "height": size})
    side = round(size * share)
    margin = (size - side) / 2
    style = f"display:block;width:{side}px;height:{side}px;padding:{margin}px"
    shown = svg.replace("<svg ", f'<svg style="{style}" ', 1)
    page.set_content(f'<body style="margin:0;background:#fbf6ea">{shown}')
    picture = page.screenshot()
    page.close()
    return picture


@pytest.mark.parametrize("name", ICONS)
def test_each_icon_is_the_drawn_one(
    browser: Browser, project: Path, refresh_golden: bool, name: str
) -> None:
    folder = project / "site_assets" / "icons"
    fresh = drawn(browser, (folder / "favicon.svg").read_text("utf-8"), *ICONS[name])
    path = folder / f"{name}.png"
    if refresh_golden:
        path.write_bytes(fresh)
    page = browser.new_page()
    both = [base64.b64encode(one).decode() for one in (fresh, path.read_bytes())]
    # Chromium smooths edges a little differently from one version to the next.
    assert page.evaluate(DIFFERENCE, both) < 2
    page.close()
