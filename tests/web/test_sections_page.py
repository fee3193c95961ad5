"""Yarn section by section, and what a remnant can still knit."""

from __future__ import annotations

import pytest
from django.test import Client

from tests.web.asking import body, words


@pytest.fixture
def address(page: str) -> str:
    return f"{page}garment/cardigan/sections/"


def test_the_bench_leads_to_it(browser: Client, page: str, address: str) -> None:
    assert f'href="{address}"' in body(browser.get(f"{page}garment/cardigan/"))


def test_every_section_stands_with_its_metres(browser: Client, address: str) -> None:
    said = words(browser.get(address))
    for word in ("sleeve cap", "neckband", "left band", "main", "contrast", "a long tail of"):
        assert word in said
    assert "shared out" not in said  # she says where the colours go


def test_a_remnant_is_answered(browser: Client, address: str) -> None:
    said = words(browser.get(address, {"section": "sleeve sleeve", "mass": "60 g", "role": "main", "done": "10"}))
    assert "It finishes it" in said
    assert "as likely as not" in said


def test_with_another_colour_it_says_where_to_change(browser: Client, address: str) -> None:
    asked = {"section": "sleeve sleeve", "mass": "60 g", "role": "main", "then": "60 g"}
    assert "Change to the other colour" in words(browser.get(address, asked))


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ({"section": "sleeve sleeve", "mass": ""}, "On the scale: found nothing"),
        ({"mass": "a little"}, "On the scale: found"),
        ({"mass": "0 g"}, "a mass above nothing"),
        ({"mass": "30 g", "done": "ten"}, "Rows done: found"),
        ({"mass": "30 g", "done": "9999"}, "9999 rows done"),
        ({"mass": "30 g", "section": "pocket"}, "the section"),
    ],
)
def test_what_cannot_be_read_is_told(browser: Client, address: str, asked: dict[str, str], said: str) -> None:
    response = browser.get(address, {"section": "sleeve sleeve", "role": "main", **asked})
    assert response.status_code == 200
    assert said in words(response)


def test_a_garment_that_is_not_there(browser: Client, page: str) -> None:
    assert browser.get(f"{page}garment/tent/sections/").status_code == 404
