"""The reader's own measures and words, kept in a cookie."""

import pytest
from django.test import Client

from loopwright.season import Season, plan
from loopwright.units import Reader
from tests.web.asking import words

AMERICAN = {"measures": "imperial", "words": "american"}


@pytest.fixture
def bench(page: str) -> str:
    return f"{page}garment/cardigan/"


def test_the_season_speaks_as_its_file_says(browser: Client, bench: str) -> None:
    said = words(browser.get(bench))
    assert "Is my tension right?" in said
    assert "bust 103 cm" in said


def test_the_choice_changes_every_answer(browser: Client, bench: str, season: Season) -> None:
    browser.post("/reading/", {**AMERICAN, "back": bench})
    said = words(browser.get(bench))
    garment = plan(season, Reader("imperial", "american")).garment("cardigan")
    assert [answer.sentence for answer in garment.answers if answer.sentence not in said] == []


def test_the_choice_reaches_the_season_and_the_report(browser: Client, page: str, season: Season) -> None:
    browser.post("/reading/", AMERICAN)
    figure = plan(season, Reader("imperial", "american")).answer("yarn").figures[0]
    assert " yd" in figure.text
    assert figure.text in words(browser.get(page))
    assert "Is my gauge right?" in words(browser.get(f"{page}report/"))


def test_measures_and_words_are_two_choices(browser: Client, bench: str) -> None:
    browser.post("/reading/", {"words": "american"})
    said = words(browser.get(bench))
    assert "Is my gauge right?" in said
    assert "bust 103 cm" in said


def test_it_goes_back_to_where_she_was(browser: Client, bench: str) -> None:
    assert browser.post("/reading/", {**AMERICAN, "back": bench})["Location"] == bench


@pytest.mark.parametrize(
    "elsewhere",
    [
        "https://elsewhere.example/",
        "//elsewhere.example/",
        "/\\elsewhere.example",
        "javascript:alert(1)",
        "",
        "http:///x",
    ],
)
def test_it_leads_nowhere_else(browser: Client, elsewhere: str) -> None:
    assert browser.post("/reading/", {**AMERICAN, "back": elsewhere})["Location"] == "/"


@pytest.mark.parametrize("elsewhere", ["https://elsewhere.example/", "//elsewhere.example/"])
def test_undo_leads_nowhere_else(browser: Client, page: str, elsewhere: str) -> None:
    assert browser.post(f"{page}undo/", {"back": elsewhere})["Location"] == page


@pytest.mark.parametrize("value", ["cubits", "", "<script>"])
def test_an_unknown_choice_is_not_kept(browser: Client, bench: str, value: str) -> None:
    browser.post("/reading/", {"measures": value})
    assert "measures" not in browser.cookies
    assert "bust 103 cm" in words(browser.get(bench))


def test_a_cookie_from_elsewhere_does_no_harm(browser: Client, bench: str) -> None:
    browser.cookies["measures"] = "cubits"
    assert "bust 103 cm" in words(browser.get(bench))
