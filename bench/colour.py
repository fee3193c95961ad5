"""CIEDE2000 over a million pairs beside the library colour-science, and the order of a fade beside its proven limit."""

import importlib
import warnings
from collections.abc import Callable
from typing import Any

import numpy as np

from loopwright.colour import EXACT_UP_TO, MOST_POINTS, delta_e_ciede2000, fade_order

PAIRS = 1_000_000


def colours(seconds: Callable[[Callable[[], object]], float], line: Callable[[str, float, str, float], None]) -> None:
    """Measure with these two, the clock and the printer of ``bench``."""
    chance = np.random.default_rng(2027)
    low, high = [0, -100, -100], [100, 100, 100]
    one, other = (chance.uniform(low, high, (PAIRS, 3)) for _ in range(2))
    print("Colour")
    ours = seconds(lambda: delta_e_ciede2000(one, other))
    name = f"CIEDE2000, {PAIRS // 1_000_000} million pairs"
    library = difference_of_library()
    theirs = seconds(lambda: library.delta_E_CIE2000(one, other))
    apart = float(np.abs(library.delta_E_CIE2000(one, other) - delta_e_ciede2000(one, other)).max())
    same = "same values" if apart < 1e-9 else f"OTHER VALUES, by {apart:.2g}"
    line(name, ours, f"colour-science ({same})", ours / theirs)
    skeins = chance.random((MOST_POINTS, 3))
    unit = seconds(lambda: fade_order(skeins[:EXACT_UP_TO]))
    line(f"fade of {EXACT_UP_TO} skeins, proven", unit, "itself", 1)
    for number in (EXACT_UP_TO + 1, MOST_POINTS):
        took = seconds(lambda number=number: fade_order(skeins[:number]))  # type: ignore[misc]
        line(f"fade of {number} skeins, by exchanges", took, f"that of {EXACT_UP_TO}", took / unit)


def difference_of_library() -> Any:
    """The library's module of differences. What it lacks itself it tells by warnings."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return importlib.import_module("colour.difference")
