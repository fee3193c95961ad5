"""The page of a photo: sent, measured, corrected, kept, undone; and what is sent to do harm."""

import base64
import io
import re
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from loopwright.colour import delta_e_ciede2000, lab_from_srgb, read_hex
from loopwright.store import changes
from tests.colour.photo.scenes import draw
from tests.files.pictures import SVG, bomb_png, gradient, stored
from tests.web.asking import body, load, words

YARN = "#2f6f73"
PAPER = {"white_across": "13", "white_down": "16 %"}


@pytest.fixture(scope="module")
def skein() -> bytes:
    """A photo of a teal skein with paper beside it, and with what a camera notes."""
    exif = Image.Exif()
    exif[0x010F] = "Camera of Ina"
    return stored(Image.fromarray(draw([YARN]).pixels), "JPEG", quality=95, exif=exif)


@pytest.fixture
def photo(page: str) -> str:
    """The address of the page of a photo."""
    return f"{page}photo/"


@pytest.fixture
def key(page: str) -> str:
    return page.split("/")[2]


def send(browser: Client, photo: str, content: bytes, name: str = "photo", **fields: str) -> Any:
    file = SimpleUploadedFile("skein.jpg", content, content_type="image/jpeg")
    return browser.post(f"{photo}measure/", {name: file, **fields})


def found(response: Any) -> list[str]:
    """The colours that the form offers."""
    return re.findall(r'type="color" name="colour-\d" value="(#[0-9a-f]{6})"', body(response))


def picture_of(response: Any) -> str:
    said = re.search(r'name="picture" value="([^"]*)"', body(response))
    assert said is not None
    return said[1]


def test_the_season_page_leads_to_it(browser: Client, page: str, photo: str) -> None:
    assert f'href="{photo}"' in body(browser.get(page))


def test_the_page_tells_how_to_take_it_and_what_it_cannot_tell(browser: Client, photo: str) -> None:
    said = words(browser.get(photo))
    for part in ("white printer paper", "No photo proves that two dye lots match", "judge the yarn in daylight"):
        assert part in said
    assert 'capture="environment"' in body(browser.get(photo))


def test_paper_that_was_not_pointed_out_is_asked_for(browser: Client, photo: str, skein: bytes) -> None:
    assert "tap it in the picture below" in words(send(browser, photo, skein))
    assert "tap it in the picture below" not in words(send(browser, photo, skein, **PAPER))


def test_from_a_lot_the_trail_leads_back_to_it(browser: Client, page: str, photo: str) -> None:
    trail = body(browser.get(photo, {"lot": "paddock-rust"})).partition('aria-label="Pages"')[2].partition("</nav>")[0]
    assert f'href="{page}cupboard/"' in trail
    assert f'<a href="{page}cupboard/lot/paddock-rust/">Rust</a>' in trail


def test_a_photo_is_measured(browser: Client, photo: str, skein: bytes) -> None:
    """5 ΔE00, the doubt told for a photo with paper."""
    response = send(browser, photo, skein, **PAPER)
    assert response.status_code == 200
    (colour,) = found(response)
    assert delta_e_ciede2000(lab_from_srgb(read_hex(colour)), lab_from_srgb(read_hex(YARN))) < 5
    assert "One colour." in words(response)


def test_the_camera_s_field_does_as_well(browser: Client, photo: str, skein: bytes) -> None:
    assert len(found(send(browser, photo, skein, "camera", **PAPER))) == 1


def test_it_is_written_anew_without_what_the_camera_noted(browser: Client, photo: str, skein: bytes) -> None:
    assert b"Camera of Ina" in skein
    anew = base64.b64decode(picture_of(send(browser, photo, skein)))
    assert b"Camera of Ina" not in anew
    assert Image.open(io.BytesIO(anew)).format == "JPEG"


def test_it_is_measured_again_without_sending_it_again(browser: Client, photo: str, skein: bytes) -> None:
    first = send(browser, photo, skein)
    again = browser.post(f"{photo}measure/", {"picture": picture_of(first), **PAPER, "number": "3"})
    assert len(found(again)) == 3
    assert 'name="white_across" value="13"' in body(again)


