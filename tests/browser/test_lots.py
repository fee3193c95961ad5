"""Lots dragged onto the parts of a garment: with a mouse, with a finger, and not at all."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, CDPSession, Locator, Page, expect

from loopwright.files import demo_text
from tests.browser.conftest import WAIT_MS
from tests.browser.watching import Watch, open_demo

pytestmark = pytest.mark.browser

SLEEVES = ("cardigan/main/sleeve 1/sleeve", "cardigan/main/sleeve 2/sleeve")
ON_THE_LEFT = (0.15, 0.62)
"""In the front picture of the cardigan, the middle of the sleeve on the left: shares of its width and height."""
FIRST_ANSWER_MS = 15_000
"""The first answer is solved for, which takes a second or two, on a busy machine more."""
PRESS_MS = 400
"""Longer than the press that takes a lot, which is 250 ms."""


def lots(page: Page, garment: str = "cardigan") -> Page:
    page.goto(f"{open_demo(page)}garment/{garment}/lots/", timeout=FIRST_ANSWER_MS)
    return page


def lot(page: Page, key: str = "headland-oat") -> Locator:
    return page.locator(f".lot-chip[data-lot={key}]")


def bar(page: Page, section: str = SLEEVES[0]) -> Locator:
    return page.locator(f".knitted[data-section='{section}']")


def field(page: Page, section: str = SLEEVES[0]) -> Locator:
    return page.locator(f"select[name='{section}']")


def answer(page: Page) -> Locator:
    return page.locator("#judged [role=status]")


def middle(one: Locator, across: float = 0.5, down: float = 0.5) -> tuple[float, float]:
    """A point of an element in the window, which is tall enough for all of the page."""
    box = one.bounding_box()
    assert box is not None
    return box["x"] + across * box["width"], box["y"] + down * box["height"]


def tall(page: Page, width: int = 1280) -> None:
    page.set_viewport_size({"width": width, "height": 3600})


def take(page: Page, chip: Locator) -> None:
    x, y = middle(chip)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 10, y + 4, steps=2)
    expect(page.locator(".carried")).to_be_visible()


def untouched(page: Page) -> None:
    """Nothing was given, and nothing is left of a drag."""
    expect(page.locator(".carried, .may, .over, .taken, .by-lot canvas")).to_have_count(0)
    expect(answer(page)).to_contain_text("As proposed")
    assert field(page).input_value() == ""


@pytest.fixture
def asked(page: Page) -> list[str]:
    """Every answer that the page asks for."""
    found: list[str] = []
    page.on("request", lambda request: found.append(request.url) if "hx-request" in request.headers else None)
    return found


def test_a_lot_dropped_on_a_bar_changes_the_answer(page: Page) -> None:
    tall(lots(page))
    expect(answer(page)).to_contain_text("there is no yarn for both sleeves")
    take(page, lot(page))
    page.mouse.move(*middle(bar(page)))
    expect(bar(page)).to_have_class(re.compile(r"\bover\b"))
    expect(page.locator(".carried")).to_contain_text("sleeve 1")
    page.mouse.up()
    expect(field(page)).to_have_value("headland-oat")
    expect(answer(page)).to_contain_text("As you have it")
    expect(bar(page).locator("rect")).to_have_attribute("fill", "#d8c7a3")
    expect(page.locator(".carried")).to_have_count(0)


def test_a_lot_dropped_on_its_field_changes_the_answer(page: Page) -> None:
    tall(lots(page))
    take(page, lot(page))
    page.mouse.move(*middle(field(page)))
    page.mouse.up()
    expect(field(page)).to_have_value("headland-oat")
    expect(answer(page)).to_contain_text("As you have it")


def test_a_lot_dropped_on_the_drawing_gives_it_the_part_under_it(page: Page) -> None:
    """Who faces the viewer has the right arm, and so the second sleeve, on the left of the picture."""
    tall(lots(page))
    front = page.locator("[data-view=front] img")
    take(page, lot(page))
    page.mouse.move(*middle(front, *ON_THE_LEFT))
    expect(bar(page, SLEEVES[1])).to_have_class(re.compile(r"\bover\b"))
    expect(page.locator("[data-view=front] canvas")).to_be_visible()
    page.mouse.up()
    expect(field(page, SLEEVES[1])).to_have_value("headland-oat")
    assert field(page).input_value() == ""
    expect(page.locator("[data-view=front] img[src*='sleeve+2%2Fsleeve=headland-oat']")).to_have_js_property(
        "complete", True
    )
    assert page.locator("[data-view=front] img").evaluate("(image) => image.naturalWidth") > 0


def test_it_can_be_given_again_and_the_metres_left_follow(page: Page) -> None:
    tall(lots(page))
    left = []
    for section in SLEEVES:
        left.append(lot(page).locator(".lot-left").inner_text())
        take(page, lot(page))
        page.mouse.move(*middle(bar(page, section)))
        page.mouse.up()
        expect(lot(page).locator(".lot-left")).not_to_have_text(left[-1])
    left.append(lot(page).locator(".lot-left").inner_text())
    metres = [float(re.findall(r"[\d.]+", said)[0]) * (-1 if "short" in said else 1) for said in left]
    taken = float(re.findall(r"[\d.]+", bar(page).inner_text().split("sleeve 1")[1])[0])
    assert metres[0] - metres[1] == pytest.approx(taken, abs=2)
    assert metres[1] - metres[2] == pytest.approx(taken, abs=2)
    expect(answer(page)).to_contain_text("there is no yarn for")


def test_escape_puts_it_back(page: Page, asked: list[str]) -> None:
    tall(lots(page))
    take(page, lot(page))
    page.mouse.move(*middle(bar(page)))
    page.keyboard.press("Escape")
    untouched(page)
    page.mouse.up()
    untouched(page)
    assert asked == []


def test_a_drop_elsewhere_puts_it_back(page: Page, asked: list[str]) -> None:
    tall(lots(page))
    take(page, lot(page))
    page.mouse.move(*middle(bar(page)))
    page.mouse.move(*middle(page.locator("h1")))
    expect(page.locator(".over")).to_have_count(0)
    page.mouse.up()
    untouched(page)
    assert asked == []


def test_a_press_that_does_not_move_gives_nothing(page: Page, asked: list[str]) -> None:
    tall(lots(page))
    lot(page).click()
    untouched(page)
    assert asked == []


def test_only_sections_of_its_yarn_light_up_and_take_it(page: Page, asked: list[str]) -> None:
    """A cardigan whose edges are of another yarn than its body."""
    text = demo_text().replace("Winter at Wethers Reach", "Winter in two yarns")
    edges = 'yarns.contrast = { yarn = "headland-aran", colour = "Oat" }'
    assert text.count(edges) == 1
    page.goto("/")
    page.get_by_label("or its text").fill(text.replace(edges, edges.replace("headland-aran", "paddock-dk")))
    page.get_by_role("button", name="Load it").click()
    page.wait_for_url("**/season/**")
    page.goto(f"{page.url}garment/cardigan/lots/", timeout=FIRST_ANSWER_MS)
    tall(page)
    asked.clear()
    take(page, lot(page, "paddock-rust"))
    may = page.locator(".knitted.may").evaluate_all("(rows) => rows.map((row) => row.dataset.section)")
    offered = page.locator("select:has(option[value=paddock-rust])").evaluate_all("(all) => all.map((one) => one.name)")
    assert may == offered
    assert all(section.startswith("cardigan/contrast/") for section in may)
    expect(bar(page)).to_have_css("opacity", "0.4")
    expect(page.locator(".knitted.may").first).to_have_css("opacity", "1")
    veiled = page.locator("[data-view=front] canvas").evaluate(
        """(canvas, [across, down]) => canvas.getContext("2d").getImageData(
            Math.round(across * canvas.width), Math.round(down * canvas.height), 1, 1).data[3]""",
        ON_THE_LEFT,
    )
    assert veiled > 100
    page.mouse.move(*middle(page.locator("[data-view=front] img"), *ON_THE_LEFT))
    expect(page.locator(".over")).to_have_count(0)
    page.mouse.up()
    untouched(page)
    assert asked == []


def test_the_page_scrolls_while_a_lot_is_held_at_its_edge(page: Page) -> None:
    lots(page)
    page.set_viewport_size({"width": 768, "height": 700})
    lot(page).scroll_into_view_if_needed()
    before = page.evaluate("scrollY")
    take(page, lot(page))
    page.mouse.move(300, 690)
    expect(field(page)).to_be_in_viewport(timeout=WAIT_MS)
    assert page.evaluate("scrollY") > before + 500
    page.mouse.move(300, 5)
    expect(page.locator("h1")).to_be_in_viewport(timeout=WAIT_MS)
    page.keyboard.press("Escape")
    page.mouse.up()
    untouched(page)


def test_the_field_still_works_from_the_keyboard(page: Page) -> None:
    lots(page)
    field(page).focus()
    page.keyboard.press("o")
    expect(field(page)).to_have_value("headland-oat")
    expect(answer(page)).to_contain_text("As you have it")
    assert page.evaluate("document.activeElement.name") == SLEEVES[0]


def test_without_script_the_picture_is_there_and_a_field_is_judged(plain_page: Page) -> None:
    lots(plain_page)
    picture = plain_page.get_by_role("img", name=re.compile("Cardigan for herself from the front"))
    expect(picture).to_have_attribute("alt", re.compile("no yarn knits both sleeves"))
    response = plain_page.request.get(str(picture.evaluate("(image) => image.src")))
    assert response.headers["content-type"] == "image/png"
    expect(plain_page.get_by_text("Drag a lot")).to_be_hidden()
    expect(plain_page.locator(".grip").first).to_be_hidden()
    field(plain_page).select_option("headland-oat")
    plain_page.get_by_role("button", name="Judge it").click()
    expect(answer(plain_page)).to_contain_text("As you have it")
    expect(field(plain_page)).to_have_value("headland-oat")


# ------------------------------------------------------------------------------------------------------- with a finger
class Finger:
    """Touches as the browser gets them from a screen."""

    def __init__(self, page: Page) -> None:
        self._page = page
        self._screen: CDPSession = page.context.new_cdp_session(page)
        self._at = (0.0, 0.0)

    def _touch(self, kind: str, *points: tuple[float, float]) -> None:
        told: list[dict[str, Any]] = [{"x": x, "y": y, "id": 1} for x, y in points]
        self._screen.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": told})

    def down(self, x: float, y: float) -> None:
        self._at = (x, y)
        self._touch("touchStart", self._at)

    def move(self, x: float, y: float, steps: int = 8) -> None:
        begin = self._at
        for step in range(1, steps + 1):
            share = step / steps
            self._at = (begin[0] + share * (x - begin[0]), begin[1] + share * (y - begin[1]))
            self._touch("touchMove", self._at)
            self._page.wait_for_timeout(16)

    def up(self) -> None:
        self._touch("touchEnd")


@pytest.fixture
def phone(chromium: Browser, site: str) -> Iterator[Page]:
    """The cardigan's lots on a phone, where the lots stand in the upper half of the window."""
    size: Any = {"width": 360, "height": 800}
    with (
        chromium.new_context(base_url=site, has_touch=True, is_mobile=True, viewport=size) as context,
        context.new_page() as page,
    ):
        page.set_default_timeout(WAIT_MS)
        watch = Watch(page)
        lots(page)
        page.evaluate("window.scrollTo(0, document.querySelector('.lot-chips').getBoundingClientRect().top - 90)")
        yield page
        assert watch.troubles == []


