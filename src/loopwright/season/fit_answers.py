"""Will it fit? The answer, with what to do between sizes."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from loopwright.body import body_doubts, days_too_old
from loopwright.fit import PointFit, SizeFit
from loopwright.fit.advice import (
    bust_shaping,
    least_garment_cm,
    other_size_for_sleeves,
    rivals_within_tape_error,
    sleeve_length_wanted_cm,
)
from loopwright.pattern import Construction
from loopwright.season.result import Answer, Figure, Tone
from loopwright.season.settle import Settled
from loopwright.season.sizing import measure_key
from loopwright.season.wording import ONE_SIZE, POINT_NAMES, Wording
from loopwright.units import write_length_doubt, write_share

__all__ = ["fit_answer"]

JUDGED = ("bust_girth", "hip_girth", "upper_arm_girth", "shoulder_width")
SLEEVE_MATTERS_FROM_CM = 2.0
NO_EASE_BELOW_CM = 0.05


def _off(point: PointFit, wording: Wording) -> str:
    way = "more" if point.off_cm > 0 else "less"
    return f"{wording.cm(abs(point.off_cm))} {way} at the {POINT_NAMES[point.point]}"


def _ease(ease_cm: float, wording: Wording) -> str:
    if abs(ease_cm) < NO_EASE_BELOW_CM:
        return "no ease"
    return f"{wording.cm(abs(ease_cm))} of {'ease' if ease_cm > 0 else 'negative ease'}"


def fit_answer(one: Settled, wording: Wording, today: dt.date) -> Answer:
    """Answer *Will it fit?* from the ranked sizes, or say what is missing.

    :param today: the date the plan is made for; a child's measures grow old.
    """
    question = "Will it fit?"
    if one.choice is None:
        return Answer(
            key="fit",
            question=question,
            sentence="Not settled yet: choose a size, or name the wearer and give measures that the pattern has too.",
            tone="no",
        )
    own = next((fit for fit in one.fits if fit.size == one.choice.name), None)
    figures = tuple(
        Figure(label=f"finished {POINT_NAMES[point]}", text=wording.cm(measure))
        for point, measure in one.finished_cm.items()
    )
    if own is None:
        size = ONE_SIZE.capitalize() if one.choice.name == ONE_SIZE else f"Size {one.choice.name}"
        sentence = f"{size}; there is no body to hold it against."
        if not one.pattern.construction.is_top:
            sentence = f"{size}: {_main_measures(one, wording)}."
        return Answer(key="fit", question=question, sentence=sentence, figures=figures)
    sentence, tone = _fit_sentence(own, wording)
    figures += _wishes(one, own, wording)
    return Answer(
        key="fit",
        question=question,
        sentence=sentence,
        tone=tone,
        reasons=_fit_reasons(one, own, wording, today),
        figures=figures,
    )


def _wishes(one: Settled, own: SizeFit, wording: Wording) -> tuple[Figure, ...]:
    """Give the ease that is wanted at each point, and whose wish it is."""
    assert one.wish is not None  # a size is only judged by a wish
    return tuple(
        Figure(
            label=f"ease wanted, {POINT_NAMES[point.point]}",
            text=f"{wording.signed(point.intended_cm)}, {one.wish.wished_by.get(point.point, 'wanted')}",
        )
        for point in own.points
    )


def _main_measures(one: Settled, wording: Wording) -> str:
    parts = [f"{POINT_NAMES[point]} {wording.cm(cm)}" for point, cm in one.finished_cm.items()]
    return wording.listed(parts) or "the pattern states no measures"


def _fit_sentence(own: SizeFit, wording: Wording) -> tuple[str, Tone]:
    first = own.points[0]
    where = f"{POINT_NAMES[first.point]} {wording.cm(first.garment_cm)}, {_ease(first.ease_cm, wording)}"
    changes = wording.listed([_off(point, wording) for point in own.to_change])
    changes = f"{changes} than you want" if changes else "too small"
    if own.verdict == "fits":
        return f"Yes, {own.size}: {where}.", "yes"
    if own.verdict == "fits with changes" and not own.to_change:
        return f"Nearly, {own.size}: {where}, where you want {_ease(first.intended_cm, wording)}.", "unsure"
    if own.verdict == "fits with changes":
        return f"With changes, {own.size}: {where}, but {changes}.", "unsure"
    return f"Not well, {own.size}: {where}, but {changes}. Better drafted to measure.", "no"


def _fit_reasons(one: Settled, own: SizeFit, wording: Wording, today: dt.date) -> tuple[str, ...]:
    return (
        *_other_sizes(one, own, wording),
        *_too_small(one, own, wording),
        *_shoulders(one, own, wording),
        *_between_sizes(one, own, wording),
        *_not_judged(one, own, wording),
        *_doubtful_measures(one, wording),
        *_outgrown(one, today),
    )


def _other_sizes(one: Settled, own: SizeFit, wording: Wording) -> Iterator[str]:
    """Say which size is nearer or next, and whether the choice holds against the tape's error."""
    best = one.fits[0]
    if one.choice is not None and not one.choice.counts_kept:
        yield f"You work stitch counts of your own, {one.choice.name} of the pattern."
    if best.size != own.size:
        yield f"{best.size} would come nearer to the ease you want ({best.score:.2f} off against {own.score:.2f})."
        return
    if len(one.fits) > 1:
        following = one.fits[1]
        yield (
            f"Next best is {following.size}, further from the ease you want "
            f"({following.score:.2f} off against {own.score:.2f})."
        )
    if one.wish is None or (one.choice is not None and not one.choice.counts_kept):
        return
    gauge = one.swatch.gauge if one.swatch else None
    rivals = rivals_within_tape_error(one.wish, one.pattern, gauge, own.size)
    if rivals:
        yield f"Measure again before you cast on: within the tape's own error it could be {wording.listed(rivals)}."
    elif len(one.pattern.sizes) > 1:
        yield "The choice holds within the tape's own error, whichever measure is off."


