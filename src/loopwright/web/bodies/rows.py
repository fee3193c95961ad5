"""One measure of one person as a page shows it: what is known, what is only estimated, and how to take it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from loopwright.body import MEASURES, Body, Completion, Growth, MeasureFacts, Wearer, growths, readings
from loopwright.body.completion import survey_links
from loopwright.body.doubt import name_of
from loopwright.season.wording import Wording
from loopwright.uncertainty import Estimate, Origin, Step
from loopwright.units import write_length_doubt

__all__ = ["MeasureRow", "StepRow", "measure_groups", "plain_name"]

_MOST_NAMED: Final = 3
_ORIGINS: Final = {
    Origin.MEASURED: "measured by you",
    Origin.COMPUTED: "computed",
    Origin.TABLE: "from a table",
    Origin.GUESS: "a guess",
    Origin.STATED: "stated",
}


@dataclass(frozen=True, slots=True)
class StepRow:
    """One line of how an estimate came about."""

    says: str
    working: str
    value: str
    origin: str
    source: str


@dataclass(frozen=True, slots=True)
class MeasureRow:
    """A measure of a person.

    :ivar value: as it was measured; empty when it is not known.
    :ivar estimate: with its doubt, never in the place of the value; empty where there is none.
    :ivar estimated_from: names of what it was estimated from.
    :ivar why: why it cannot be estimated, or what differs from the survey.
    :ivar usual: where nine in ten lie.
    :ivar history: every reading with its day, and what changed.
    """

    key: str
    name: str
    value: str
    taken: str
    estimate: str
    estimated_from: str
    is_guess: bool
    why: str
    how_to: str
    needed_for: str
    term: str
    usual: str
    repeat: str
    history: tuple[str, ...]
    steps: tuple[StepRow, ...]


def measure_groups(body: Body, filled: Completion, wording: Wording) -> tuple[tuple[str, tuple[MeasureRow, ...]], ...]:
    """Give the measures that bear on a person, under the parts of the body."""
    grown = {growth.measure: growth for growth in growths(body)}
    groups: dict[str, list[MeasureRow]] = {}
    for key in _keys(body):
        groups.setdefault(MEASURES[key].group, []).append(_row(key, body, filled, grown.get(key), wording))
    return tuple((name, tuple(rows)) for name, rows in groups.items())


def _keys(body: Body) -> Iterator[str]:
    links, own = survey_links(body.wearer), "chest_girth" if body.wearer is Wearer.CHILD else ""
    for key in MEASURES:
        if key in links or key == own or body.measure_cm(key) is not None:
            yield key


def plain_name(key: str) -> str:
    """Give a measure's name without whom it is for: on a person's own page that is plain."""
    return MEASURES[key].name.partition(" (women)")[0].partition(" (men")[0]


def _row(key: str, body: Body, filled: Completion, growth: Growth | None, wording: Wording) -> MeasureRow:
    facts, value, day = MEASURES[key], body.measure_cm(key), body.taken(key)
    estimate = filled.estimates.get(key)
    return MeasureRow(
        key=key,
        name=plain_name(key),
        value=wording.cm(value) if value is not None else "",
        taken=wording.date(day) if value is not None and day is not None else "",
        estimate=_doubt(estimate.mean, estimate.sd, wording) if estimate else "",
        estimated_from=_from(filled, wording) if estimate else "",
        is_guess=estimate is not None and estimate.origin is Origin.GUESS,
        why=filled.to_ask.get(key, "") or (survey_links(body.wearer)[key].why if estimate else ""),
        how_to=facts.how_to,
        needed_for=facts.needed_for,
        term=facts.iso_8559_term,
        usual=_usual(facts, body.wearer, wording),
        repeat=_repeat(facts, wording),
        history=_history(key, body, growth, wording),
        steps=tuple(_steps(estimate, wording)) if estimate else (),
    )


def _doubt(mean_cm: float, sd_cm: float, wording: Wording) -> str:
    return write_length_doubt(mean_cm, sd_cm, wording.reader)


def _from(filled: Completion, wording: Wording) -> str:
    """Name what an estimate rests on, or say how many they are where naming them takes too long."""
    names = [name_of(key) if key in MEASURES else key for key in filled.used]
    return wording.listed(names) if len(names) <= _MOST_NAMED else f"{len(names)} measures"


def _usual(facts: MeasureFacts, wearer: Wearer, wording: Wording) -> str:
    usual = facts.usual.get(wearer)
    if usual is None:
        return ""
    whose = "women" if wearer is Wearer.WOMAN else "men"
    note = f"; {facts.note}" if facts.note else ""
    return (
        f"Nine in ten {whose} have {wording.cm(usual.p5_cm)} to {wording.cm(usual.p95_cm)}, "
        f"half of them less than {wording.cm(usual.p50_cm)} ({usual.source}, {usual.status}{note})."
    )


def _repeat(facts: MeasureFacts, wording: Wording) -> str:
    return (
        f"Two readings stray about {wording.cm(facts.plan_sd_cm)} each (our proposal). If they differ by more than "
        f"{wording.cm(facts.remeasure_if_cm)}, take a third."
    )


def _history(key: str, body: Body, growth: Growth | None, wording: Wording) -> tuple[str, ...]:
    found = readings(body, key)
    if len(found) < 2:
        return ()
    said = [f"{wording.date(day)}: {wording.cm(value)}" for day, value in found]
    if growth is not None:
        change = _signed_doubt(growth.change_cm, wording)
        rate = f", that is {_signed_doubt(growth.per_year_cm, wording)} a year" if growth.per_year_cm else ""
        clear = "" if growth.is_clear else "; no more than two readings may stray"
        said.append(f"Since {wording.date(growth.from_on)} {change}{rate}{clear}.")
    return tuple(said)


def _signed_doubt(estimate: Estimate, wording: Wording) -> str:
    return f"{'+' if estimate.mean > 0 else ''}{_doubt(estimate.mean, estimate.sd, wording)}"


def _steps(estimate: Estimate, wording: Wording) -> Iterator[StepRow]:
    for step in estimate.steps:
        yield StepRow(step.says, step.working, _value(step, wording), _ORIGINS[step.origin], step.source)


def _value(step: Step, wording: Wording) -> str:
    if step.unit != "cm":
        return f"{step.value:g} {step.unit}"
    return _doubt(step.value, step.sd, wording) if step.sd else wording.cm(step.value)
