"""Which groups of pixels are one yarn colour: light and shade of the same yarn, or too near to tell apart."""

from __future__ import annotations

from typing import Final

import numpy as np

from loopwright.colour.difference import delta_e_ciede2000
from loopwright.colour.photo.grouping import Labels, features
from loopwright.colour.photo.limits import PHOTO_LIMITS
from loopwright.colour.spaces import (
    Floats,
    lab_from_xyz,
    linear_from_oklab,
    oklab_from_linear,
    xyz_from_linear,
)

__all__ = ["lit_colour", "merged", "valley"]

_BINS: Final = np.linspace(-0.625, 1.625, 10)
"""Bins along the line from one mean (0) to the other (1); the middle one lies half way."""


def lit_colour(light: Floats) -> tuple[Floats, Floats]:
    """Give the colour of a yarn from its pixels: the linear mean of those from the 75th to the 98th percentile of L*.

    Shade between strands pulls a plain mean dark; the lightest pixels are glare and noise.

    :param light: linear light, shape (n, 3), n at least one.
    :returns: that mean, shape (3,), and the pixels it is taken of.
    """
    lightness = lab_from_xyz(xyz_from_linear(light))[:, 0]
    low, high = np.quantile(lightness, [PHOTO_LIMITS["light_from"].value, PHOTO_LIMITS["light_to"].value])
    lit = light[(lightness >= low) & (lightness <= high)]
    return lit.mean(axis=0), lit


def valley(points: Floats, others: Floats) -> float:
    """Give how many points lie half way between two groups, as a share of the lesser group's densest place.

    Counted along the line that joins the two means. About 1 where both are one heap that was cut in two, near 0 where
    two heaps stand apart.

    :param points, others: shapes (n, d) and (m, d), neither empty.
    """
    along = others.mean(axis=0) - points.mean(axis=0)
    length = float(along @ along)
    if length == 0:
        return 1.0
    places = (np.concatenate([points, others]) - points.mean(axis=0)) @ along / length
    counts, _ = np.histogram(places, _BINS)
    peak = min(int(counts[1:4].max()), int(counts[5:8].max()))
    return float(counts[4] / peak) if peak else 0.0


def merged(light: Floats, labels: Labels) -> Labels:
    """Join groups that are one yarn colour, the nearest first, until none are left to join.

    Two groups are one colour when their lit colours differ by less than 5 ΔE00; and when, brought to one lightness,
    they differ by less than 10, their lit parts are less than 25 L* apart and the pixels run from one into the other
    without a gap (:func:`valley`). Greys of one skein whose light and shade overlap are told as one for that reason.

    :param light: linear light, shape (n, 3).
    :returns: labels 0, 1, …
    Source: our rule; limits in ``data/colour/photo_limits.csv``.
    """
    labels = labels.copy()
    points = features(light)
    while True:
        pair = _nearest_to_join(light, points, labels)
        if pair is None:
            return np.asarray(np.unique(labels, return_inverse=True)[1], dtype=np.intp)
        labels[labels == pair[1]] = pair[0]


def _nearest_to_join(light: Floats, points: Floats, labels: Labels) -> tuple[int, int] | None:
    numbers = np.unique(labels).tolist()
    lit = {number: lit_colour(light[labels == number])[0] for number in numbers}
    nearest: tuple[float, tuple[int, int]] | None = None
    for place, one in enumerate(numbers):
        for other in numbers[place + 1 :]:
            apart = _apart(lit[one], lit[other])
            joined = apart < PHOTO_LIMITS["one_colour_below"].value or (
                _shade_of_one(lit[one], lit[other])
                and valley(points[labels == one], points[labels == other]) >= PHOTO_LIMITS["valley"].value
            )
            if joined and (nearest is None or apart < nearest[0]):
                nearest = (apart, (one, other))
    return None if nearest is None else nearest[1]


def _lab(linear: Floats) -> Floats:
    return lab_from_xyz(xyz_from_linear(linear))


def _apart(one: Floats, other: Floats) -> float:
    return float(delta_e_ciede2000(_lab(one), _lab(other)))


def _shade_of_one(one: Floats, other: Floats) -> bool:
    """Say whether two colours are alike but for the light that falls on them."""
    if abs(float(_lab(one)[0] - _lab(other)[0])) >= PHOTO_LIMITS["shade_range_below"].value:
        return False
    first, second = oklab_from_linear(one), oklab_from_linear(other)
    middle = (first[0] + second[0]) / 2
    evened = [linear_from_oklab(lab * (middle / max(float(lab[0]), 1e-3))) for lab in (first, second)]
    return _apart(evened[0], evened[1]) < PHOTO_LIMITS["shade_apart_below"].value
