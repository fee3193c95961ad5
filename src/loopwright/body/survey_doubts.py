"""Measures that hardly anybody has together, by the normal curve of one given the others; grown-ups only."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator
from typing import Final

from loopwright.body.body import Body
from loopwright.body.completion import estimate_from, survey_links, survey_sex
from loopwright.body.doubt import BodyDoubt, capital, name_of
from loopwright.body.measures import MEASURES
from loopwright.uncertainty import Estimate
from loopwright.units import Reader, write_length, write_length_doubt

__all__ = ["MOST_DEVIATIONS", "survey_doubts"]

MOST_DEVIATIONS: Final = 4.0
"""Beyond four standard deviations lies one in 16 000 of a normal spread; the limit is our judgement."""


def survey_doubts(body: Body, suspects: Collection[str], reader: Reader) -> Iterator[BodyDoubt]:
    """Give the measures that lie far from what the others let expect, the farthest first; each is then left aside.

    The deviation is counted in the doubt of the estimate and of one home reading together. The mass takes no part:
    it is no tape measure and says nothing of where a tape lay.

    :param suspects: measures that are doubted already; they are left aside from the beginning.
    """
    if survey_sex(body.wearer) is None:
        return
    links, have = survey_links(body.wearer), body.known()
    left = {key: value for key, value in have.items() if key in links and key not in {"mass", *suspects}}
    while True:
        found = {key: _against_others(body, left, key) for key in left if links[key].is_estimated}
        far = {key: pair for key, pair in found.items() if pair is not None and abs(pair[1]) > MOST_DEVIATIONS}
        if not far:
            return
        worst = max(far, key=lambda key: abs(far[key][1]))
        others = tuple(key for key in left if key != worst and links[key].is_known)
        yield _doubt(worst, left[worst], others, far[worst][0], reader)
        del left[worst]


def _against_others(body: Body, left: dict[str, float], key: str) -> tuple[Estimate, float] | None:
    """Give what the others let expect, and how many standard deviations the measure lies from it."""
    links = survey_links(body.wearer)
    others = {other: value for other, value in left.items() if other != key and links[other].is_known}
    if not others:
        return None
    expected = estimate_from(body.wearer, others, key)
    spread = math.hypot(expected.sd, MEASURES[key].plan_sd_cm)
    return expected, (left[key] - expected.mean) / spread


def _doubt(key: str, value: float, others: tuple[str, ...], expected: Estimate, reader: Reader) -> BodyDoubt:
    names = [f"{name_of(other)}" for other in others]
    listed = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    sentence = (
        f"{name_of(key)} {write_length(value, reader)} does not go with {listed}: "
        f"{write_length_doubt(expected.mean, expected.sd, reader)} would be usual."
    )
    return BodyDoubt(
        measures=(key, *others),
        suspects=(key,),
        sentence=capital(sentence),
        sureness="unlikely",
        to_do=f"Measure {name_of(key)} again: {MEASURES[key].how_to}",
        source=f"{expected.steps[-1].source}; beyond {MOST_DEVIATIONS:g} standard deviations, our judgement",
    )
