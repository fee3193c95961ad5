"""A picture brought to a chart: every step by itself, then all of them."""

import io
import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from loopwright.chart import ChartRole, roles_per_row
from loopwright.chart.from_picture import PictureWish, chart_from_picture, chart_from_pixels
from loopwright.chart.quantise import despeckled, dithered, nearest, palette_in, two_in_a_row
from loopwright.chart.sampling import area_means
from loopwright.colour import delta_e_cie76, lab_from_srgb, linear_from_srgb, read_hexes, write_hex
from loopwright.colour.pixels import read_picture
from loopwright.fabric import Gauge
from loopwright.units import BadInput

DK = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
TWO = (ChartRole("main", "#efe6d2"), ChartRole("contrast", "#22304f"))


def png(pixels: np.ndarray) -> bytes:
    file = io.BytesIO()
    Image.fromarray(pixels).save(file, "PNG")
    return file.getvalue()


def noise(height: int, width: int, seed: int = 0) -> np.ndarray:
    return np.random.default_rng(seed).integers(0, 256, (height, width, 3)).astype(np.uint8)


@given(st.integers(1, 12), st.integers(1, 12), st.integers(1, 20), st.integers(1, 20))
def test_cells_are_means_of_what_they_cover(stitches: int, rows: int, width: int, height: int) -> None:
    """Against the plain way: the picture enlarged until every cell covers whole points."""
    pixels = noise(height, width, seed=width * 100 + height)
    large = linear_from_srgb(np.kron(pixels, np.ones((rows, stitches, 1))).astype(np.uint8) / 255)
    plain = large.reshape(rows, height, stitches, width, 3).mean(axis=(1, 3))[::-1]
    assert area_means(pixels, stitches, rows) == pytest.approx(plain)


def brute_pairs(lab: np.ndarray, palette: np.ndarray, change: float) -> float:
    """The least cost of all courses of pairs, every one of them tried."""
    squared = delta_e_cie76(lab[..., None, :], palette) ** 2
    pairs = [(a, b) for a in range(len(palette)) for b in range(a + 1, len(palette))]
    best = np.inf
    for course in np.ndindex(*[len(pairs)] * lab.shape[0]):
        cost = sum(
            np.minimum(squared[row, :, pairs[at][0]], squared[row, :, pairs[at][1]]).sum()
            for row, at in enumerate(course)
        )
        cost += change * sum(a != b for a, b in itertools.pairwise(course))
        best = min(best, cost)
    return float(best)


@pytest.mark.parametrize("seed", range(4))
def test_two_in_a_row_costs_the_least_of_all_courses(seed: int) -> None:
    lab, palette = lab_from_srgb(noise(4, 5, seed) / 255), lab_from_srgb(noise(1, 4, seed + 50)[0] / 255)
    steady = 25.0
    cells = two_in_a_row(lab, palette, steady)
    squared = delta_e_cie76(lab, palette[cells]) ** 2
    used = [frozenset(np.unique(row).tolist()) for row in cells]
    assert all(len(pair) <= 2 for pair in used)
    turns = sum(len(a | b) > 2 for a, b in itertools.pairwise(used))
    assert squared.sum() + turns * steady**2 * 5 <= brute_pairs(lab, palette, steady**2 * 5) + 1e-6


def test_specks_are_repainted_where_it_costs_little() -> None:
    palette = lab_from_srgb(np.array([[0.5, 0.5, 0.5], [0.55, 0.55, 0.55], [0.0, 0.0, 0.0]]))
    cells = np.zeros((5, 5), dtype=np.uint8)
    cells[1, 1], cells[3, 3] = 1, 2
    clean = despeckled(cells, palette[cells], palette)
    assert (clean[1, 1], clean[3, 3]) == (0, 2)


