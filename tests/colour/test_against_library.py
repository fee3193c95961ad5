"""Spaces, differences and other eyes against colour-science, the field's general library."""

from __future__ import annotations

import importlib
import warnings
from typing import Any

import numpy as np
import pytest

from loopwright.colour import (
    SEVERITIES,
    Vision,
    delta_e_ciede2000,
    lab_from_srgb,
    linear_from_srgb,
    oklab_from_srgb,
    vision_matrix,
    xyz_from_linear,
)

MANY = np.random.default_rng(2026).random((20_000, 3))
NAMES: dict[Vision, str] = {"protan": "Protanomaly", "deutan": "Deuteranomaly", "tritan": "Tritanomaly"}


@pytest.fixture(scope="module")
def library() -> Any:
    """The library, without its warnings of what it lacks itself."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return importlib.import_module("colour")


def test_linear_light(library: Any) -> None:
    assert linear_from_srgb(MANY) == pytest.approx(library.models.eotf_sRGB(MANY), abs=1e-9)


def test_cielab(library: Any) -> None:
    """From the same tristimulus values and white, so that rounding of the primaries' matrix does not enter."""
    xyz = xyz_from_linear(linear_from_srgb(MANY))
    white = library.XYZ_to_xy(xyz_from_linear(np.ones(3)))
    assert lab_from_srgb(MANY) == pytest.approx(library.XYZ_to_Lab(xyz, white), abs=1e-6)


def test_oklab(library: Any) -> None:
    """Its white is D65 rounded to four figures, as the field writes it: within 2e-3 of ours."""
    xyz = xyz_from_linear(linear_from_srgb(MANY))
    assert oklab_from_srgb(MANY) == pytest.approx(library.XYZ_to_Oklab(xyz), abs=2e-3)


def test_ciede2000(library: Any) -> None:
    one, other = (lab_from_srgb(colours) for colours in (MANY, MANY[::-1]))
    assert delta_e_ciede2000(one, other) == pytest.approx(library.delta_E(one, other, method="CIE 2000"), abs=1e-9)


@pytest.mark.parametrize("kind", NAMES)
@pytest.mark.parametrize("severity", SEVERITIES)
def test_other_eyes(library: Any, kind: Vision, severity: float) -> None:
    """Machado, Oliveira and Fernandes 2009, as the library keeps their table."""
    table = library.blindness.CVD_MATRICES_MACHADO2010[NAMES[kind]]
    assert vision_matrix(kind, severity) == pytest.approx(np.asarray(table[severity]), abs=2e-6)