def test_a_corrected_colour_is_kept_for_a_lot_and_can_be_undone(browser: Client, photo: str, key: str) -> None:
    before = changes.season_of(key)
    response = browser.post(
        f"{photo}keep/", {"lot": "jetty-kelp", "which": "2", "colour-1": "#111111", "colour-2": "#556040"}
    )
    assert response.status_code == 302
    assert {lot.key: lot.shade for lot in changes.season_of(key).cupboard}["jetty-kelp"] == "#556040"
    said = words(browser.get(response["Location"]))
    assert "Kept: Old Jetty DK, Kelp, dye lot 19 is shown as #556040" in said
    assert "Undo: gave Kelp the colour #556040" in said
    changes.undo(key)
    assert changes.season_of(key) == before


@pytest.mark.parametrize(
    "sent", [{"which": "1"}, {"which": "1", "colour-1": "red"}, {"which": "9", "colour-1": "#111111"}]
)
def test_what_is_no_colour_is_not_kept(browser: Client, photo: str, key: str, sent: dict[str, str]) -> None:
    before = changes.season_of(key)
    response = browser.post(f"{photo}keep/", {"lot": "jetty-kelp", **sent})
    assert response.status_code == 422
    assert "Colour: found" in words(response)
    assert changes.season_of(key) == before


def test_a_lot_that_is_not_there(browser: Client, photo: str) -> None:
    assert browser.post(f"{photo}keep/", {"lot": "none", "which": "1", "colour-1": "#111111"}).status_code == 404
    assert browser.get("/season/none/photo/").status_code == 404


def test_the_lot_that_it_is_for_is_chosen(browser: Client, photo: str, skein: bytes) -> None:
    assert 'name="lot" value="paddock-rust"' in body(browser.get(f"{photo}?lot=paddock-rust"))
    assert '<option value="paddock-rust" selected>' in body(send(browser, photo, skein, lot="paddock-rust"))


def test_no_lot_is_chosen_for_her(browser: Client, photo: str, key: str, skein: bytes) -> None:
    said = body(send(browser, photo, skein))
    assert '<select name="lot" required><option value="">choose the lot</option>' in said
    assert "selected>" not in said.partition('<select name="lot"')[2].partition("</select>")[0]
    before = changes.season_of(key)
    response = browser.post(f"{photo}keep/", {"lot": "", "which": "1", "colour-1": "#111111"})
    assert response.status_code == 422
    assert "For the lot: found" in words(response)
    assert changes.season_of(key) == before


def test_what_was_kept_leads_to_where_it_is_seen(browser: Client, page: str, photo: str) -> None:
    kept = browser.post(f"{photo}keep/", {"lot": "paddock-rust", "which": "1", "colour-1": "#7a2f33"})["Location"]
    said = body(browser.get(kept))
    assert f'href="{page}garment/pullover/#look-answer"' in said
    assert f'href="{page}cupboard/lot/paddock-rust/"' in said
    assert 'name="lot" value=""' in said  # the next photo is of another skein


def test_a_lot_that_no_picture_shows_says_which_one_is_shown(browser: Client, photo: str) -> None:
    """Of two lots of a colour the first with a likeness is drawn."""
    sent = {"lot": "paddock-oat-later", "which": "1", "colour-1": "#c7b38c"}
    said = words(browser.get(browser.post(f"{photo}keep/", sent)["Location"]))
    assert "drawn in the colour of another lot: Stone Paddock DK, Oat, dye lot A7." in said
    beside = browser.post(f"{photo}keep/", {**sent, "garment": "pullover", "role": "main"})["Location"]
    assert "The pictures show another lot: Stone Paddock DK, Oat, dye lot A7." in words(browser.get(beside))


# --- For a role of a garment --------------------------------------------------------------------------------

PULLOVER = {"garment": "pullover", "role": "contrast-1"}


