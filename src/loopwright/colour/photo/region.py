"""Where the yarn is in a picture: apart from the ground that it lies on, from its shadow and from the white paper.

The ground is what the frame of the picture shows. A shadow on it keeps the ground's chromaticity and is smooth; yarn
is textured, even where it is as grey as the table.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import numpy as np

from loopwright.colour.photo.limits import PHOTO_LIMITS
from loopwright.colour.photo.point import Point
from loopwright.colour.photo.shapes import Mask, box_mean, box_spread, closed, filled, grown, labelled, opened, shrunk
from loopwright.colour.spaces import Floats, lightness, srgb_from_linear
from loopwright.units import BadInput

__all__ = ["LONGEST", "FoundBy", "Region", "yarn_region"]

LONGEST: Final = 400
"""The longer side of the picture in which yarn is looked for, in pixels; the limits hold for it."""
FoundBy: TypeAlias = Literal["the largest textured part", "the part that was tapped", "a disc about the tap"]


@dataclass(frozen=True, slots=True)
class Region:
    """Where the yarn is.

    :ivar mask: shape (h, w).
    """

    mask: Mask
    found_by: FoundBy

    @property
    def share(self) -> float:
        """The share of the picture that it takes up."""
        return float(self.mask.mean())


@dataclass(frozen=True, slots=True)
class _Seen:
    """What is looked at in each pixel: luminance, chromaticity r and g, lightness, spread of lightness about it."""

    bright: Floats
    red: Floats
    green: Floats
    texture: Floats


def yarn_region(light: Floats, *, paper: Point | None = None, yarn: Point | None = None) -> Region:
    """Find the yarn.

    A pixel is ground, or shadow on it, when its smoothed chromaticity r/(r+g+b), g/(r+g+b) is near the frame's
    median, it is not much lighter, and L* hardly varies about it. What is left is cleaned by opening and closing with
    a disc, the largest part (or the one that was tapped) is filled, and its rim left off.

    :param light: linear light, shape (h, w, 3), the longer side about :data:`LONGEST`.
    :param paper: a place on white paper, which is then no yarn.
    :param yarn: a place on the yarn. Where no part with ground round it is found there, a disc about it is taken.
    :raises BadInput: nothing stands out from the ground.
    Source: our method, tried on 16 synthetic scenes; limits in ``data/colour/photo_limits.csv``.
    """
    seen = _seen(light)
    mask = ~_ground(seen)
    if paper is not None:
        mask &= ~_paper(seen, paper)
    radius = int(PHOTO_LIMITS["opening_radius"].value)
    labels, sizes = labelled(closed(opened(mask, radius), radius))
    sizes[0] = 0
    number = int(sizes.argmax()) if yarn is None else int(labels[yarn.place(*mask.shape)])
    part = _skein(labels == number) if number else None
    if part is not None:
        return Region(part, "the largest textured part" if yarn is None else "the part that was tapped")
    if yarn is None:
        raise BadInput(
            "no yarn that stands out from what it lies on",
            "a skein on a plain ground of another colour, with some ground all round it",
            hint="or tap the yarn",
        )
    return Region(_disc(mask.shape, yarn), "a disc about the tap")


def _seen(light: Floats) -> _Seen:
    side = int(PHOTO_LIMITS["texture_window"].value)
    lightest = lightness(srgb_from_linear(np.clip(light, 0, 1)))
    smooth = np.stack([box_mean(light[..., channel], 5) for channel in range(3)], axis=-1)
    whole = np.maximum(smooth.sum(axis=2), 1e-6)
    return _Seen(
        smooth @ np.array([0.2126, 0.7152, 0.0722]),
        smooth[..., 0] / whole,
        smooth[..., 1] / whole,
        box_spread(lightest, side),
    )


def _ground(seen: _Seen) -> Mask:
    frame = _frame(seen.bright.shape)
    red, green, bright, texture = (
        float(np.median(values[frame])) for values in (seen.red, seen.green, seen.bright, seen.texture)
    )
    smooth = max(PHOTO_LIMITS["texture_least"].value, PHOTO_LIMITS["texture_times"].value * texture)
    return (
        _near(seen, red, green)
        & (seen.bright <= PHOTO_LIMITS["lighter_than_ground"].value * bright)
        & (seen.bright >= PHOTO_LIMITS["darker_than_shadow"].value * bright)
        & (seen.texture <= smooth)
    )


def _near(seen: _Seen, red: float, green: float) -> Mask:
    near = PHOTO_LIMITS["same_chromaticity"].value
    return (np.abs(seen.red - red) <= near) & (np.abs(seen.green - green) <= near)


def _frame(shape: tuple[int, ...]) -> Mask:
    frame = np.ones(shape, dtype=np.bool_)
    down, across = (max(1, round(side * PHOTO_LIMITS["frame"].value)) for side in shape)
    frame[down:-down, across:-across] = False
    return frame


def _paper(seen: _Seen, at: Point) -> Mask:
    """Give the paper about the tap: as light, as neutral and smooth, and its edge with it."""
    place = at.place(*seen.bright.shape)
    alike = (
        _near(seen, float(seen.red[place]), float(seen.green[place]))
        & (seen.bright >= 0.8 * seen.bright[place])
        & (seen.texture <= PHOTO_LIMITS["texture_least"].value)
    )
    labels, _ = labelled(alike)
    here = labels[place]
    return grown(labels == here, int(PHOTO_LIMITS["texture_window"].value)) if here else np.zeros_like(alike)


def _skein(part: Mask) -> Mask | None:
    """Give a part filled and without its rim; None where it is too small, or has no ground round it."""
    inner = shrunk(filled(part), int(PHOTO_LIMITS["rim"].value))
    if part[_frame(part.shape)].mean() > PHOTO_LIMITS["frame_taken"].value:
        return None
    return inner if inner.mean() >= PHOTO_LIMITS["least_region"].value else None


def _disc(shape: tuple[int, ...], at: Point) -> Mask:
    row, column = at.place(*shape)
    radius = max(2.0, PHOTO_LIMITS["around_tap"].value * max(shape))
    down, across = np.ogrid[: shape[0], : shape[1]]
    return np.asarray((down - row) ** 2 + (across - column) ** 2 <= radius**2)
