"""Pictures of a garment on the site: what a browser is given, how it keeps it, the page that tries other colours."""

from __future__ import annotations

import io
import re
from typing import Any

import numpy as np
import pytest
from django.test import Client
from PIL import Image

from tests.documents.pages import read_page
from tests.web.asking import body, load, words


@pytest.fixture
def place(page: str) -> str:
    return f"{page}garment/cardigan/"


def drawn(response: Any) -> Image.Image:
    assert (response.status_code, response["Content-Type"]) == (200, "image/png")
    return Image.open(io.BytesIO(response.content))


@pytest.mark.parametrize("view", ["front", "back", "fabric"])
def test_there_is_a_picture_of_each_kind(browser: Client, place: str, view: str) -> None:
    assert max(drawn(browser.get(f"{place}picture/{view}.png", {"px": "400"})).size) == 400


@pytest.mark.parametrize(
    ("asked", "longest"), [("", 1000), ("9999999", 1600), ("1", 120), ("wide", 1000), ("-5", 1000)]
)
def test_its_size_is_bounded(browser: Client, place: str, asked: str, longest: int) -> None:
    assert max(drawn(browser.get(f"{place}picture/front.png", {"px": asked})).size) == longest


def test_a_browser_that_has_it_is_told_so(browser: Client, place: str) -> None:
    first = browser.get(f"{place}picture/front.png", {"px": "300"})
    assert first["Cache-Control"] == "private, no-cache"
    again = browser.get(f"{place}picture/front.png", {"px": "300"}, headers={"if-none-match": first["ETag"]})
    assert (again.status_code, again.content, again["ETag"]) == (304, b"", first["ETag"])
    other = browser.get(f"{place}picture/front.png", {"px": "300", "colour.main": "#a2502f"})
    assert other["ETag"] != first["ETag"]


def test_another_colour_changes_the_palette_alone(browser: Client, place: str) -> None:
    one = drawn(browser.get(f"{place}picture/front.png", {"px": "300"}))
    other = drawn(browser.get(f"{place}picture/front.png", {"px": "300", "colour.main": "#a2502f"}))
    assert np.array_equal(np.asarray(one), np.asarray(other))
    assert one.getpalette() != other.getpalette()


def test_what_is_tried_on_the_bench_is_drawn(browser: Client, place: str) -> None:
    kept = drawn(browser.get(f"{place}picture/front.png", {"px": "300"}))
    tried = drawn(browser.get(f"{place}picture/front.png", {"px": "300", "draft.sleeves": "short"}))
    assert not np.array_equal(np.asarray(kept), np.asarray(tried))
    faulty = drawn(browser.get(f"{place}picture/front.png", {"px": "300", "changes.body_longer": "8 blah"}))
    assert np.array_equal(np.asarray(kept), np.asarray(faulty))


@pytest.mark.parametrize("address", ["picture/side.png", "picture/front.png?colour.main=blue"])
def test_a_picture_that_cannot_be_drawn(browser: Client, place: str, address: str) -> None:
    assert browser.get(f"{place}{address}").status_code == 404


def test_a_garment_that_is_not_there(browser: Client, page: str) -> None:
    assert browser.get(f"{page}garment/tent/picture/front.png").status_code == 404
    assert browser.get(f"{page}garment/tent/look/").status_code == 404


def test_the_page_shows_three_pictures_and_a_colour_for_every_role(browser: Client, place: str) -> None:
    response = browser.get(f"{place}look/")
    seen = read_page(body(response))
    assert [one.partition("?")[0] for one in seen.values("src") if ".png" in one] == [
        f"{place}picture/{view}.png" for view in ("front", "back", "fabric")
    ]
    assert [one for one in seen.values("name") if one.startswith("colour.")] == ["colour.main", "colour.contrast"]
    assert "daylight" in words(response)
    for picture in seen.values("src"):
        if ".png" in picture:
            assert browser.get(picture).status_code == 200


def test_without_script_other_colours_come_as_a_page(browser: Client, place: str) -> None:
    html = body(browser.get(f"{place}look/", {"colour.main": "#a2502f", "colour.contrast": "#d8c7a3"}))
    assert "colour.main=%23a2502f" in html
    assert "colour.contrast" not in html.partition("<form")[0]  # it was left as it was shown
    assert 'value="#a2502f"' in html


def test_with_script_the_section_comes_alone(browser: Client, place: str) -> None:
    html = body(browser.get(f"{place}look/", headers={"hx-request": "true"}))
    assert html.strip().startswith('<div class="look" id="look">')


