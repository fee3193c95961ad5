"""The pages of charts: listed, added in three ways, drawn on, set, written as text, written out, taken away."""

import io
import json
import re
from typing import Any

import numpy as np
import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from loopwright.chart import chart_csv, read_chart_csv, read_chart_svg
from loopwright.store import changes
from tests.web.asking import body, words


@pytest.fixture
def charts(page: str) -> str:
    return f"{page}charts/"


@pytest.fixture
def bench(charts: str) -> str:
    return f"{charts}tide-line/"


@pytest.fixture
def key(page: str) -> str:
    return page.split("/")[2]


def data_of(browser: Client, bench: str) -> dict[str, Any]:
    """What the bench's script begins with."""
    found = re.search(r'id="chart-data">(.*?)</script>', body(browser.get(bench)), re.DOTALL)
    assert found is not None
    read: dict[str, Any] = json.loads(found[1])
    return read


def draw(browser: Client, bench: str, **changed: object) -> Any:
    data = data_of(browser, bench)
    roles = {one["mark"]: one["role"] for one in data["roles"]}
    sent = {"rows": data["rows"], "roles": roles, "known": data["known"], "version": None} | changed
    return browser.post(f"{bench}draw/", json.dumps(sent), content_type="application/json")


def test_the_season_leads_to_it(browser: Client, page: str, charts: str) -> None:
    assert f'href="{charts}"' in body(browser.get(page))
    assert "12 stitches by 12 rounds, for Striped pullover for Tam" in words(browser.get(charts))
    assert "<svg" in body(browser.get(charts))


def test_a_season_without_charts_says_so(browser: Client, charts: str, key: str) -> None:
    changes.remove_entry(key, "charts", "tide-line", "took it away")
    assert "There is no chart yet" in words(browser.get(charts))


def test_the_bench_answers_and_can_be_read_without_script(browser: Client, bench: str) -> None:
    response = browser.get(bench)
    for said in ("Which floats are too long?", "catch it at stitch 12", "How much yarn does it take?"):
        assert said in words(response)
    assert "<noscript>" in body(response)
    assert "12 contrast-2" in words(response)
    assert f"{bench}file/svg/?look" in body(response)
    ids = re.findall(r'\sid="([^"]+)"', body(response))
    assert sorted(set(ids)) == sorted(ids)


def test_every_row_stands_in_words(browser: Client, bench: str) -> None:
    said = words(browser.get(f"{bench}words/"))
    assert "round, right to left" in said
    assert "5 main, 1 contrast-1, 6 main" in said


def test_the_script_gets_what_it_draws(browser: Client, bench: str, key: str) -> None:
    data = data_of(browser, bench)
    named = changes.season_of(key).chart_by_key["tide-line"]
    assert tuple(data["rows"]) == named.rows
    assert [one["shade"] for one in data["roles"]] == ["#dccdae", "#a2502f", "#23424f"]
    assert (data["limit"], data["inTheRound"], len(data["symbols"])) == (5, True, 44)


def test_what_is_drawn_is_kept_as_one_change(browser: Client, bench: str, key: str) -> None:
    rows = data_of(browser, bench)["rows"]
    first = draw(browser, bench, rows=[rows[0].replace("r", "s"), *rows[1:]])
    assert first.status_code == 200
    told = first.json()
    second = draw(browser, bench, rows=["s" * 12, *rows[1:]], known=told["known"], version=told["version"])
    assert second.status_code == 200
    assert changes.season_of(key).chart_by_key["tide-line"].rows[0] == "s" * 12
    assert changes.undo(key) == "drew Tide line"
    assert list(changes.season_of(key).chart_by_key["tide-line"].rows) == rows


def test_a_drawing_over_another_one_is_not_taken(browser: Client, bench: str) -> None:
    old = data_of(browser, bench)["known"]
    draw(browser, bench, rows=["m" * 12])
    response = draw(browser, bench, rows=["r" * 12], known=old)
    assert response.status_code == 422
    assert response.json()["known"] == data_of(browser, bench)["known"]


