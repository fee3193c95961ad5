"""The pictures on a garment's bench follow what she tries, and stay in sight while they change."""

from __future__ import annotations

import time

import pytest
from playwright.sync_api import Page, Route, expect

from tests.browser.watching import open_bench

pytestmark = pytest.mark.browser

FRONT = "#look [data-view=front] img"
SLOW_S = 0.4
WATCH_GAPS = """(front) => {
    window.gaps = 0;
    const look = () => {
        const picture = document.querySelector(front);
        if (!picture?.complete || !picture.naturalWidth) window.gaps += 1;
        requestAnimationFrame(look);
    };
    look();
}"""


def open_drawn(page: Page, garment: str = "slipover") -> None:
    """Open a bench whose front picture is there and in sight."""
    open_bench(page, garment)
    page.locator(FRONT).scroll_into_view_if_needed()
    expect(page.locator(FRONT)).to_have_js_property("complete", True)


def slow_pictures(page: Page) -> None:
    def later(route: Route) -> None:
        time.sleep(SLOW_S)
        route.continue_()

    page.route("**/picture/*.png*", later)


def move(page: Page, slider: str, value: str) -> None:
    page.get_by_label(slider).fill(value)


def shown(page: Page) -> bytes:
    return page.request.get(str(page.locator(FRONT).get_attribute("src"))).body()


def test_a_slider_is_followed(page: Page) -> None:
    open_drawn(page)
    before = shown(page)
    move(page, "Stitches to 10 cm", "18")
    expect(page.locator(f"{FRONT}[src*='tension=18']")).to_be_visible()
    assert shown(page) != before


@pytest.mark.parametrize("script", [True, False])
def test_a_picture_stays_until_the_next_has_come(page: Page, script: bool) -> None:
    """Without its script there is a gap, so that the test could fail."""
    if not script:
        page.route("**/look.js", lambda route: route.fulfill(body="", content_type="text/javascript"))
    open_drawn(page)
    slow_pictures(page)
    page.evaluate(WATCH_GAPS, FRONT)
    move(page, "Stitches to 10 cm", "18")
    expect(page.locator(f"{FRONT}[src*='tension=18']")).to_be_visible()
    expect(page.locator(FRONT)).to_have_js_property("complete", True)
    assert (page.evaluate("window.gaps") == 0) == script


def test_of_two_moves_the_last_is_shown(page: Page) -> None:
    """The picture of the first move comes when that of the second is awaited already."""
    open_drawn(page)
    held: list[Route] = []
    page.route("**/picture/front.png*", lambda route: held.append(route))  # noqa: PLW0108 (a bound method is no handler)
    for stitches in ("18", "19"):
        move(page, "Stitches to 10 cm", stitches)
        expect(page.locator(f"#look a[href*='tension={stitches}']").first).to_be_visible()
    for route in held:
        route.continue_()
        page.wait_for_timeout(SLOW_S * 1000)
        expect(page.locator(f"{FRONT}[src*='tension=18']")).to_have_count(0)
    assert len(held) == 2
    expect(page.locator(f"{FRONT}[src*='tension=19']")).to_be_visible()
    expect(page.locator(FRONT)).to_have_count(1)


def test_a_colour_is_tried_and_stays_while_a_slider_is_moved(page: Page) -> None:
    open_drawn(page)
    page.get_by_label("Kelp main").fill("#334477")
    expect(page.locator(f"{FRONT}[src*='colour.main=%23334477']")).to_be_visible()
    expect(page.get_by_text("These colours are tried, not kept")).to_be_visible()
    move(page, "Stitches to 10 cm", "18")
    expect(page.locator(f"{FRONT}[src*='tension=18&colour.main=%23334477']")).to_be_visible()
    expect(page.get_by_label("Kelp main")).to_have_value("#334477")
    page.get_by_role("link", name="Larger, to print or share").click()
    expect(page.locator(f"{FRONT}[src*='tension=18&colour.main=%23334477']")).to_be_visible()
    page.get_by_label("Kelp main").fill("#774433")
    expect(page.locator(f"{FRONT}[src*='colour.main=%23774433&px=1600']")).to_be_visible()
    expect(page.get_by_role("link", name="Save the front as PNG")).to_be_visible()


def test_without_script_a_colour_is_drawn_at_a_press(plain_page: Page) -> None:
    open_bench(plain_page, "slipover")
    plain_page.get_by_label("Kelp main").fill("#334477")
    plain_page.get_by_role("button", name="Draw it so").click()
    expect(plain_page.locator(f"{FRONT}[src*='colour.main=%23334477']")).to_be_visible()
