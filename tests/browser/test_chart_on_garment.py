"""The repeat on the drawn garment, on a chart's page in a browser: chosen, followed while drawing, kept, undone."""

from __future__ import annotations

import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.browser.test_charts import drag, kept, press
from tests.browser.watching import open_demo

pytestmark = pytest.mark.browser

FRONT = "#on-garment [data-view=front] img"
KEPT_MS = 15_000


def shows(page: Page, runs: str) -> None:
    """Whether the front picture is asked for with these runs of rows, and has come."""
    asked = runs.replace(" ", "+").replace(",", "%2C")
    picture = page.locator(f"{FRONT}[src*='colours.{asked}&px']")
    expect(picture).to_have_count(1, timeout=KEPT_MS)
    expect(picture).to_have_js_property("complete", True, timeout=KEPT_MS)
    assert picture.evaluate("(image) => image.naturalWidth") > 0


def choose(page: Page, place: str) -> None:
    page.locator("#laying [name=place]").select_option(place)


def before(page: Page) -> str:
    return page.get_by_label("Rows before it").input_value()


def test_place_and_rows_are_followed_kept_and_undone(page: Page, bench: str) -> None:
    shows(page, "body=6 main, 1 chart tide-line, main")
    choose(page, "yoke")
    shows(page, "yoke=6 main, 1 chart tide-line, main")
    page.get_by_label("Rows before it").fill("2")
    page.get_by_label("How often").fill("3")
    shows(page, "yoke=2 main, 3 chart tide-line, main")
    expect(page.locator("#laid-now")).to_have_text(
        "On the yoke: 2 rows Oat, then the chart Tide line, 3 times, then Oat. Not kept yet."
    )
    press(page, "Keep it there")
    expect(page.locator("#laid-now")).to_contain_text("It is kept so.")
    assert page.url == f"{bench}?place=yoke#on-garment"
    shows(page, "yoke=2 main, 3 chart tide-line, main")
    page.locator("#lying").get_by_role("link", name="The bench of Striped pullover for Tam").click()
    answer = page.locator("[data-answer=colour-places]")
    expect(answer).to_contain_text("Where do the colours go?")
    expect(answer).to_contain_text("Tide line on the yoke")
    page.goto(bench)
    shows(page, "yoke=2 main, 3 chart tide-line, main")
    press(page, "Undo: laid Tide line on the yoke")
    expect(page.locator("#laid-now")).to_contain_text("On the body: 6 rows Oat")
    expect(page.get_by_role("button", name="Take it off")).to_have_count(0)


def test_it_is_taken_off(page: Page, bench: str) -> None:
    press(page, "Keep it there")
    press(page, "Take it off the body")
    expect(page.locator("#laid-now")).to_contain_text("Not kept yet.")
    expect(page.get_by_role("button", name="Undo: took Tide line off the body")).to_be_visible()


def test_what_is_drawn_is_seen_on_the_garment_as_soon_as_it_is_kept(page: Page, bench: str) -> None:
    choose(page, "sleeves")
    shows(page, "sleeves=6 main, 1 chart tide-line, main")
    first = page.locator(FRONT).get_attribute("src")
    assert first is not None
    shown = page.request.get(first).body()
    drag(page, (0, 0), (11, 0))
    kept(page)
    expect(page.locator(f"{FRONT}[src='{first}']")).to_have_count(0, timeout=KEPT_MS)
    shows(page, "sleeves=6 main, 1 chart tide-line, main")  # what she chose stays
    second = page.locator(FRONT).get_attribute("src")
    assert second is not None
    assert page.request.get(second).body() != shown


def test_what_is_drawn_and_not_sent_yet_is_kept_with_the_place(page: Page, bench: str) -> None:
    drag(page, (2, 4), (6, 4))
    press(page, "Keep it there")
    expect(page.locator("#laid-now")).to_contain_text("It is kept so.")
    expect(page.get_by_role("button", name="Undo: laid Tide line on the body")).to_be_visible()
    row = page.evaluate("document.getElementById('drawing').bench.keeping.fields().rows[7]")
    assert row == "mmrrrrrmmmmm"


