"""Pages on a phone, a tablet and a desk; read by those who do not see them; printed."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.browser.watching import GARMENTS, ink_share

pytestmark = pytest.mark.browser

DRAFTS = [
    "draft/",
    "garment/cardigan/sizes/",
    "garment/cardigan/sections/",
    "garment/cardigan/swap/",
    "garment/cardigan/look/",
    "photo/?garment=pullover&role=main",
    "cupboard/lot/paddock-oat/",
]
PLACES = ["", "report/", *DRAFTS, *(f"garment/{key}/" for key in GARMENTS)]
TRIED = "garment/cardigan/?changes.body_longer=8+cm&size=L"
LEAST_TARGET_PX = 24
"""Source: WCAG 2.2, 2.5.8 Target Size (Minimum)."""
MOST_CHROMA = 8
"""How far apart the channels of a neutral grey may lie, of 255; our judgement."""


def unfold(page: Page) -> None:
    page.evaluate("for (const details of document.querySelectorAll('details')) details.open = true")


def too_wide(page: Page) -> int:
    """By how many pixels the page can be pushed sideways."""
    excess: int = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    return excess


def test_no_page_scrolls_sideways(page: Page, looked_at: str) -> None:
    found = []
    for address in ["/", *(f"{looked_at}{place}" for place in (*PLACES, TRIED))]:
        page.goto(address)
        unfold(page)
        for width in (360, 768, 1280):
            page.set_viewport_size({"width": width, "height": 800})
            found += [(address, width)] if too_wide(page) > 0 else []
    assert found == []


def test_a_page_that_scrolls_sideways_would_be_seen(page: Page) -> None:
    page.goto("/")
    page.evaluate("document.querySelector('h1').textContent = 'W'.repeat(200)")
    assert too_wide(page) > 0


@pytest.mark.parametrize("width", [360, 1280])
def test_nothing_sticks_out_of_its_sheet(page: Page, looked_at: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    for address in ["/", looked_at, f"{looked_at}{TRIED}"]:
        page.goto(address)
        out = page.evaluate(
            """() => {
                const right = (one) => one.getBoundingClientRect().right;
                return [...document.querySelectorAll("input, textarea, select, button, a, p, dd, svg")]
                    .filter((one) => one.closest(".sheet") && !one.closest(".wide") && one.checkVisibility())
                    .filter((one) => right(one) > right(one.closest(".sheet")))
                    .map((one) => one.outerHTML.slice(0, 80));
            }"""
        )
        assert out == [], address


def test_buttons_and_links_are_large_enough_for_a_thumb(page: Page, looked_at: str) -> None:
    page.set_viewport_size({"width": 360, "height": 800})
    page.goto(f"{looked_at}{TRIED}")
    heights = page.evaluate(
        """() => [...document.querySelectorAll("button, .masthead a, summary, select, main input:not([type=hidden])")]
            .map((one) => one.getBoundingClientRect().height)"""
    )
    assert len(heights) > 8
    assert min(heights) >= LEAST_TARGET_PX


def violations(page: Page) -> list[str]:
    """What an accessibility check by axe finds: rule and place."""
    found = Axe().run(page).response["violations"]
    return [f"{one['id']}: {[node['html'][:90] for node in one['nodes'][:3]]}" for one in found]


def test_axe_finds_nothing(page: Page, looked_at: str) -> None:
    found = {}
    for address in ["/", *(f"{looked_at}{place}" for place in ("", TRIED, "garment/hat/?size=Q", "report/", *DRAFTS))]:
        page.goto(address)
        unfold(page)
        found[address] = violations(page)
    assert {address: faults for address, faults in found.items() if faults} == {}


def test_axe_finds_nothing_on_a_phone(page: Page, looked_at: str) -> None:
    page.set_viewport_size({"width": 360, "height": 800})
    page.goto(f"{looked_at}{TRIED}")
    unfold(page)
    assert violations(page) == []


def test_axe_finds_nothing_beside_a_fault(page: Page) -> None:
    page.goto("/")
    page.get_by_label("or its text").fill("name = ")
    page.get_by_role("button", name="Load it").click()
    expect(page.get_by_role("alert")).to_be_visible()
    assert violations(page) == []


def test_axe_finds_a_label_that_is_taken_away(page: Page) -> None:
    """Else the tests above could not fail."""
    page.goto("/")
    page.evaluate("for (const label of document.querySelectorAll('label')) label.replaceWith(...label.childNodes)")
    assert any(found.startswith("label:") for found in violations(page))


@pytest.mark.parametrize("place", ["", "report/", "garment/cardigan/"])
def test_what_is_printed_is_there(page: Page, looked_at: str, place: str) -> None:
    page.goto(f"{looked_at}{place}")
    page.emulate_media(media="print")
    picture = page.screenshot()
    page.goto("/")
    assert 0.005 < ink_share(page, picture) < 0.5


def test_a_blank_picture_would_be_seen(page: Page) -> None:
    page.goto("/")
    page.evaluate("document.body.replaceChildren()")
    assert ink_share(page, page.screenshot()) == 0


def test_what_can_only_be_pressed_is_not_printed(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}{TRIED}")
    page.emulate_media(media="print")
    for role in ("button", "navigation", "textbox"):
        expect(page.get_by_role(role).first).to_be_hidden()
    expect(page.locator("#yarn .sentence")).to_be_visible()


def test_the_yarn_is_the_only_colour_of_a_page(page: Page, looked_at: str) -> None:
    page.goto(f"{looked_at}{TRIED}")
    used = page.evaluate(
        """() => [...document.querySelectorAll("body, body *:not(svg *)")].flatMap((one) => {
            const style = getComputedStyle(one);
            return [style.color, style.backgroundColor, style.borderTopColor, style.borderBottomColor];
        })"""
    )
    channels = [[int(part) for part in colour[colour.index("(") + 1 : -1].split(",")[:3]] for colour in set(used)]
    assert len(channels) > 5
    assert max(max(one) - min(one) for one in channels) <= MOST_CHROMA
