"""Do the colours of a garment work together? The answer in words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from loopwright.colour import GRADES, LIMITS, REMARKS, Remark
from loopwright.season.colour_choices import ColourChoice
from loopwright.season.colour_report import BORDERLINE_L, ColourPair, ColourReport
from loopwright.season.result import Answer, Figure, Tone
from loopwright.season.wording import Wording

__all__ = ["colour_answer"]

QUESTION: Final = "Do these colours work?"
TO_DO: Final = "take a photo of the skein in daylight, or write its shade"
MOST_PAIRS: Final = 3
_QUIET: Final[tuple[Remark, ...]] = ("same colour?", "near match", "tonal")
_SAYS: Final = {grade.name: grade.says for grade in GRADES}
_GOOD, _FAIR, _POOR = (grade.name for grade in GRADES)


def colour_answer(report: ColourReport, wording: Wording) -> Answer:
    """Answer whether a garment's colours work, by lightness first: at the size of stitches the eye follows that."""
    sentence, tone = _sentence(report)
    return Answer(
        key="colours",
        question=QUESTION,
        sentence=sentence,
        tone=tone,
        reasons=tuple(_reasons(report, wording)),
        figures=tuple(
            Figure(label=" + ".join(pair.names), text=f"{pair.grade}: ΔL* {pair.delta_l:.0f}, ΔE00 {pair.delta_e:.0f}")
            for pair in report.pairs
        ),
    )


def _sentence(report: ColourReport) -> tuple[str, Tone]:
    colours = report.colours
    unknown = [one for one in colours if one.shade is None]
    if len(colours) == 1:
        return ("It has one colour: nothing has to stand apart.", "plain")
    if not report.pairs:
        return (f"Not known: of {_some(len(unknown), len(colours))} there is no likeness; {TO_DO}.", "unsure")
    weakest = report.pairs[0]
    names = f"{weakest.names[0]} and {weakest.names[1]}"
    apart = f"{names} stand {weakest.delta_l:.0f} L* apart"
    so_far = " as far as they are known" if unknown else ""
    if weakest.grade == _GOOD:
        least = "" if len(report.pairs) == 1 else " at the least"
        return (f"Yes{so_far}: {apart}{least}, so {_SAYS[_GOOD]}.", "unsure" if unknown else "yes")
    if weakest.grade == _FAIR:
        return (f"Close up{so_far}: {apart}, so {_SAYS[_FAIR]}.", "unsure")
    if not report.stranded and weakest.delta_e >= LIMITS["hue"].value:
        return (
            f"In stripes and bands{so_far}: hue tells {names} apart, but not light and dark, so a small motif "
            f"{_SAYS[_POOR]}.",
            "unsure",
        )
    return (f"Hardly{so_far}: {apart}, so where they meet a pattern {_SAYS[_POOR]}.", "no")


def _some(number: int, of_all: int) -> str:
    return f"{number} of its {of_all} colours" if number < of_all else "its colours"


def _reasons(report: ColourReport, wording: Wording) -> Iterator[str]:
    for one in report.colours:
        if one.missing and (len(report.colours) > 1):
            listed = wording.listed(one.missing)
            yield f"No likeness of {listed} ({wording.listed(one.roles)}): {TO_DO}."
    yield from (f"{_and(pair)}: {REMARKS[one]}." for pair in report.pairs[:1] for one in _QUIET if one in pair.remarks)
    weak = [pair for pair in report.pairs[1:] if pair.grade != _GOOD][:MOST_PAIRS]
    for pair in weak:
        yield f"{pair.names[0]} and {pair.names[1]}, {pair.delta_l:.0f} L* apart: {_SAYS[pair.grade]}."
    yield from _other_eyes(report, wording)
    if any("borderline" in pair.remarks for pair in report.pairs):
        yield f"A likeness may be off by {BORDERLINE_L:g} L*, and a pair is that near a limit: knit a swatch."
    if report.held_below:
        names = wording.listed(report.held_below)
        yield (
            f"Hold the yarn of {names} so that its float runs below: it has the fewest stitches and then comes "
            "forward. Common practice; no measured size of it."
        )
    yield from _fade(report, wording)
    yield from _better(report, wording)
    if report.pairs:
        yield "The limits, 30 and 20 L*, come from studies of text and symbols; of knitting none was found."


def _other_eyes(report: ColourReport, wording: Wording) -> Iterator[str]:
    for pair in report.pairs:
        if "red-green alone" in pair.remarks:
            yield f"To protan and deutan eyes, for whom red and green fall together, {_and(pair)} are nearly alike."
        elif pair.weaker_for:
            yield f"To {wording.listed(pair.weaker_for)} eyes {_and(pair)} stand less apart in lightness."


def _and(pair: ColourPair) -> str:
    return f"{pair.names[0]} and {pair.names[1]}"


def _fade(report: ColourReport, wording: Wording) -> Iterator[str]:
    fade = report.fade
    if fade is None:
        return
    said = f"As a fade, the softest order is {' → '.join(fade.names)}"
    if fade.stripes:
        steps = wording.listed([f"{one} to {other}" for one, other in fade.stripes])
        reads_as = "a stripe" if len(fade.stripes) == 1 else "stripes"
        said += f"; from {steps} it will read as {reads_as}, so alternate rows there"
    yield f"{said}."


def _better(report: ColourReport, wording: Wording) -> Iterator[str]:
    """Name her own colours that would stand further apart than a likeness may be off."""
    present = report.pairs[0].delta_l if report.pairs else 0.0
    better = [one for one in report.choices if one.worst_delta_l >= present + BORDERLINE_L]
    for choice in better[:1]:
        yield (
            f"Of your own: {_named(choice, wording)} stand {choice.worst_delta_l:.0f} L* apart at the least"
            f"{_enough(choice, wording)}."
        )


def _named(choice: ColourChoice, wording: Wording) -> str:
    return wording.listed([f"{one.name} as {one.role}" for one in choice.colours])


def _enough(choice: ColourChoice, wording: Wording) -> str:
    short = [one.name for one in choice.colours if one.enough is False]
    if short:
        return f", but of {wording.listed(short)} there is too little at home"
    if all(one.enough for one in choice.colours):
        return ", and there is enough at home, not counting what other garments keep"
    return ""
