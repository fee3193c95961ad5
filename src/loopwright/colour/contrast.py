"""Contrast: WCAG 2 for our own pages, and lightness contrast between two yarns of colourwork.

At the size of stitches the eye follows light and dark, hardly hue (Mullen 1985: above half a cycle per degree it is
more sensitive to luminance than to colour alone), so a pair of yarns is graded by the difference of their L*. The
grades and limits come from studies of text and symbols; no study of knitted fabric was found.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import numpy as np
import numpy.typing as npt

from loopwright.colour.difference import delta_e_ciede2000
from loopwright.colour.limits import LIMITS
from loopwright.colour.spaces import Floats, lab_from_srgb, lightness, linear_from_srgb
from loopwright.colour.vision import VISIONS, Vision, as_seen
from loopwright.data import table
from loopwright.units import BadInput

__all__ = [
    "GRADES",
    "LARGE_OR_LINE_RATIO",
    "REMARKS",
    "TEXT_RATIO",
    "Grade",
    "PairContrast",
    "Remark",
    "grade_of",
    "held_forward",
    "judge_pair",
    "judge_pairs",
    "separation",
    "wcag_ratio",
]

TEXT_RATIO: Final = 4.5
"""Least ratio of text to its ground: WCAG 2.2, success criterion 1.4.3 (AA)."""
LARGE_OR_LINE_RATIO: Final = 3.0
"""Least ratio of large text (1.4.3), and of the lines by which a control is known (1.4.11)."""
_WCAG_SHARES: Final = np.array([0.2126, 0.7152, 0.0722])


def wcag_ratio(first: npt.ArrayLike, second: npt.ArrayLike) -> Floats:
    """Give the contrast ratio ``(Y lighter + 0.05) / (Y darker + 0.05)``, 1 to 21.

    ``Y = 0.2126 R + 0.7152 G + 0.0722 B`` in linear light.

    :param first, second: sRGB, shapes (..., 3) that broadcast.
    :returns: shape (...).
    Source: WCAG 2.2, definitions of contrast ratio and relative luminance.
    """
    one = linear_from_srgb(first) @ _WCAG_SHARES + 0.05
    other = linear_from_srgb(second) @ _WCAG_SHARES + 0.05
    return np.asarray(np.maximum(one, other) / np.minimum(one, other), dtype=np.float64)


@dataclass(frozen=True, slots=True)
class Grade:
    """A verdict on lightness contrast.

    :ivar least_delta_l: least difference of L*.
    :ivar says: what to expect of a pattern.
    :ivar status: of the limit: ``read`` in its source, or our ``proposal``.
    """

    name: str
    least_delta_l: float
    says: str
    source: str
    status: str


GRADES: Final = tuple(
    Grade(row["grade"], float(row["least_delta_l"]), row["says"], row["source"], row["status"])
    for row in table("colour/grades.csv")
)
"""The grades, best first: good, fair, poor. Source: ``data/colour/grades.csv``."""


def grade_of(delta_l: float) -> Grade:
    """Give the grade of a difference in L*; below nothing, where light and dark overlap, it is the last."""
    return next((grade for grade in GRADES if delta_l >= grade.least_delta_l), GRADES[-1])


Remark: TypeAlias = Literal["same colour?", "near match", "tonal", "hue alone", "red-green alone", "borderline"]

REMARKS: Final[Mapping[Remark, str]] = {
    "near match": "hardly a pattern at all",
    "tonal": "a quiet effect of shadow",
    "hue alone": "for blocks of about 20 stitches or more, not for small motifs",
    "same colour?": "few people would speak of two colours",
    "red-green alone": "nearly alike to protan or deutan eyes",
    "borderline": "near a limit and taken from a photograph: knit a swatch",
}
"""What each remark on a pair means. The limits behind them: ``data/colour/limits.csv``."""


@dataclass(frozen=True, slots=True)
class PairContrast:
    """How two colours stand side by side.

    :ivar delta_l: difference of L*, without sign.
    :ivar delta_e: CIEDE2000.
    :ivar remarks: keys of :data:`REMARKS`.
    :ivar delta_e_seen, delta_l_seen: the same two figures for each kind of colour vision, at full severity.
    """

    delta_l: float
    delta_e: float
    grade: Grade
    remarks: tuple[Remark, ...]
    delta_e_seen: Mapping[Vision, float]
    delta_l_seen: Mapping[Vision, float]

    @property
    def weaker_for(self) -> tuple[Vision, ...]:
        """The kinds of colour vision for which the pair has a lower grade."""
        least = self.grade.least_delta_l
        return tuple(kind for kind, delta_l in self.delta_l_seen.items() if grade_of(delta_l).least_delta_l < least)


def judge_pair(first: npt.ArrayLike, second: npt.ArrayLike, *, from_photograph: bool = False) -> PairContrast:
    """Grade two yarns that meet in colourwork.

    :param first, second: sRGB, shape (3,), 0 to 1.
    :param from_photograph: whether either was taken from a picture, so that it may be off by several units.
    """
    return judge_pairs(np.stack([np.asarray(first), np.asarray(second)]), from_photograph=from_photograph)[0, 1]


def judge_pairs(colours: npt.ArrayLike, *, from_photograph: bool = False) -> dict[tuple[int, int], PairContrast]:
    """Grade every two of several yarns.

    :param colours: sRGB, shape (n, 3), 0 to 1.
    :returns: by the two places, the lower first.
    """
    srgb = np.asarray(colours, dtype=np.float64).reshape(-1, 3)
    labs = lab_from_srgb(srgb)
    seen = {kind: lab_from_srgb(as_seen(srgb, kind)) for kind in VISIONS}
    every = list(itertools.combinations(range(len(srgb)), 2))
    one, other = (np.array([pair[at] for pair in every], dtype=np.intp) for at in (0, 1))

    def differences(of: Floats) -> tuple[list[float], list[float]]:
        return (
            np.abs(of[one, 0] - of[other, 0]).tolist(),
            delta_e_ciede2000(of[one], of[other]).tolist(),
        )

    delta_l, delta_e = differences(labs)
    by_kind = {kind: differences(of) for kind, of in seen.items()}
    judged = {}
    for at, pair in enumerate(every):
        delta_l_seen = {kind: figures[0][at] for kind, figures in by_kind.items()}
        delta_e_seen = {kind: figures[1][at] for kind, figures in by_kind.items()}
        remarks = tuple(_remarks(delta_l[at], delta_e[at], delta_e_seen, from_photograph))
        judged[pair] = PairContrast(
            delta_l[at], delta_e[at], grade_of(delta_l[at]), remarks, delta_e_seen, delta_l_seen
        )
    return judged


def _remarks(
    delta_l: float, delta_e: float, delta_e_seen: Mapping[Vision, float], from_photograph: bool
) -> Iterator[Remark]:
    near, hue = LIMITS["near"].value, LIMITS["hue"].value
    if grade_of(delta_l) is GRADES[-1]:
        yield "near match" if delta_e < near else "tonal" if delta_e < hue else "hue alone"
    if delta_e < LIMITS["different"].value:
        yield "same colour?"
    if min(delta_e_seen["protan"], delta_e_seen["deutan"]) < near <= delta_e:
        yield "red-green alone"
    limits = [grade.least_delta_l for grade in GRADES[:-1]]
    if from_photograph and any(abs(delta_l - limit) <= LIMITS["borderline"].value for limit in limits):
        yield "borderline"


def separation(light: npt.ArrayLike, dark: npt.ArrayLike) -> float:
    """Give how far two sets of colours stand apart in L*: the darkest of the light set less the lightest of the dark.

    Below nothing the sets overlap. Graded like the difference of two colours, by :func:`grade_of`.

    :param light, dark: sRGB, shapes (n, 3) and (m, 3), neither empty.
    """
    return float(lightness(light).min() - lightness(dark).max())


def held_forward(stitches: Mapping[str, int]) -> tuple[str, ...]:
    """Give the colour to hold so that it comes forward in stranded knitting: the one with the fewest stitches.

    It is not the colour that decides but the hand: the yarn whose float runs below the others on the wrong side makes
    stitches a little larger, and they stand forward. Common practice, cross-read in several tutorials; no measured
    size of the effect was found, and individual knitters differ.

    :param stitches: by colour, how many.
    :returns: the colour; several where they tie.
    :raises BadInput: there are fewer than two colours.
    """
    if len(stitches) < 2:
        raise BadInput(f"{len(stitches)} of them", "two colours or more")
    fewest = min(stitches.values())
    return tuple(colour for colour, count in stitches.items() if count == fewest)
