"""Which lot knits which section, and what becomes of it when a section is given to another lot."""

from __future__ import annotations

import re

import pytest
from django.test import Client

from tests.web.asking import body, words


@pytest.fixture
def address(page: str) -> str:
    return f"{page}garment/cardigan/lots/"


def sure_of(said: str) -> str:
    found = re.search(r"all of it suffices (.*?) sure", said)
    assert found is not None
    return found[1]


def test_the_bench_leads_to_it(browser: Client, page: str, address: str) -> None:
    assert f'href="{address}"' in body(browser.get(f"{page}garment/cardigan/"))


def test_every_section_can_be_given_to_any_lot(browser: Client, address: str) -> None:
    html = body(browser.get(address))
    assert 'name="cardigan/main/back/back"' in html
    assert "Tarn, Long Headland Aran, dye lot 416" in html
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


def test_a_lot_that_is_not_there_changes_nothing(browser: Client, address: str) -> None:
    assert "As proposed" in words(browser.get(address, {"cardigan/main/back/back": "moon"}))


def test_a_garment_that_is_not_there(browser: Client, page: str) -> None:
    assert browser.get(f"{page}garment/tent/lots/").status_code == 404
