"""What a browser may do with our pages: nothing from elsewhere, nothing inside a page, no form from another site."""

from contextlib import closing

import pytest
from django.test import Client

from tests.documents.pages import read_page
from tests.web.asking import HOST, body, words

PAGES = ["/", "{page}", "{page}garment/cardigan/", "{page}garment/hat/?changes.body_longer=8+blah", "/nothing/"]


def policy(response: object) -> dict[str, str]:
    """The content policy by directive."""
    text: str = response["Content-Security-Policy"]  # type: ignore[index]
    return {name: value for name, _, value in (part.strip().partition(" ") for part in text.split(";"))}


@pytest.mark.parametrize("address", [*PAGES, "{page}file/toml/", "/icon.svg", "/demo/", "/static/look/ground.css"])
def test_every_answer_has_a_policy(browser: Client, page: str, address: str) -> None:
    with closing(browser.get(address.format(page=page))) as response:
        directives = policy(response)
    assert directives["default-src"] == "'self'"
    assert directives["script-src"] == "'self'"
    assert directives["frame-ancestors"] == "'none'"
    assert "unsafe" not in " ".join(directives.values())


@pytest.mark.parametrize("address", PAGES)
def test_no_script_and_no_style_stands_in_a_page(browser: Client, page: str, address: str) -> None:
    seen = read_page(body(browser.get(address.format(page=page))))
    assert seen.count("style") == 0
    assert all("src" in attributes for name, attributes in seen.elements if name == "script")
    names = {name for _, attributes in seen.elements for name in attributes}
    assert [name for name in names if name == "style" or (name.startswith("on") and name != "one")] == []


@pytest.mark.parametrize("address", PAGES)
def test_everything_comes_from_this_site(browser: Client, page: str, address: str) -> None:
    seen = read_page(body(browser.get(address.format(page=page))))
    places = [*seen.values("src"), *seen.values("href"), *seen.values("action")]
    assert places
    assert [place for place in places if not place.startswith(("/", "#")) or place.startswith("//")] == []


def test_what_pages_ask_for_is_there(browser: Client, page: str) -> None:
    seen = read_page(body(browser.get(page)))
    for place in [*seen.values("src"), *[link for link in seen.values("href") if link.startswith("/static/")]]:
        with closing(browser.get(place)) as response:
            assert response.status_code == 200, place


def test_the_font_of_the_style_sheet_is_there(browser: Client) -> None:
    with closing(browser.get("/static/fonts/Inter%5Bopsz,wght%5D.ttf")) as response:
        assert (response.status_code, response["Content-Type"]) == (200, "font/ttf")


def test_the_report_may_do_nothing_but_show_itself(browser: Client, page: str) -> None:
    directives = policy(browser.get(f"{page}report/"))
    assert directives == {"default-src": "'none'", "style-src": "'unsafe-inline'", "img-src": "data:"}


# --- Forms --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "address",
    ["/demo/", "/load/", "/reading/", "{page}undo/", "{page}redo/", "{page}put-away/", "{page}garment/hat/keep/"],
)
def test_a_form_of_another_site_is_refused(page: str, address: str) -> None:
    strict = Client(enforce_csrf_checks=True, headers={"host": HOST})
    response = strict.post(address.format(page=page), {"changes.body_longer": "8 cm"})
    assert response.status_code == 403
    assert "This form was not taken" in words(response)


def test_a_form_of_ours_is_taken(page: str) -> None:
    strict = Client(enforce_csrf_checks=True, headers={"host": HOST})
    bench = f"{page}garment/hat/"
    form = body(strict.get(bench, {"changes.body_longer": "2 cm"})).partition(f'action="{bench}keep/"')[2]
    token = form.partition('name="csrfmiddlewaretoken" value="')[2].partition('"')[0]
    response = strict.post(f"{bench}keep/", {"csrfmiddlewaretoken": token, "changes.body_longer": "2 cm"})
    assert response["Location"] == bench


@pytest.mark.parametrize("address", ["/", "{page}", "{page}garment/cardigan/?size=L"])
def test_every_form_that_changes_something_has_its_token(browser: Client, page: str, address: str) -> None:
    forms = body(browser.get(address.format(page=page))).split('<form method="post"')[1:]
    assert forms
    assert all("csrfmiddlewaretoken" in form.partition("</form>")[0] for form in forms)


def test_pages_are_given_to_known_hosts_only(page: str) -> None:
    assert Client(headers={"host": "elsewhere.example"}).get(page).status_code == 400
