"""Yarn colours from a photograph: paper, yarn, groups, colours with their shares and doubts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from loopwright.colour.difference import delta_e_ciede2000
from loopwright.colour.photo.balance import Paper, balanced, read_paper
from loopwright.colour.photo.grouping import Labels, features, k_means
from loopwright.colour.photo.light import Bytes, linear_light
from loopwright.colour.photo.limits import PHOTO_LIMITS
from loopwright.colour.photo.merging import lit_colour, merged
from loopwright.colour.photo.point import Point
from loopwright.colour.photo.region import LONGEST, Region, yarn_region
from loopwright.colour.photo.shapes import box_mean
from loopwright.colour.spaces import Floats, lab_from_xyz, srgb_from_linear, xyz_from_linear
from loopwright.units import BadInput

__all__ = ["LEAST_SIDE", "MOST_COLOURS", "PhotoColour", "PhotoColours", "measure_photo"]

MOST_COLOURS: Final = 6
LEAST_SIDE: Final = 64
"""Pixels; in a smaller picture there is no texture to tell yarn by."""


@dataclass(frozen=True, slots=True)
class PhotoColour:
    """One colour of the yarn.

    :ivar srgb: shape (3,), 0 to 1.
    :ivar share: of the yarn that is seen, 0 to 1, as it was counted.
    :ivar told_share: the same to the nearest 5 %, fine enough for what a photograph knows; all add up to 1.
    :ivar spread: root mean square of ΔE00 from the colour over the lit pixels that it is the mean of.
    :ivar doubt: what it may be off by in ΔE00: that of any photograph and the error of the mean's own light.
    """

    srgb: Floats
    share: float
    told_share: float
    spread: float
    doubt: float


@dataclass(frozen=True, slots=True)
class PhotoColours:
    """What a photograph says about a skein.

    :ivar colours: the largest share first.
    :ivar paper: what the white paper said; None without.
    :ivar left_out: share of the yarn in colours too small to tell.
    """

    colours: tuple[PhotoColour, ...]
    paper: Paper | None
    region: Region
    left_out: float


def measure_photo(
    pixels: Bytes,
    *,
    white: Point | None = None,
    yarn: Point | None = None,
    most: int = MOST_COLOURS,
    exactly: int | None = None,
) -> PhotoColours:
    """Measure the colours of the yarn in a photograph.

    Light is balanced by white paper, the yarn is found, its pixels, smoothed, are grouped into ``most`` groups by
    k-means and the groups that are one colour joined; each colour is the mean of its lit pixels in linear light.
    Without paper the picture is taken as it is: grey-world rules fail by construction on a picture that is filled with
    one yarn.

    :param pixels: sRGB bytes, shape (h, w, 3), upright.
    :param white: a place on white paper that lies in the same light.
    :param yarn: a place on the yarn; left out, the largest part that stands out from the ground.
    :param most: 1 to 6 colours.
    :param exactly: that many groups, joined by no rule.
    :raises BadInput: the picture is too small, the paper says nothing, no yarn is found, or a number is out of range.
    """
    height, width, _ = pixels.shape
    if min(height, width) < LEAST_SIDE:
        raise BadInput(f"a picture of {width} × {height} pixels", f"at least {LEAST_SIDE} on each side")
    for number in (most, exactly if exactly is not None else 1):
        if not 1 <= number <= MOST_COLOURS:
            raise BadInput(f"{number} colours", f"1 to {MOST_COLOURS}")
    paper = None if white is None else read_paper(pixels, white)
    light = balanced(linear_light(pixels, LONGEST), paper)
    region = yarn_region(light, paper=white, yarn=yarn)
    thin = -(-int(region.mask.sum()) // int(PHOTO_LIMITS["most_pixels"].value))
    inside, calm = (values[region.mask][::thin] for values in (light, _smoothed(light)))
    groups = k_means(features(calm), exactly or most)[-1]
    labels = groups if exactly is not None else merged(calm, groups)
    colours, left_out = _colours(inside, labels, paper is not None, all_of_them=exactly is not None)
    return PhotoColours(colours, paper, region, left_out)


def _smoothed(light: Floats) -> Floats:
    """Give the light without the camera's noise and single fibres, for telling colours apart; not for their values."""
    side = int(PHOTO_LIMITS["smooth_window"].value)
    return np.stack([box_mean(light[..., channel], side) for channel in range(3)], axis=-1)


def _colours(
    light: Floats, labels: Labels, with_paper: bool, *, all_of_them: bool
) -> tuple[tuple[PhotoColour, ...], float]:
    counts = np.bincount(labels)
    shares = counts / counts.sum()
    least = 0.0 if all_of_them else PHOTO_LIMITS["least_share"].value
    kept = [int(at) for at in np.argsort(-shares, kind="stable") if shares[at] >= least]
    told = _told_shares([float(shares[at]) for at in kept])
    found = []
    for at, said in zip(kept, told, strict=True):
        mean, lit = lit_colour(light[labels == at])
        apart = delta_e_ciede2000(lab_from_xyz(xyz_from_linear(lit)), lab_from_xyz(xyz_from_linear(mean)))
        spread = float(np.sqrt((apart**2).mean()))
        basis = PHOTO_LIMITS["doubt_with_paper" if with_paper else "doubt_without"].value
        srgb = np.clip(srgb_from_linear(mean), 0, 1)
        found.append(PhotoColour(srgb, float(shares[at]), said, spread, float(np.hypot(basis, spread / 2))))
    return tuple(found), max(0.0, float(1 - shares[kept].sum()))


def _told_shares(shares: list[float]) -> list[float]:
    """Round shares to steps of 5 % so that they add up to one: the largest remainders are rounded up."""
    step = PHOTO_LIMITS["share_step"].value
    steps = round(1 / step)
    whole = sum(shares)
    exact = [share / whole * steps for share in shares]
    told = [int(value) for value in exact]
    for at in sorted(range(len(exact)), key=lambda at: told[at] - exact[at])[: steps - sum(told)]:
        told[at] += 1
    return [count / steps for count in told]
