"""Colours laid over an adult's garment in fine yarn, beside drafting it and beside a loop over every stitch."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from bench.drafts import GAUGE, MEASURES
from loopwright.chart import Chart, ChartRole
from loopwright.chart.repeat import middle_axis
from loopwright.colouring import ColourWork, coloured
from loopwright.colouring.columns import PLAIN, columns_of
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief, ColourPlan
from loopwright.pattern import Construction
from loopwright.pictures.front_back import draw_garment

ROLES = (ChartRole("main"), ChartRole("contrast"))


def motif() -> Chart:
    cells = np.random.default_rng(5).integers(0, 2, (17, 12)).astype(np.uint8)
    return Chart(cells, np.zeros_like(cells), ROLES)


def stitch_by_stitch(made: Draft, chart: Chart) -> int:
    """The straightforward way: the role of every stitch looked up by itself."""
    axis, found = middle_axis(chart), 0
    for _, section in made.sections():
        laid = columns_of(section, chart.columns, axis).tolist()
        for row in range(section.rows):
            cells = chart.cells[row % chart.rows].tolist()
            for column in laid[row][: section.stitches[row]]:
                found += 0 if column == PLAIN else cells[column]
    return found


def colouring(seconds: Callable[[Callable[[], object]], float], line: Callable[[str, float, str, float], None]) -> None:
    """Measure with these two, the clock and the printer of ``bench``."""
    print("Colours of an adult's garment in fine yarn")
    chart = motif()
    works = {
        "stripes": ColourWork(ColourPlan.model_validate({"everywhere": "4 main, 2 contrast"}), "main"),
        "a chart all over": ColourWork(
            ColourPlan.model_validate({"everywhere": "chart motif"}), "main", (("motif", chart),)
        ),
    }
    for construction in (Construction.SET_IN, Construction.RAGLAN):
        brief = Brief(construction, MEASURES, GAUGE)
        made = draft(brief)
        drafting = seconds(lambda brief=brief: draft(brief))  # type: ignore[misc]
        slow = seconds(lambda made=made: stitch_by_stitch(made, chart))  # type: ignore[misc]
        for name, work in works.items():
            took = seconds(lambda made=made, work=work: coloured.__wrapped__(made, work))  # type: ignore[misc]
            line(
                f"{name}, {construction.value}, {made.stitches / took / 1e6:.0f} million sts/s",
                took,
                "drafting",
                took / drafting,
            )
            line("  the same", took, "a loop over its stitches", took / slow)
        plain = seconds(lambda made=made: draw_garment(made))  # type: ignore[misc]
        charted = coloured(made, works["a chart all over"])
        took = seconds(lambda charted=charted: draw_garment(charted))  # type: ignore[misc]
        line("its front with the chart all over", took, "the plain front", took / plain)
