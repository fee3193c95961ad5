"""Colour spaces against values of others.

`colour_spaces.csv`: 18 colours computed by another hand and checked with a general library (status in each row). Here:
values of IEC 61966-2-1, of the matrices derived from it, of CIELAB in public test suites, and of OKLab's author.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from loopwright.colour import (
    WHITE_XYZ,
    lab_from_srgb,
    linear_from_srgb,
    linear_from_xyz,
    luminance,
    oklab_from_linear,
    oklab_from_srgb,
    read_hex,
    srgb_from_linear,
    write_hex,
    xyz_from_linear,
)

with (Path(__file__).parent / "colour_spaces.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))


@pytest.mark.parametrize("row", ROWS, ids=[row["name"] for row in ROWS])
def test_a_colour_in_every_space(row: dict[str, str]) -> None:
    srgb = read_hex(row["hex"])
    assert float(luminance(srgb)) == pytest.approx(float(row["Y"]), abs=0.6e-6)
    assert lab_from_srgb(srgb) == pytest.approx([float(row[axis]) for axis in "Lab"], abs=0.6e-4)
    assert oklab_from_srgb(srgb) == pytest.approx([float(row[f"ok_{axis}"]) for axis in "Lab"], abs=0.6e-6)


@pytest.mark.parametrize(("stored", "light"), [(0.5, 0.214041140), (128 / 255, 0.215860500), (0.04, 0.04 / 12.92)])
def test_decoding(stored: float, light: float) -> None:
    """Computed from the standard's formula, equal to a general library."""
    assert linear_from_srgb([stored] * 3) == pytest.approx([light] * 3, abs=1e-9)


@pytest.mark.parametrize(("light", "stored"), [(0.18, 0.461356130), (0.5, 0.735356983), (0.003, 0.03876)])
def test_encoding(light: float, stored: float) -> None:
    assert srgb_from_linear([light] * 3) == pytest.approx([stored] * 3, abs=1e-9)


def test_half_the_light_is_byte_188() -> None:
    assert write_hex(srgb_from_linear([0.5, 0.5, 0.5])) == "#bcbcbc"


def test_the_matrix_is_the_standards_to_its_four_decimals() -> None:
    """IEC 61966-2-1 prints four decimals."""
    printed = [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]
    np.testing.assert_allclose(xyz_from_linear(np.eye(3)).T, printed, rtol=0, atol=0.6e-4)


def test_the_inverse_matrix() -> None:
    printed = [
        [3.2409699419, -1.5373831776, -0.4986107603],
        [-0.9692436363, 1.8759675015, 0.0415550574],
        [0.0556300797, -0.2039769589, 1.0569715142],
    ]
    np.testing.assert_allclose(linear_from_xyz(np.eye(3)).T, printed, rtol=0, atol=1e-9)


def test_the_white() -> None:
    assert pytest.approx([0.950455927, 1, 1.089057751], abs=1e-9) == WHITE_XYZ


@pytest.mark.parametrize(
    ("digits", "lab"),
    [
        ("#ff0000", (53.24, 80.09, 67.20)),
        ("#00ff00", (87.73, -86.18, 83.18)),
        ("#0000ff", (32.30, 79.19, -107.86)),
        ("#ffff00", (97.14, -21.55, 94.48)),
    ],
)
def test_primaries_as_public_test_suites_have_them(digits: str, lab: tuple[float, float, float]) -> None:
    """Cross-read; recipes differ by up to 0.021 in a* and b*."""
    assert lab_from_srgb(read_hex(digits)) == pytest.approx(lab, abs=0.03)


@pytest.mark.parametrize(
    ("xyz", "oklab"),
    [
        ((0.950, 1, 1.089), (1.000, 0.000, 0.000)),
        ((1, 0, 0), (0.450, 1.236, -0.019)),
        ((0, 1, 0), (0.922, -0.671, 0.263)),
        ((0, 0, 1), (0.153, -1.415, -0.449)),
    ],
)
def test_oklab_of_its_authors_table(xyz: tuple[float, float, float], oklab: tuple[float, float, float]) -> None:
    """Ottosson 2020, three decimals. His later matrix from linear sRGB, used here, strays from it by up to 1.2e-4
    within sRGB; pure X, Y and Z lie far outside.
    """
    assert oklab_from_linear(linear_from_xyz(xyz)) == pytest.approx(oklab, abs=1.5e-3)
