"""The people of a season: measured and estimated kept apart, doubts first, writing, history, undo."""

import datetime as dt

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from loopwright.body import MEASURES, Wearer
from loopwright.season import Season
from loopwright.store import changes
from tests.documents.pages import read_page
from tests.web.asking import body, load, words

KEY = "winter-at-wethers-reach"


@pytest.fixture
def people(page: str) -> str:
    return f"{page}bodies/"


def section(html: str, key: str) -> str:
    """The part of the page about one person."""
    return html.partition(f'id="body-{key}"')[2].partition("</section>")[0]


def said_of(browser: Client, people: str, key: str) -> str:
    return read_said(section(body(browser.get(people)), key))


def read_said(html: str) -> str:
    return " ".join(" ".join(read_page(f"<section {html}</section>").pieces).split())


# --- Looking ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("below", ["", "ina/", "joss/", "tam/"])
def test_every_page_is_well_built(browser: Client, people: str, below: str) -> None:
    response = browser.get(f"{people}{below}")
    assert response.status_code == 200
    assert read_page(body(response)).faults == []


def test_the_season_leads_to_it(browser: Client, page: str, people: str) -> None:
    assert people in read_page(body(browser.get(page))).values("href")


def test_what_is_measured_stands_as_it_is(browser: Client, people: str) -> None:
    said = said_of(browser, people, "ina")
    assert "Full bust 96 cm" in said
    assert "12 measures, taken 20 February." in said


def test_what_is_estimated_says_so_and_from_what(browser: Client, people: str) -> None:
    said = said_of(browser, people, "joss")
    assert "Upper arm estimated 35.3 ± 2.1 cm from chest, hip and height" in said
    assert "the survey tapes the flexed muscle" in said


def test_an_estimate_is_in_no_field_of_the_form(browser: Client, people: str) -> None:
    form = body(browser.get(f"{people}joss/"))
    assert 'name="upper_arm_girth" value=""' in form
    assert "estimated 35.3" in form.replace("\N{NO-BREAK SPACE}", " ")


def test_nothing_is_estimated_for_a_child(browser: Client, people: str) -> None:
    said = said_of(browser, people, "tam")
    assert "estimated" not in said
    assert "A child is not a small grown-up: measure, do not estimate." in said


def test_a_child_has_its_cautions(browser: Client, people: str) -> None:
    """EN 14682 as explained by the Finnish safety authority Tukes: no cords at the neck up to seven years (read)."""
    assert "No cords, ties or drawstrings" in said_of(browser, people, "tam")
    assert "Rules differ by country" in said_of(browser, people, "tam")
    assert "No cords" not in said_of(browser, people, "ina")


def test_a_child_is_to_be_measured_again_before_its_garment_is_due(browser: Client, text: str) -> None:
    late = text.replace("measured_on = 2027-02-20\nchest_girth", "measured_on = 2026-11-01\nchest_girth")
    said = said_of(browser, f"{load(browser, late)}bodies/", "tam")
    assert "Measure again: On 1 March chest, head" in said
    assert "our judgement" in said


def test_history_and_growth_are_told_with_their_doubt(browser: Client, people: str) -> None:
    said = said_of(browser, people, "tam")
    assert "15 August 2026: 100.5 cm 20 February: 104 cm" in said
    assert "Since 15 August 2026 +3.5 ± 1.4 cm, that is +6.8 ± 2.7 cm a year." in said


def test_doubts_come_before_the_measures(browser: Client, text: str) -> None:
    odd = text.replace('waist_natural_girth = "80 cm"', 'waist_natural_girth = "80 cm"\nwaist_navel_girth = "70 cm"')
    said = said_of(browser, f"{load(browser, odd)}bodies/", "ina")
    assert said.index("Unlikely: Natural waist 80 cm is more than waist at the navel 70 cm") < said.index("Full bust")
    assert "takes no part in the estimates" in said


def test_it_is_read_in_inches_too(browser: Client, people: str) -> None:
    browser.cookies["measures"] = "imperial"
    assert "Full bust 37¾ in" in said_of(browser, people, "ina")


def test_twice_the_people_take_no_more_queries(browser: Client, people: str, text: str) -> None:
    def queries() -> int:
        with CaptureQueriesContext(connection) as asked:
            assert browser.get(people).status_code == 200
        return len(asked)

    before = queries()
    load(browser, text.replace("[bodies.joss]", '[bodies.eve]\nname = "Eve"\nwearer = "woman"\n\n[bodies.joss]'))
    assert queries() == before


# --- Drawings -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("key", MEASURES)
def test_every_measure_s_drawing_is_there(browser: Client, key: str) -> None:
    response = browser.get(f"/tape/{key}.svg")
    assert (response.status_code, response["Content-Type"]) == (200, "image/svg+xml")


def test_every_drawing_on_the_page_has_words(browser: Client, people: str) -> None:
    images = [given for name, given in read_page(body(browser.get(people))).elements if name == "img"]
    assert images
    assert all(": tape " in given["alt"] for given in images)


