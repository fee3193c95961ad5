"""The questions about a swatch, answered in words."""

from __future__ import annotations

from loopwright.fabric import Factor, Needle, NeedleAdvice, WashRange
from loopwright.fit.ways_out import RowEffect, WaysOut
from loopwright.season.result import Answer, Figure, Tone
from loopwright.season.swatch_report import CountedSide, GarmentOnSwatch, KnitTo, SwatchReport
from loopwright.season.wording import POINT_NAMES, Wording
from loopwright.units import write_length

__all__ = ["garment_answers_on", "gauge_text", "needle_text", "swatch_answers"]

OLD_NUMBERS = "Old numbers differ by country and decade: go by the millimetres, and measure an old needle."
SURE_SD = 2.0
SAME = 0.005
"""Gauges that differ by less than this share are called the same."""
WORDED_TIGHTNESS = {
    "open": "open: it drapes, and shows what is beneath",
    "soft": "soft: it drapes and gives",
    "normal": "normal for a garment",
    "firm": "firm, as for socks and mittens",
    "board-like": "board-like: a larger needle would let it move",
}


def swatch_answers(report: SwatchReport, wording: Wording) -> tuple[Answer, ...]:
    """Answer what the gauge is, what the wash does, and how tight the fabric is."""
    return _gauge(report, wording), _wash(report, wording), *_tightness(report)


def garment_answers_on(garment: GarmentOnSwatch, wording: Wording) -> tuple[Answer, ...]:
    """Answer what the swatch means on one garment, which needle comes next, and what the ways out are."""
    return (_means(garment, wording), _needle(garment.needle, wording), *_ways(garment, wording))


def gauge_text(side: CountedSide, wording: Wording) -> str:
    """Write a gauge with its standard errors: ``22.0 ± 0.3 sts × 30.0 ± 0.4 rows to 10 cm``."""
    metric = wording.reader.measures == "metric"
    times = 1.0 if metric else 1.016
    parts = [_number(side.stitches.mean * times, side.stitches.se * times) + " sts"]
    if side.rows is not None:
        parts.append(_number(side.rows.mean * times, side.rows.se * times) + " rows")
    return f"{' × '.join(parts)} to {'10 cm' if metric else '4 in'}"


def _number(mean: float, sd: float) -> str:
    digits = 1 if sd >= 0.095 else 2
    return f"{mean:.{digits}f} ± {max(sd, 0.01):.{digits}f}"


def needle_text(mm: float, needle: Needle | None) -> str:
    """Write a needle by its millimetres and, where it has some, its numbers."""
    numbers = [] if needle is None else [(needle.us, "US"), (needle.old_uk, "old UK")]
    named = ", ".join(f"{system} {number}" for number, system in numbers if number)
    return f"{mm:g} mm ({named})" if named else f"{mm:g} mm"


def _gauge(report: SwatchReport, wording: Wording) -> Answer:
    state = "washed and dry" if report.is_washed else "not washed yet"
    places = wording.counted(report.places, "place")
    reasons = [
        f"Hard to believe: {doubt.says}. Usual reasons: {wording.listed(doubt.reasons)}." for doubt in report.doubts
    ]
    if report.places == 1:
        reasons.append("Count in two or three places more: it costs a minute and halves the doubt.")
    if not report.is_washed:
        reasons.append(
            "Finished measures are after washing: wash it as the garment will be washed, dry it, count again."
        )
    if report.planned.rows is None:
        reasons.append("Rows are not counted: they are taken as 1.38 to a stitch where they are needed.")
    sides = ((report.before, "before washing"), (report.after, "after washing"))
    tone: Tone = "unsure" if report.doubts or not report.is_washed else "plain"
    return Answer(
        key="gauge",
        question=f"What is my {wording.word('tension')}?",
        sentence=f"{gauge_text(report.planned, wording)}, {state}, counted in {places}.",
        tone=tone,
        reasons=tuple(reasons),
        figures=tuple(Figure(label=label, text=gauge_text(side, wording)) for side, label in sides if side is not None),
    )


def _change(side: str, factor: Factor, more: str, less: str) -> str:
    said = f"{side} {_percent(factor.percent)} ± {factor.sd * 100:.1f} %"
    if abs(factor.mean - 1) <= SURE_SD * factor.sd:
        return f"{said}, no more than counting can explain"
    return f"{said}, it becomes {more if factor.mean > 1 else less}"


