"""Loading a season: by file and by text; with a fault nothing is written and the text stays."""

from html import unescape

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from loopwright.files import read_season_text, write_season_text
from loopwright.season import Season
from loopwright.store import changes
from tests.web.asking import body, load, words


def uploaded(name: str, content: bytes) -> SimpleUploadedFile:
    return SimpleUploadedFile(name, content, content_type="application/octet-stream")


def spoilt(text: str, old: str, new: str) -> tuple[str, int]:
    """The text with one piece changed, and the line of the change."""
    assert old in text
    return text.replace(old, new, 1), text[: text.index(old)].count("\n") + 1


def textarea(html: str) -> str:
    inside = html.partition('<textarea name="text"')[2].partition(">")[2].partition("</textarea>")[0]
    return unescape(inside)


def test_a_file_is_taken_in(browser: Client, text: str, season: Season) -> None:
    response = browser.post("/load/", {"file": uploaded("winter.toml", text.encode())}, follow=True)
    assert response.redirect_chain[-1][0] == "/season/winter-at-wethers-reach/"
    assert changes.season_of("winter-at-wethers-reach") == season


def test_a_pasted_text_is_taken_in(browser: Client, text: str, season: Season) -> None:
    assert load(browser, text) == "/season/winter-at-wethers-reach/"
    assert changes.season_of("winter-at-wethers-reach") == season


def test_a_json_file_is_taken_in(browser: Client, season: Season) -> None:
    content = write_season_text(season, "json").encode()
    browser.post("/load/", {"file": uploaded("winter.json", content)})
    assert changes.season_of("winter-at-wethers-reach") == season


def test_a_file_with_a_mark_at_its_head_is_taken_in(browser: Client, text: str, season: Season) -> None:
    browser.post("/load/", {"file": uploaded("winter.toml", b"\xef\xbb\xbf" + text.encode())})
    assert changes.season_of("winter-at-wethers-reach") == season


# --- Faults -------------------------------------------------------------------------------------------------

SPOILT = [
    ('bust_girth = "96 cm"', 'bust_girth = "96 cubits"', 'bodies.ina.bust_girth: found "96 cubits"; wanted a length'),
    (
        'bust_girth = "90 (98, 106, 114, 122) cm"',
        'bust_girth = "90 (98, 106, 114) cm"',
        "patterns.slipway.finished.bust_girth: found 4 figures; wanted 5, one for each of the sizes XS, S, M, L, XL",
    ),
    ('mass = "100 g"', 'mass = "-100 g"', 'yarns.headland-aran.mass: found "-100 g"; wanted a mass with its unit'),
    (
        'yarns.main = { yarn = "jetty-dk"',
        'yarns.main = { yarn = "jetty-ck"',
        "garments.slipover.yarns.main.yarn: found the yarn 'jetty-ck', which is not there; wanted a yarn of this",
    ),
    ("hours_a_week = 8", "hours_a_week = ", "found 'hours_a_week =', which is not TOML"),
]


@pytest.mark.parametrize(("old", "new", "told"), SPOILT, ids=["unit", "sizes", "mass", "yarn", "syntax"])
def test_a_pasted_fault_is_told_with_its_line_and_nothing_is_written(
    browser: Client, text: str, old: str, new: str, told: str
) -> None:
    bad, line = spoilt(text, old, new)
    response = browser.post("/load/", {"text": bad})
    assert response.status_code == 422
    assert f"the pasted text:{line}:" in words(response)
    assert told in words(response)
    assert textarea(body(response)) == bad
    assert changes.season_keys() == ()


@pytest.mark.parametrize(("old", "new", "told"), SPOILT, ids=["unit", "sizes", "mass", "yarn", "syntax"])
def test_an_uploaded_fault_is_told_by_the_files_name(browser: Client, text: str, old: str, new: str, told: str) -> None:
    bad, line = spoilt(text, old, new)
    response = browser.post("/load/", {"file": uploaded("mine.toml", bad.encode())})
    assert response.status_code == 422
    assert f"mine.toml:{line}:" in words(response)
    assert told in words(response)
    assert textarea(body(response)) == bad


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "found no file and no text; wanted one of them"),
        (" \n\t\n", "found no file and no text; wanted one of them"),
        ("# nothing in it", "found nothing; wanted a season: its name, today, hours_a_week and currency"),
        (
            'name = "Bare"\ntoday = 2027-03-01\nhours_a_week = 8\ncurrency = "NZD"\n',
            "garments: found a season without garments; wanted at least one garment",
        ),
        ("{}", "found nothing; wanted a season"),
    ],
    ids=["nothing", "blank", "comment", "no-garment", "json"],
)
def test_an_empty_season_is_refused(browser: Client, text: str, told: str) -> None:
    response = browser.post("/load/", {"text": text})
    assert response.status_code == 422
    assert told in words(response)
    assert changes.season_keys() == ()


def test_bytes_that_are_no_text_are_refused(browser: Client) -> None:
    response = browser.post("/load/", {"file": uploaded("photo.toml", b"\xff\xd8\xff\xe0\x00\x10JFIF")})
    assert response.status_code == 422
    assert "photo.toml: found bytes that are not text; wanted a season file in UTF-8" in words(response)
    assert changes.season_keys() == ()


def test_an_empty_file_is_refused(browser: Client) -> None:
    response = browser.post("/load/", {"file": uploaded("empty.toml", b"")})
    assert response.status_code == 422
    assert changes.season_keys() == ()


def test_a_file_that_calls_itself_json_is_read_as_json(browser: Client) -> None:
    response = browser.post("/load/", {"file": uploaded("list.json", b"[1, 2]")})
    assert response.status_code == 422
    assert "list.json:1: found a list; wanted the fields and tables of a season" in words(response)


def test_a_file_larger_than_a_season_is_refused(browser: Client) -> None:
    response = browser.post("/load/", {"file": uploaded("long.toml", b"#" * 5_000_001)})
    assert response.status_code == 422
    assert "found more than 5 MB; wanted a season file" in words(response)


def test_a_sending_larger_than_a_form_is_refused_unread(browser: Client) -> None:
    response = browser.post("/load/", {"file": uploaded("long.toml", b"#" * 5_200_000)})
    assert response.status_code == 413


def test_a_text_that_no_database_can_hold_is_refused(browser: Client, season: Season) -> None:
    content = write_season_text(season, "json").replace(season.name, "Win\\u0000ter")
    assert read_season_text(content, "winter.json", "json").name == "Win\0ter"
    response = browser.post("/load/", {"text": content})
    assert response.status_code == 422
    assert "found" in words(response)
    assert changes.season_keys() == ()


def test_every_fault_is_told_at_once(browser: Client, text: str) -> None:
    bad, _ = spoilt(text, 'bust_girth = "96 cm"', 'bust_girth = "96 cubits"')
    bad, _ = spoilt(bad, 'mass = "100 g"', 'mass = "-100 g"')
    said = words(browser.post("/load/", {"text": bad}))
    assert "96 cubits" in said
    assert "-100 g" in said


def test_a_fault_leaves_the_season_that_is_there(browser: Client, page: str, text: str, season: Season) -> None:
    bad, _ = spoilt(text, 'mass = "100 g"', 'mass = "-100 g"')
    assert browser.post("/load/", {"text": bad}).status_code == 422
    assert changes.season_of(page.split("/")[2]) == season
