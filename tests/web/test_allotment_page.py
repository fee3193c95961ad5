"""Which lot knits which section, and what becomes of it when a section is given to another lot."""

from __future__ import annotations

import html
import io
import re
from typing import Any

import numpy as np
import pytest
from django.test import Client
from PIL import Image

from loopwright.season.allotted import allotted
from tests.web.asking import body, load, words

OAT, TARN = (0xD8, 0xC7, 0xA3), (0x4F, 0x75, 0x83)
"""Likenesses of the two lots in the demo season."""
SLEEVE = "cardigan/main/sleeve 1/sleeve"


@pytest.fixture
def address(page: str) -> str:
    return f"{page}garment/cardigan/lots/"


def images(page: str) -> list[dict[str, str]]:
    """The attributes of every image of a page."""
    return [
        {name: html.unescape(value) for name, value in re.findall(r'([a-z]+)="([^"]*)"', image)}
        for image in re.findall(r"<img [^>]*>", page)
    ]


def share_near(response: Any, colour: tuple[int, int, int]) -> float:
    """The share of a picture's pixels whose red, green and blue stand to one another as in a colour."""
    seen = np.asarray(Image.open(io.BytesIO(response.content)).convert("RGB"), dtype=float)
    wanted = np.array(colour) / sum(colour)
    return float((np.abs(seen / seen.sum(axis=-1, keepdims=True) - wanted).max(axis=-1) < 0.01).mean())


def flowing(response: Any) -> str:
    """The page's text in one line."""
    return " ".join(words(response).split())


def sure_of(said: str) -> str:
    found = re.search(r"all of it suffices (.*?) sure", said)
    assert found is not None
    return found[1]


def test_the_bench_leads_to_it(browser: Client, page: str, address: str) -> None:
    assert f'href="{address}"' in body(browser.get(f"{page}garment/cardigan/"))


def test_every_section_can_be_given_to_any_lot_of_its_yarn(browser: Client, address: str) -> None:
    html = body(browser.get(address))
    assert 'name="cardigan/main/back/back"' in html
    assert "Tarn, Long Headland Aran, dye lot 416" in html
    assert "Paddock" not in html
    assert "no yarn is sure enough for both sleeves" in words(browser.get(address))


def test_moving_a_section_changes_the_answer(browser: Client, address: str) -> None:
    proposed = words(browser.get(address))
    moved = words(browser.get(address, {"cardigan/main/back/back": "headland-oat"}))
    assert "As proposed" in proposed
    assert "As you have it" in moved
    assert "meets" in moved
    sleeves = {f"cardigan/main/sleeve {n}/{part}": "headland-tarn" for n in (1, 2) for part in ("sleeve", "cap")}
    too_much = words(browser.get(address, sleeves))
    assert sure_of(too_much) in ("under 1 %", "1 %", "2 %")


def test_only_what_is_judged_is_sent_for_a_part(browser: Client, address: str) -> None:
    part = body(browser.get(address, {"cardigan/main/back/back": "headland-oat"}, headers={"hx-request": "true"}))
    assert "<html" not in part
    assert "As you have it" in part


@pytest.mark.parametrize("lot", ["moon", "paddock-rust"])
def test_no_lot_and_a_lot_of_another_yarn_change_nothing(browser: Client, address: str, lot: str) -> None:
    assert "As proposed" in words(browser.get(address, {"cardigan/main/back/back": lot}))


def test_what_has_no_yarn_is_said_beside_how_sure_the_rest_is(browser: Client, address: str) -> None:
    assert "what is given a lot suffices over 99 % sure; there is no yarn for both sleeves" in words(
        browser.get(address)
    )


def test_a_lot_says_what_is_left_of_it(browser: Client, page: str, address: str) -> None:
    """Tarn holds 680 m, of which the cardigan takes the metres of its fields; what is short is said as well."""
    html = body(browser.get(address))
    taken = sum(
        float(metres)
        for key, metres in re.findall(
            r'data-section="(cardigan/main/[^"]*)".*?<span class="quiet">([\d.]+)\xa0?.*?</span></div>', html
        )
        if "sleeve" not in key
    )
    left = re.search(
        r"Tarn, Long Headland Aran, dye lot 416 (\d+) m left, over 99 % sure", flowing(browser.get(address))
    )
    assert left is not None
    assert float(left[1]) == pytest.approx(680 - taken, abs=3)
    sleeves = {f"cardigan/main/sleeve {n}/{part}": "headland-tarn" for n in (1, 2) for part in ("sleeve", "cap")}
    assert re.search(r"Tarn, Long Headland Aran, dye lot 416 \d+ m short", flowing(browser.get(address, sleeves)))
    assert "Gorse, Stone Paddock DK 101 m left, knits nothing" in flowing(browser.get(f"{page}garment/pullover/lots/"))


