"""Labels to print: what stands on each, and the code by which a phone opens the lot's page."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import segno

from loopwright.pictures.chip import colour_chip
from loopwright.pictures.svg import INK, element, picture
from loopwright.season.cupboard_report import LotReport
from loopwright.season.wording import Wording
from loopwright.units import write_mass_doubt

__all__ = ["ON_A_SHEET", "Label", "code_drawing", "label_of", "sheets"]

ON_A_SHEET: Final = 24
"""Three by eight on A4."""
_QUIET_MODULES: Final = 4
"""Source: ISO/IEC 18004, quiet zone of a QR code: four modules."""


@dataclass(frozen=True, slots=True)
class Label:
    """One label.

    :ivar code: a QR code of ``address``, as SVG.
    """

    yarn: str
    colour: str
    chip: str
    dye_lot: str
    mass: str
    length: str
    date: str
    kept_in: str
    code: str
    address: str


def label_of(report: LotReport, address: str, day: dt.date, wording: Wording) -> Label:
    """Lay out the label of a lot.

    :param address: of its page, under the host by which the labels were asked for.
    """
    colour = report.lot.colour or "no colour named"
    return Label(
        yarn=report.yarn.name,
        colour=colour,
        chip=colour_chip(report.lot.shade, colour),
        dye_lot=report.lot.dye_lot or "not known",
        mass=write_mass_doubt(report.mass_g.mean, report.mass_g.sd, wording.reader),
        length=wording.estimate(report.length_m),
        date=wording.date(day),
        kept_in=report.lot.kept_in,
        code=code_drawing(address, f"Code for the page of {report.yarn.name}, {colour}"),
        address=address,
    )


def code_drawing(text: str, says: str) -> str:
    """Draw a QR code with its quiet zone, a quarter of it may be smudged (level Q) if it stays as small, 15 % at least.

    Lines of dark modules are drawn as one shape each, so that a printer leaves no hair between them.
    Source: ISO/IEC 18004.
    """
    code = segno.make(text, error="m", micro=False, boost_error=True)
    size = code.symbol_size(border=0)[0] + 2 * _QUIET_MODULES
    path = []
    for y, row in enumerate(code.matrix, _QUIET_MODULES):
        x = 0
        while x < len(row):
            end = x
            while end < len(row) and row[end]:
                end += 1
            if end > x:
                path.append(f"M{x + _QUIET_MODULES} {y}h{end - x}v1h-{end - x}z")
            x = max(end, x + 1)
    ink = element("path", d="".join(path), fill=INK, shape_rendering="crispEdges")
    return picture(ink, size, size, says, class_="code", keep_shape=True)


def sheets(labels: Sequence[Label], first: int) -> tuple[tuple[Label | None, ...], ...]:
    """Give the labels in sheets of three by eight; places before the first one stay free.

    :param first: place of the first label on the first sheet, from 1.
    """
    places: list[Label | None] = [*[None] * (first - 1), *labels]
    return tuple(tuple(places[at : at + ON_A_SHEET]) for at in range(0, len(places), ON_A_SHEET))