@pytest.mark.parametrize("below", ["bodies/nobody/", "../../tape/inseam.svg"])
def test_what_is_not_there(browser: Client, page: str, below: str) -> None:
    assert browser.get(f"{page}{below}").status_code == 404


# --- Writing ------------------------------------------------------------------------------------------------


def form_of(browser: Client, address: str) -> dict[str, str]:
    """The fields of the form as a browser would send them back untouched."""
    html = body(browser.get(address)).partition('class="measuring"')[2].partition("</form>")[0]
    fields = {
        given["name"]: given.get("value", "")
        for name, given in read_page(f"<form {html}</form>").elements
        if name == "input" and "name" in given and given.get("type") != "checkbox"
    }
    return {name: value for name, value in fields.items() if name != "csrfmiddlewaretoken"}


def test_a_form_sent_back_untouched_changes_nothing(browser: Client, people: str, season: Season) -> None:
    for key in season.body_by_key:
        browser.post(f"{people}{key}/", form_of(browser, f"{people}{key}/"))
    assert changes.season_of(KEY) == season
    assert changes.history(KEY).undo is None


def test_measures_are_written_as_on_paper(browser: Client, people: str) -> None:
    response = browser.post(f"{people}ina/", {"forearm_girth": "10 1/4 in", "measured_on": "2027-03-01"})
    assert (response.status_code, response["Location"]) == (302, f"{people}#body-ina")
    assert changes.season_of(KEY).body_by_key["ina"].forearm_girth_cm == pytest.approx(26.035)


def test_a_former_value_goes_into_the_history(browser: Client, people: str) -> None:
    browser.post(f"{people}tam/", {"chest_girth": "60 cm", "measured_on": "2027-03-01"})
    tam = changes.season_of(KEY).body_by_key["tam"]
    assert (tam.chest_girth_cm, tam.taken("chest_girth")) == (60, dt.date(2027, 3, 1))
    assert [(one.measured_on.isoformat(), one.chest_girth_cm) for one in tam.earlier] == [
        ("2026-08-15", 56.5),
        ("2027-02-20", 58.5),
    ]


def test_what_was_written_can_be_undone(browser: Client, people: str, season: Season) -> None:
    browser.post(f"{people}tam/", {"chest_girth": "60 cm", "measured_on": "2027-03-01"})
    assert "Undo: changed the measures of Tam" in words(browser.get(people))
    changes.undo(KEY)
    assert changes.season_of(KEY) == season


def test_all_can_be_said_to_be_taken_again(browser: Client, people: str) -> None:
    browser.post(f"{people}ina/", {"hip_girth": "104 cm", "measured_on": "2027-03-01", "all_again": "on"})
    ina = changes.season_of(KEY).body_by_key["ina"]
    assert (ina.measured_on, ina.taken_on) == (dt.date(2027, 3, 1), {})


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({"hip_girth": "103"}, 'Hip: found "103"; wanted a length with its unit'),
        ({"hip_girth": "wide"}, 'Hip: found "wide"; wanted a length with its unit'),
        ({"bust_girth": "10 cm"}, "found a bust or chest of 10 cm; wanted a girth from 30 to 220 cm"),
        ({"measured_on": "yesterday"}, 'Measured on: found "yesterday"; wanted a day such as 2027-03-01'),
        ({"age_years": "old"}, 'Age in years: found "old"; wanted a number from 0 to 120'),
        ({"mass": "68 cm"}, "Mass: found"),
    ],
)
def test_a_fault_is_told_and_nothing_is_written(
    browser: Client, people: str, season: Season, fields: dict[str, str], told: str
) -> None:
    response = browser.post(f"{people}ina/", fields)
    assert response.status_code == 422
    assert told in words(response)
    assert all(f'value="{value}"' in body(response) for value in fields.values())
    assert changes.season_of(KEY) == season


def test_a_person_is_added_and_can_be_measured(browser: Client, people: str) -> None:
    response = browser.post(people, {"name": "Wren Hale", "wearer": "child", "age_years": "2"})
    assert response["Location"] == f"{people}wren-hale/"
    assert changes.season_of(KEY).body_by_key["wren-hale"].wearer is Wearer.CHILD
    assert "Nothing is measured yet." in words(browser.get(response["Location"]))


@pytest.mark.parametrize("fields", [{"name": " "}, {"name": "Wren", "wearer": "giant"}, {"name": "Wren"}])
def test_a_person_that_cannot_be_added(browser: Client, people: str, season: Season, fields: dict[str, str]) -> None:
    response = browser.post(people, fields)
    assert response.status_code == 422
    assert "Nothing was written" in words(response)
    assert changes.season_of(KEY) == season


def test_what_she_types_is_never_taken_for_markup(browser: Client, people: str) -> None:
    response = browser.post(people, {"name": "<script>alert(1)</script>", "wearer": "woman"}, follow=True)
    assert "<script>alert" not in body(response)