def test_a_finger_that_presses_takes_the_lot(phone: Page) -> None:
    finger, front = Finger(phone), phone.locator("[data-view=front] img")
    before = phone.evaluate("scrollY")
    finger.down(*middle(lot(phone).locator(".lot-words")))
    phone.wait_for_timeout(PRESS_MS)
    expect(phone.locator(".carried")).to_be_visible()
    finger.move(*middle(front, *ON_THE_LEFT))
    expect(bar(phone, SLEEVES[1])).to_have_class(re.compile(r"\bover\b"))
    finger.up()
    expect(field(phone, SLEEVES[1])).to_have_value("headland-oat")
    expect(answer(phone)).to_contain_text("As you have it")
    assert phone.evaluate("scrollY") == before


def test_a_finger_on_the_grip_takes_it_at_once(phone: Page) -> None:
    finger, front = Finger(phone), phone.locator("[data-view=front] img")
    before = phone.evaluate("scrollY")
    finger.down(*middle(lot(phone).locator(".grip")))
    finger.move(*middle(front, *ON_THE_LEFT))
    expect(phone.locator(".carried")).to_be_visible()
    finger.up()
    expect(field(phone, SLEEVES[1])).to_have_value("headland-oat")
    assert phone.evaluate("scrollY") == before


def test_a_finger_that_strokes_over_a_lot_scrolls_the_page(phone: Page) -> None:
    finger = Finger(phone)
    before = phone.evaluate("scrollY")
    x, y = middle(lot(phone).locator(".lot-words"))
    finger.down(x, y)
    finger.move(x, y - 120)
    finger.up()
    phone.wait_for_function(f"scrollY > {before + 50}")
    phone.wait_for_timeout(PRESS_MS)
    untouched(phone)


