"""Missing measures estimated from any set of known ones, each with its doubt and how it came about.

An estimate never takes the place of a measure: it stands beside the measures of a body, marked as estimated.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from typing import Final

from loopwright.body.body import Body, Wearer
from loopwright.body.measures import MEASURES
from loopwright.body.survey import Conditional, Dimension, Sex, conditional, dimensions
from loopwright.data import table
from loopwright.records import Record
from loopwright.uncertainty import Estimate, Origin, Step

__all__ = ["Completion", "SurveyLink", "complete", "estimate_from", "survey_links", "survey_sex"]

REFUSED_FOR_CHILD: Final = (
    "The survey measured grown-ups only. A child is not a small grown-up: measure, do not estimate."
)
REFUSED_WITHOUT: Final = (
    "Nothing is known that the survey takes the same way. Bust or chest, hip and height are a good beginning."
)
_SEX: Final[Mapping[Wearer, Sex]] = {Wearer.WOMAN: "F", Wearer.MAN: "M"}


class SurveyLink(Record):
    """How a measure of ours stands to a dimension of the survey.

    :ivar dimension: the survey's; None where it has none that is taken in the same place.
    :ivar is_known: whether our measure may be put in as it is.
    :ivar is_estimated: whether the survey's dimension may stand for ours.
    :ivar why: what differs, to be shown beside the estimate, or in its place.
    """

    measure: str
    dimension: str | None
    is_known: bool
    is_estimated: bool
    why: str


class Completion(Record):
    """What can be said of the measures that are missing.

    :ivar estimates: in cm by measure, each marked computed, or a guess where a known measure lies beyond the survey.
    :ivar used: the known measures that it was worked out from.
    :ivar to_ask: the missing measures that cannot be estimated, each with the reason; empty where all is refused.
    :ivar refused: why nothing was estimated at all.
    """

    estimates: Mapping[str, Estimate]
    used: tuple[str, ...] = ()
    to_ask: Mapping[str, str]
    refused: str | None = None


def survey_sex(wearer: Wearer) -> Sex | None:
    """Give the half of the survey that a wearer belongs to; None for a child."""
    return _SEX.get(wearer)


def survey_links(wearer: Wearer) -> dict[str, SurveyLink]:
    """Give how the measures of a wearer stand to the survey, by measure. Source: ``data/body/survey_links.csv``."""
    return {
        row["measure"]: SurveyLink(
            measure=row["measure"],
            dimension=row["dimension"] or None,
            is_known=row["use"] in {"both", "known"},
            is_estimated=row["use"] in {"both", "estimated"},
            why=row["why"],
        )
        for row in table("body/survey_links.csv")
        if row["wearer"] in {"both", wearer}
    }


def complete(body: Body, leave_out: Collection[str] = ()) -> Completion:
    """Estimate every measure that is missing and that the survey takes the same way.

    The armhole's depth is never estimated: it hardly follows any other measure (R² 0.11 in women and 0.19 in men from
    height and bust). Nor is a natural waist made from one at the navel, or the other way round.

    :param leave_out: known measures to put no trust in, such as those that
        :func:`~loopwright.body.sanity.body_doubts` suspects.
    """
    links, sex, have = survey_links(body.wearer), survey_sex(body.wearer), body.known()
    missing = [key for key in MEASURES if key in links and key not in have]
    usable = {key for key, link in links.items() if link.is_known} - set(leave_out)
    known = {key: value for key, value in have.items() if key in usable}
    if sex is None or not known:
        reason = REFUSED_FOR_CHILD if sex is None else REFUSED_WITHOUT
        return Completion(estimates={}, to_ask={}, refused=reason)
    return Completion(
        estimates={key: estimate_from(body.wearer, known, key) for key in missing if links[key].is_estimated},
        used=tuple(known),
        to_ask={key: links[key].why for key in missing if not links[key].is_estimated},
    )


def estimate_from(wearer: Wearer, known: Mapping[str, float], measure: str) -> Estimate:
    """Estimate one measure from others, by the conditional normal curve of the survey.

    Beyond the survey's 1st and 99th percentile a relation is stretched: the doubt then grows by all that the part
    beyond adds to the mean, and the figure is marked a guess (our judgement).

    :param known: by measure, in cm (``mass`` in kg); each must be one that the survey takes the same way.
    :raises ValueError: the wearer is a child, or a measure does not stand for any of the survey.
    """
    sex, links = survey_sex(wearer), survey_links(wearer)
    if sex is None:
        raise ValueError(REFUSED_FOR_CHILD)
    wrong = [key for key in known if key not in links or not links[key].is_known]
    if wrong or measure not in links or not links[measure].is_estimated:
        raise ValueError(f"the survey does not take {', '.join(wrong) or measure} the way that we do")
    of = {key: link.dimension for key, link in links.items() if link.dimension}
    given = conditional(sex, {of[key]: value for key, value in known.items()}, of[measure])
    every = dimensions(sex)
    beyond = {key: over for key, value in known.items() if (over := _beyond(every[of[key]], value))}
    sd = math.hypot(given.sd, *(given.weights[of[key]] * over for key, over in beyond.items()))
    steps = [_known_step(key, value, beyond.get(key)) for key, value in known.items()]
    last = _last_step(every[of[measure]], given, sd, links[measure].why, is_guess=bool(beyond))
    return Estimate(mean=given.mean, sd=sd, unit="cm", origin=last.origin, steps=(*steps, last))


def _beyond(dimension: Dimension, value: float) -> float:
    """Give how far a value lies outside the survey's 1st to 99th percentile; nothing within."""
    return value - min(max(value, dimension.p01), dimension.p99)


def _known_step(key: str, value: float, beyond: float | None) -> Step:
    name = MEASURES[key].name if key in MEASURES else "Mass"
    outside = f"{abs(beyond):.1f} beyond what 98 in 100 of the survey measured" if beyond else ""
    return Step(says=name, working=outside, value=value, unit="kg" if key == "mass" else "cm", origin=Origin.MEASURED)


def _last_step(of: Dimension, given: Conditional, sd: float, why: str, *, is_guess: bool) -> Step:
    widened = f"doubt widened from {given.sd:.1f} to {sd:.1f} cm, because the relation is stretched" if is_guess else ""
    return Step(
        says=f"what people of those measures have in the survey{f'; {why}' if why else ''}",
        working=f"mean of all {of.mean:.1f} ± {of.sd:.1f} cm, {of.n} people{f'; {widened}' if widened else ''}",
        value=given.mean,
        sd=sd,
        unit="cm",
        origin=Origin.GUESS if is_guess else Origin.COMPUTED,
        source=f"{of.source}: {of.definition}",
    )
