"""The page that says what else a garment could be knitted in."""

from __future__ import annotations

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from tests.web.asking import body, words


@pytest.fixture
def address(page: str) -> str:
    return f"{page}garment/cardigan/swap/"


def test_the_bench_leads_to_it(browser: Client, page: str, address: str) -> None:
    assert f'href="{address}"' in body(browser.get(f"{page}garment/cardigan/"))


def test_every_yarn_of_the_season_is_held_against_the_planned_one(browser: Client, address: str) -> None:
    said = words(browser.get(address))
    for word in (
        "Long Headland Aran",
        "as planned",
        "Stone Paddock DK",
        "works with care",
        "g/m²",
        "prediction is no swatch",
    ):
        assert word in said


def test_a_fibre_can_be_left_out(browser: Client, address: str) -> None:
    assert "Dusk Haze" in words(browser.get(address))
    assert "Dusk Haze" not in words(browser.get(address, {"without": "mohair"}))


def test_another_role_can_be_asked_for(browser: Client, address: str) -> None:
    assert "selected>contrast" in body(browser.get(address, {"role": "contrast"})).replace(" ", "")


LIST = "name;fibres;length;mass\nTide Aran;100 % wool;168 m;100 g\n"


def test_a_list_of_yarns_is_ranked_and_not_kept(browser: Client, address: str) -> None:
    sent = SimpleUploadedFile("yarns.csv", LIST.encode())
    said = words(browser.post(address, {"list": sent}))
    assert "Tide Aran" in said
    assert "in the list" in said
    assert "Tide Aran" not in words(browser.get(address))


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (LIST.replace("168 m", "far").encode(), "far"),
        (b"\xff\xfe\x00\x01", "no text in UTF-8"),
        (b"x" * 2_000_001, "over 2,000,000 bytes"),
    ],
)
def test_a_list_that_cannot_be_read_is_told(browser: Client, address: str, content: bytes, said: str) -> None:
    response = browser.post(address, {"list": SimpleUploadedFile("yarns.csv", content)})
    assert response.status_code == 422
    assert said in words(response)


def test_a_garment_that_is_not_there(browser: Client, page: str) -> None:
    assert browser.get(f"{page}garment/tent/swap/").status_code == 404
