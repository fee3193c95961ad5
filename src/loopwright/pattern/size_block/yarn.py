"""Reads a row of yarn: an amount for every size, and perhaps what one ball holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from loopwright.pattern.size_block.figures import Group, Taken, take_all
from loopwright.pattern.size_block.lines import Part
from loopwright.pattern.size_block.tokens import Place, Token, span_of
from loopwright.pattern.size_block.tree import BlockFault, PutUp, Reading, YarnRow
from loopwright.units import find_unit

__all__ = ["YarnFound", "yarn_in"]

_WANTED_UNIT: Final = "balls, m, yd, g or oz behind the amounts"


@dataclass(frozen=True, slots=True)
class YarnFound:
    """What a row of yarn says. The role of its row is empty where the label names none."""

    row: YarnRow | None
    put_up: PutUp | None
    faults: tuple[BlockFault, ...]
    left: tuple[Token, ...]


def yarn_in(part: Part, columns: int, *, amounts: bool = True) -> YarnFound:
    """Read a row of yarn.

    :param columns: how many sizes there are.
    :param amounts: False for a row that only says what a ball holds.
    """
    best: Taken | None = None
    for taken in take_all(part.body, yarn=True):
        best = best or taken
        if not amounts or any(len(group.figures) == columns for group in taken.groups):
            best = taken
            break
    assert best is not None  # there is always the usual way
    place, width = part.tokens[0].place, span_of(part.tokens)
    groups = [_with_unit(group, part) for group in best.groups]
    chosen = _amounts(groups, columns) if amounts else []
    singles = [group for group in groups if group not in chosen and len(group.figures) == 1 and group.unit]
    faults = list(best.faults)
    if amounts and not chosen:
        faults.append(_no_amounts(groups, singles, columns, place, width))
    readings = tuple(Reading(_unit(group, best, part), group.figures) for group in chosen)
    if len({reading.unit for reading in readings}) < len(readings):
        faults.append(BlockFault(place, width, "two amounts for each size", "one, or a name for each colour"))
        readings = readings[:1]
    if amounts and any(not reading.unit for reading in readings):
        faults.append(BlockFault(place, width, "amounts without a unit", _WANTED_UNIT))
        readings = ()
    role = part.label.name if part.label is not None and part.label.name else ""
    row = YarnRow(role, _one_kind(readings), place, width) if readings else None
    put_up, more = _put_up(singles, place, width)
    return YarnFound(row, put_up, (*faults, *more), tuple(best.left))


def _with_unit(group: Group, part: Part) -> Group:
    """Give a group the unit of its label where it has none: ``Yardage (yd): 900 (980)``."""
    return replace(group, unit=part.units[0]) if group.unit is None and part.units else group


def _amounts(groups: Sequence[Group], columns: int) -> list[Group]:
    full = [group for group in groups if len(group.figures) == columns]
    if columns != 1:
        return full
    for unit in (("balls",), ("m", "yd"), ("g", "oz", "kg", "lb"), (None,)):
        found = [group for group in full if group.unit in unit]
        if found:
            return found[:1] if unit != ("m", "yd") else _both_lengths(found)
    return []


def _both_lengths(found: Sequence[Group]) -> list[Group]:
    """Of one size: the first length, and the same in the other unit."""
    return [found[0], *[group for group in found[1:2] if group.unit != found[0].unit]]


def _unit(group: Group, taken: Taken, part: Part) -> str:
    if group.unit is not None:
        return group.unit
    labelled = {token.name for token in part.words} & {"balls", "skeins", "hanks", "cones", "cakes"}
    return "balls" if "balls" in taken.units or labelled else ""


def _one_kind(readings: Sequence[Reading]) -> tuple[Reading, ...]:
    """Keep one way of stating the amounts: balls that are mere multiples go before metres, else metres go first."""
    kinds = {kind: [one for one in readings if _kind(one.unit) == kind] for kind in ("balls", "length", "mass")}
    if kinds["balls"] and kinds["length"] and not _multiples(kinds["balls"][0], kinds["length"][0]):
        return tuple(kinds["length"])
    return tuple(kinds["balls"] or kinds["length"] or kinds["mass"])


def _kind(unit: str) -> str:
    found = find_unit(unit)
    return "balls" if found is None else found.kind


def _multiples(balls: Reading, length: Reading) -> bool:
    """Say whether every length is its count of balls times one length, within a hundredth."""
    ratios = [
        one.value / many.value
        for one, many in zip(length.figures, balls.figures, strict=True)
        if one.value is not None and many.value is not None
    ]
    return bool(ratios) and max(ratios) <= min(ratios) * 101 / 100


def _no_amounts(
    groups: Sequence[Group], singles: Sequence[Group], columns: int, place: Place, width: int
) -> BlockFault:
    counts = [len(group.figures) for group in groups if group not in singles]
    counts = counts or [len(group.figures) for group in groups]
    found = f"{max(counts)} {'figure' if max(counts) == 1 else 'figures'}" if counts else "no amounts of yarn"
    hint = "a size without that figure is written as a dash" if counts else None
    return BlockFault(place, width, found, f"{columns}, one amount for each size", hint)


def _put_up(singles: Sequence[Group], place: Place, width: int) -> tuple[PutUp | None, list[BlockFault]]:
    """Give what one ball holds; balls, and what is told again in another unit, are passed over."""
    length: Reading | None = None
    mass: Reading | None = None
    faults = []
    for group in singles:
        figure = group.figures[0]
        kind = _kind(group.unit or "")
        if figure.value is None or kind == "balls":
            continue
        reading = Reading(group.unit or "", (replace(figure, upto=None),))
        if figure.upto is not None:
            faults.append(BlockFault(figure.place, figure.width, "a range", "one figure for what a ball holds"))
        before = length if kind == "length" else mass
        if before is not None and not _agree(before, reading):
            says = f"{_said(before)} and {_said(reading)}"
            faults.append(BlockFault(figure.place, figure.width, says, "what one ball holds, told once"))
        if before is None and kind == "length":
            length = reading
        elif before is None:
            mass = reading
        elif reading.metric and not before.metric:
            length, mass = (reading, mass) if kind == "length" else (length, reading)
    return (PutUp(length, mass, place) if length or mass else None), faults


def _agree(one: Reading, other: Reading) -> bool:
    """Say whether two ways of telling what a ball holds agree within a fiftieth, as labels round."""
    first, second = (reading.in_base(reading.figures[0].value or 0) for reading in (one, other))  # type: ignore[arg-type]
    return abs(first - second) * 50 <= max(first, second)


def _said(reading: Reading) -> str:
    value = reading.figures[0].value
    return f"{float(value or 0):g} {reading.unit}"