# --- On the bench -------------------------------------------------------------------------------------------


def front(response: Any) -> str:
    """The address of the picture of its front."""
    (address,) = [one for one in read_page(body(response)).values("src") if "/front.png" in one]
    return address


def test_the_bench_shows_them(browser: Client, page: str) -> None:
    html = body(browser.get(f"{page}garment/pullover/"))
    section = html.partition('id="look-answer"')[2].partition("</section>")[0]
    for role, shade in (("main", "#dccdae"), ("contrast-1", "#a2502f"), ("contrast-2", "#23424f")):
        assert f'name="colour.{role}" value="{shade}"' in section
        assert f"/photo/?garment=pullover&amp;role={role}" in section
    assert f'href="{page}garment/pullover/look/"' in section
    assert read_page(html).faults == []


@pytest.mark.parametrize("garment", ["shawl", "hat", "pullover", "cardigan", "slipover"])
def test_the_page_knows_how_large_a_picture_is_before_it_is_drawn(browser: Client, page: str, garment: str) -> None:
    address = front(browser.get(f"{page}garment/{garment}/"))
    html = body(browser.get(f"{page}garment/{garment}/"))
    tag = html.partition(f'src="{address.replace("&", "&amp;")}"')[2].partition(">")[0]
    width, height = drawn(browser.get(address)).size
    assert f'width="{width}" height="{height}"' in tag


@pytest.mark.parametrize(
    ("path", "value"), [("ease.bust_girth", "20 cm"), ("tension", "19"), ("draft.sleeves", "short")]
)
def test_the_pictures_follow_what_she_tries(browser: Client, page: str, path: str, value: str) -> None:
    bench = f"{page}garment/slipover/" if path == "tension" else f"{page}garment/cardigan/"
    kept = drawn(browser.get(front(browser.get(bench))))
    tried = drawn(browser.get(front(browser.get(bench, {path: value}, headers={"hx-request": "true"}))))
    assert tried.size != kept.size or not np.array_equal(np.asarray(kept), np.asarray(tried))


def test_a_colour_that_is_tried_stays_when_something_else_is_tried(browser: Client, place: str) -> None:
    response = browser.get(place, {"changes.body_longer": "9 cm", "colour.main": "#334477"})
    assert "changes.body_longer=9+cm&colour.main=%23334477" in front(response)
    assert 'name="colour.main" value="#334477"' in body(response)
    assert "These colours are tried, not kept" in words(response)
    assert "These colours are tried, not kept" not in words(browser.get(place, {"colour.main": "#4f7583"}))


def test_a_colour_that_cannot_be_read_leaves_the_bench_as_it_is(browser: Client, place: str) -> None:
    response = browser.get(place, {"colour.main": '"><b>'})
    assert response.status_code == 200
    assert front(response) == front(browser.get(place))
    assert "<b>" not in body(response)


def test_the_larger_page_shows_what_is_tried(browser: Client, place: str) -> None:
    bench = read_page(body(browser.get(place, {"changes.body_longer": "9 cm", "colour.main": "#334477"})))
    (link,) = [one for one in bench.values("href") if "garment/cardigan/look/" in one]
    larger = browser.get(link)
    assert "changes.body_longer=9+cm&colour.main=%23334477&px=1600" in front(larger)
    assert 'download="cardigan-front.png"' in body(larger)


def test_a_garment_that_cannot_be_drafted_has_no_pictures(browser: Client, text: str) -> None:
    """An armhole as deep as the garment is long."""
    page = load(
        browser, text.replace('armhole_depth = "24 (25, 26, 27, 28) cm"', 'armhole_depth = "64 (65, 66, 67, 68) cm"')
    )
    response = browser.get(f"{page}garment/slipover/")
    assert response.status_code == 200
    assert "look-answer" not in body(response)


def test_where_the_draft_does_not_say_it_says_so(browser: Client, text: str) -> None:
    page = load(browser, re.sub(r"^colours\.edges = .*\n", "", text, flags=re.MULTILINE))
    assert "ribs and bands are drawn in Oat" in words(browser.get(f"{page}garment/cardigan/"))


@pytest.mark.parametrize(("garment", "has_wearer"), [("hat", True), ("shawl", False)])
def test_a_body_is_spoken_of_where_one_is_drawn(browser: Client, page: str, garment: str, has_wearer: bool) -> None:
    assert ("over the outline of its wearer" in words(browser.get(f"{page}garment/{garment}/"))) == has_wearer