def test_numbers_that_do_not_fit_another_part_begin_anew(page: Page, bench: str) -> None:
    page.get_by_label("Rows before it").fill("40")
    shows(page, "body=40 main, 1 chart tide-line, main")
    choose(page, "sleeves")
    shows(page, "sleeves=40 main, 1 chart tide-line, main")
    assert before(page) == "40"
    choose(page, "cuff")
    shows(page, "cuff=3 main, 1 chart tide-line, main")
    assert before(page) == "3"
    expect(page.locator("#laying-numbers")).to_contain_text("of 15")


def test_a_fault_is_told_and_what_was_typed_stays(page: Page, bench: str) -> None:
    rows = page.get_by_label("Rows before it")
    rows.fill("200")
    expect(page.locator("#lying .faults")).to_contain_text("wanted 0 to 59, since the body has 60 rows")
    expect(rows).to_have_value("200")
    expect(rows).to_be_focused()
    rows.fill("20")
    shows(page, "body=20 main, 1 chart tide-line, main")
    expect(page.locator("#lying .faults")).to_have_count(0)


def test_enter_shows_and_does_not_keep(page: Page, bench: str) -> None:
    page.get_by_label("Rows before it").fill("9")
    page.keyboard.press("Enter")
    shows(page, "body=9 main, 1 chart tide-line, main")
    expect(page.locator("#laid-now")).to_contain_text("Not kept yet.")
    assert page.url == bench


def test_a_colour_without_yarn_is_told_and_the_picture_comes_back(page: Page, bench: str) -> None:
    page.get_by_label("Name of another colour").fill("Gorse yellow")
    press(page, "Add a colour")
    drag(page, (0, 0), (1, 0))
    expect(page.locator("#look")).to_contain_text("has no yarn for gorse-yellow", timeout=KEPT_MS)
    for _ in range(2):
        page.get_by_role("button", name="Undo", exact=True).click()
    shows(page, "body=6 main, 1 chart tide-line, main")


def test_a_page_that_could_not_show_it_does_once_the_colour_is_gone(page: Page, bench: str) -> None:
    page.get_by_label("Name of another colour").fill("Gorse yellow")
    press(page, "Add a colour")
    kept(page)
    page.reload()
    expect(page.locator("#look")).to_contain_text("has no yarn for gorse-yellow")
    expect(page.locator("#laying")).to_have_count(0)
    page.get_by_role("button", name=re.compile("^gorse-yellow")).click()
    press(page, "Take the chosen colour away")
    shows(page, "body=6 main, 1 chart tide-line, main")
    page.get_by_label("Rows before it").fill("7")
    shows(page, "body=7 main, 1 chart tide-line, main")


@pytest.mark.parametrize("width", [360, 768, 1280])
@pytest.mark.parametrize("is_kept", [False, True])
def test_the_section_is_in_order(page: Page, bench: str, width: int, is_kept: bool) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    if is_kept:
        press(page, "Keep it there")
        expect(page.locator("#laid-now")).to_contain_text("It is kept so.")
    else:
        page.get_by_label("Rows before it").fill("200")
        expect(page.locator("#lying .faults")).to_be_visible()
    excess = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    assert excess <= 0
    found = Axe().run(page).response["violations"]
    assert [(one["id"], one["nodes"][0]["html"][:90]) for one in found] == []


def test_on_a_phone_the_garment_stands_between_drawing_and_answers(page: Page, bench: str) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    tops = page.evaluate(
        """() => ["#chart-canvas", "#look [data-view=front]", "#laying", "#lying", "#chart-answers"]
            .map((name) => document.querySelector(name).getBoundingClientRect().top)"""
    )
    assert tops == sorted(tops)


def test_without_script_it_is_shown_and_kept_at_a_press(plain_page: Page) -> None:
    address = f"{open_demo(plain_page)}charts/tide-line/"
    plain_page.goto(address)
    plain_page.locator("#laying [name=place]").select_option("sleeves")
    plain_page.get_by_label("Rows before it").fill("4")
    plain_page.get_by_role("button", name="Show it so").click()
    expect(plain_page.locator(f"{FRONT}[src*='colours.sleeves=4+main']")).to_be_visible()
    assert "csrf" not in plain_page.url
    plain_page.get_by_label("Rows before it").fill("5")
    plain_page.get_by_role("button", name="Keep it there").click()
    expect(plain_page.locator("#laid-now")).to_contain_text("On the sleeves: 5 rows Oat")
    expect(plain_page.locator("#laid-now")).to_contain_text("It is kept so.")
