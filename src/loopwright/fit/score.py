"""The ranking rule: how far each size is from the ease that is wanted.

The rule is a proposal of this house. What it rests on: too tight cannot be worn and too loose can; knitters report
arms and shoulders as wrong; hips are easily shaped. Lengths are not scored, since rows are added or left out.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Final, Literal

from loopwright.data import table
from loopwright.pattern import Construction
from loopwright.records import Record

__all__ = ["PointFit", "SizeFit", "Verdict", "points_weighed", "rank_sizes", "score_size"]

Verdict = Literal["fits", "fits with changes", "draft to measure"]

MOST_PENALTY: Final = 9.0
NEARLY_EQUAL: Final = 0.05
FLOOR_POINTS: Final = frozenset({"bust_girth", "hip_girth", "upper_arm_girth"})
_WEIGHT_COLUMN: Final = {
    Construction.SET_IN: "weight_set_in",
    Construction.SLEEVELESS: "weight_set_in",
    Construction.RAGLAN: "weight_raglan",
    Construction.YOKE: "weight_raglan",
    Construction.DROP: "weight_drop",
    Construction.HAT: "weight_raglan",
}


class PointFit(Record):
    """One point of one size: measures and ease in cm, and the penalty it costs."""

    point: str
    body_cm: float
    garment_cm: float
    intended_cm: float
    penalty: float
    weight: float
    estimated: bool = False
    """Whether the body's measure is estimated: it then weighs half, and never puts a size out."""

    @property
    def ease_cm(self) -> float:
        """Give the ease that this size has here."""
        return self.garment_cm - self.body_cm

    @property
    def off_cm(self) -> float:
        """Give how far the ease is from the intended one: above nothing is too wide."""
        return self.ease_cm - self.intended_cm


class SizeFit(Record):
    """One size of a pattern against one body."""

    size: str
    score: float
    points: tuple[PointFit, ...]
    too_small_at: tuple[str, ...] = ()
    """Points below the floor: the fabric would be stretched past half its comfort. Such a size is out."""

    @property
    def verdict(self) -> Verdict:
        """Give the verdict: fits, fits with changes, or better drafted to measure."""
        if self.too_small_at or self.score > 1.5:
            return "draft to measure"
        return "fits" if self.score <= 0.5 and not self.to_change else "fits with changes"

    @property
    def to_change(self) -> tuple[PointFit, ...]:
        """Give the points whose penalty is over one, the worst first."""
        return tuple(sorted((p for p in self.points if p.penalty > 1), key=lambda p: -p.penalty))


def _tolerances(construction: Construction) -> dict[str, tuple[float, float, float]]:
    column = _WEIGHT_COLUMN[construction]
    return {
        row["point"]: (float(row["tight_cm"]), float(row["loose_cm"]), float(row[column]))
        for row in table("fit/tolerances.csv")
    }


def points_weighed(construction: Construction) -> frozenset[str]:
    """Give the points that a size of this construction is scored by: those whose weight is above nothing."""
    return frozenset(point for point, (_, _, weight) in _tolerances(construction).items() if weight > 0)


def score_size(
    size: str,
    body_cm: Mapping[str, float],
    garment_cm: Mapping[str, float],
    intended_cm: Mapping[str, float],
    construction: Construction,
    stretch: float,
    estimated: Collection[str] = (),
) -> SizeFit:
    r"""Score one size: the weighted mean of a penalty per point; smaller is better.

    With d = (garment - body) - intended ease: penalty :math:`(d/tight)^2` below nothing, :math:`(d/loose)^2`
    above, never more than 9. Where negative ease is intended, ``tight`` grows by 0.05 × stretch × body. A size
    with garment < body / (1 + stretch/2) at bust, hip or upper arm is out.

    :param body_cm, garment_cm, intended_cm: by point; only points known in all three count.
    :param stretch: share by which the washed fabric pulls wider in comfort.
    :param estimated: points whose body measure is estimated: half their weight, and never out on them.
    :raises ValueError: no point is known on both.
    Source: our proposal (see the module), tolerances and weights in ``data/fit/tolerances.csv``.
    """
    points, too_small = [], []
    for point, (tight, loose, weight) in _tolerances(construction).items():
        if not (point in body_cm and point in garment_cm and point in intended_cm):
            continue
        body, garment, intended = body_cm[point], garment_cm[point], intended_cm[point]
        room = 0.05 * stretch * body if intended < 0 else 0.0
        off = (garment - body) - intended
        penalty = min(MOST_PENALTY, (off / (tight + room if off < 0 else loose)) ** 2)
        points.append(
            PointFit(
                point=point,
                body_cm=body,
                garment_cm=garment,
                intended_cm=intended,
                penalty=penalty,
                weight=weight / 2 if point in estimated else weight,
                estimated=point in estimated,
            )
        )
        if point in FLOOR_POINTS and point not in estimated and garment < body / (1 + 0.5 * stretch):
            too_small.append(point)
    weight_in_all = sum(point.weight for point in points)
    if not points or weight_in_all == 0:
        raise ValueError(f"found no point of size {size} that is known on body and garment; wanted at least one")
    score = sum(point.weight * point.penalty for point in points) / weight_in_all
    return SizeFit(size=size, score=score, points=tuple(points), too_small_at=tuple(too_small))


def rank_sizes(fits: Sequence[SizeFit]) -> tuple[SizeFit, ...]:
    """Rank scored sizes, the best first; sizes that are out come last.

    Scores closer than 0.05 to the best: what is off by more than the greatest penalty can say goes last, the
    farther off the later; then the smaller shoulder penalty goes first, then the larger size (``fits`` stands from
    small to large).
    """
    place = {fit.size: number for number, fit in enumerate(fits)}
    ranked = sorted(fits, key=lambda fit: (bool(fit.too_small_at), fit.score))
    if not ranked:
        return ()
    best = ranked[0]
    close = [
        fit
        for fit in ranked
        if fit.score - best.score < NEARLY_EQUAL and bool(fit.too_small_at) == bool(best.too_small_at)
    ]
    close.sort(key=lambda fit: (_beyond_penalty_cm(fit), _shoulder_penalty(fit), -place[fit.size]))
    return (*close, *(fit for fit in ranked if fit not in close))


def _shoulder_penalty(fit: SizeFit) -> float:
    return next((point.penalty for point in fit.points if point.point == "shoulder_width"), 0.0)


def _beyond_penalty_cm(fit: SizeFit) -> float:
    """Give the weighted distance of the points whose penalty is the greatest and so no longer tells how far."""
    return sum(point.weight * abs(point.off_cm) for point in fit.points if point.penalty >= MOST_PENALTY)
