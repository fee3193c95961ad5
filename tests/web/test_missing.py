"""What is not there is said so, on a page of ours."""

import pytest
from django.test import Client

from tests.web.asking import words


@pytest.mark.parametrize(
    "address",
    [
        "/season/summer/",
        "/season/summer/report/",
        "/season/summer/file/toml/",
        "/season/summer/garment/cardigan/",
        "/season/winter-at-wethers-reach/garment/socks/",
        "/nothing/",
        "/season/../../secret-key",
        "/static/nothing.css",
    ],
)
def test_it_is_not_there(browser: Client, page: str, address: str) -> None:
    assert page
    assert browser.get(address).status_code == 404


@pytest.mark.parametrize(
    "address",
    [
        "/season/summer/undo/",
        "/season/summer/redo/",
        "/season/summer/put-away/",
        "/season/summer/garment/cardigan/keep/",
        "/season/winter-at-wethers-reach/garment/socks/keep/",
    ],
)
def test_nothing_can_be_done_to_what_is_not_there(browser: Client, page: str, address: str) -> None:
    assert page
    assert browser.post(address).status_code == 404


def test_the_page_says_what_is_missing_and_leads_on(browser: Client, page: str) -> None:
    said = words(browser.get(f"{page}garment/socks/"))
    assert "the season has no garment 'socks'" in said
    assert "Your seasons" in said


def test_a_missing_address_speaks_no_jargon(browser: Client) -> None:
    assert "Resolver404" not in words(browser.get("/nothing/"))


@pytest.mark.parametrize("address", ["/load/", "/demo/", "/reading/"])
def test_what_changes_something_cannot_be_asked_for(browser: Client, address: str) -> None:
    assert browser.get(address).status_code == 405


def test_a_head_can_be_asked_for(browser: Client, page: str) -> None:
    assert [browser.head(address).status_code for address in ("/", page, f"{page}report/", "/icon.svg")] == [200] * 4
