"""A garment by lot: every section in its lot's colour, on the side of the wearer that it is worn on."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image

from loopwright.garment.draft import Draft
from loopwright.pattern import Construction
from loopwright.pictures.by_lot import Knitted, lots_png, regions_of, regions_png
from loopwright.pictures.patch import Face
from loopwright.units import BadInput
from tests.pictures.garment_samples import sample, samples

BLUE, RED = "#3050c0", "#c04030"
Painted = dict[tuple[str, str], Mapping[str, Sequence[tuple[tuple[str, ...], float]]]]
COLOURS = {"blue": BLUE, "red": RED}


def all_of(draft: Draft, lot: str = "blue") -> Painted:
    found: Painted = {}
    for piece, section in draft.sections():
        for number in ("",) if piece.made == 1 else (" 1", " 2"):
            found[f"{piece.key}{number}", section.key] = {"main": [((lot,), 1.0)]}
    return found


def pixels(png: bytes) -> NDArray[np.float64]:
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB"), dtype=np.float64)


def nearer_to_red(draft: Draft, face: Face, knitted: Knitted) -> NDArray[np.bool_]:
    """Which pixels are rather red than blue; paper is as far from both as its red and blue are alike."""
    seen = pixels(lots_png(draft, face, knitted, COLOURS))
    red: NDArray[np.bool_] = (seen[..., 0] - seen[..., 2] > 20) & (np.ptp(seen, axis=-1) > 40)
    return red


@pytest.mark.parametrize(("face", "is_right"), [("front", True), ("back", False)])
def test_the_left_sleeve_is_on_the_left_of_the_wearer(face: Face, is_right: bool) -> None:
    """Who faces the viewer has the left arm on the right of the picture; who turns the back, on the left."""
    draft = sample(Construction.SET_IN)
    knitted = all_of(draft)
    for section in draft.piece("sleeve").sections:
        knitted["sleeve 1", section.key] = {"main": [(("red",), 1.0)]}
    red = nearer_to_red(draft, face, knitted)
    half = red.shape[1] // 2
    on_left, on_right = red[:, :half].sum(), red[:, half:].sum()
    assert max(on_left, on_right) > 2000
    assert min(on_left, on_right) == 0
    assert bool(on_right > on_left) == is_right


@pytest.mark.parametrize("face", ["front", "back"])
def test_a_region_is_where_its_section_is_painted(face: Face) -> None:
    draft = sample(Construction.SET_IN)
    regions = regions_of(draft, face)
    for place, key in enumerate(regions.sections, 1):
        of_it = regions.numbers == place
        if of_it.sum() < 500:
            continue
        knitted = all_of(draft)
        knitted[key] = {"main": [(("red",), 1.0)]}
        red = nearer_to_red(draft, face, knitted)
        assert (red & of_it).sum() / of_it.sum() > 0.9, key
        assert (red & ~of_it).sum() / of_it.sum() < 0.03, key


def test_two_lots_of_one_section_lie_above_one_another() -> None:
    """A sleeve that a lot begins and another ends: as many rows as its share, the first lot where it is cast on."""
    draft = sample(Construction.DROP)
    piece = draft.piece("back") if any(one.key == "back" for one in draft.pieces) else draft.piece("body")
    section = max(piece.sections, key=lambda one: one.worked)
    knitted = all_of(draft)
    knitted[piece.key, section.key] = {"main": [(("red",), 0.25), (("blue",), 0.75)]}
    red = nearer_to_red(draft, "back", knitted)
    regions = regions_of(draft, "back")
    of_it = regions.numbers == regions.sections.index((piece.key, section.key)) + 1
    assert (red & of_it).sum() / of_it.sum() == pytest.approx(0.25, abs=0.03)
    rows = np.arange(len(red))[:, None] * np.ones(red.shape[1])
    assert rows[red & of_it].mean() > rows[~red & of_it].mean()  # knitted from the hem upwards


def test_what_no_lot_knits_is_grey() -> None:
    draft = sample(Construction.DROP)
    seen = pixels(lots_png(draft, "front", {}, COLOURS))
    assert (seen.max(axis=-1) - seen.min(axis=-1)).max() <= 6


def test_where_lots_of_one_colour_change_a_line_is_drawn() -> None:
    draft = sample(Construction.DROP)
    knitted = all_of(draft)
    alike = {"blue": BLUE, "later": BLUE}
    before = pixels(lots_png(draft, "front", knitted, alike))
    key = next(key for key in knitted if "hem" in key[1])
    knitted[key] = {"main": [(("later",), 1.0)]}
    changed = (pixels(lots_png(draft, "front", knitted, alike)) != before).any(axis=-1)
    assert changed.any(axis=0).sum() > changed.shape[1] / 4  # a line from side to side
    assert changed.sum() < 3 * changed.shape[1]  # and no more than a line


def test_the_regions_of_every_construction() -> None:
    for name, draft in samples().items():
        known = set(all_of(draft))
        for face in ("front", "back"):
            regions = regions_of(draft, face, 200)
            assert set(regions.sections) <= known, name
            read = np.asarray(Image.open(io.BytesIO(regions_png(regions))).convert("RGB"))
            assert (read == regions.numbers[..., None]).all()
            assert regions.numbers.max() <= len(regions.sections)


def test_a_marl_shows_both_strands() -> None:
    draft = sample(Construction.DROP)
    marl = {key: {"main": [(("blue", "red"), 1.0)]} for key in all_of(draft)}
    seen = pixels(lots_png(draft, "front", marl, COLOURS)).reshape(-1, 3)
    fabric = seen[seen.max(axis=-1) - seen.min(axis=-1) > 30]
    assert len(fabric) > 1000
    assert (fabric[:, 0] > fabric[:, 2]).any()
    assert (fabric[:, 0] < fabric[:, 2]).any()


def test_more_lots_than_a_picture_can_tell_apart() -> None:
    draft = sample(Construction.SET_IN)
    many = {key: {"main": [((f"lot-{place}",), 1.0)]} for place, key in enumerate(all_of(draft))}
    assert len(many) > 12
    with pytest.raises(BadInput):
        lots_png(draft, "front", many, {})
