"""All of it works without JavaScript, at a press of a button."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watching import open_bench

pytestmark = pytest.mark.browser


def test_a_change_is_tried_and_kept(plain_page: Page) -> None:
    open_bench(plain_page)
    plain_page.get_by_label("Body longer by").fill("8 cm")
    plain_page.get_by_role("button", name="Try").click()
    expect(plain_page.get_by_role("row", name="finished length")).to_contain_text("68 cm")
    expect(plain_page.get_by_label("Body longer by")).to_have_value("8 cm")
    plain_page.get_by_role("button", name="Keep it").click()
    expect(plain_page.get_by_role("button", name="Undo: changed Cardigan for herself")).to_be_visible()
    expect(plain_page.get_by_label("Body longer by")).to_have_value("8 cm")


def test_a_working_can_be_unfolded(plain_page: Page) -> None:
    open_bench(plain_page)
    plain_page.locator("#yarn summary").click()
    expect(plain_page.locator("#yarn details h3").first).to_be_visible()


def test_a_fault_is_told(plain_page: Page) -> None:
    open_bench(plain_page)
    plain_page.get_by_label("Body longer by").fill("8 blah")
    plain_page.get_by_role("button", name="Try").click()
    expect(plain_page.get_by_role("alert")).to_contain_text('found "8 blah"')