def test_the_pictures_say_which_lot_knits_what(browser: Client, address: str) -> None:
    front, back = images(body(browser.get(address)))
    assert front["src"] == f"{address}lots/front.png"
    assert back["src"] == f"{address}lots/back.png"
    assert front["alt"].startswith("Cardigan for herself from the front.")
    assert "Tarn, Long Headland Aran, dye lot 416 knits the back and the front" in front["alt"]
    assert "no yarn knits both sleeves" in front["alt"]
    tried, _ = images(body(browser.get(address, {SLEEVE: "headland-oat"}, headers={"hx-request": "true"})))
    assert tried["src"] == f"{address}lots/front.png?cardigan%2Fmain%2Fsleeve+1%2Fsleeve=headland-oat"
    assert re.search(r"Oat, Long Headland Aran, dye lot 388 knits .*the sleeve", tried["alt"])


def test_what_looks_alike_from_both_sides_is_drawn_once(browser: Client, page: str) -> None:
    (picture,) = images(body(browser.get(f"{page}garment/shawl/lots/")))
    assert picture["alt"].startswith("Shawl for Wen. Damson, Ropewalk Lace, dye lot 2 knits")


def test_a_section_that_two_lots_share_is_said(browser: Client, page: str) -> None:
    front, _ = images(body(browser.get(f"{page}garment/pullover/lots/")))
    assert front["alt"].count("part of the body") == 2


def test_the_picture_is_painted_by_lot_and_follows_what_is_tried(browser: Client, address: str) -> None:
    proposed = browser.get(f"{address}lots/front.png")
    size = images(body(browser.get(address)))[0]
    assert Image.open(io.BytesIO(proposed.content)).size == (int(size["width"]), int(size["height"]))
    tried = browser.get(f"{address}lots/front.png", {SLEEVE: "headland-oat"})
    assert share_near(proposed, TARN) > 0.2
    assert share_near(tried, TARN) == pytest.approx(share_near(proposed, TARN), abs=0.002)
    assert share_near(tried, OAT) > share_near(proposed, OAT) + 0.05


def test_a_picture_that_is_still_the_same_is_not_sent_again(browser: Client, address: str) -> None:
    tag = browser.get(f"{address}lots/back.png")["ETag"]
    assert browser.get(f"{address}lots/back.png", headers={"if-none-match": tag}).status_code == 304
    moved = browser.get(f"{address}lots/back.png", {SLEEVE: "headland-oat"}, headers={"if-none-match": tag})
    assert moved.status_code == 200


def test_the_numbers_of_the_places_are_those_of_the_page(browser: Client, address: str) -> None:
    places = browser.get(f"{address}places/front.png")
    numbers = np.asarray(Image.open(io.BytesIO(places.content)).convert("RGB"))[..., 0]
    named = re.search(r'data-map="[^"]*places/front.png" data-places="([^"]*)"', body(browser.get(address)))
    assert named is not None
    keys = re.findall(r"\[(\[.*)\]", html.unescape(named[1]))[0].split("], [")
    (sleeve,) = (place for place, own in enumerate(keys, 1) if SLEEVE in own)
    proposed, tried = (
        np.asarray(Image.open(io.BytesIO(browser.get(f"{address}lots/front.png", asked).content)).convert("RGB"))
        for asked in ({}, {SLEEVE: "headland-oat"})
    )
    changed = (proposed != tried).any(axis=-1)
    assert changed[numbers == sleeve].mean() > 0.95
    assert changed[numbers != sleeve].mean() < 0.01


@pytest.mark.parametrize("place", ["lots/side.png", "socks/front.png"])
def test_a_picture_that_is_not_there(browser: Client, address: str, place: str) -> None:
    assert browser.get(f"{address}{place}").status_code == 404


def test_it_is_solved_once_for_the_page_and_all_its_pictures(
    browser: Client, text: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    def counted(*given: Any, **named: Any) -> Any:
        asked.append(given[2])
        return allotted(*given, **named)

    monkeypatch.setattr("loopwright.web.allotment.views.allotted", counted)
    address = f"{load(browser, text.replace('hours_a_week = ', 'hours_a_week = 1'))}garment/pullover/lots/"
    for picture in images(body(browser.get(address))):
        assert browser.get(picture["src"]).status_code == 200
    browser.get(address, {"pullover/main/body/hem": "paddock-oat"})
    assert asked == ["pullover"]


def test_a_garment_that_is_not_there(browser: Client, page: str) -> None:
    assert browser.get(f"{page}garment/tent/lots/").status_code == 404
