"""The drawing of the pieces follows while something is tried, on a desk and on a phone."""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser


def test_the_drawing_follows_what_is_tried(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}garment/cardigan/")
    before = page.locator("#draft .sentence").inner_text()
    page.get_by_text("How it is made").click()
    page.locator('[name="draft.sleeves"]').select_option("none")
    expect(page.locator("#draft .sentence")).not_to_have_text(before)
    expect(page.locator("#draft .on-desk svg")).to_be_visible()


def test_a_phone_shows_the_pieces_one_below_the_other(page: Page, looked_at: str) -> None:
    page.set_viewport_size({"width": 360, "height": 800})
    page.goto(f"{looked_at}garment/cardigan/")
    expect(page.locator("#draft .on-phone svg")).to_be_visible()
    expect(page.locator("#draft .on-desk")).to_be_hidden()
    smallest = page.evaluate(
        """() => Math.min(...[...document.querySelectorAll("#draft .on-phone svg text")]
            .map((one) => parseFloat(getComputedStyle(one).fontSize) * one.ownerSVGElement.getScreenCTM().a))"""
    )
    assert smallest > 10.9


def test_what_was_unfolded_stays_unfolded(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}garment/cardigan/")
    page.get_by_text("Every section, with its counts and shaping").click()
    page.get_by_text("How it is made").click()
    page.get_by_label("Hem edge, how deep").fill("8 cm")
    expect(page.locator("#draft")).to_contain_text(re.compile("2x2 rib|2×2 rib"))
    expect(page.get_by_role("cell", name="20 rows").first).to_be_visible()


def test_a_draft_of_ones_own_from_the_season_page(page: Page, looked_at: str) -> None:
    page.goto(looked_at)
    page.get_by_role("link", name="Draft something of your own").click()
    page.get_by_label("What you call it").fill("Pier top")
    page.get_by_label("What it is").select_option("drop shoulder")
    page.get_by_label("For whom").select_option("ina")
    page.get_by_label("Colour", exact=True).fill("Oat")
    page.get_by_role("button", name="Draft it").click()
    expect(page.get_by_role("heading", name="Pier top")).to_be_visible()
    expect(page.locator("#draft .sentence")).to_contain_text("stitches in all")


def test_a_section_is_given_to_another_lot(page: Page, looked_at: str) -> None:
    page.set_default_timeout(60_000)  # an integer programme is solved first
    page.goto(f"{looked_at}garment/cardigan/lots/")
    expect(page.get_by_role("status")).to_contain_text("As proposed")
    page.locator('[name="cardigan/main/back/back"]').select_option("headland-oat")
    expect(page.get_by_role("status")).to_contain_text("As you have it", timeout=60_000)
    found = Axe().run(page).response["violations"]
    assert [one["id"] for one in found] == []