def test_what_is_its_mirror_stays_so_when_cleaned() -> None:
    cells = np.random.default_rng(8).integers(0, 3, (8, 5)).astype(np.uint8)
    cells = np.hstack([cells, cells[:, ::-1]])
    palette = lab_from_srgb(np.array([[0.5, 0.5, 0.5], [0.55, 0.5, 0.5], [0.5, 0.55, 0.5]]))
    clean = despeckled(cells, palette[cells], palette)
    assert np.array_equal(clean, clean[:, ::-1])
    assert not np.array_equal(clean, cells)


@given(st.floats(0.05, 0.95))
def test_dithering_keeps_the_light_from_afar(light: float) -> None:
    """Floyd and Steinberg (1976): the error handed on keeps the mean, here within 2 % over 40 by 40 cells."""
    cells = dithered(np.full((40, 40, 3), light), np.array([[0.0] * 3, [1.0] * 3]))
    assert abs(cells.mean() - light) < 0.02


def test_a_palette_is_found_again_most_frequent_first() -> None:
    shares = np.repeat([0, 1, 2], [600, 300, 100])
    names = ["#ccb380", "#1a334d", "#99331a"]
    colours = read_hexes(names)
    found = palette_in(linear_from_srgb(colours[shares]), 3)
    assert [write_hex(one) for one in found] == names
    assert len(palette_in(linear_from_srgb(colours[:1]), 5)) == 1


def test_a_picture_keeps_its_proportions_in_rows() -> None:
    made = chart_from_picture(png(noise(40, 60)), PictureWish(60, DK, palette=TWO))
    assert (made.chart.columns, made.chart.rows) == (60, 55)
    assert made.chart.roles == TWO


def test_it_is_drawn_upright_with_its_foot_in_row_one() -> None:
    pixels = np.full((20, 20, 3), 255, dtype=np.uint8)
    pixels[10:] = 0
    made = chart_from_pixels(pixels, PictureWish(10, DK, palette=TWO, despeckle=False))
    assert made.chart.cells[0, 0] == 1
    assert made.chart.cells[-1, 0] == 0


def test_it_keeps_to_two_in_a_row_when_asked() -> None:
    made = chart_from_pixels(noise(60, 60), PictureWish(30, DK, colours=5, two_in_a_row=True))
    assert roles_per_row(made.chart).max() <= 2
    free = chart_from_pixels(noise(60, 60), PictureWish(30, DK, colours=5))
    assert free.delta_e <= made.delta_e


def test_the_nearest_yarn_is_chosen_by_sight_not_by_numbers() -> None:
    palette = lab_from_srgb(np.array([[0.0, 0.0, 1.0], [0.0, 0.0, 0.0], [1.0, 1.0, 1.0]]))
    assert nearest(palette[None], palette).tolist() == [[0, 1, 2]]


def test_what_is_clear_lies_on_white_and_a_turned_photo_stands_upright() -> None:
    clear = np.zeros((2, 3, 4), dtype=np.uint8)
    assert (read_picture(png(clear)) == 255).all()
    file = io.BytesIO()
    exif = Image.Exif()
    exif[0x0112] = 6  # orientation: turned by a quarter; source: EXIF 2.3, tag 274
    Image.fromarray(noise(4, 6)).save(file, "JPEG", exif=exif)
    assert read_picture(file.getvalue()).shape == (6, 4, 3)


@pytest.mark.parametrize(
    ("wish", "message"),
    [
        (PictureWish(1, DK), "stitches: found .1 stitches"),
        (PictureWish(1000, Gauge(stitches_per_10cm=10, rows_per_10cm=50)), "rows for this picture"),
        (PictureWish(10, DK, colours=1), "colours: found .1 colours"),
        (PictureWish(10, DK, palette=(ChartRole("main"),)), "main without a screen colour"),
        (PictureWish(10, DK, palette=TWO, dither=True, two_in_a_row=True), "dithering to two colours"),
    ],
)
def test_a_wish_that_cannot_be_met(wish: PictureWish, message: str) -> None:
    with pytest.raises(BadInput, match=message):
        chart_from_pixels(noise(30, 20), wish)


def test_what_is_no_picture_is_refused() -> None:
    with pytest.raises(BadInput, match="no such picture"):
        read_picture(b"GIF89a but no more")
