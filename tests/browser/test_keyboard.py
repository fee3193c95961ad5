"""Everything can be reached and worked with the keyboard alone, and one sees where one is."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watching import open_bench, open_demo

pytestmark = pytest.mark.browser

MOST_STEPS = 60


def tab_to(page: Page, wanted: str) -> None:
    """Press Tab until what holds this text, value or label has the focus."""
    for _ in range(MOST_STEPS):
        page.keyboard.press("Tab")
        if wanted in page.evaluate("document.activeElement.labels?.[0]?.innerText || document.activeElement.innerText"):
            return
    pytest.fail(f"{wanted} is not reached within {MOST_STEPS} steps")


def outline_width(page: Page) -> str:
    width: str = page.evaluate("getComputedStyle(document.activeElement).outlineWidth")
    return width


def test_from_the_season_to_a_garment(page: Page) -> None:
    open_demo(page)
    tab_to(page, "Cardigan for herself")
    assert outline_width(page) == "2px"
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_have_text("Cardigan for herself")


def test_the_first_step_leads_past_the_masthead(page: Page) -> None:
    open_demo(page)
    page.keyboard.press("Tab")
    expect(page.get_by_role("link", name="To the answers")).to_be_in_viewport()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.querySelector('main').contains(document.activeElement)")


def test_a_change_is_tried_kept_and_undone(page: Page) -> None:
    open_bench(page)
    tab_to(page, "Body longer by")
    page.keyboard.press("ControlOrMeta+a")
    page.keyboard.type("8 cm")
    expect(page.get_by_role("heading", name="What it changes")).to_be_visible()
    tab_to(page, "Keep it")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="What it changes")).to_be_hidden()
    tab_to(page, "Undo: changed Cardigan")
    page.keyboard.press("Enter")
    expect(page.get_by_label("Body longer by")).to_have_value("4 cm")


def test_enter_in_a_field_tries_and_leaves_the_page_where_it_is(page: Page) -> None:
    address = open_bench(page)
    page.get_by_label("Body longer by").fill("8 cm")
    page.get_by_label("Body longer by").press("Enter")
    expect(page.get_by_role("heading", name="What it changes")).to_be_visible()
    assert page.url == address


def test_a_working_is_unfolded(page: Page) -> None:
    open_bench(page)
    tab_to(page, "How this is worked out")
    page.keyboard.press("Enter")
    expect(page.locator("#yarn details h3").first).to_be_visible()
