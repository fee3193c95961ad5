"""Answers *What do I knit?*: what to cast on, how much it is, and which measures came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from loopwright.garment.draft import Kind
from loopwright.garment.wanted import MEASURE_NAMES
from loopwright.season.drafted import Drafted, DraftedMeasure, DraftedSection
from loopwright.season.result import Answer, Figure, Tone
from loopwright.season.settle import Settled
from loopwright.season.wording import Wording

__all__ = ["draft_answer", "section_words"]

TOLD_FROM_CM = 0.5
"""A measure that is off by less is not told in a sentence, only in the table."""


def draft_answer(one: Settled, wording: Wording) -> Answer:
    """Say what is knitted, from the draft; or why there is none."""
    question = "What do I knit?"
    drafted = one.drafted
    if drafted is None:
        return Answer(key="draft", question=question, sentence=_why_not(one, wording), tone="plain")
    told = tuple(_off(measure, wording) for measure in drafted.measures if _is_told(measure))
    tone: Tone = "unsure" if told else "plain"
    return Answer(
        key="draft",
        question=question,
        sentence=_sentence(drafted, wording),
        tone=tone,
        reasons=(
            *told,
            *(wording.told(note) for note in drafted.notes),
            *_taken_as_usual(drafted, wording),
            *_basis(one, wording),
        ),
        figures=tuple(
            Figure(
                label=MEASURE_NAMES[measure.name],
                text=f"{wording.cm(measure.drafted_cm)} ({wording.cm(measure.wanted_cm)} wanted)",
            )
            for measure in drafted.measures
        ),
    )


def _why_not(one: Settled, wording: Wording) -> str:
    if one.choice is None:
        return "Not drafted until it has a size."
    return f"Not drafted: {wording.told(one.draft_fault)}."


def _sentence(drafted: Drafted, wording: Wording) -> str:
    first = drafted.sections[0]
    begin = f"{wording.word('cast on').capitalize()} {first.first:,} stitches for the {first.name}"
    pieces = {section.piece: section.made for section in drafted.sections}
    count = sum(pieces.values())
    whole = "one piece" if count == 1 else f"{wording.counted(count, 'piece')}, bands and edges counted"
    return f"{begin}; {drafted.stitches:,} stitches in all, in {whole}, worked {drafted.direction}."


def _is_told(measure: DraftedMeasure) -> bool:
    return bool(measure.reason) and abs(measure.drafted_cm - measure.wanted_cm) >= TOLD_FROM_CM


def _off(measure: DraftedMeasure, wording: Wording) -> str:
    name = MEASURE_NAMES[measure.name].capitalize()
    off = f"{wording.cm(measure.drafted_cm)}, not {wording.cm(measure.wanted_cm)}"
    return f"{name} {off}: {wording.told(measure.reason)}."


def _taken_as_usual(drafted: Drafted, wording: Wording) -> Iterator[str]:
    usual = [
        f"{MEASURE_NAMES[measure.name]} {wording.cm(measure.drafted_cm)}"
        for measure in drafted.measures
        if measure.usual
    ]
    if usual:
        yield f"Not stated, so taken as is usual: {wording.listed(usual)}. Write your own where you know better."


def _basis(one: Settled, wording: Wording) -> Iterator[str]:
    if one.garment.pattern is not None:
        yield (
            f"Drafted by us to the pattern's finished measures at your {wording.word('tension')}: where the pattern "
            "gives its own counts, those are its maker's."
        )


def section_words(section: DraftedSection, wording: Wording) -> tuple[str, ...]:
    """Give what is done to a section, a sentence a run: ``decrease 1 at each edge every 8th row, 5 times``."""
    noun = "round" if section.in_the_round else "row"
    words = []
    for kind, sides, stitches, places, first_row, every in section.shaping:
        verb = wording.word(kind) if kind in (Kind.CAST_ON, Kind.CAST_OFF) else _VERBS.get(kind, kind)
        words.append(f"{verb} {_where(sides, stitches, places)} {_when(noun, first_row, every)}")
    if section.closed:
        words.append(f"then {wording.word('cast off')} {section.closed} in the middle")
    return tuple(words)


_VERBS: Final[dict[str, str]] = {Kind.REST: "leave unworked", Kind.TAKE_UP: "take up again"}


def _where(sides: tuple[str, ...], stitches: int, places: int) -> str:
    if sides == ("left", "right"):
        return f"{stitches} at each edge"
    place = {
        "left": "at the left edge",
        "right": "at the right edge",
        "middle": "in the middle",
        "evenly": "spread evenly",
        "lines": "beside one line" if places == 1 else f"along {places} lines",
    }[sides[0]]
    return f"{stitches} {place}"


def _when(noun: str, first_row: int, every: tuple[tuple[int, int], ...]) -> str:
    if not every:
        return f"in {noun} {first_row}"
    if sum(times for _, times in every) == 2:
        return f"in {noun}s {first_row} and {first_row + every[-1][0]}"
    if every[0][0] == first_row:
        return "; then ".join(_often(noun, gap, times) for gap, times in every)
    gap, times = every[0]
    rest = [(gap, times - 1), *every[1:]] if times > 1 else list(every[1:])
    return f"in {noun} {first_row}, then " + "; then ".join(_often(noun, gap, times) for gap, times in rest)


def _often(noun: str, gap: int, times: int) -> str:
    if times == 1:
        return f"in the next {noun}" if gap == 1 else f"once more {gap} {noun}s on"
    if gap == 1:
        return f"in each of {times} {noun}s"
    return f"every {_ordinal(gap)}{noun}, {times} times"


def _ordinal(number: int) -> str:
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending} "