def test_it_says_what_the_colour_is_for(browser: Client, photo: str, skein: bytes) -> None:
    asked = browser.get(photo, {**PULLOVER, "changes.body_longer": "3 cm", "name": "Else"})
    assert "For Striped pullover for Tam, contrast-1: Stone Paddock DK, Rust" in words(asked)
    response = send(browser, photo, skein, **PULLOVER, **{"changes.body_longer": "3 cm"})
    form = body(response).partition(f'action="{photo}keep/"')[2].partition("</form>")[0]
    assert re.findall(r'<option value="([a-z-]*)"', form) == ["paddock-rust"]
    assert 'name="changes.body_longer" value="3 cm"' in form
    assert 'value="Else"' not in body(asked)


def test_it_is_kept_and_leads_back_to_the_bench(browser: Client, page: str, photo: str, key: str) -> None:
    tried = {"changes.body_longer": "3 cm", "colour.contrast-1": "#222222", "colour.main": "#445566"}
    picked = {"lot": "paddock-rust", "which": "1", "colour-1": "#7a2f33"}
    place = browser.post(f"{photo}keep/", {**PULLOVER, **tried, **picked})["Location"]
    assert place.startswith(f"{page}garment/pullover/?")
    assert place.endswith("#look-answer")
    assert {lot.key: lot.shade for lot in changes.season_of(key).cupboard}["paddock-rust"] == "#7a2f33"
    bench = browser.get(place)
    assert "Kept: Stone Paddock DK, Rust, dye lot A3 is shown as #7a2f33 from now on." in words(bench)
    assert 'name="colour.contrast-1" value="#7a2f33"' in body(bench)  # not the colour that was tried before
    assert 'name="colour.main" value="#445566"' in body(bench)
    assert 'name="changes.body_longer" value="3 cm"' in body(bench)
    assert "Kept:" not in words(browser.get(place.replace("7a2f33", "7a2f34")))


def test_it_can_be_tried_and_not_kept(browser: Client, photo: str, key: str) -> None:
    before = changes.season_of(key)
    sent = {**PULLOVER, "lot": "paddock-rust", "which": "1", "colour-1": "#7a2f33", "try": "yes"}
    bench = browser.get(browser.post(f"{photo}keep/", sent)["Location"])
    assert "colour.contrast-1=%237a2f33" in body(bench)
    assert "These colours are tried, not kept" in words(bench)
    assert changes.season_of(key) == before


def test_a_yarn_that_she_does_not_have_yet_can_be_tried(browser: Client, text: str, skein: bytes) -> None:
    without = re.sub(r"\[cupboard\.paddock-rust\].*?\n\n", "", text, flags=re.DOTALL)
    photo = f"{load(browser, without)}photo/"
    response = send(browser, photo, skein, **PULLOVER)
    assert "No lot of this yarn and colour is in the cupboard" in words(response)
    assert "Keep it for this lot" not in words(response)
    sent = {**PULLOVER, "which": "1", "colour-1": "#7a2f33", "try": "yes"}
    assert "colour.contrast-1=%237a2f33" in browser.post(f"{photo}keep/", sent)["Location"]


@pytest.mark.parametrize(
    "asked",
    [{"garment": "none", "role": "main"}, {"garment": "pullover", "role": "none"}, {"lot": "none"}, {"role": "main"}],
)
def test_a_purpose_that_is_not_there_is_none(browser: Client, photo: str, asked: dict[str, str]) -> None:
    assert words(browser.get(photo, asked)) == words(browser.get(photo))


# --- From a lot of the cupboard -----------------------------------------------------------------------------


def test_a_lot_leads_to_it_and_back(browser: Client, page: str, photo: str) -> None:
    lot = f"{page}cupboard/lot/jetty-kelp/"
    assert f'href="{photo}?lot=jetty-kelp"' in body(browser.get(lot))
    assert "For Old Jetty DK, Kelp, dye lot 19" in words(browser.get(f"{photo}?lot=jetty-kelp"))
    place = browser.post(f"{photo}keep/", {"lot": "jetty-kelp", "which": "1", "colour-1": "#556041"})["Location"]
    assert f'href="{lot}"' in body(browser.get(place))
    assert "Shown as #556041." in words(browser.get(lot))


