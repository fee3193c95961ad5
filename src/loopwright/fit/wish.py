"""What a fit is judged by: a body, the ease that is wanted, the construction and the fabric's stretch."""

from __future__ import annotations

from collections.abc import Mapping

from pydantic import Field

from loopwright.fabric import Gauge
from loopwright.fit.score import SizeFit, points_weighed, rank_sizes, score_size
from loopwright.fit.sizes import SizeChoice, finished_at_gauge, size_named
from loopwright.pattern import Construction, PatternFacts
from loopwright.records import Record

__all__ = ["FitWish", "fit_of_measures", "fits_of_sizes"]


class FitWish(Record):
    """What every size is held against.

    :ivar body_cm, intended_cm: body measure and wanted ease by point of the garment.
    :ivar wished_by: whose wish the ease is, in words, by point.
    :ivar plan_sd_cm: how far one home reading of each body measure strays.
    :ivar estimated: points whose body measure is estimated, not taken.
    :ivar stretch: share by which the washed fabric pulls wider in comfort.
    """

    body_cm: Mapping[str, float]
    intended_cm: Mapping[str, float]
    wished_by: Mapping[str, str] = Field(default_factory=dict)
    plan_sd_cm: Mapping[str, float]
    estimated: frozenset[str] = frozenset()
    construction: Construction
    stretch: float

    def knows(self, measures: Mapping[str, float]) -> bool:
        """Say whether body, wish and these finished measures share a point that counts in this construction."""
        shared = points_weighed(self.construction) & self.body_cm.keys() & self.intended_cm.keys()
        return any(point in shared for point in measures)

    def with_body(self, body_cm: Mapping[str, float]) -> FitWish:
        """Give the same wish for other body measures."""
        return self.model_copy(update={"body_cm": dict(body_cm)})


def fit_of_measures(wish: FitWish, name: str, measures: Mapping[str, float]) -> SizeFit | None:
    """Score finished measures against a wish, or None where they share no point."""
    if not wish.knows(measures):
        return None
    return score_size(name, wish.body_cm, measures, wish.intended_cm, wish.construction, wish.stretch, wish.estimated)


def fits_of_sizes(
    wish: FitWish, pattern: PatternFacts, gauge: Gauge | None, own: SizeChoice | None = None
) -> tuple[SizeFit, ...]:
    """Rank every size of a pattern at her gauge, and a size of her own between two, the best first.

    :param gauge: hers; the pattern's when None.
    """
    choices = [size_named(pattern, name) for name in pattern.sizes]
    if own is not None and own.name not in pattern.sizes:
        choices.append(own)
    fits = [fit_of_measures(wish, choice.name, finished_at_gauge(pattern, choice, gauge)) for choice in choices]
    return rank_sizes([fit for fit in fits if fit is not None])