@pytest.mark.parametrize(
    ("sent", "message"),
    [
        ("{", "a body that is no JSON"),
        ("[]", "a body without rows"),
        ('{"rows": ["m"], "known": 3}', "a body without rows"),
    ],
)
def test_what_is_no_drawing_is_refused(browser: Client, bench: str, sent: str, message: str) -> None:
    response = browser.post(f"{bench}draw/", sent, content_type="application/json")
    assert response.status_code == 422
    assert message in response.json()["faults"][0]


def test_a_drawing_with_an_unknown_mark_is_refused(browser: Client, bench: str) -> None:
    response = draw(browser, bench, rows=["m<b>"])
    assert response.status_code == 422
    assert "Rows" in response.json()["faults"][0]


def test_the_answers_can_be_had_alone(browser: Client, bench: str) -> None:
    draw(browser, bench, rows=["m" * 12])
    response = browser.get(f"{bench}answers/")
    assert "None: nothing floats." in words(response)
    assert "Undo: drew Tide line" in words(response)
    assert "<html" not in body(response)


def test_settings_are_kept_and_undone(browser: Client, page: str, bench: str, key: str) -> None:
    fields = {
        "name": "Ebb",
        "garment": "",
        "gauge": "20 sts x 28 rows = 10 cm",
        "worked": "flat",
        "from_stitch": "1",
        "to_stitch": "4",
    }
    assert browser.post(f"{bench}keep/", fields).status_code == 302
    kept = changes.season_of(key).chart_by_key["tide-line"]
    assert (kept.name, kept.garment, kept.worked) == ("Ebb", None, "flat")
    assert kept.repeat is not None
    assert (kept.repeat.from_stitch, kept.repeat.to_stitch) == (1, 4)
    browser.post(f"{page}undo/", {"back": bench})
    assert changes.season_of(key).chart_by_key["tide-line"].name == "Tide line"


@pytest.mark.parametrize(
    ("fields", "message"),
    [
        ({"name": ""}, "Name: found nothing"),
        ({"name": "x", "gauge": "tight"}, "Tension: found"),
        ({"name": "x", "from_stitch": "two"}, "Repeat: found"),
        ({"name": "x", "from_stitch": "9", "to_stitch": "40"}, "Repeat: found"),
        ({"name": "x", "garment": "tent"}, "Garment: found"),
    ],
)
def test_a_fault_stays_in_the_form(browser: Client, bench: str, fields: dict[str, str], message: str) -> None:
    response = browser.post(f"{bench}keep/", fields)
    assert response.status_code == 422
    assert message in words(response)


def test_rows_are_written_as_text(browser: Client, bench: str, key: str) -> None:
    assert browser.post(f"{bench}rows/", {"rows": "m r\r\n\r\nrm", "stitches": "..\n-."}).status_code == 302
    kept = changes.season_of(key).chart_by_key["tide-line"]
    assert (kept.rows, kept.stitches) == (("mr", "rm"), ("..", "-."))
    response = browser.post(f"{bench}rows/", {"rows": "mr\nr<i>", "stitches": ""})
    assert response.status_code == 422
    assert "r&lt;i&gt;</textarea>" in body(response)


def test_every_form_can_be_had(browser: Client, bench: str, key: str) -> None:
    chart = read_chart_csv(body(browser.get(f"{bench}file/csv/")))
    assert read_chart_svg(body(browser.get(f"{bench}file/svg/"))) == chart
    with Image.open(io.BytesIO(browser.get(f"{bench}file/png/").content)) as picture:
        assert picture.size == (12, 12)
    assert browser.get(f"{bench}file/gif/").status_code == 404
    assert "attachment" in browser.get(f"{bench}file/csv/")["Content-Disposition"]


