"""The questions about a chart, answered in words."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from loopwright.chart import Fit, LongFloat
from loopwright.fabric.loop import LOOP_RELATIVE_SD
from loopwright.season.chart_fits import SectionFit
from loopwright.season.chart_report import ChartReport
from loopwright.season.result import Answer, Figure
from loopwright.season.wording import Wording
from loopwright.units import write_mass, write_share, write_yarn_length_doubt

__all__ = ["catch_words", "chart_answers", "fit_words", "row_list"]

MOST_TOLD: Final = 12
_STRANDED_AT_MOST: Final = 2


def chart_answers(report: ChartReport, wording: Wording) -> tuple[Answer, ...]:
    """Answer how large it is, whether it can be stranded, which floats are long, what yarn it takes, where it fits."""
    answers = [_size(report, wording)]
    if len(report.roles) > 1:
        answers += [_colours(report), _floats(report, wording)]
    if report.has_stitches:
        answers.append(_counts(report))
    answers.append(_yarn(report, wording))
    if report.garment:
        answers.append(_fit(report, wording))
    return tuple(answers)


def _size(report: ChartReport, wording: Wording) -> Answer:
    chart, gauge = report.chart, report.gauge
    width, height = gauge.width_cm(chart.columns), chart.rows / gauge.rows_or_usual_per_10cm * 10
    noun = "round" if chart.in_the_round else "row"
    sentence = (
        f"{wording.counted(chart.columns, 'stitch', 'stitches').capitalize()} by {wording.counted(chart.rows, noun)}, "
        f"that is {wording.cm(width)} by {wording.cm(height)}."
    )
    reasons = [f"At {wording.gauge(gauge.stitches_per_10cm, gauge.rows_per_10cm)}: {report.gauge_from}."]
    if chart.repeat is not None:
        box = chart.repeat
        reasons.append(f"Its repeat is {box.columns} stitches by {box.rows} {noun}s.")
    reasons.append(
        "Worked in the round: every round is read from right to left."
        if chart.in_the_round
        else "Worked flat: right-side rows are read from right to left, wrong-side rows from left to right."
    )
    return Answer(key="size", question="How large is it?", sentence=sentence, reasons=tuple(reasons))


def row_list(numbers: Iterable[int]) -> str:
    """Write row numbers as a sentence does, stretches as ``3 to 7``."""
    stretches: list[list[int]] = []
    for number in numbers:
        if stretches and number == stretches[-1][1] + 1:
            stretches[-1][1] = number
        else:
            stretches.append([number, number])
    shown = [f"{a}" if a == b else f"{a} and {b}" if b == a + 1 else f"{a} to {b}" for a, b in stretches[:MOST_TOLD]]
    more = len(stretches) - MOST_TOLD
    return ", ".join(shown) + (f" and {more} places more" if more > 0 else "")


def _colours(report: ChartReport) -> Answer:
    question = "Are there at most two colours in a row?"
    if not report.many:
        return Answer(key="colours", question=question, sentence="Yes, in every row.", tone="yes")
    rows = row_list(number for number, _ in report.many)
    one = len(report.many) == 1
    sentence = f"No: {'row' if one else 'rows'} {rows} {'has' if one else 'have'} up to {report.most_roles}."
    areas = sum(report.areas.values())
    if report.most_roles == _STRANDED_AT_MOST + 1:
        advice = "A third strand makes these rows thick and slow; a cell in another colour may spare it."
    else:
        advice = (
            "So many strands are hardly carried along: knit it in areas, embroider some cells after, or split rows."
        )
    reasons = (advice, f"In areas it has {areas} lengths of yarn, so {2 * areas} ends to weave in.")
    return Answer(key="colours", question=question, sentence=sentence, tone="no", reasons=reasons)


def catch_words(one: LongFloat, columns: int, wording: Wording) -> str:
    """Say how long a float is and where to catch it, stitches counted from the right."""
    at = sorted(columns - column for column in one.catch_columns)
    where = f"catch it at stitch {wording.listed([str(stitch) for stitch in at])}"
    aside = "; it stands above a catch of the row below" if one.stacked else ""
    return f"{one.stitches} stitches, {wording.cm(one.length_cm)}: {where}{aside}"


def _floats(report: ChartReport, wording: Wording) -> Answer:
    question = "Which floats are too long?"
    limit_cm = wording.cm(report.limit * report.stitch_width_mm / 10)
    why = "for a small child" if report.for_young_child else "five stitches or an inch, whichever is shorter"
    basis = f"The limit is {wording.counted(report.limit, 'stitch', 'stitches')}, {limit_cm}: {why}."
    if report.chart.in_the_round:
        basis += " Floats across the start of the round count too."
    if not report.long:
        longest = wording.counted(report.longest, "stitch", "stitches")
        length = wording.cm(report.longest * report.stitch_width_mm / 10)
        said = f"None: the longest passes {longest}, {length}." if report.longest else "None: nothing floats."
        return Answer(key="floats", question=question, sentence=said, tone="yes", reasons=(basis,))
    worst = max(report.long, key=lambda one: one.stitches)
    sentence = (
        f"{wording.counted(len(report.long), 'float').capitalize()}: the longest passes "
        f"{worst.stitches} stitches, {wording.cm(worst.length_cm)}, in row {worst.row}."
    )
    figures = tuple(
        Figure(label=f"Row {one.row}, {one.role}", text=catch_words(one, report.chart.columns, wording))
        for one in report.long[:MOST_TOLD]
    )
    reasons = [basis]
    if len(report.long) > MOST_TOLD:
        reasons.append(f"The first {MOST_TOLD} stand below; the drawing shows all of them.")
    return Answer(
        key="floats", question=question, sentence=sentence, tone="unsure", reasons=tuple(reasons), figures=figures
    )


def _counts(report: ChartReport) -> Answer:
    question = "Do the stitches add up from row to row?"
    if not report.faults:
        return Answer(key="counts", question=question, sentence="Yes, in every row.", tone="yes")
    first = report.faults[0]
    others = f" So have {len(report.faults) - 1} rows more." if len(report.faults) > 1 else ""
    sentence = f"No: row {first.number} works {first.taken} stitches, but the row below leaves {first.left_below}."
    return Answer(key="counts", question=question, sentence=sentence + others, tone="no")


def _yarn(report: ChartReport, wording: Wording) -> Answer:
    figures = []
    for one in report.roles:
        text = write_yarn_length_doubt(one.metres, one.metres * LOOP_RELATIVE_SD, wording.reader)
        if one.mass_g is not None:
            text += f", {write_mass(one.mass_g, wording.reader)}"
        label = one.role if one.name == one.role else f"{one.role}, {one.name}"
        figures.append(Figure(label=label, text=text))
    total = sum(one.metres for one in report.roles)
    floats = sum(one.float_stitches for one in report.roles) * report.stitch_width_mm / 1000
    sentence = f"{write_yarn_length_doubt(total, total * LOOP_RELATIVE_SD, wording.reader)} for the chart worked once."
    reasons = [
        f"Each stitch takes {report.loop_mm:.1f} mm ± {write_share(LOOP_RELATIVE_SD)}, "
        f"each stitch passed by a float {report.stitch_width_mm:.1f} mm more."
    ]
    if floats:
        reasons.append(f"Floats are {write_share(floats / total)} of it.")
    return Answer(
        key="yarn",
        question="How much yarn does it take?",
        sentence=sentence,
        reasons=tuple(reasons),
        figures=tuple(figures),
    )


def fit_words(fit: Fit, wording: Wording) -> str:
    """Say how a repeat goes into a count."""
    if fit.in_the_round:
        if fit.exact:
            halves = "" if fit.halves_match else "; front and back cannot both be centred on it"
            return f"{fit.count} stitches: {wording.counted(fit.whole, 'repeat')} exactly{halves}"
        near = f"{fit.fewer} or {fit.more}" if fit.fewer else f"{fit.more}"
        panel = f"or leave {fit.plain} plain at the side"
        return f"{fit.count} stitches: {fit.repeats:.2f} repeats; {near} would be even, {panel}"
    off = "" if fit.axis_off == 0 else ", its middle half a stitch beside"
    if fit.exact:
        return f"{fit.count} stitches: centred, both edges alike{off}"
    near = f"{fit.fewer} or {fit.more}" if fit.fewer else f"{fit.more}"
    return f"{fit.count} stitches: centred, cut alike at both edges{off}; {near} would end whole"


def _fit(report: ChartReport, wording: Wording) -> Answer:
    question = f"Does it fit {report.garment}?"
    if not report.fits:
        said = "It cannot be said: no drafted part of it keeps one count of stitches for so many rows."
        return Answer(key="chart-fit", question=question, sentence=said, tone="plain")
    figures = tuple(Figure(label=one.section, text=_section(one, wording)) for one in report.fits)
    even = [one for one in report.fits if one.fit.exact]
    parts = wording.listed([one.section for one in even][:3])
    if len(even) == len(report.fits):
        return Answer(key="chart-fit", question=question, sentence="Yes, everywhere.", tone="yes", figures=figures)
    sentence = f"On {parts} it comes out even." if even else "Nowhere does it come out even as it is."
    return Answer(
        key="chart-fit", question=question, sentence=sentence, tone="unsure" if even else "no", figures=figures
    )


def _section(one: SectionFit, wording: Wording) -> str:
    noun = "rounds" if one.fit.in_the_round else "rows"
    high = f"{wording.counted(one.whole_high, 'repeat')} high in {one.rows} {noun}"
    return f"{fit_words(one.fit, wording)}; {high} from {noun[:-1]} {one.from_row} on"
