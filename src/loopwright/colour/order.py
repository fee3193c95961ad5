"""The order of skeins in a fade: the path through their colours with the least sum of steps."""

from __future__ import annotations

import itertools
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from loopwright.colour.difference import difference_matrix
from loopwright.colour.limits import LIMITS
from loopwright.colour.path import EXACT_UP_TO, shortest_path
from loopwright.colour.spaces import lab_from_srgb
from loopwright.units import BadInput

__all__ = ["Fade", "fade_order"]


@dataclass(frozen=True, slots=True)
class Fade:
    """An order of skeins.

    :ivar order: places of the colours, in the order of knitting.
    :ivar steps: ΔE00 from each to the next, one fewer than the skeins.
    :ivar blend_above: a step above it will read as a stripe (``stripe`` in ``data/colour/limits.csv``, our proposal).
    :ivar proven: whether no other order has a smaller sum.
    """

    order: tuple[int, ...]
    steps: tuple[float, ...]
    blend_above: float
    proven: bool

    @property
    def total(self) -> float:
        """The sum of the steps, ΔE00."""
        return sum(self.steps)

    @property
    def weakest(self) -> int | None:
        """Where the largest step is: 0 from the first skein to the second; None for a single skein."""
        return max(range(len(self.steps)), key=lambda at: self.steps[at], default=None)

    @property
    def blend_at(self) -> tuple[int, ...]:
        """The steps over which to alternate rows of both skeins, or to put another skein between."""
        return tuple(at for at, step in enumerate(self.steps) if step > self.blend_above)


def fade_order(
    colours: npt.ArrayLike, first: int | None = None, last: int | None = None, *, blend_above: float | None = None
) -> Fade:
    """Order skeins so that each goes over into the next as softly as it can: the least sum of ΔE00.

    ΔE00 is fitted to small differences and the steps of a fade are large, so a distance in CIELAB or OKLab would do as
    well; where they differ, trust the eye. A path read backwards is the same: with both ends free it begins with the
    lighter one.

    :param colours: sRGB, shape (n, 3), 0 to 1; for a skein of several colours their mean.
    :param first, last: places of skeins that have to stand at the ends.
    :param blend_above: in ΔE00; left out, the packaged limit.
    :raises BadInput: there are no colours or more than 100, or one shall be first and last.
    """
    srgb = np.asarray(colours, dtype=np.float64).reshape(-1, 3)
    if not len(srgb):
        raise BadInput("no colour", "one skein or more")
    labs = lab_from_srgb(srgb)
    distances = difference_matrix(labs)
    path = shortest_path(distances, first, last)
    if first is None and last is None and labs[path[0], 0] < labs[path[-1], 0]:
        path = path[::-1]
    steps = tuple(float(distances[one, other]) for one, other in itertools.pairwise(path))
    limit = LIMITS["stripe"].value if blend_above is None else blend_above
    return Fade(path, steps, limit, proven=len(path) <= EXACT_UP_TO)
