"""Measures that nobody, or hardly anybody, has: mostly a slip of the pen or the wrong unit."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from loopwright.body.body import Body, Wearer
from loopwright.body.doubt import BodyDoubt, capital, name_of, usual_text
from loopwright.body.measures import MEASURES, UsualRange
from loopwright.units import Reader, write_length

__all__ = ["range_doubts"]

_UNLIKELY: Final = 1.6
"""Times the 95th percentile, or the 5th divided by it: beyond any survey, within what people have been (judged)."""
_IMPOSSIBLE: Final = 2.2
"""Inches written as centimetres are 2.54 times too small (judged)."""
_CHILD_LEAST: Final = 5.0
"""A newborn's measures are more than a fifth of a grown-up's 5th percentile (judged)."""
_CHILD_MOST: Final = 1.3
_INCH_CM: Final = 2.54


def range_doubts(body: Body, reader: Reader) -> Iterator[BodyDoubt]:
    """Give the measures far from what grown-ups have, or larger than a child's or smaller than a newborn's can be."""
    for key, facts in MEASURES.items():
        value = body.measure_cm(key)
        usual = facts.usual.get(Wearer.MAN if body.wearer is Wearer.MAN else Wearer.WOMAN) or _any_usual(key)
        if value is None or usual is None:
            continue
        is_child = body.wearer is Wearer.CHILD
        low, high = (_CHILD_LEAST, _CHILD_MOST) if is_child else (_UNLIKELY, _UNLIKELY)
        if usual.p5_cm / low <= value <= usual.p95_cm * high:
            continue
        impossible = value > usual.p95_cm * _IMPOSSIBLE or value < usual.p5_cm / (_IMPOSSIBLE if not is_child else 8)
        how = "small" if value < usual.p5_cm else "large"
        sentence = f"{name_of(key)} {write_length(value, reader)} is too {how} for a {body.wearer}."
        yield BodyDoubt(
            measures=(key,),
            suspects=(key,),
            sentence=f"{capital(sentence)} {usual_text((key,), body.wearer, reader)}".rstrip(),
            sureness="cannot be" if impossible else "unlikely",
            to_do=_to_do(value, usual),
            source=f"{usual.source}; the limits are our judgement",
        )


def _any_usual(key: str) -> UsualRange | None:
    return next(iter(MEASURES[key].usual.values()), None)


def _to_do(value_cm: float, usual: UsualRange) -> str:
    if usual.p5_cm <= value_cm * _INCH_CM <= usual.p95_cm:
        return f"Did you mean {value_cm:g} in? Look at the unit, or measure again."
    if usual.p5_cm <= value_cm / _INCH_CM <= usual.p95_cm:
        return f"Did you mean {value_cm / _INCH_CM:.1f} cm, turned into centimetres twice? Look at the unit."
    if usual.p5_cm <= value_cm / 10 <= usual.p95_cm:
        return f"Did you mean {value_cm:g} mm? Look at the unit, or measure again."
    return "Look at the unit, or measure again."
