"""What does not agree among the measures of one body: warnings, each with what to do; nothing is refused."""

from __future__ import annotations

from loopwright.body.body import Body, Wearer
from loopwright.body.doubt import BodyDoubt
from loopwright.body.order_doubts import order_doubts, sum_doubts, waist_doubts
from loopwright.body.range_doubts import range_doubts
from loopwright.body.survey_doubts import survey_doubts
from loopwright.units import Reader

__all__ = ["body_doubts"]


def body_doubts(body: Body, reader: Reader | None = None) -> tuple[BodyDoubt, ...]:
    """Give everything that does not agree, what cannot be before what is unlikely.

    What is told of a measure once is not told again in other words: a pair in the wrong order stands for a measure
    that is merely rare, and a measure that is doubted takes no part in doubting others.

    :param reader: in whose measures the sentences are written; left out, in centimetres.
    """
    reader = reader or Reader()
    orders = list(order_doubts(body, reader))
    wrong = {key for doubt in orders if doubt.sureness == "cannot be" for key in doubt.measures}
    ranges = [one for one in range_doubts(body, reader) if one.sureness == "cannot be" or one.measures[0] not in wrong]
    rare = {one.measures[0] for one in ranges}
    found = ranges + [one for one in orders if not rare & set(one.measures)]
    found += [one for one in waist_doubts(body, reader) if not rare & set(one.measures)]
    if body.wearer is not Wearer.CHILD:
        found += [one for one in sum_doubts(body, reader) if not (rare | wrong) & set(one.measures)]
    suspects = {key for one in found for key in one.suspects}
    found += survey_doubts(body, suspects, reader)
    return tuple(sorted(found, key=lambda one: one.sureness != "cannot be"))
