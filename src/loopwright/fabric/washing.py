"""What washing does to a fabric: by her own two gauges, or by its fibres where only one is known."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Literal

from loopwright.fabric.gauge_statistics import CountStatistics
from loopwright.fabric.swatch import Swatch
from loopwright.records import Record
from loopwright.yarn import FIBRES, Yarn

__all__ = [
    "Factor",
    "Length",
    "Side",
    "WashChange",
    "WashRange",
    "expected_wash",
    "knit_to_cm",
    "wash_change",
    "washed_cm",
]

Side = Literal["length", "width"]


class Factor(Record):
    """How many times as long or wide something becomes, with one standard deviation."""

    mean: float
    sd: float

    @property
    def percent(self) -> float:
        """Give the change in percent; above nothing it grows."""
        return (self.mean - 1) * 100


class Length(Record):
    """A length in cm with one standard deviation."""

    cm: float
    sd_cm: float


class WashChange(Record):
    """What washing did to her swatch: after ÷ before; above one it grows.

    :ivar length: None where rows were not counted both times.
    """

    width: Factor
    length: Factor | None


class WashRange(Record):
    """What the first gentle hand wash usually does to these fibres, in percent of length and width.

    Common practice, no source: a washed swatch beats it.

    :ivar known_percent: share by mass of the fibres that something is known of; the rest is left out.
    :ivar behaviour: how each fibre behaves, in words, by name.
    """

    length_pct: tuple[float, float]
    width_pct: tuple[float, float]
    known_percent: float
    behaviour: Mapping[str, str]


def _factor(before: CountStatistics | None, after: CountStatistics | None) -> Factor | None:
    if before is None or after is None:
        return None
    mean = before.mean / after.mean
    return Factor(mean=mean, sd=mean * math.hypot(before.relative_se, after.relative_se))


def wash_change(swatch: Swatch) -> WashChange | None:
    r"""Give what washing did to the swatch, or None unless it was counted before and after.

    ``factor = before/after`` of the counts to 10 cm, since fewer stitches to a length are wider ones; its relative
    variance is the sum of both, as if the counts were independent (:math:`(s_f/f)^2 = (s_b/b)^2 + (s_a/a)^2`). Counted
    in the very same places both times it is surer than that. Source: definition; JCGM 100:2008 (GUM), 5.1.2
    (from memory).
    """
    width = _factor(swatch.stitches_of(swatch.before), swatch.stitches_of(swatch.after))
    if width is None:
        return None
    return WashChange(width=width, length=_factor(swatch.rows_of(swatch.before), swatch.rows_of(swatch.after)))


def _side(swatch: Swatch, side: Side) -> Factor | None:
    change = wash_change(swatch)
    return None if change is None else change.length if side == "length" else change.width


def knit_to_cm(wanted_after_cm: float, swatch: Swatch, side: Side = "length") -> Length | None:
    """Give the length off the needles, unwashed, that washes to the wanted one: ``wanted / factor``; in cm.

    :param wanted_after_cm: finished, washed and dry.
    :returns: None where the swatch does not tell what washing does.
    Measure lying flat: on the needles a piece hangs longer than it is.
    """
    factor = _side(swatch, side)
    if factor is None:
        return None
    mean = wanted_after_cm / factor.mean
    return Length(cm=mean, sd_cm=mean * factor.sd / factor.mean)


def washed_cm(unwashed_cm: float, swatch: Swatch, side: Side = "length") -> Length | None:
    """Give the washed length of a piece that measures ``unwashed_cm`` off the needles; undoes :func:`knit_to_cm`."""
    factor = _side(swatch, side)
    if factor is None:
        return None
    return Length(cm=unwashed_cm * factor.mean, sd_cm=unwashed_cm * factor.sd)


def expected_wash(strands: Sequence[Yarn]) -> WashRange | None:
    """Give what the first gentle hand wash usually does to yarns held together, by their fibres.

    The range of a blend is the mean of its fibres' ranges, weighted by mass. None where no fibre is known.
    Source: ``data/fibre/fibres.csv``, common practice; that blends average is our judgement.
    """
    shares: dict[str, float] = {}
    for yarn in strands:
        for share in yarn.fibres:
            shares[share.fibre] = shares.get(share.fibre, 0.0) + share.percent * yarn.grist_tex
    in_all = math.fsum(yarn.grist_tex for yarn in strands if yarn.fibres)
    known = {fibre: share for fibre, share in shares.items() if fibre in FIBRES}
    weight = math.fsum(known.values())
    if not weight:
        return None

    def middle(ends: Sequence[tuple[float, float]]) -> tuple[float, float]:
        low = math.fsum(share * end[0] for share, end in zip(known.values(), ends, strict=True)) / weight
        return low, math.fsum(share * end[1] for share, end in zip(known.values(), ends, strict=True)) / weight

    return WashRange(
        length_pct=middle([FIBRES[fibre].wash_length_pct for fibre in known]),
        width_pct=middle([FIBRES[fibre].wash_width_pct for fibre in known]),
        known_percent=weight / in_all,
        behaviour={fibre: FIBRES[fibre].wash_behaviour for fibre in known},
    )
