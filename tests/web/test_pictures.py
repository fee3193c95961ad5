"""Pictures of a garment on the site: what a browser is given, how it keeps it, the page that tries other colours."""

from __future__ import annotations

import io
from typing import Any

import numpy as np
import pytest
from django.test import Client
from PIL import Image

from loopwright.season import Season, plan
from loopwright.web.pictures.page import planned_look_view
from tests.documents.pages import read_page
from tests.web.asking import body, words


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
    assert "ribs and bands are drawn in contrast" in words(response)
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


def test_a_bench_can_show_the_section(season: Season, page: str) -> None:
    garment = plan(season).garment("pullover")
    view = planned_look_view(page.split("/")[2], season, garment, {"draft.sleeves": "short"})
    assert view is not None
    assert view.kept == (("draft.sleeves", "short"),)
    assert all("draft.sleeves=short" in one.address for one in view.pictures)
    assert [(one.role, one.shade) for one in view.roles] == [
        ("main", "#dccdae"),
        ("contrast-1", "#a2502f"),
        ("contrast-2", "#23424f"),
    ]
