"""The cupboard in a browser: found while one types, weighed at once, photographed, printed; no script needed."""

import re
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Page, expect

from tests.browser.test_look import LEAST_TARGET_PX, too_wide, unfold, violations

pytestmark = pytest.mark.browser

PLACES = [
    "cupboard/",
    "cupboard/?search=nothing+of+this",
    "cupboard/lot/ropewalk-damson/",
    "cupboard/lot/ropewalk-damson/metres/?mass=heavy",
    "cupboard/add/",
    "cupboard/labels/?first=5",
    "cupboard/take-in/",
    "yarns/",
    "yarns/paddock-dk/",
    "add-yarn/",
]
SHOP = {"name": "shop.csv", "mimeType": "text/csv", "buffer": b"name,shade,skeins\nStone Paddock DK,Fog,2\n,Rust,1\n"}


def test_no_page_scrolls_sideways(page: Page, looked_at: str) -> None:
    found = []
    for place in PLACES:
        page.goto(f"{looked_at}{place}")
        unfold(page)
        for width in (360, 768, 1280):
            page.set_viewport_size({"width": width, "height": 800})
            found += [(place, width)] if too_wide(page) > 0 else []
    assert found == []


@pytest.mark.parametrize("width", [360, 1280])
def test_axe_finds_nothing(page: Page, looked_at: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    found = {}
    for place in PLACES:
        page.goto(f"{looked_at}{place}")
        unfold(page)
        found[place] = violations(page)
    assert {place: faults for place, faults in found.items() if faults} == {}


def test_axe_finds_nothing_while_a_table_is_taken_in(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}cupboard/take-in/")
    page.get_by_label("A workbook or CSV").set_input_files(SHOP)  # type: ignore[arg-type]
    page.get_by_role("button", name="Read it", exact=True).click()
    expect(page.get_by_text("What do its columns mean?")).to_be_visible()
    assert violations(page) == []
    page.locator("select[name=column-1]").select_option("colour")
    page.get_by_role("button", name="Read it with these").click()
    expect(page.get_by_text("One thing must be put right in the file first.")).to_be_visible()
    assert violations(page) == []


def test_buttons_and_links_are_large_enough_for_a_thumb(page: Page, looked_at: str) -> None:
    page.set_viewport_size({"width": 360, "height": 800})
    for place in ("cupboard/", "cupboard/lot/ropewalk-damson/", "yarns/"):
        page.goto(f"{looked_at}{place}")
        pressed = page.locator("main").locator(
            "button, .links a, .lot, summary, input:not([type=hidden], [type=radio])"
        )
        heights = pressed.evaluate_all("(all) => all.map((one) => one.getBoundingClientRect().height)")
        assert min(heights) >= LEAST_TARGET_PX, place


def test_lots_are_found_while_one_types(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}cupboard/")
    expect(page.locator(".lot")).to_have_count(13)
    page.get_by_role("searchbox").press_sequentially("merino oat")
    expect(page.locator(".lot")).to_have_count(2)
    expect(page.get_by_role("status")).to_have_text("2 of 13 lots.")
    expect(page).to_have_url(f"{looked_at}cupboard/?search=merino%20oat")
    page.get_by_role("searchbox").fill("")
    expect(page.locator(".lot")).to_have_count(13)


def test_a_mass_becomes_metres_while_one_types(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}cupboard/lot/culvert-slate/")
    page.get_by_label("On the scale").press_sequentially("50 g")
    expect(page.locator("#metres")).to_have_text("50 g is 200.0 ± 7.2 m.")
    page.get_by_label("Less the bowl").press_sequentially("25 g")
    expect(page.locator("#metres")).to_contain_text("25 g is 100.0 ±")


def test_a_large_photo_is_made_smaller_before_it_is_sent(page: Page, looked_at: str, tmp_path: Path) -> None:
    large = tmp_path / "large.png"
    Image.effect_noise((1700, 1300), 90).convert("RGB").save(large, "PNG")
    assert large.stat().st_size > 1_500_000
    page.goto(f"{looked_at}cupboard/lot/dusk-mallow/")
    chosen = page.locator("input[name=photo]")
    chosen.set_input_files(large)
    expect(chosen).to_have_value(re.compile(r"photo\.jpg$"))
    size = page.evaluate("document.querySelector('input[name=photo]').files[0].size")
    assert size < large.stat().st_size
    page.get_by_role("button", name="Put it in").click()
    picture = page.get_by_role("img", name="Photo of Dusk Haze, Mallow")
    expect(picture).to_be_visible()
    assert picture.evaluate("(one) => one.naturalWidth") == 192
    page.get_by_role("button", name="Undo: put in a photo of Mallow").click()
    expect(page.locator("img.lot-photo")).to_have_count(0)


def test_labels_print_on_whole_sheets_of_a4(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}cupboard/labels/?first=20")
    page.emulate_media(media="print")
    places = page.evaluate(
        """() => [...document.querySelectorAll(".label")].map((one) => {
            const box = one.getBoundingClientRect(), sheet = one.closest(".label-sheet").getBoundingClientRect();
            return [box.left - sheet.left, box.top - sheet.top, box.width, box.height].map((px) => px / 96 * 25.4);
        })"""
    )
    assert len(places) == 19 + 13
    for number, (left, top, width, height) in enumerate(places[:24]):
        assert (round(left, 1), round(top, 1)) == (70 * (number % 3), 0.5 + 37 * (number // 3))
        assert (round(width, 1), round(height, 1)) == (70, 37)
    expect(page.get_by_role("button").first).to_be_hidden()
    page.evaluate("document.fonts.ready")  # a page is counted in its own letters
    pdf = page.pdf(prefer_css_page_size=True, print_background=True)
    assert pdf.count(b"/Type /Page\n") == 2
    assert b"/MediaBox [0 0 594.95" in pdf or b"/MediaBox [0 0 595" in pdf or b"/MediaBox [0 0 596" in pdf


def test_nothing_on_a_label_is_cut_off(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}cupboard/labels/")
    page.emulate_media(media="print")
    cut = page.evaluate(
        """() => [...document.querySelectorAll(".label, .label-text p")]
            .filter((one) => one.scrollHeight > one.clientHeight + 1 || one.scrollWidth > one.clientWidth + 1)
            .map((one) => one.textContent)"""
    )
    assert cut == []


def test_all_of_it_works_without_script(plain_page: Page) -> None:
    plain_page.goto("/")
    plain_page.get_by_role("button", name="Load the demo season").click()
    plain_page.get_by_role("link", name="Cupboard").click()
    plain_page.get_by_role("searchbox").fill("damson")
    plain_page.get_by_role("button", name="Find").click()
    plain_page.get_by_role("link", name="Damson").click()
    plain_page.get_by_label("On the scale").fill("30 g")
    plain_page.get_by_role("button", name="How many metres?").click()
    expect(plain_page.locator("#metres")).to_contain_text("30 g is 195.0 ±")
    plain_page.get_by_role("button", name="Keep it").first.click()
    expect(plain_page.locator("#amount .sentence")).to_contain_text("1 ball + 30 g opened")
    plain_page.get_by_role("button", name="Undo: weighed Damson: 30 g").click()
    plain_page.get_by_role("link", name="Damson").click()
    expect(plain_page.locator("#amount .sentence")).to_contain_text("1 ball + 49 g opened")
