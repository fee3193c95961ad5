"""The first page: her seasons, the demo season, what was put away."""

from django.test import Client

from loopwright.season import Season
from tests.documents.pages import read_page
from tests.web.asking import body, load, words


def test_without_a_season_it_says_how_to_begin(browser: Client) -> None:
    response = browser.get("/")
    assert response.status_code == 200
    assert "None yet. Load a season file of your own, or look at the demo season first." in words(response)


def test_a_season_is_listed_with_its_garments(browser: Client, page: str) -> None:
    response = browser.get("/")
    assert f'href="{page}"' in body(response)
    assert "5 garments, planned from 1 March 2027" in words(response)


def test_the_demo_season_is_loaded_at_a_press(browser: Client, season: Season) -> None:
    response = browser.post("/demo/", follow=True)
    assert response.redirect_chain[-1][0] == "/season/winter-at-wethers-reach/"
    assert season.name in words(response)


def test_the_demo_season_loaded_again_is_not_doubled(browser: Client) -> None:
    browser.post("/demo/")
    browser.post("/demo/")
    assert body(browser.get("/")).count('href="/season/') == 1


def test_a_season_of_another_name_gets_a_place_of_its_own(browser: Client, page: str, text: str) -> None:
    # Both names make the same key.
    other = load(browser, text.replace("Winter at Wethers Reach", "Winter at Wethers Reach!"))
    assert other != page
    assert body(browser.get("/")).count('href="/season/') == 2


def test_it_is_well_built(browser: Client, page: str) -> None:
    assert page
    assert read_page(body(browser.get("/"))).faults == []


def test_the_icon_is_a_drawing(browser: Client) -> None:
    response = browser.get("/icon.svg")
    assert response["Content-Type"] == "image/svg+xml"
    assert "<svg" in body(response)


# --- Put away and brought back ------------------------------------------------------------------------------


def test_a_season_put_away_is_gone_but_offered(browser: Client, page: str) -> None:
    response = browser.post(f"{page}put-away/", follow=True)
    assert "Bring it back" in words(response)
    assert browser.get(page).status_code == 404


def test_what_was_put_away_comes_back_as_it_was(browser: Client, page: str, text: str) -> None:
    browser.post(f"{page}put-away/")
    response = browser.post("/bring-back/winter-at-wethers-reach/", follow=True)
    assert response.redirect_chain[-1][0] == page
    assert body(browser.get(f"{page}file/toml/")) == text


def test_bringing_back_twice_is_bringing_back_once(browser: Client, page: str) -> None:
    browser.post(f"{page}put-away/")
    for _ in range(2):
        response = browser.post("/bring-back/winter-at-wethers-reach/")
        assert response["Location"] == page


def test_what_never_was_cannot_come_back(browser: Client) -> None:
    assert browser.post("/bring-back/summer/").status_code == 404
