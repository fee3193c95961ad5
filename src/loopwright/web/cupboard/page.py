"""What the pages of the cupboard show, ready to be laid out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from loopwright.pictures.chip import colour_chip
from loopwright.pictures.lot_bar import lot_bar
from loopwright.season.cupboard_report import LotReport
from loopwright.season.wording import Wording
from loopwright.store.cupboard import Cupboard, LotsFound
from loopwright.uncertainty import Step
from loopwright.units import write_doubt, write_mass_doubt, write_yarn_length_doubt

__all__ = ["CupboardPage", "LotPage", "LotRow", "ReservedRow", "StepLine", "cupboard_page", "lot_page", "lot_row"]


@dataclass(frozen=True, slots=True)
class ReservedRow:
    """Yarn of a lot that is kept for a garment, or is in it already."""

    garment: str
    name: str
    length: str


@dataclass(frozen=True, slots=True)
class LotRow:
    """A lot in the list.

    :ivar chip, bar: drawings, as SVG.
    :ivar photo: digest of its photo; empty where there is none.
    :ivar holds: whole balls and opened yarn, in words.
    :ivar free: metres that nothing is kept for, as the list says it.
    """

    key: str
    yarn: str
    yarn_key: str
    colour: str
    dye_lot: str
    chip: str
    photo: str
    holds: str
    mass: str
    length: str
    reserved: tuple[ReservedRow, ...]
    free: str
    bar: str
    kept_in: str
    note: str


@dataclass(frozen=True, slots=True)
class CupboardPage:
    """The cupboard, or what a search finds in it.

    :ivar sentence: what there is in all.
    :ivar found: how many lots a search finds; empty where nothing is searched for.
    :ivar before, after: number of the page before and behind; None at either end.
    """

    sentence: str
    found: str
    rows: tuple[LotRow, ...]
    number: int
    pages: int
    before: int | None
    after: int | None
    cannot_plan: str


@dataclass(frozen=True, slots=True)
class StepLine:
    """One line of how a figure came about."""

    says: str
    working: str
    value: str
    origin: str
    source: str


@dataclass(frozen=True, slots=True)
class LotPage:
    """One lot.

    :ivar holds: how much there is, in a sentence.
    :ivar use: what it is for, in a sentence.
    :ivar shade: its likeness as ``#rrggbb``, empty where there is none.
    :ivar knitted: what of this yarn and colour is in garments already.
    """

    row: LotRow
    title: str
    holds: str
    use: str
    shade: str
    knitted: tuple[ReservedRow, ...]
    steps: tuple[StepLine, ...]


def cupboard_page(cupboard: Cupboard, found: LotsFound, search: str, wording: Wording) -> CupboardPage:
    """Lay out one page of lots."""
    longest = max((report.length_m.mean for report in found.lots), default=0.0)
    return CupboardPage(
        sentence=_in_all(cupboard, wording),
        found=_found(found, cupboard.count, wording) if search else "",
        rows=tuple(lot_row(report, found.photos, wording, longest) for report in found.lots),
        number=found.number,
        pages=found.pages,
        before=found.number - 1 if found.number > 1 else None,
        after=found.number + 1 if found.number < found.pages else None,
        cannot_plan=cupboard.cannot_plan,
    )


def _in_all(cupboard: Cupboard, wording: Wording) -> str:
    if not cupboard.count:
        return "Nothing yet."
    kinds = len(cupboard.lots_of_yarn)
    mass = write_mass_doubt(cupboard.mass_g.mean, cupboard.mass_g.sd, wording.reader)
    lots = f"{cupboard.count:,} lots" if cupboard.count > 1 else "One lot"
    return f"{lots} of {wording.counted(kinds, 'yarn')}: {mass}, about {wording.estimate(cupboard.length_m)} in all."


def _found(found: LotsFound, count: int, wording: Wording) -> str:
    if not found.count:
        return "No lot has all of these words."
    return f"{found.count:,} of {wording.counted(count, 'lot')}."


def lot_row(report: LotReport, photos: Mapping[str, str], wording: Wording, longest_m: float = 0.0) -> LotRow:
    """Lay out one lot of the list.

    :param longest_m: metres of the longest lot beside it, which its bar is drawn to.
    """
    lot = report.lot
    reserved = _by_garment(report, wording)
    says = f"{wording.yarn(report.reserved_m)} reserved of {wording.yarn(report.length_m.mean)}"
    metres = [one.metres for one in report.reserved]
    return LotRow(
        key=lot.key,
        yarn=report.yarn.name,
        yarn_key=report.yarn.key,
        colour=lot.colour or "no colour named",
        dye_lot=lot.dye_lot,
        chip=colour_chip(lot.shade, lot.colour or "no colour named"),
        photo=photos.get(lot.key, ""),
        holds=_holds(report, wording),
        mass=write_mass_doubt(report.mass_g.mean, report.mass_g.sd, wording.reader),
        length=wording.estimate(report.length_m),
        reserved=reserved,
        free=_free(report, wording),
        bar=lot_bar(report.length_m.mean, metres, longest_m or report.length_m.mean, lot.shade, says),
        kept_in=lot.kept_in,
        note=lot.note,
    )


def _holds(report: LotReport, wording: Wording) -> str:
    lot, parts = report.lot, []
    if lot.put_ups:
        parts.append(f"{lot.put_ups} {'ball' if lot.put_ups == 1 else 'balls'}")
    if lot.mass_g is not None:
        parts.append(f"{wording.mass(lot.mass_g)} opened")
    return " + ".join(parts)


def _by_garment(report: LotReport, wording: Wording) -> tuple[ReservedRow, ...]:
    """Give what is kept, a garment once however many of its roles take from the lot."""
    metres: dict[str, float] = {}
    names: dict[str, str] = {}
    for one in report.reserved:
        metres[one.garment] = metres.get(one.garment, 0.0) + one.metres
        names[one.garment] = one.name
    return tuple(ReservedRow(key, names[key], wording.yarn(length)) for key, length in metres.items())


def _free(report: LotReport, wording: Wording) -> str:
    if not report.reserved:
        return "all free"
    if report.free_m < report.length_m.sd:
        return "nothing free"
    return f"{wording.yarn(report.free_m)} free"


def lot_page(report: LotReport, photo: str, wording: Wording) -> LotPage:
    """Lay out one lot."""
    row = lot_row(report, {report.lot.key: photo} if photo else {}, wording)
    return LotPage(
        row=replace(row, free=row.free.removesuffix(" free")) if row.reserved else row,
        title=f"{report.yarn.name}, {row.colour}",
        holds=f"{row.length}: {row.mass}, {row.holds}.",
        use=_use(report, row, wording),
        shade=report.lot.shade or "",
        knitted=tuple(
            ReservedRow(one.garment, one.name, f"about {wording.estimate(one.metres)}") for one in report.knitted
        ),
        steps=tuple(_step(step, wording) for step in (*report.mass_g.steps, *report.length_m.steps)),
    )


def _use(report: LotReport, row: LotRow, wording: Wording) -> str:
    if not row.reserved:
        return "All of it is free."
    kept = wording.listed([f"{one.length} for {one.name}" for one in row.reserved])
    rest = f"about {row.free.removesuffix(' free')} is free" if row.free.endswith(" free") else "nothing is left over"
    return f"Kept: {kept}; {rest if row.free != 'nothing free' else 'nothing is left over'}."


def _step(step: Step, wording: Wording) -> StepLine:
    reader = wording.reader
    write = {"m": write_yarn_length_doubt, "g": write_mass_doubt}.get(step.unit)
    value = write(step.value, step.sd, reader) if write else write_doubt(step.value, step.sd, step.unit)
    return StepLine(step.says, step.working, value, str(step.origin), step.source)