def _percent(percent: float) -> str:
    sign = "" if round(percent, 1) == 0 else "−" if percent < 0 else "+"
    return f"{sign}{abs(percent):.1f}"


def _range(ends: tuple[float, float]) -> str:
    return f"{_percent(ends[0])} to {_percent(ends[1])} %"


def _usual(usual: WashRange) -> str:
    part = "" if usual.known_percent > 99 else f", for the {usual.known_percent:.0f} % of it that is known"
    return (
        f"Yarns like this usually change by {_range(usual.length_pct)} in length and {_range(usual.width_pct)} in "
        f"width in a first gentle hand wash{part}: common practice, no source."
    )


def _wash(report: SwatchReport, wording: Wording) -> Answer:
    question = "What does the wash do?"
    usual = () if report.usual_wash is None else (_usual(report.usual_wash),)
    if report.wash is None:
        missing = "before" if report.is_washed else "after"
        sentence = f"Not known: it was not counted {missing} washing."
        return Answer(key="wash", question=question, sentence=sentence, tone="unsure", reasons=usual)
    said = _change("Width", report.wash.width, "wider", "narrower")
    if report.wash.length is not None:
        said += f"; {_change('length', report.wash.length, 'longer', 'shorter')}"
    asked = () if report.asked is None else (_knit_words("a length", report.asked, wording),)
    return Answer(key="wash", question=question, sentence=f"{said}.", reasons=(*asked, *usual))


def _tightness(report: SwatchReport) -> tuple[Answer, ...]:
    found = report.tightness
    if found is None:
        return ()
    nearly = f" It lies close to {found.nearly}." if found.nearly else ""
    answer = Answer(
        key="tightness",
        question="How tight is the fabric?",
        sentence=f"It is {WORDED_TIGHTNESS[found.word]}.",
        reasons=(
            f"√tex over loop length is {found.factor:.2f} ± {found.sd:.2f}.{nearly} "
            "The words are our judgement, for smooth wool.",
        ),
    )
    return (answer,)


def _length(cm: float, sd_cm: float, wording: Wording) -> str:
    """Write a length with its doubt, to one decimal as a tape can show it."""
    times, unit = (1.0, "cm") if wording.reader.measures == "metric" else (1 / 2.54, "in")
    return f"{cm * times:.1f} ± {max(sd_cm * times, 0.1):.1f} {unit}"


def _knit_words(what: str, one: KnitTo, wording: Wording) -> str:
    return (
        f"Knit {what} to {_length(one.unwashed.cm, one.unwashed.sd_cm, wording)}, measured flat and unwashed, to have "
        f"{wording.cm(one.finished_cm)} after washing."
    )


def _means(garment: GarmentOnSwatch, wording: Wording) -> Answer:
    widths = [f"{POINT_NAMES[one.point]} {_length(one.cm, one.sd_cm, wording)}" for one in garment.widths]
    sentence = f"{wording.listed(widths).capitalize()}, by what the counting leaves in doubt."
    if not widths:
        sentence = "No width of it is known yet: settle its size, or give the pattern's finished measures."
    knit = [_knit_words(f"the {POINT_NAMES[one.point]}", one, wording) for one in garment.knit_to]
    return Answer(key="means", question="What does that mean on it?", sentence=sentence, reasons=tuple(knit))


def _needle(advice: NeedleAdvice, wording: Wording) -> Answer:
    question = "Which needle next?"
    off = f"{abs(advice.off) * 100:.1f} ± {advice.off_se * 100:.1f} %"
    too = "many" if advice.off > 0 else "few"
    if advice.why == "counting" and abs(advice.off) < SAME:
        return Answer(
            key="needle", question=question, sentence="Stay with yours: it has the pattern's stitches.", tone="yes"
        )
    if advice.why == "counting":
        return Answer(
            key="needle",
            question=question,
            sentence=f"Stay with yours: it is {off} off the pattern's stitches, which counting alone can explain.",
            tone="yes",
        )
    if advice.why == "between":
        reason = "The next size would miss by more. Another needle of the same size, in wood or metal, may shift it."
        sentence = f"Stay with yours: too {too} stitches by {off}, and no other needle size comes nearer."
        return Answer(key="needle", question=question, sentence=sentence, tone="unsure", reasons=(reason,))
    reasons = [
        "Swatch again on it: the width of a stitch is only about in proportion to the loop round the needle.",
        OLD_NUMBERS,
    ]
    if advice.far:
        reasons.insert(0, "That is far for a needle to mend: a thicker or thinner yarn may be the better answer.")
    if advice.needle is None:
        sentence = f"A {advice.direction} one: too {too} stitches by {off}. Which one depends on yours: give its size."
        return Answer(key="needle", question=question, sentence=sentence, tone="unsure", reasons=tuple(reasons))
    if advice.needle.remark:
        reasons.append(f"{advice.needle.remark[0].upper()}{advice.needle.remark[1:]}.")
    expected = wording.gauge(advice.expected_per_10cm, None)
    return Answer(
        key="needle",
        question=question,
        sentence=f"A {advice.direction} one, {needle_text(advice.needle.mm, advice.needle)}: too {too} stitches by "
        f"{off}; on it about {expected}.",
        tone="unsure",
        reasons=tuple(reasons),
    )


