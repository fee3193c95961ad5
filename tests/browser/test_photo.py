"""A photo in a real browser: chosen, tapped, measured, kept; on a phone; and without a script."""

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image
from playwright.sync_api import Page, expect

from tests.browser.watching import open_demo
from tests.colour.photo.scenes import draw

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def skein(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("photos") / "skein.png"
    Image.fromarray(draw(["#a4502f", "#2f6f73"]).pixels).save(path)
    return path


def faults(page: Page) -> list[str]:
    excess = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    found = [str(one["id"]) for one in Axe().run(page).response["violations"]]
    return [*found, *(["scrolls sideways"] if excess > 0 else [])]


@pytest.mark.parametrize("width", [360, 1280])
def test_a_tap_on_the_paper_fills_in_its_place(page: Page, skein: Path, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.goto(f"{open_demo(page)}photo/")
    assert faults(page) == []
    page.get_by_label("A photo, JPEG").set_input_files(skein)
    shown = page.locator(".tap-picture")
    expect(shown.get_by_role("img")).to_be_visible()
    box = shown.bounding_box()
    assert box is not None
    shown.click(position={"x": box["width"] * 0.13, "y": box["height"] * 0.16})
    across = float(page.get_by_label("% from the left").first.input_value())
    assert across == pytest.approx(13, abs=1)
    expect(page.locator("[data-mark=white]")).to_have_attribute("visibility", "visible")
    page.get_by_role("button", name="Find its colours").click()
    expect(page.get_by_text("Two colours: about 50 % and about 50 %")).to_be_visible()
    assert faults(page) == []
    page.get_by_label("Colour 2, corrected by eye").fill("#2f6f73")
    page.get_by_label("For the lot").select_option("headland-tarn")
    page.get_by_role("button", name="Keep it for this lot").click()
    expect(page.get_by_role("status")).to_contain_text(
        "Kept: Long Headland Aran, Tarn, dye lot 416 is shown as #2f6f73"
    )


def test_numbers_are_typed_without_a_script(plain_page: Page, skein: Path) -> None:
    plain_page.goto(f"{open_demo(plain_page)}photo/")
    plain_page.get_by_label("A photo, JPEG").set_input_files(skein)
    plain_page.get_by_label("% from the left").first.fill("13")
    plain_page.get_by_label("% from the top").first.fill("16")
    plain_page.get_by_role("button", name="Find its colours").click()
    expect(plain_page.get_by_text("Balanced by the paper")).to_be_visible()
    expect(plain_page.locator("[data-mark=white]")).to_be_visible()