def test_a_finger_that_is_taken_away_elsewhere_gives_nothing(phone: Page) -> None:
    finger = Finger(phone)
    finger.down(*middle(lot(phone).locator(".grip")))
    finger.move(180, 40)
    expect(phone.locator(".carried")).to_be_visible()
    finger.up()
    untouched(phone)


# --------------------------------------------------------------------------------------------------------------- looks
@pytest.mark.parametrize("garment", ["cardigan", "pullover"])
def test_it_fits_and_axe_finds_nothing_at_rest_and_while_a_lot_is_dragged(page: Page, garment: str) -> None:
    lots(page, garment)
    for width in (360, 768, 1280):
        tall(page, width)
        for held in (False, True):
            if held:
                take(page, page.locator(".lot-chip").first)
                x, y = middle(page.locator(".knitted").first, 0.98)
                page.mouse.move(x, y)
                expect(page.locator(".carried")).to_contain_text("→")
                shown = page.locator(".carried").bounding_box()
                assert shown is not None
                assert shown["x"] + shown["width"] <= width
            excess = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
            assert excess == 0, (width, held)
            found = Axe().run(page).response["violations"]
            assert [one["id"] for one in found] == [], (width, held)
        page.keyboard.press("Escape")
        page.mouse.up()


def test_a_grip_is_large_enough_for_a_thumb(phone: Page) -> None:
    """At least 24 by 24 CSS pixels. Source: WCAG 2.2, 2.5.8 Target Size (Minimum)."""
    box = lot(phone).locator(".grip").bounding_box()
    assert box is not None
    assert min(box["width"], box["height"]) >= 24