def _too_small(one: Settled, own: SizeFit, wording: Wording) -> Iterator[str]:
    """Say where the fabric would be stretched too far, and how small it may be where ease is negative."""
    assert one.wish is not None  # a size is only judged by a wish
    for name in own.too_small_at:
        least = least_garment_cm(one.wish.body_cm[name], one.wish.stretch)
        yield (
            f"The {POINT_NAMES[name]} would stretch past half of its comfort: "
            f"at least {wording.cm(least)} in this fabric."
        )
    for point in own.points:
        if point.ease_cm < 0 and point.point not in own.too_small_at and point.point in JUDGED[:3]:
            least = least_garment_cm(point.body_cm, one.wish.stretch)
            pulled = "as you pulled it" if one.swatch is not None and one.swatch.stretch else "by common practice"
            yield (
                f"Negative ease at the {POINT_NAMES[point.point]}: the fabric, stretching "
                f"{write_share(one.wish.stretch)} {pulled}, should not be under {wording.cm(least)}."
            )


def _shoulders(one: Settled, own: SizeFit, wording: Wording) -> Iterator[str]:
    """Warn of a shoulder width that a set-in sleeve cannot forgive."""
    if one.pattern.construction is not Construction.SET_IN:
        return
    shoulder = next((point for point in own.points if point.point == "shoulder_width"), None)
    if shoulder is not None and shoulder.penalty > 1:
        way = "wide and would slide off" if shoulder.off_cm > 0 else "narrow and would pull"
        yield (
            f"The shoulders are {wording.cm(abs(shoulder.off_cm))} too {way}: a set-in sleeve needs them right, "
            "while a raglan or round yoke forgives about 3 cm."
        )


def _between_sizes(one: Settled, own: SizeFit, wording: Wording) -> Iterator[str]:
    """Say what to do where one size does not suit everywhere: high bust, sleeves of another size, sleeve length."""
    if one.wish is None or one.body is None:
        return
    gauge = one.swatch.gauge if one.swatch else None
    shaping = bust_shaping(one.wish, one.body, one.pattern, gauge)
    if shaping is not None:
        rows = f", about {shaping.rows} short rows" if shaping.rows else ""
        more = f" with {wording.cm(shaping.longer_cm)} more length in front{rows}" if shaping.longer_cm else ""
        yield (
            f"The full bust is {wording.cm(shaping.difference_cm)} over the high bust: "
            f"consider {shaping.size} by the high bust{more}."
        )
    sleeves = other_size_for_sleeves(one.wish, own, one.pattern, gauge)
    if sleeves is not None:
        yield (
            f"Work the sleeves of {sleeves.size} from the armpit down: their upper arm is "
            f"{wording.cm(sleeves.upper_arm_cm)}."
        )
    wanted = sleeve_length_wanted_cm(one.body, one.pattern.construction, one.finished_cm)
    has = one.finished_cm.get("sleeve_length")
    if wanted is not None and has is not None and abs(wanted - has) >= SLEEVE_MATTERS_FROM_CM:
        way = "longer" if wanted > has else "shorter"
        yield f"The arm asks for sleeves {wording.cm(abs(wanted - has))} {way}."


def _not_judged(one: Settled, own: SizeFit, wording: Wording) -> Iterator[str]:
    """Name what could not be judged, and what was judged on an estimate."""
    known = {point.point for point in own.points}
    missing = [POINT_NAMES[point] for point, _ in one.pattern.finished.rows() if point not in known and point in JUDGED]
    if missing:
        yield f"Not judged, because a body measure is missing: {wording.listed(missing)}."
    if one.wish is None:
        return
    estimated = [
        f"{POINT_NAMES[point.point]} "
        f"{write_length_doubt(point.body_cm, one.wish.plan_sd_cm[point.point], wording.reader)}"
        for point in own.points
        if point.estimated
    ]
    if estimated:
        yield (
            f"Estimated from the other measures, not taken, and so half weighed: {wording.listed(estimated)}. "
            "Take the tape before you rely on it."
        )


def _doubtful_measures(one: Settled, wording: Wording) -> Iterator[str]:
    """Say which measures that this garment rests on do not agree, and what to measure again."""
    if one.wish is None or one.body is None:
        return
    keys = {measure_key(point, one.body) for point in one.wish.body_cm}
    for doubt in body_doubts(one.body, wording.reader):
        if keys & set(doubt.measures):
            yield f"{doubt.sentence} {doubt.to_do}"


def _outgrown(one: Settled, today: dt.date) -> Iterator[str]:
    """Say when a child's measures will be too old on the day the garment is wanted."""
    if one.body is None or one.wish is None:
        return
    day = max(one.garment.due or today, today)
    keys = {measure_key(point, one.body) for point in one.wish.body_cm}
    if keys & set(days_too_old(one.body, day)):
        when = "by then" if one.garment.due else "by now"
        yield f"{one.body.name} grows: what was measured is over three months old {when}. Measure again."