def _ways(garment: GarmentOnSwatch, wording: Wording) -> tuple[Answer, ...]:
    ways = garment.ways
    if ways is None or not (ways.stitches_differ or ways.rows_differ):
        return ()
    reasons = [*_size_way(garment, ways, wording), *_count_ways(garment, ways, wording)] if ways.stitches_differ else []
    if ways.rows is not None:
        reasons.append(_row_words(ways.rows, wording))
    sentence = "Only the rows differ from the pattern's."
    if ways.stitches_differ:
        few = "more" if ways.stitches_off > 0 else "fewer"
        sentence = (
            f"There are two ways out: you have {abs(ways.stitches_off) * 100:.1f} % {few} stitches than the pattern."
        )
    if ways.stitches_differ and not garment.counts_kept:
        sentence = "You work counts of your own already; these are for the widths that you chose."
    return (
        Answer(
            key="ways",
            question="And if I keep this fabric?",
            sentence=sentence,
            tone="unsure",
            reasons=tuple(reasons),
        ),
    )


def _size_way(garment: GarmentOnSwatch, ways: WaysOut, wording: Wording) -> tuple[str, ...]:
    way = ways.size
    if way is None or ways.wanted_bust_cm is None or ways.as_it_is_cm is None or not garment.counts_kept:
        return ()
    wanted = f"the {wording.cm(ways.wanted_bust_cm)} that you want"
    if way.size == ways.of_size:
        return (
            f"Another size: none comes nearer than {way.size}, which gives a bust of {wording.cm(way.bust_cm)}, "
            f"against {wanted}.",
        )
    planned = ", as planned," if way.size == garment.size else ""
    return (
        f"Another size: the counts of {way.size}{planned} give a bust of "
        f"{_length(way.bust_cm, way.bust_sd_cm, wording)}, {wording.signed(way.off_cm)} against {wanted} "
        f"({ways.of_size} gives {wording.cm(ways.as_it_is_cm)}); "
        f"keep the lengths of {ways.of_size}.",
    )


def _count_ways(garment: GarmentOnSwatch, ways: WaysOut, wording: Wording) -> tuple[str, ...]:
    parts = []
    for way in ways.counts:
        if way.more == 0:
            continue
        few = "more" if way.more > 0 else "fewer"
        parts.append(
            f"{POINT_NAMES[way.point]} {wording.cm(way.width_cm)} takes {way.own_stitches} stitches, "
            f"{abs(way.more)} {few}"
        )
    return (f"Other counts for {ways.of_size}, girths all the way round: {'; '.join(parts)}.",) if parts else ()


def _row_words(rows: RowEffect, wording: Wording) -> str:
    longer = "longer" if rows.per_10cm > 0 else "shorter"
    each = f"each 10 cm of the pattern comes out {wording.cm(abs(rows.per_10cm))} {longer}"
    if wording.reader.measures == "imperial":
        each = (
            f"each 4 in of the pattern comes out {write_length(abs(rows.per_10cm) * 1.016, wording.reader, 2)} {longer}"
        )
    if not rows.part:
        return f"Rows differ: worked by the pattern's rows, {each}. Knit to the length instead."
    if rows.off_cm is None or rows.length_cm is None or rows.off_sd_cm is None:
        return f"Rows decide the {rows.part}: worked by the pattern's rows, {each}. Recount it for your rows."
    return (
        f"Rows decide the {rows.part}: worked by the pattern's rows, about {wording.cm(rows.length_cm)} of it come out "
        f"{_length(abs(rows.off_cm), rows.off_sd_cm, wording)} {longer}. Spread its shaping over your own rows."
    )
