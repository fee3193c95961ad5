"""From rows to the picture and back: each way undoes the other, and what must keep its area keeps it."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.pictures.lie_bent import Along, Bend, Ring
from loopwright.pictures.lie_flat import Flat, Lie, Mirrored, Sagging
from loopwright.pictures.lie_spread import CrescentSpread, HalfRoundSpread, TriangleSpread

LINE = np.array([(0.0, 0.0), (0.5, 3.0), (2.0, 5.5), (5.0, 7.0), (9.0, 7.0), (12.0, 5.0)])
BEND = Bend(20.0, 5.0, math.radians(75), math.radians(30), 6.0, 24.0)
LIES: dict[str, tuple[Lie, tuple[float, float], tuple[float, float]]] = {
    "flat": (Flat(1.0, 60.0), (-30, 30), (0, 60)),
    "upside down": (Flat(0.0, 20.0, down=True), (-30, 30), (0, 40)),
    "mirrored": (Mirrored(Flat(5.0, 60.0)), (-30, 30), (0, 60)),
    "sagging": (Sagging(Flat(0.0, 60.0), 21.0, 60.0, -7.0, 34.0), (-26, 26), (0, 39)),
    "bent": (BEND, (-9, 9), (0, 60)),
    "bent upwards": (Bend(20.0, 5.0, 1.3, 0.5, 6.0, 24.0, 60.0), (-9, 9), (0, 60)),
    "mirrored bent": (Mirrored(BEND), (-9, 9), (0, 60)),
    "ring": (Ring(0.0, -7.0, 34.0, True), (-1.0, 1.0), (0, 21)),
    "ring from the top": (Ring(1.4, -7.0, 13.0, False), (-1.0, 1.0), (0, 21)),
    "along": (Along(LINE), (0.02, 0.98), (0.05, 1.2)),
    "triangle": (TriangleSpread(120.0, 60.0), (0.01, 0.99), (0.01, 1)),
    "half round": (HalfRoundSpread(120.0, 60.0), (0.01, 0.99), (0.01, 1)),
    "crescent": (CrescentSpread(150.0, 45.0, 8.0), (0.01, 0.99), (0.01, 1)),
}


@pytest.mark.parametrize("name", LIES)
@settings(max_examples=60, deadline=None)
@given(data=st.data())
def test_each_way_undoes_the_other(name: str, data: st.DataObject) -> None:
    lie, (low_u, high_u), (low_v, high_v) = LIES[name]
    u = np.array([data.draw(st.floats(low_u, high_u))])
    v = np.array([data.draw(st.floats(low_v, high_v))])
    x, y = lie.to_picture(u, v)
    found = lie.from_picture(x, y)
    # A band along a bent line is drawn with its corners rounded, so u there is only near.
    near = 0.03 if name == "along" else 2e-3 if name == "crescent" else 1e-6
    assert found[0] == pytest.approx(u, abs=near * (high_u - low_u))
    assert found[1] == pytest.approx(v, abs=near * (high_v - low_v) * (5 if name == "along" else 1))


@pytest.mark.parametrize("name", ["flat", "bent", "mirrored bent", "triangle", "half round", "crescent"])
def test_equal_shares_of_rows_have_equal_areas(name: str) -> None:
    """The area of a cell by the determinant of finite differences; in a bend it holds for the whole row."""
    lie, (low_u, high_u), (low_v, high_v) = LIES[name]
    u = np.linspace(low_u, high_u, 201)[None, :]
    v = np.linspace(max(low_v, 0.05 * high_v), 0.98 * high_v, 41)[:, None]
    step_u, step_v = 1e-5 * (high_u - low_u), 1e-5 * (high_v - low_v)
    x, y = lie.to_picture(u + 0 * v, v + 0 * u)
    xu, yu = lie.to_picture(u + step_u + 0 * v, v + 0 * u)
    xv, yv = lie.to_picture(u + 0 * v, v + step_v + 0 * u)
    cells = np.abs((xu - x) * (yv - y) - (xv - x) * (yu - y)) / step_u / step_v
    rows = np.trapezoid(cells, axis=1)
    assert np.asarray(rows) == pytest.approx(float(np.median(rows)), rel=0.02)
    if "bent" not in name:
        assert cells[:, 5:-5] == pytest.approx(float(np.median(cells)), rel=0.03)


def test_a_bend_is_continuous_where_it_begins_and_ends() -> None:
    u = np.linspace(-9, 9, 7)
    for v in (BEND.straight, BEND.straight + BEND.arc):
        before, after = (np.array(BEND.to_picture(u, np.full(7, v + off))) for off in (-1e-7, 1e-7))
        assert before == pytest.approx(after, abs=1e-5)


def test_a_band_keeps_to_the_left_of_its_way() -> None:
    lie = Along(np.array([(0.0, 0.0), (10.0, 0.0)]))
    assert np.array(lie.to_picture(np.array([0.5]), np.array([2.0]))).ravel() == pytest.approx([5.0, -2.0])
    assert lie.from_picture(np.array([5.0]), np.array([1.0]))[1] < 0
