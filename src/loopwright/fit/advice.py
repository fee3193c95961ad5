"""Between sizes: what to choose and what to change when one size does not suit everywhere."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.body import Body
from loopwright.fabric import Gauge
from loopwright.fit.score import SizeFit
from loopwright.fit.sizes import finished_at_gauge, size_named
from loopwright.fit.wish import FitWish, fits_of_sizes
from loopwright.pattern import Construction, PatternFacts
from loopwright.records import Record

__all__ = [
    "BustShaping",
    "SleeveSize",
    "bust_shaping",
    "least_garment_cm",
    "other_size_for_sleeves",
    "rivals_within_tape_error",
    "sleeve_length_wanted_cm",
]

FULL_BUST_FROM_CM = 5.0
"""Full bust over high bust from which a size is chosen by the high bust. Source: a sewing guide, widely repeated."""
NO_SHORT_ROWS_FROM_EASE_CM = 10.0


class BustShaping(Record):
    """A size chosen by the high bust, with short rows for the length over the bust.

    :ivar size: by the high bust.
    :ivar longer_cm: extra length in front; nothing where there is ease enough.
    :ivar rows: that length in rows, an even number.
    """

    size: str
    difference_cm: float
    longer_cm: float
    rows: int


def bust_shaping(wish: FitWish, body: Body, pattern: PatternFacts, gauge: Gauge | None) -> BustShaping | None:
    r"""Give the size by the high bust and the short rows it wants, when the full bust is 5 cm larger or more.

    Extra length is :math:`0.6 (D - 2.5)` cm, 0 to 10, with D = full bust - high bust; none where the bust's ease is
    10 cm or more. Rows are rounded to an even number. Source: choosing by the high bust, a sewing guide; the length is
    our proposal between the two geometries of a lifted and a hugging front.

    :returns: None unless both girths are known and differ by so much.
    """
    if body.bust_girth_cm is None or body.high_bust_girth_cm is None:
        return None
    difference = body.bust_girth_cm - body.high_bust_girth_cm
    if difference < FULL_BUST_FROM_CM:
        return None
    by_high = wish.with_body({**wish.body_cm, "bust_girth": body.high_bust_girth_cm})
    ranked = fits_of_sizes(by_high, pattern, gauge)
    if not ranked:
        return None
    size = ranked[0].size
    bust = finished_at_gauge(pattern, size_named(pattern, size), gauge).get("bust_girth")
    longer = min(max(0.6 * (difference - 2.5), 0.0), 10.0)
    if bust is not None and bust - body.bust_girth_cm >= NO_SHORT_ROWS_FROM_EASE_CM:
        longer = 0.0
    rows_per_10cm = (gauge or pattern.gauge).rows_per_10cm
    rows = 0 if rows_per_10cm is None else 2 * round(longer * rows_per_10cm / 20)
    return BustShaping(size=size, difference_cm=difference, longer_cm=longer, rows=rows)


class SleeveSize(Record):
    """Another size whose sleeve suits the arm better, worked from the armpit down."""

    size: str
    upper_arm_cm: float


def other_size_for_sleeves(
    wish: FitWish, own: SizeFit, pattern: PatternFacts, gauge: Gauge | None
) -> SleeveSize | None:
    """Give the size whose upper arm comes nearest to the wish when that of her own size is off by more than it may.

    :returns: None where the arm suits, is not known, or no other size comes nearer.
    """
    arm = next((point for point in own.points if point.point == "upper_arm_girth"), None)
    if arm is None or arm.penalty <= 1 or not pattern.construction.has_sleeves:
        return None
    wanted = arm.body_cm + arm.intended_cm
    girths = {
        name: girth
        for name in pattern.sizes
        if (girth := finished_at_gauge(pattern, size_named(pattern, name), gauge).get("upper_arm_girth")) is not None
    }
    if not girths:
        return None
    size = min(girths, key=lambda name: abs(girths[name] - wanted))
    if abs(girths[size] - wanted) >= abs(arm.off_cm) or size == own.size:
        return None
    return SleeveSize(size=size, upper_arm_cm=girths[size])


def least_garment_cm(body_cm: float, stretch: float) -> float:
    r"""Give the least finished girth that a fabric of this stretch should have on a body: half of its comfort used.

    .. math:: g = \frac{b}{1 + s/2}

    Source: geometry (the fabric is fully used at b / (1 + s), as sewing texts print it); half of it is our proposal.
    """
    return body_cm / (1 + 0.5 * stretch)


def rivals_within_tape_error(wish: FitWish, pattern: PatternFacts, gauge: Gauge | None, chosen: str) -> tuple[str, ...]:
    """Give the sizes that would come first if one body measure were off by its usual reading error, either way.

    :param chosen: the size that comes first as measured.
    :returns: none when the choice holds whatever measure is moved; in the order of the pattern's sizes.
    Source: our proposal; the errors are those of ``data/body/measures.csv``.
    """
    rivals = set()
    for point, sd_cm in wish.plan_sd_cm.items():
        if point not in wish.body_cm:
            continue
        for moved in (wish.body_cm[point] - sd_cm, wish.body_cm[point] + sd_cm):
            ranked = fits_of_sizes(wish.with_body({**wish.body_cm, point: moved}), pattern, gauge)
            if ranked and ranked[0].size != chosen:
                rivals.add(ranked[0].size)
    return tuple(name for name in pattern.sizes if name in rivals)


def sleeve_length_wanted_cm(body: Body, construction: Construction, measures: Mapping[str, float]) -> float | None:
    """Give the sleeve from underarm to wrist that the arm asks for, or None where it is not known.

    A sleeve is as long as the arm from underarm to wrist; a dropped shoulder falls down the arm, so its sleeve is
    centre back to wrist less half the garment's width. Source: common practice.
    """
    if construction is Construction.DROP:
        if body.back_neck_to_wrist_cm is None or "bust_girth" not in measures:
            return None
        return max(body.back_neck_to_wrist_cm - measures["bust_girth"] / 4, 0.0)
    if not construction.has_sleeves:
        return None
    return body.underarm_to_wrist_cm
