"""Pixels of one skein grouped into its colours: k-means in OKLab that always begins the same way.

OKLab is a cube root of linear cone responses, so that shade, which dims all light alike, multiplies L, a and b by the
same number. Pixels are therefore compared by a/L and b/L, which shade leaves alone, with some lightness beside them:
without it black, grey and white yarn would fall together.
"""

from __future__ import annotations

from typing import Final, TypeAlias

import numpy as np
import numpy.typing as npt

from loopwright.colour.photo.limits import PHOTO_LIMITS
from loopwright.colour.spaces import Floats, oklab_from_linear

__all__ = ["Labels", "features", "k_means"]

Labels: TypeAlias = npt.NDArray[np.intp]
_ROUNDS: Final = 60
_LEAST_LIGHTNESS: Final = 0.3
"""Darker pixels are brought up no further: there the camera's noise would grow with them."""
_MIDDLE: Final = 0.6


def features(light: Floats) -> Floats:
    """Give what pixels are compared by: L, a and b of OKLab, a and b as they would be at one lightness.

    :param light: linear light, shape (n, 3).
    :returns: shape (n, 3); lightness already weighted.
    """
    lab = oklab_from_linear(np.clip(light, 0, None))
    shade = _MIDDLE / np.maximum(lab[:, 0], _LEAST_LIGHTNESS)
    return np.stack([lab[:, 0] * PHOTO_LIMITS["lightness_weight"].value, lab[:, 1] * shade, lab[:, 2] * shade], axis=1)


def k_means(points: Floats, most: int) -> list[Labels]:
    """Group points into 1, 2 … ``most`` groups, each time from the groups before.

    The group with the largest sum of squares is halved across its longest direction, then every point goes to its
    nearest mean and the means are taken anew until nothing moves (Lloyd). Nothing is drawn by lot: the same points give
    the same groups.

    :param points: shape (n, d).
    :returns: for each number of groups the group of every point; fewer where points coincide.
    Source: S. P. Lloyd, IEEE Transactions on Information Theory 28(2), 1982, 129-137.
    """
    labels: Labels = np.zeros(len(points), dtype=np.intp)
    found = [labels]
    for number in range(1, most):
        halved = _halved(points, labels, number)
        if halved is None:
            break
        labels = _settled(points, halved, number + 1)
        found.append(labels)
    return found


def _halved(points: Floats, labels: Labels, number: int) -> Labels | None:
    within = [((part - part.mean(axis=0)) ** 2).sum() for part in (points[labels == at] for at in range(number))]
    worst = int(np.argmax(within))
    inside = np.flatnonzero(labels == worst)
    centred = points[inside] - points[inside].mean(axis=0)
    if within[worst] <= 1e-12:
        return None
    _, directions = np.linalg.eigh(centred.T @ centred)
    longest = directions[:, -1]
    longest = longest * (1 if longest[np.argmax(np.abs(longest))] > 0 else -1)
    halved = labels.copy()
    halved[inside[centred @ longest > 0]] = number
    return halved


def _settled(points: Floats, labels: Labels, number: int) -> Labels:
    for _ in range(_ROUNDS):
        means = np.stack([points[labels == at].mean(axis=0) for at in range(number)])
        moved: Labels = ((means**2).sum(axis=1) - 2 * points @ means.T).argmin(axis=1)
        if (moved == labels).all() or len(np.unique(moved)) < number:
            break
        labels = moved
    return labels
