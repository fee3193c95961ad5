"""The close view: stitches in the gauge's proportion, light that adds up to the yarn's colour, plies of a marl."""

from __future__ import annotations

import numpy as np
import pytest

from loopwright.colour import (
    Floats,
    delta_e_ciede2000,
    lab_from_srgb,
    linear_from_srgb,
    mix_strands,
    read_hex,
    read_hexes,
    srgb_from_linear,
)
from loopwright.fabric import STRUCTURES, Gauge
from loopwright.pictures.fabric_view import FabricView, cell_size_px, fabric_view
from loopwright.pictures.loop_tile import loop_tile
from loopwright.units import BadInput

GAUGE = Gauge(stitches_per_10cm=22, rows_per_10cm=30)


def mean_of(view: FabricView) -> Floats:
    """The colour from afar: the mean of whole stitches as light."""
    wide, high = view.cell
    rows, columns = (size // cell * cell for size, cell in zip(view.srgb.shape, (high, wide), strict=False))
    light = linear_from_srgb(view.srgb[-rows:, :columns] / 255)
    return srgb_from_linear(light.mean(axis=(0, 1)))


def apart(one: Floats, other: Floats) -> float:
    return float(delta_e_ciede2000(lab_from_srgb(one), lab_from_srgb(other)))


def test_a_cell_shows_its_own_row_and_a_little_of_both_neighbours() -> None:
    """Reference study of the same model, tube 1.0, lean 1.45: area 65 % own, 16.4 % each neighbour, 2.3 % hole."""
    tile = loop_tile(96, 69)
    shares = [float((tile.owner == owner).mean()) for owner in (0, -1, 1, 2)]
    assert shares == pytest.approx([0.65, 0.164, 0.164, 0.023], abs=0.01)


@pytest.mark.parametrize("purl", [False, True])
def test_light_averages_one(purl: bool) -> None:
    assert float(loop_tile(30, 22, purl=purl).light.mean()) == pytest.approx(1)


@pytest.mark.parametrize("gauge", [(22, 30), (16, 22), (20, 28), (28, 36), (32, 40), (24, 24)])
@pytest.mark.parametrize("about", [12, 26, 48])
def test_a_stitch_has_the_proportion_of_the_gauge(gauge: tuple[int, int], about: int) -> None:
    wide, high = cell_size_px(Gauge(stitches_per_10cm=gauge[0], rows_per_10cm=gauge[1]), about)
    assert wide / high == pytest.approx(gauge[1] / gauge[0], rel=0.5 / high)
    assert wide == pytest.approx(about, rel=0.21)


@pytest.mark.parametrize("colour", ["#4f7583", "#a2502f", "#23424f", "#5b3a4c"])
def test_from_afar_it_has_the_colour_of_its_yarn(colour: str) -> None:
    """Tolerance: 0.5 ΔE00, half of what an eye sees side by side."""
    assert apart(mean_of(fabric_view(GAUGE, [["m"]], {"m": [colour]})), read_hex(colour)) < 0.5


@pytest.mark.parametrize("strands", [["#22304f", "#a2502f"], ["#5b3a4c", "#b08a9b"], ["#4f7583", "#a3a77c", "#84592f"]])
def test_a_marl_mixes_as_light_does(strands: list[str]) -> None:
    view = fabric_view(GAUGE, [["m"]], {"m": strands}, width_px=900, height_px=700)
    assert apart(mean_of(view), mix_strands(read_hexes(strands))) < 2.0


def test_a_marl_shows_its_strands() -> None:
    view = fabric_view(GAUGE, [["m"]], {"m": ["#ff0000", "#0000ff"]})
    red, blue = view.srgb[..., 0].astype(int), view.srgb[..., 2].astype(int)
    assert (red - blue > 120).mean() > 0.15
    assert (blue - red > 120).mean() > 0.15


def spread_of_stitches(view: FabricView) -> float:
    """How far the light of one stitch strays from the next, as a share."""
    wide, high = view.cell
    rows, columns = view.srgb.shape[0] // high, view.srgb.shape[1] // wide
    light = linear_from_srgb(view.srgb[-rows * high :, : columns * wide] / 255).mean(axis=2)
    cells = light.reshape(rows, high, columns, wide).mean(axis=(1, 3))
    return float(cells.std() / cells.mean())


def test_a_heather_is_mottled_about_the_same_colour() -> None:
    plain, mottled = (fabric_view(GAUGE, [["m"]], {"m": ["#6a7480"]}, heather=which) for which in ((), ("m",)))
    assert apart(mean_of(plain), mean_of(mottled)) < 1.0
    assert spread_of_stitches(plain) < 0.01
    assert spread_of_stitches(mottled) == pytest.approx(0.07 * 0.76, abs=0.015)  # a cell shows 71 % of its own row


def test_rows_of_two_roles_lie_above_one_another() -> None:
    view = fabric_view(GAUGE, [["m"]] * 8 + [["c"]] * 8, {"m": ["#000000"], "c": ["#ffffff"]}, height_px=16 * 22)
    bright = view.srgb.mean(axis=(1, 2))
    high = view.cell[1]
    assert bright[-6 * high :].mean() < 20
    assert bright[2 * high : 6 * high].mean() > 100


@pytest.mark.parametrize("fabric", STRUCTURES)
def test_every_fabric_is_drawn(fabric: str) -> None:
    view = fabric_view(GAUGE, [["m"]], {"m": ["#84592f"]}, fabric=fabric, width_px=200, height_px=150)
    assert view.srgb.shape == (150, 200, 3)
    assert view.srgb.std() > 5


def test_the_same_fabric_gives_the_same_pixels() -> None:
    one, other = (fabric_view(GAUGE, [["m"]], {"m": ["#22304f", "#efe6d2"]}, heather=["m"]) for _ in range(2))
    assert np.array_equal(one.srgb, other.srgb)


def test_bad_input() -> None:
    with pytest.raises(BadInput, match="a fabric without stitches"):
        fabric_view(GAUGE, [], {})
    with pytest.raises(BadInput, match='5 strands"; wanted at most 4'):
        fabric_view(GAUGE, [["m"]], {"m": ["#000000"] * 5})
