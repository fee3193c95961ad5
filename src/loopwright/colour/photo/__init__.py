"""Yarn colours from a photograph: pure functions over arrays of pixels, each step by a stated rule.

Picture             `linear_light`, `block_mean`, `Bytes`
Places in it        `Point`, `read_point`
White paper         `read_paper`, `Paper`, `balanced`
Where the yarn is   `yarn_region`, `Region`, `FoundBy`
Its colours         `features`, `k_means`, `merged`, `valley`, `lit_colour`
All of it           `measure_photo`, `PhotoColours`, `PhotoColour`, `MOST_COLOURS`, `LEAST_SIDE`
Basis               `PHOTO_LIMITS`

A colour from a photograph is *about* that colour: never proof that two dye lots match.
"""

from loopwright.colour.photo.balance import Paper, balanced, read_paper
from loopwright.colour.photo.grouping import features, k_means
from loopwright.colour.photo.light import Bytes, block_mean, linear_light
from loopwright.colour.photo.limits import PHOTO_LIMITS
from loopwright.colour.photo.measure import LEAST_SIDE, MOST_COLOURS, PhotoColour, PhotoColours, measure_photo
from loopwright.colour.photo.merging import lit_colour, merged, valley
from loopwright.colour.photo.point import Point, read_point
from loopwright.colour.photo.region import FoundBy, Region, yarn_region

__all__ = [
    "LEAST_SIDE",
    "MOST_COLOURS",
    "PHOTO_LIMITS",
    "Bytes",
    "FoundBy",
    "Paper",
    "PhotoColour",
    "PhotoColours",
    "Point",
    "Region",
    "balanced",
    "block_mean",
    "features",
    "k_means",
    "linear_light",
    "lit_colour",
    "measure_photo",
    "merged",
    "read_paper",
    "read_point",
    "valley",
    "yarn_region",
]
