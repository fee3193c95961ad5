"""Each measure of real people left out and estimated from the others: the tables of ``docs/fill-in.md``.

``python -m tests.body.leave_one_out docs/fill-in.md`` writes them anew between the page's markers.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from loopwright.body import MEASURES, Body, Wearer
from loopwright.body.completion import estimate_from, survey_links
from tests.published.people import PEOPLE

__all__ = ["BEGIN", "END", "Errors", "leave_one_out", "main", "with_tables"]

BEGIN: Final = "<!-- errors: written by python -m tests.body.leave_one_out -->"
END: Final = "<!-- errors: end -->"
SMALL_SET: Final = ("bust_girth", "chest_girth", "hip_girth", "height")
EIGHTY: Final = 1.2816
NINETY_FIVE: Final = 1.9600
"""Deviations either side that hold 80 and 95 in a hundred of a normal spread."""


@dataclass(frozen=True, slots=True)
class Errors:
    """How far estimates lie from what was measured, in cm; coverage as shares of the people."""

    measure: str
    people: int
    bias_cm: float
    rmse_cm: float
    in_80: float
    in_95: float


def leave_one_out(survey: str, wearer: Wearer, allowed: Iterable[str] | None = None) -> list[Errors]:
    """Leave each measure out of each person and estimate it from the others.

    :param allowed: the measures that may be used; left out, every one that is known, the mass included.
    """
    links, usable = survey_links(wearer), None if allowed is None else set(allowed)
    bodies = [one.body for one in PEOPLE if one.survey == survey and one.body.wearer is wearer]
    found = []
    for measure, link in links.items():
        if not link.is_estimated:
            continue
        pairs = [pair for body in bodies if (pair := _error(body, measure, usable)) is not None]
        if pairs:
            found.append(_errors(measure, pairs))
    return found


def _error(body: Body, measure: str, usable: set[str] | None) -> tuple[float, float] | None:
    """Give estimate less measure, and the standard deviation that the estimate claims."""
    links, have = survey_links(body.wearer), body.known()
    known = {
        key: have[key]
        for key, link in links.items()
        if link.is_known and key in have and key != measure and (usable is None or key in usable)
    }
    if measure not in have or not known:
        return None
    estimate = estimate_from(body.wearer, known, measure)
    return estimate.mean - have[measure], estimate.sd


def _errors(measure: str, pairs: Sequence[tuple[float, float]]) -> Errors:
    count = len(pairs)
    return Errors(
        measure,
        count,
        sum(error for error, _ in pairs) / count,
        math.sqrt(sum(error**2 for error, _ in pairs) / count),
        sum(abs(error) <= EIGHTY * sd for error, sd in pairs) / count,
        sum(abs(error) <= NINETY_FIVE * sd for error, sd in pairs) / count,
    )


def tables() -> str:
    """Give the tables as Markdown, one for each survey and sex."""
    titles = {"ansur2": "ANSUR II", "body507": "body507"}
    return "\n\n".join(
        _table(f"{title}, {'women' if wearer is Wearer.WOMAN else 'men'}", survey, wearer)
        for survey, title in titles.items()
        for wearer in (Wearer.WOMAN, Wearer.MAN)
    )


def _table(title: str, survey: str, wearer: Wearer) -> str:
    rest = {one.measure: one for one in leave_one_out(survey, wearer)}
    small = {one.measure: one for one in leave_one_out(survey, wearer, SMALL_SET)}
    head = (
        "| measure | people | bias | RMSE | in 80 % | in 95 % | bias (small) | RMSE | in 80 % | in 95 % |\n"
        "|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|"
    )
    rows = [
        f"| {MEASURES[key].name} | {rest[key].people} | {_cells(rest[key])} | {_cells(small.get(key))} |"
        for key in rest
    ]
    return "\n".join([f"### {title}", "", head, *rows])


def _cells(errors: Errors | None) -> str:
    if errors is None:
        return "– | – | – | –"
    return f"{errors.bias_cm:+.1f} | {errors.rmse_cm:.1f} | {errors.in_80:.0%} | {errors.in_95:.0%}"


def with_tables(document: str) -> str:
    """Put the tables between the markers of a document.

    :raises ValueError: the document has no markers.
    """
    before, begin, rest = document.partition(BEGIN)
    _, end, after = rest.partition(END)
    if not begin or not end:
        raise ValueError(f"the document has no lines {BEGIN} and {END}")
    return f"{before}{BEGIN}\n\n{tables()}\n\n{END}{after}"


def main(arguments: Sequence[str]) -> None:
    """Print the tables, or put them into a document."""
    if not arguments:
        sys.stdout.write(tables() + "\n")
        return
    path = Path(arguments[0])
    path.write_text(with_tables(path.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
