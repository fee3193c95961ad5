"""A newcomer's way through: load the demo season, read it, try a longer body, keep it, think better of it."""

from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from loopwright.files import demo_text, read_season_text
from loopwright.season import plan, with_garment
from tests.browser.watching import open_bench, open_demo

pytestmark = pytest.mark.browser


def sentence(garment: str = "cardigan", **changes: str) -> str:
    """What the demo season's plan says about the garment's yarn, with changes tried."""
    season = read_season_text(demo_text(), "demo", "toml")
    tried = with_garment(season, garment, {f"changes.{name}": value for name, value in changes.items()})
    return plan(tried).garment(garment).answer("yarn").sentence


def row(page: Page, label: str) -> Locator:
    """A row of what a change does."""
    return page.locator(".tried tr", has=page.get_by_role("rowheader", name=label, exact=True))


def test_from_the_first_page_to_a_kept_change_and_back(page: Page, tmp_path: Path) -> None:
    page.goto("/")
    page.get_by_role("button", name="Load the demo season").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Winter at Wethers Reach")
    expect(page.locator("#yarn .sentence")).to_contain_text("Cardigan for herself lacks")

    page.get_by_role("link", name="Cardigan for herself").click()
    expect(page.locator("#yarn .sentence")).to_have_text(sentence())
    page.get_by_label("Body longer by").fill("8 cm")
    expect(page.get_by_role("heading", name="What it changes")).to_be_visible()
    expect(row(page, "finished length")).to_contain_text("68 cm")
    expect(page.locator("#yarn .sentence")).to_have_text(sentence(body_longer="8 cm"))
    page.screenshot(path=tmp_path / "tried.png", full_page=True)

    page.get_by_role("button", name="Keep it").click()
    expect(page.get_by_role("button", name="Undo: changed Cardigan for herself")).to_be_visible()
    expect(page.get_by_label("Body longer by")).to_have_value("8 cm")
    expect(page.get_by_role("heading", name="What it changes")).to_be_hidden()

    page.get_by_role("button", name="Undo: changed Cardigan for herself").click()
    expect(page.get_by_label("Body longer by")).to_have_value("4 cm")
    expect(page.get_by_role("button", name="Do again: changed Cardigan for herself")).to_be_visible()


def test_what_is_unfolded_stays_unfolded(page: Page) -> None:
    open_bench(page)
    working = page.locator("#yarn details h3").first
    expect(working).to_be_hidden()
    page.locator("#yarn summary").click()
    before = working.inner_text()
    page.get_by_label("Body longer by").fill("8 cm")
    expect(working).not_to_have_text(before)
    expect(working).to_be_visible()
    expect(page.locator("#time details h3").first).to_be_hidden()


def test_what_she_writes_in_stays_in_hand_while_answers_change(page: Page) -> None:
    open_bench(page)
    page.get_by_label("Body longer by").fill("8 cm")
    expect(page.get_by_role("heading", name="What it changes")).to_be_visible()
    expect(page.get_by_label("Body longer by")).to_be_focused()


def test_another_size_is_answered_at_once(page: Page) -> None:
    open_bench(page)
    page.locator("select[name=size]").select_option("XL")
    expect(row(page, "size")).to_contain_text("XL")


def test_a_trial_that_cannot_be_read_is_told_and_put_right(page: Page) -> None:
    open_bench(page)
    page.get_by_label("Body longer by").fill("8 blah")
    expect(page.get_by_role("alert")).to_contain_text('Body longer by: found "8 blah"')
    page.get_by_label("Body longer by").fill("8 cm")
    expect(page.get_by_role("alert")).to_have_count(0)
    expect(page.get_by_role("heading", name="What it changes")).to_be_visible()


def test_a_spoilt_season_shows_its_faults_and_is_put_right(page: Page) -> None:
    page.goto("/")
    text = demo_text().replace("Winter at Wethers Reach", "Winter put right")
    page.get_by_label("or its text").fill(text.replace('bust_girth = "96 cm"', 'bust_girth = "96 cubits"'))
    page.get_by_role("button", name="Load it").click()
    expect(page.get_by_role("alert")).to_contain_text('bodies.ina.bust_girth: found "96 cubits"')
    mended = page.get_by_label("or its text").input_value().replace("96 cubits", "96 cm")
    page.get_by_label("or its text").fill(mended)
    page.get_by_role("button", name="Load it").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Winter put right")


def test_a_file_of_her_own_is_loaded(page: Page, tmp_path: Path) -> None:
    file = tmp_path / "mine.toml"
    file.write_text(demo_text().replace("Winter at Wethers Reach", "A file of mine"), encoding="utf-8")
    page.goto("/")
    page.get_by_label("A file, TOML or JSON").set_input_files(file)
    page.get_by_role("button", name="Load it").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("A file of mine")


def test_the_season_is_saved_as_it_was_loaded(page: Page) -> None:
    open_demo(page)
    with page.expect_download() as saved:
        page.get_by_role("link", name="Save as TOML").click()
    assert saved.value.path().read_text(encoding="utf-8") == demo_text()


def test_her_own_measures_and_words(page: Page) -> None:
    open_bench(page)
    page.get_by_label("in, yd, oz").check()
    page.get_by_label("gauge, bind off").check()
    page.get_by_role("button", name="Read it so").click()
    expect(page.get_by_role("heading", name="Is my gauge right?")).to_be_visible()
    expect(page.locator("#fit .sentence")).to_have_text(
        "Yes, M: bust 40½\N{NO-BREAK SPACE}in, 2¾\N{NO-BREAK SPACE}in of ease."
    )
