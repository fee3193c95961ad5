"""The page of colourways: it stands alone, and every picture is in its own colours."""

from __future__ import annotations

from base64 import b64decode
from io import BytesIO

import pytest
from PIL import Image

from loopwright.documents.colourways import colourway_sheet
from loopwright.documents.look import LookOfGarment, look_of
from loopwright.files import demo_text, read_season_text
from loopwright.pictures.colourway import Colourway
from loopwright.season import plan
from loopwright.units import BadInput
from tests.documents.pages import read_page, text_of

WAYS = [
    Colourway("harbour & <sea>", {"main": ("#4f7583",), "contrast": ("#d8c7a3",)}),
    Colourway("brick", {"main": ("#a2502f",)}),
]


@pytest.fixture(scope="module")
def cardigan() -> LookOfGarment:
    season = read_season_text(demo_text(), "winter.toml", "toml")
    return look_of(season, plan(season).garment("cardigan"))


def test_colours_are_those_of_its_yarns(cardigan: LookOfGarment) -> None:
    assert dict(cardigan.colours) == {"main": ("#4f7583",), "contrast": ("#d8c7a3",)}
    assert cardigan.edges is None  # she says where they go
    assert "bust_girth" in cardigan.body_cm


def test_the_page_stands_alone(cardigan: LookOfGarment) -> None:
    seen = read_page(colourway_sheet(cardigan, WAYS))
    assert seen.count("img") == 2
    assert all(place.startswith("data:image/png;base64,") for place in seen.values("src"))
    assert seen.values("href") == []


def test_it_names_colourways_roles_and_digits(cardigan: LookOfGarment) -> None:
    words = text_of(colourway_sheet(cardigan, WAYS))
    for word in ("harbour & <sea>", "brick", "#a2502f", "not chosen, drawn grey", "judge the yarn in daylight"):
        assert word in words


def test_pictures_differ_in_their_palette_alone(cardigan: LookOfGarment) -> None:
    places = [place.partition(",")[2] for place in read_page(colourway_sheet(cardigan, WAYS)).values("src")]
    one, other = (Image.open(BytesIO(b64decode(place))) for place in places)
    assert one.tobytes() == other.tobytes()
    assert one.getpalette() != other.getpalette()


def test_there_must_be_one(cardigan: LookOfGarment) -> None:
    with pytest.raises(BadInput, match="no colourway"):
        colourway_sheet(cardigan, [])
