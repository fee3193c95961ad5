"""Colourways read from text, and the card that shows them side by side."""

from __future__ import annotations

import io

import numpy as np
import pytest
from PIL import Image

from loopwright.pictures.colourway import Colourway, read_colour, read_colours, read_colourway
from loopwright.pictures.colourway_card import MOST_COLOURWAYS, colourway_card
from loopwright.pictures.front_back import garment_picture
from loopwright.units import BadInput
from tests.pictures.garment_samples import sample

WAYS = [
    Colourway("harbour", {"main": ("#4f7583",), "contrast": ("#d8c7a3",)}),
    Colourway("brick", {"main": ("#a2502f",), "contrast": ("#23424f",)}),
    Colourway("dusk", {"main": ("#5b3a4c", "#b08a9b")}),
]


def test_a_colour_is_read() -> None:
    assert read_colour("main=#A43C2B") == ("main", ("#a43c2b",))
    assert read_colour(" main = #a43c2b + #ffffff ") == ("main", ("#a43c2b", "#ffffff"))


def test_a_colourway_is_read() -> None:
    read = read_colourway("harbour: main=#4f7583, contrast=#d8c7a3")
    assert (read.name, read.colours) == ("harbour", {"main": ("#4f7583",), "contrast": ("#d8c7a3",)})


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("main", "a role and its colour"),
        ("main=", "put it in quotes"),
        ("=#a43c2b", "a role and its colour"),
        ("main=a43c2b", 'did you mean "#a43c2b"'),
        ("main=#a43c2b+", "a colour as #rrggbb"),
    ],
)
def test_a_colour_that_cannot_be_read(text: str, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        read_colour(text)


def test_a_role_has_one_colour() -> None:
    with pytest.raises(BadInput, match="the role 'main' twice"):
        read_colours(["main=#a43c2b", "main=#203040"])


@pytest.mark.parametrize("text", ["main=#a43c2b", ": main=#a43c2b"])
def test_a_colourway_has_a_name(text: str) -> None:
    with pytest.raises(BadInput, match="a name and its colours"):
        read_colourway(text)


def test_a_card_shows_every_colourway() -> None:
    garment = garment_picture(sample(), edges="contrast", longest_px=300)
    card = np.asarray(Image.open(io.BytesIO(colourway_card(garment, WAYS))))
    assert card.shape[1] > card.shape[0]
    for way in WAYS:
        for strands in way.colours.values():
            for strand in strands:  # the chips of the caption carry the colours as they are
                wanted = np.array([*bytes.fromhex(strand[1:])])
                assert (card == wanted).all(axis=2).sum() > 30


def test_a_card_is_the_same_every_time() -> None:
    garment = garment_picture(sample(), edges="contrast", longest_px=200)
    assert colourway_card(garment, WAYS) == colourway_card(garment, WAYS)


def test_a_card_has_some_colourways_but_not_too_many() -> None:
    garment = garment_picture(sample(), longest_px=100)
    for ways in ([], WAYS * MOST_COLOURWAYS):
        with pytest.raises(BadInput, match=f"wanted from 1 to {MOST_COLOURWAYS}"):
            colourway_card(garment, ways)
