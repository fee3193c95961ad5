"""Other eyes: greys stay grey, equal luminance is equal grey, and unknown severities are refused."""

import csv
from importlib.resources import files

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.colour import (
    SEVERITIES,
    VISIONS,
    Floats,
    as_seen,
    grey_view,
    lightness,
    linear_from_srgb,
    luminance,
    vision_matrix,
)
from loopwright.units import BadInput
from tests.colour.samples import srgbs, table_of

ROW_SUM = 2e-6
"""The published matrices have six decimals, so a row adds up to 1 within 1e-6; a linear grey strays no more."""


@pytest.mark.parametrize("severity", SEVERITIES)
@pytest.mark.parametrize("kind", VISIONS)
def test_rows_add_up_to_one(kind: str, severity: float) -> None:
    assert vision_matrix(kind, severity).sum(axis=1) == pytest.approx([1, 1, 1], abs=ROW_SUM)  # type: ignore[arg-type]


@given(st.floats(0, 1, allow_subnormal=False))
def test_a_grey_stays_grey(value: float) -> None:
    light = linear_from_srgb([value] * 3)
    for kind in VISIONS:
        assert linear_from_srgb(as_seen([value] * 3, kind)) == pytest.approx(light, abs=ROW_SUM)


@given(srgbs)
def test_grey_keeps_luminance_and_has_no_chroma(srgb: Floats) -> None:
    grey = grey_view(srgb)
    assert grey.max() == grey.min()
    assert float(luminance(grey)) == pytest.approx(float(luminance(srgb)), abs=1e-8)
    assert float(lightness(grey)) == pytest.approx(float(lightness(srgb)), abs=1e-4)


def test_an_array_equals_its_colours() -> None:
    many = table_of(12, 1).reshape(3, 4, 3)
    for at in np.ndindex(3, 4):
        np.testing.assert_allclose(as_seen(many, "deutan")[at], as_seen(many[at], "deutan"), atol=1e-15)
        np.testing.assert_allclose(grey_view(many)[at], grey_view(many[at]), atol=1e-15)


def test_a_severity_between_is_not_made_up() -> None:
    with pytest.raises(BadInput, match=r'found "protan 0.55"; wanted protan, deutan, tritan at the severity 0.6, 1'):
        as_seen([0, 0, 0], "protan", 0.55)


@pytest.mark.parametrize("name", ["vision_matrices.csv", "grades.csv", "limits.csv"])
def test_every_row_of_the_tables_has_its_source(name: str) -> None:
    text = files("loopwright.data").joinpath("colour", name).read_text("utf-8")
    rows = list(csv.DictReader(text.splitlines()))
    assert rows
    assert all(row["source"] and row["status"] in {"read", "proposal"} for row in rows)
