"""Which measure is always the smaller one, and which measures add up."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from loopwright.body.body import Body, Wearer
from loopwright.body.doubt import BodyDoubt, capital, name_of, usual_text
from loopwright.data import table
from loopwright.units import Reader, write_length

__all__ = ["order_doubts", "sum_doubts", "waist_doubts"]


class _Sum(NamedTuple):
    """Parts that make up a whole, each with a factor; the whole less the parts lies between two bounds, in cm."""

    whole: str
    parts: tuple[tuple[str, float], ...]
    least_cm: float
    most_cm: float
    to_do: str


_SUMS: Final = (
    _Sum(
        "back_neck_to_hip",
        (("back_neck_to_waist", 1), ("waist_to_hip", 1)),
        -6,
        9,
        "Measure them again with the string at the natural waist in place, not at the navel.",
    ),
    _Sum(
        "back_neck_to_waist",
        (("scye_depth", 1), ("armpit_to_waist", 1)),
        -6,
        6,
        "Measure them again from one armpit level down to one string.",
    ),
    _Sum(
        "back_neck_to_wrist",
        (("shoulder_width_back", 0.5), ("arm_length_shoulder_to_wrist", 1)),
        -4,
        12,
        "Measure them again. With the arm raised and the elbow bent the tape reads several centimetres more: "
        "keep the arm only a little out.",
    ),
)
"""Bounds are our judgement, wide enough for the ways in which surveys differ."""

_NATURAL_MORE_LIKE_NAVEL: Final = {Wearer.WOMAN: (36.7, 44.3), Wearer.MAN: (41.2, 47.9)}
"""Mean back length to the natural waist and to the navel, in cm. Source: ANSUR 1988 (cross-read)."""
_USUAL_GAP_CM: Final = {Wearer.WOMAN: 6.6, Wearer.MAN: 2.3}
"""How much larger the waist at the navel is. Source: difference of the means of ANSUR 1988 (cross-read)."""
_WIDEST_GAP_CM: Final = 25.0


def order_doubts(body: Body, reader: Reader) -> Iterator[BodyDoubt]:
    """Give the pairs of which the one that should be smaller is the larger. Source: ``data/body/orders.csv``."""
    known = body.known()
    for row in table("body/orders.csv"):
        lesser, greater = row["lesser"], row["greater"]
        if lesser not in known or greater not in known:
            continue
        if known[lesser] > known[greater] + float(row["allowance_cm"]):
            found = (
                f"{name_of(lesser)} {write_length(known[lesser], reader)} is more than "
                f"{name_of(greater)} {write_length(known[greater], reader)}, but {row['why']}."
            )
            yield BodyDoubt(
                measures=(lesser, greater),
                suspects=(lesser, greater),
                sentence=f"{capital(found)} {usual_text((lesser, greater), body.wearer, reader)}".rstrip(),
                sureness="cannot be" if row["sureness"] == "cannot be" else "unlikely",
                to_do=row["advice"],
                source=row["source"],
            )


def sum_doubts(body: Body, reader: Reader) -> Iterator[BodyDoubt]:
    """Give the wholes that their parts do not add up to, for grown-ups; a child's parts stray less in cm."""
    known = body.known()
    for one in _SUMS:
        keys = (one.whole, *(part for part, _ in one.parts))
        if any(key not in known for key in keys):
            continue
        expected = sum(known[part] * times for part, times in one.parts)
        if not one.least_cm <= known[one.whole] - expected <= one.most_cm:
            parts = " and ".join(f"{'half the ' if times == 0.5 else ''}{name_of(part)}" for part, times in one.parts)
            sentence = (
                f"{name_of(one.whole)} {write_length(known[one.whole], reader)} does not agree with {parts}, "
                f"which come to {write_length(expected, reader)} together."
            )
            yield BodyDoubt(
                measures=keys,
                suspects=keys,
                sentence=capital(sentence),
                sureness="unlikely",
                to_do=one.to_do,
                source="bounds are our judgement",
            )


def waist_doubts(body: Body, reader: Reader) -> Iterator[BodyDoubt]:
    """Give what points to a waist taken at another place than it says."""
    yield from _gap_of_waists(body, reader)
    usual = _NATURAL_MORE_LIKE_NAVEL.get(body.wearer)
    length = body.back_neck_to_waist_cm
    if usual is not None and length is not None:
        mean_height_cm = 162.9 if body.wearer is Wearer.WOMAN else 175.6
        natural, navel = (cm * (body.height_cm or mean_height_cm) / mean_height_cm for cm in usual)
        if length > natural + 0.8 * (navel - natural):
            sentence = (
                f"Back neck to waist {write_length(length, reader)} is nearer to the usual length down to the navel "
                f"({write_length(navel, reader)}{' at this height' if body.height_cm else ''}) than to the natural "
                f"waist ({write_length(natural, reader)})."
            )
            yield BodyDoubt(
                measures=("back_neck_to_waist",),
                suspects=("back_neck_to_waist",),
                sentence=sentence,
                sureness="unlikely",
                to_do="Bend sideways, tie a string at the crease, and measure down to the string.",
                source="ANSUR 1988 means (cross-read), scaled by height; the limit is our judgement",
            )


def _gap_of_waists(body: Body, reader: Reader) -> Iterator[BodyDoubt]:
    natural, navel = body.waist_natural_girth_cm, body.waist_navel_girth_cm
    usual = _USUAL_GAP_CM.get(body.wearer)
    if natural is None or navel is None or usual is None:
        return
    alike = body.wearer is Wearer.WOMAN and abs(navel - natural) < 1
    if alike or navel - natural > _WIDEST_GAP_CM:
        how = "read alike" if alike else "lie far apart"
        sentence = (
            f"Natural waist {write_length(natural, reader)} and waist at the navel {write_length(navel, reader)} "
            f"{how}; the one at the navel is usually about {write_length(usual, reader)} larger."
        )
        yield BodyDoubt(
            measures=("waist_natural_girth", "waist_navel_girth"),
            suspects=("waist_natural_girth", "waist_navel_girth"),
            sentence=sentence,
            sureness="unlikely",
            to_do="Take both again: the natural waist at the crease when you bend sideways, the other at the navel.",
            source="ANSUR 1988 means (cross-read); the limits are our judgement",
        )