def test_the_photo_that_is_kept_with_a_lot_is_measured(browser: Client, page: str, photo: str, skein: bytes) -> None:
    lot = f"{page}cupboard/lot/jetty-kelp/"
    assert "of=lot" not in body(browser.get(lot))
    assert picture_of(browser.get(photo, {"lot": "jetty-kelp", "of": "lot"})) == ""
    browser.post(f"{lot}photo/", {"photo": SimpleUploadedFile("skein.jpg", skein, content_type="image/jpeg")})
    assert f'href="{photo}?lot=jetty-kelp&amp;of=lot"' in body(browser.get(lot))
    picture = picture_of(browser.get(photo, {"lot": "jetty-kelp", "of": "lot"}))
    (colour,) = found(browser.post(f"{photo}measure/", {"picture": picture, "lot": "jetty-kelp", **PAPER}))
    assert delta_e_ciede2000(lab_from_srgb(read_hex(colour)), lab_from_srgb(read_hex(YARN))) < 5


# --- What is no photo ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (SVG, "no such picture"),
        (b"", "Photo: found nothing; wanted a photo of the skein"),
        (stored(gradient(), "PNG")[:200], "only part of one"),
        (stored(gradient(), "GIF"), "no such picture"),
        (bomb_png(30_000, 30_000), "pixels"),
        (stored(Image.new("RGB", (200, 150), "#8a6f54"), "PNG"), "no yarn"),
        (stored(gradient(40, 30), "PNG"), "at least 64"),
    ],
)
def test_what_is_no_photo_of_yarn_is_told(browser: Client, photo: str, content: bytes, says: str) -> None:
    response = send(browser, photo, content)
    assert response.status_code == 422
    assert says in words(response)
    assert found(response) == []


def test_more_than_is_taken_in_is_refused_unread(browser: Client, photo: str) -> None:
    assert send(browser, photo, b"\xff\xd8" + bytes(5_200_000)).status_code == 413


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        ({"white_across": "13"}, "White paper: found"),
        ({"white_across": "130", "white_down": "1"}, "White paper: found"),
        ({"yarn_across": "<b>", "yarn_down": "1"}, "Yarn: found"),
        ({"number": "99"}, "How many colours: found"),
        ({"white_across": "55", "white_down": "55"}, "paper"),
    ],
)
def test_a_fault_is_told_and_the_photo_stays(
    browser: Client, photo: str, skein: bytes, fields: dict[str, str], says: str
) -> None:
    response = send(browser, photo, skein, **fields)
    assert response.status_code == 422
    assert says in words(response)
    assert "<b>" not in body(response)
    assert picture_of(response)


@pytest.mark.parametrize("picture", ["%%%", "AAAA", '"><script>', base64.b64encode(SVG).decode()])
def test_a_picture_that_comes_back_changed_is_refused(browser: Client, photo: str, picture: str) -> None:
    response = browser.post(f"{photo}measure/", {"picture": picture})
    assert response.status_code == 422
    assert "<script>" not in body(response).replace('<script type="module"', "")
    assert picture_of(response) == ""


def test_nothing_stands_in_the_page_that_the_policy_forbids(browser: Client, photo: str, skein: bytes) -> None:
    response = send(browser, photo, skein, **PAPER)
    assert "img-src 'self' data:" in response["Content-Security-Policy"]
    assert not re.search(r"<script(?![^>]*\bsrc=)|\sstyle=|\son\w+=", body(response))


def test_a_season_without_lots_says_so(browser: Client, text: str, skein: bytes) -> None:
    without = re.sub(r"\[cupboard\..*?(?=\n# --- Patterns)", "", text, flags=re.DOTALL)
    address = load(browser, without)
    assert "no lot in the cupboard yet" in words(send(browser, f"{address}photo/", skein))
