"""The reader's own measures and words, kept in a cookie."""

import pytest
from django.test import Client

from loopwright.season import Season, plan
from loopwright.store import changes
from loopwright.units import Reader, read_length_cm
from loopwright.web.reading import as_kept, kept_text
from tests.web.asking import body, words

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


def test_the_choice_reaches_headings_and_fields(browser: Client, page: str) -> None:
    browser.post("/reading/", AMERICAN)
    assert "Drafted at your own gauge" in words(browser.get(f"{page}garment/cardigan/sizes/"))
    assert "How many yards?" in words(browser.get(f"{page}cupboard/lot/paddock-rust/"))
    assert 'placeholder="1 1/2 oz"' in body(browser.get(f"{page}cupboard/add/"))
    fabrics = body(browser.get(f"{page}swatches/")).partition('name="fabric"')[2].partition("</select>")[0]
    assert '<option value="stocking stitch" selected>stockinette</option>' in fabrics


def test_both_words_of_the_trade_stand_where_they_belong(browser: Client, page: str) -> None:
    assert "Drafted at your own tension" in words(browser.get(f"{page}garment/cardigan/sizes/"))
    assert "at your tension: where the pattern" in words(browser.get(f"{page}garment/cardigan/"))


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


def test_a_reader_of_inches_tries_in_inches(browser: Client, bench: str, season: Season) -> None:
    browser.post("/reading/", AMERICAN)
    html = body(browser.get(bench))
    assert 'name="changes.body_longer" value="1⅝ in"' in html  # 4 cm is 1.575 in
    assert "Stitches to 4 in" in html
    browser.post(f"{bench}keep/", {"changes.body_longer": "1⅝ in", "sureness": ""})
    assert changes.season_of("winter-at-wethers-reach") == season


@pytest.mark.parametrize("kept_cm", [-9.3, -2.54, 0.5, 3.81, 96.0, 105.41])
def test_what_is_shown_in_inches_can_be_read_back(kept_cm: float) -> None:
    shown = kept_text(f"{kept_cm:g} cm", Reader("imperial"))
    assert read_length_cm(shown, negative=True) == pytest.approx(kept_cm, abs=2.54 / 16)
    assert as_kept({"x": shown}, {"x": f"{kept_cm:g} cm"}, Reader("imperial")) == {"x": f"{kept_cm:g} cm"}


def test_measures_left_as_they_were_shown_are_not_rounded(browser: Client, page: str, season: Season) -> None:
    browser.post("/reading/", AMERICAN)
    shown = kept_text("96 cm", Reader("imperial"))
    assert f'value="{shown}"' in body(browser.get(f"{page}bodies/ina/"))
    browser.post(f"{page}bodies/ina/", {"bust_girth": shown, "measured_on": "2027-03-01"})
    assert changes.season_of("winter-at-wethers-reach") == season