def test_it_is_taken_away_and_had_back(browser: Client, charts: str, bench: str, key: str) -> None:
    assert browser.post(f"{bench}take-away/")["Location"] == charts
    assert browser.get(bench).status_code == 404
    changes.undo(key)
    assert browser.get(bench).status_code == 200


def add(browser: Client, page: str, **fields: object) -> Any:
    return browser.post(f"{page}add-chart/", {"name": "New one", "kind": "empty", **fields})


def test_an_empty_one_has_the_garment_s_colours(browser: Client, page: str, charts: str, key: str) -> None:
    response = add(browser, page, columns="7", rows="5", garment="pullover", worked="in the round")
    assert response["Location"] == f"{charts}new-one/"
    kept = changes.season_of(key).chart_by_key["new-one"]
    assert [one.role for one in kept.roles] == ["main", "contrast-1", "contrast-2"]
    assert (kept.shades, kept.worked, kept.chart.columns, kept.chart.rows) == ({}, "in the round", 7, 5)


def test_one_from_a_file_is_the_very_same(browser: Client, page: str, key: str) -> None:
    chart = changes.season_of(key).chart_by_key["tide-line"].chart
    sent = SimpleUploadedFile("tide.csv", chart_csv(chart).encode())
    assert add(browser, page, kind="file", file=sent).status_code == 302
    assert changes.season_of(key).chart_by_key["new-one"].chart == chart


def picture() -> SimpleUploadedFile:
    pixels = np.zeros((40, 60, 3), dtype=np.uint8)
    pixels[:, 30:] = 255
    file = io.BytesIO()
    Image.fromarray(pixels).save(file, "PNG")
    return SimpleUploadedFile("photo.png", file.getvalue(), "image/png")


def test_one_from_a_picture_has_its_proportions(browser: Client, page: str, key: str) -> None:
    fields = {"stitches": "60", "palette": "found", "colours": "2", "swatch": "stripes"}
    assert add(browser, page, kind="picture", picture=picture(), **fields).status_code == 302
    kept = changes.season_of(key).chart_by_key["new-one"]
    assert (kept.chart.columns, kept.chart.rows) == (60, 55)
    assert set(kept.shades.values()) == {"#000000", "#ffffff"}


def test_one_from_a_picture_on_the_garment_s_yarns(browser: Client, page: str, key: str) -> None:
    fields = {"stitches": "20", "palette": "garment", "garment": "pullover"}
    assert add(browser, page, kind="picture", picture=picture(), **fields).status_code == 302
    assert [one.role for one in changes.season_of(key).chart_by_key["new-one"].roles] == [
        "main",
        "contrast-1",
        "contrast-2",
    ]


@pytest.mark.parametrize(
    ("fields", "message"),
    [
        ({"name": " "}, "Name: found nothing"),
        ({"columns": "many", "rows": "5"}, "Stitches: found"),
        ({"columns": "5", "rows": "4000"}, "rows: found"),
        ({"kind": "file"}, "File: found"),
        ({"kind": "file", "file": SimpleUploadedFile("x.csv", b"A,B\nA\n")}, "line 1: found"),
        ({"kind": "file", "file": SimpleUploadedFile("x.png", b"\x89PNG\r\n")}, "no such picture"),
        ({"kind": "file", "file": SimpleUploadedFile("x.bin", b"\xff\xfe\xff")}, "a chart as CSV, PNG or SVG"),
        ({"kind": "picture", "stitches": "60", "colours": "4"}, "File: found"),
        ({"kind": "picture", "picture": picture(), "palette": "garment"}, "Colours: found"),
    ],
)
def test_what_cannot_be_added_is_told(
    browser: Client, page: str, key: str, fields: dict[str, object], message: str
) -> None:
    response = add(browser, page, **fields)
    assert response.status_code == 422
    assert message in words(response)
    assert len(changes.season_of(key).charts) == 1


def test_a_chart_that_is_not_there(browser: Client, charts: str) -> None:
    for place in ("", "words/", "answers/", "file/csv/"):
        assert browser.get(f"{charts}tent/{place}").status_code == 404
