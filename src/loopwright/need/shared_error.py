r"""Needs of sections, and their sums with an error that they share.

A garment is knitted by one hand to one gauge, so what errs in the loop errs in every section alike; how one section
strays from the others is its own. With own errors :math:`o_i` and shared ones :math:`s_i`

.. math:: s^2 = \sum_i o_i^2 + \left(\sum_i s_i\right)^2

which lies between the root of the squares and the plain sum. Source: JCGM 100:2008 (GUM), 5.2.2, for correlations of 0
and 1 (from memory).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from loopwright.records import Record
from loopwright.uncertainty import Estimate, Step

__all__ = ["SectionNeed", "adjusted", "together"]


class SectionNeed(Record):
    """Yarn that one section takes in one role, every piece that has it counted.

    :ivar piece, section: keys in the draft; ``swatch`` for the swatch itself.
    :ivar name: piece and section in words.
    :ivar made: how often its piece is made; the figures are for all of them.
    :ivar role: whose yarn.
    :ivar length_m: metres of the whole strand.
    :ivar own_sd_m: its own error; :ivar shared_sd_m: the error that it shares with all others of the garment.
    :ivar mass_g: grams of the whole strand; None where no grist is known.
    :ivar working: term by term.
    """

    piece: str
    section: str
    name: str
    made: int
    role: str
    length_m: float
    own_sd_m: float
    shared_sd_m: float
    mass_g: float | None
    working: tuple[Step, ...]

    @property
    def sd_m(self) -> float:
        """Give one standard deviation of its length."""
        return math.hypot(self.own_sd_m, self.shared_sd_m)

    def scaled(self, factor: float, own_sd_m: float, shared_sd_m: float, *working: Step) -> SectionNeed:
        """Give the need times a factor, with these errors and these lines after its own."""
        return self.model_copy(
            update={
                "length_m": self.length_m * factor,
                "own_sd_m": own_sd_m,
                "shared_sd_m": shared_sd_m,
                "mass_g": None if self.mass_g is None else self.mass_g * factor,
                "working": (*self.working, *working),
            }
        )


def together(needs: Iterable[SectionNeed], says: str = "sections together") -> Estimate:
    """Give what any set of sections takes, in metres of strand, with the right standard deviation of the sum."""
    needs = tuple(needs)
    mean, own, shared = _sums(needs)
    steps = [step for need in needs for step in need.working[-1:]]
    return Estimate.worked(
        says,
        f"sum of {len(needs)}; own errors {own:.3g} m in square, shared {shared:.3g} m in full",
        mean,
        math.hypot(own, shared),
        "m",
        after=steps,
    )


def _sums(needs: Sequence[SectionNeed]) -> tuple[float, float, float]:
    mean = math.fsum(need.length_m for need in needs)
    own = math.sqrt(math.fsum(need.own_sd_m**2 for need in needs))
    return mean, own, math.fsum(need.shared_sd_m for need in needs)


def adjusted(needs: Sequence[SectionNeed], total: Estimate, why: str) -> tuple[SectionNeed, ...]:
    """Give the sections brought to a better known total: together they have its mean and its standard deviation.

    All lengths are scaled alike. What is learnt of the sum is learnt of the shared error, so each section keeps its own
    as far as the sum's allows.

    :param total: of all these sections, in metres.
    :param why: for the working, such as ``brought to the pattern's amount``.
    """
    mean, own, shared = _sums(needs)
    if not mean:
        return tuple(needs)
    factor = total.mean / mean
    own_now = min(own * factor, total.sd)
    shared_now = math.sqrt(max(total.sd**2 - own_now**2, 0.0))
    own_by = own_now / own if own else 0.0
    return tuple(
        need.scaled(
            factor,
            need.own_sd_m * own_by,
            shared_now * (need.shared_sd_m / shared if shared else need.length_m / mean),
            *_scaling(need, factor, why),
        )
        for need in needs
    )


def _scaling(need: SectionNeed, factor: float, why: str) -> tuple[Step, ...]:
    last = need.working[-1]
    metres, working = need.length_m * factor, f"{need.length_m:.4g} m × {factor:.3f}"
    return (Step(says=f"{need.name}, {why}", working=working, value=metres, unit="m", origin=last.origin),)
