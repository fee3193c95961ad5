"""From two photos of skeins to a garment drawn in their colours, with clicks alone, as a newcomer goes."""

from __future__ import annotations

import io
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image
from playwright.sync_api import Locator, Page, expect

from loopwright.colour import (
    Floats,
    delta_e_ciede2000,
    lab_from_srgb,
    linear_from_srgb,
    read_hex,
    srgb_from_linear,
)
from tests.browser.watching import open_demo
from tests.colour.photo.scenes import PAPER, WARM, draw

pytestmark = pytest.mark.browser

MAIN, CONTRAST = "#7c4a86", "#4b7f52"
"""The true colours of the two skeins; no yarn of the demo season is near."""
DAYLIGHT = (0.85, 1.0, 1.2)
DOUBT = 5.0
"""ΔE00 by which the page says that a photo with white paper may be off."""
LEAST_SHARE = 0.03
"""Of the whole picture, paper and all; our judgement."""
NEAR = 15.0
"""ΔE00 within which a point of a picture is taken for a yarn: a stitch has light and shade. Our judgement."""
MOST_SECONDS = 60
MOST_STEPS = 12


@pytest.fixture(scope="module")
def photos(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The two photos, in lamplight and in daylight, with white paper beside the skein."""
    folder = tmp_path_factory.mktemp("skeins")
    paths = {}
    for shade, lamp in ((MAIN, WARM), (CONTRAST, DAYLIGHT)):
        paths[shade] = folder / f"{shade[1:]}.jpg"
        Image.fromarray(draw([shade], lamp=lamp, size=(900, 1200)).pixels).save(paths[shade], quality=92)
    return paths


@dataclass
class Walk:
    """A newcomer's way: every step is a click, a tap or a file that is chosen; she types no address."""

    page: Page
    steps: list[str] = field(default_factory=list)
    began: float = field(default_factory=time.monotonic)

    def click(self, place: Locator) -> None:
        """Click what can be seen, or scrolled to."""
        expect(place).to_be_visible()
        self.steps.append(place.inner_text().strip())
        place.click()

    def measure(self, photo: Path) -> None:
        """Choose a photo, tap its paper, have its colours found."""
        self.steps.append(f"chose {photo.name}")
        self.page.get_by_label("A photo, JPEG").set_input_files(photo)
        shown = self.page.locator(".tap-picture")
        expect(shown.get_by_role("img")).to_be_visible()
        box = shown.bounding_box()
        assert box is not None
        self.steps.append("tapped the paper")
        shown.click(position={"x": box["width"] * PAPER.across, "y": box["height"] * PAPER.down})
        self.click(self.page.get_by_role("button", name="Find its colours"))
        expect(self.page.get_by_text("One colour.")).to_be_visible()

    def end(self) -> None:
        """Say how long the machine took, without her own time for looking and thinking."""
        seconds = time.monotonic() - self.began
        sys.stdout.write(f"\n{len(self.steps)} steps in {seconds:.1f} s: {'; '.join(self.steps)}\n")
        assert len(self.steps) <= MOST_STEPS
        assert seconds < MOST_SECONDS


def colours_of_front(page: Page) -> Iterator[tuple[float, float]]:
    """Of each skein: its share of the front picture, and how far its colour there is from the truth, in ΔE00."""
    image = page.locator("#look [data-view=front] img")
    expect(image).to_be_in_viewport()
    page.wait_for_function("(image) => image.complete && image.naturalWidth > 0", arg=image.element_handle())
    content = page.request.get(str(image.get_attribute("src"))).body()
    points: Floats = np.asarray(Image.open(io.BytesIO(content)).convert("RGB")).reshape(-1, 3) / 255
    kinds, counts = np.unique(points, axis=0, return_counts=True)
    for truth in (MAIN, CONTRAST):
        wanted = lab_from_srgb(read_hex(truth))
        near = delta_e_ciede2000(lab_from_srgb(kinds), wanted) < NEAR
        share = counts[near].sum() / counts.sum()
        if not share:
            yield 0.0, np.inf
            continue
        mean = np.average(linear_from_srgb(kinds[near]), axis=0, weights=counts[near])
        yield float(share), float(delta_e_ciede2000(lab_from_srgb(srgb_from_linear(mean)), wanted))


def has_neither(page: Page) -> bool:
    return all(share < 0.005 for share, _ in colours_of_front(page))


def is_drawn_in_both(page: Page) -> bool:
    return all(share > LEAST_SHARE and apart < DOUBT for share, apart in colours_of_front(page))


def faults(page: Page) -> list[str]:
    excess = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    found = [str(one["id"]) for one in Axe().run(page).response["violations"]]
    return [*found, *(["scrolls sideways"] if excess > 0 else [])]


@pytest.mark.parametrize("width", [360, 1280])
def test_from_the_garment(page: Page, photos: dict[str, Path], width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    open_demo(page)
    walk = Walk(page)
    walk.click(page.get_by_role("link", name="Striped pullover for Tam").first)
    page.locator("#look").scroll_into_view_if_needed()
    assert has_neither(page)
    for role, truth in (("main", MAIN), ("contrast-1", CONTRAST)):
        walk.click(page.locator("#look li", has_text=role).get_by_role("link", name="from a photo"))
        walk.measure(photos[truth])
        walk.click(page.get_by_role("button", name="Keep it for this lot"))
        expect(page.locator("#look-answer").get_by_text("Kept: Stone Paddock DK")).to_be_in_viewport()
    assert is_drawn_in_both(page)
    walk.end()
    assert faults(page) == []


def test_from_the_photos(page: Page, photos: dict[str, Path]) -> None:
    """The other way: photos first, each kept for a lot that she chooses, and then to the garment that shows it."""
    page.set_viewport_size({"width": 360, "height": 800})
    open_demo(page)
    walk = Walk(page)
    walk.click(page.get_by_role("link", name="Colour from a photo"))
    for lot, truth in (("Stone Paddock DK, Oat, dye lot A7", MAIN), ("Stone Paddock DK, Rust", CONTRAST)):
        walk.measure(photos[truth])
        lots = page.get_by_label("For the lot")
        (choice,) = [one for one in lots.locator("option").all_inner_texts() if one.startswith(lot)]
        walk.steps.append(f"chose {choice}")
        lots.select_option(label=choice)
        walk.click(page.get_by_role("button", name="Keep it for this lot"))
        expect(page.get_by_role("status")).to_contain_text(f"Kept: {lot}")
        assert faults(page) == []
    walk.click(page.get_by_role("link", name="Striped pullover for Tam"))
    assert is_drawn_in_both(page)
    walk.end()


def test_a_yarn_that_is_only_tried_is_carried_to_the_next_photo(page: Page, photos: dict[str, Path]) -> None:
    open_demo(page)
    walk = Walk(page)
    walk.click(page.get_by_role("link", name="Striped pullover for Tam").first)
    for role, truth in (("main", MAIN), ("contrast-1", CONTRAST)):
        walk.click(page.locator("#look li", has_text=role).get_by_role("link", name="from a photo"))
        walk.measure(photos[truth])
        walk.click(page.get_by_role("button", name="Only try it in the picture"))
        expect(page.locator("#look").get_by_text("These colours are tried, not kept")).to_be_visible()
    assert is_drawn_in_both(page)
    walk.click(page.get_by_role("navigation").get_by_role("link", name="Winter at Wethers Reach"))
    walk.click(page.get_by_role("link", name="Striped pullover for Tam").first)
    page.locator("#look").scroll_into_view_if_needed()
    assert has_neither(page)


def test_a_lot_of_the_cupboard_takes_its_colour_from_a_photo(page: Page, photos: dict[str, Path]) -> None:
    page.set_viewport_size({"width": 360, "height": 800})
    open_demo(page)
    walk = Walk(page)
    walk.click(page.get_by_role("link", name="Cupboard"))
    walk.click(page.locator("#paddock-rust a.lot"))
    assert faults(page) == []
    walk.click(page.get_by_role("link", name="Take it from a photo"))
    walk.measure(photos[CONTRAST])
    walk.click(page.get_by_role("button", name="Keep it for this lot"))
    walk.click(page.get_by_role("link", name="The lot in the cupboard"))
    expect(page.locator("#colour .sentence")).to_contain_text("Shown as #")
    expect(page.locator("#colour .sentence")).not_to_contain_text("#a2502f")
