"""Reads how fine a yarn is, from a put-up or from a count, as grist in tex."""

import re
from fractions import Fraction

from loopwright.units.errors import BadInput, UnreadableQuantity
from loopwright.units.factors import Unit, find_unit
from loopwright.units.fraction import read_number
from loopwright.units.grist import CountSystem, find_count_system, resultant_count
from loopwright.units.reading import exact_float, unit_hint
from loopwright.units.tokens import Cursor, lex

__all__ = ["read_grist_tex"]

_WANTED = "length and mass such as 437 yd / 100 g, or a count such as 250 tex or Nm 30/2"
_PER = ("/", "per", "=", ",", ":", "in", "to")
_ONE_MEASURE = Fraction(2, 100)
"""Ball bands round: 50 g is printed as 1.75 oz, which is 0.8 % less. More than this is another measure."""
_NAME_FIRST = re.compile(r"(?P<name>[A-Za-z]+)\.?\s*(?P<count>[^A-Za-z]+)")
_NAME_LAST = re.compile(r"(?P<count>[^A-Za-z]+?)\s*(?P<name>[A-Za-z]+)\.?(?:\s*[x×]\s*(?P<ends>[0-9]{1,3}))?")


def read_grist_tex(text: str) -> float:
    """Grist in tex (grams per kilometre) from a put-up or a yarn count.

    Read are put-ups in either order (`437 yd / 100 g`, `100 m per 50g`, `50 g = 115 m`, `1000 yd/lb`), also
    with both systems printed (`420 m (459 yd) / 100 g (3.5 oz)`, where the metric figures count), and counts
    with their system before or behind (`250 tex`, `Nm 30/2`, `NeK 2/24`, `1000 ypp`, `25 tex x 2`). For
    plied counts see `resultant_count`.

    Raises:
        UnreadableQuantity: an unknown system or unit, two lengths or two masses, zero or less, something
            left over.

    >>> read_grist_tex("100 m per 50g"), round(read_grist_tex("Nm 30/2"), 2)
    (500.0, 66.67)
    """
    stripped = text.strip()
    for form in (_NAME_FIRST, _NAME_LAST):
        parts = form.fullmatch(stripped)
        system = find_count_system(parts["name"]) if parts else None
        if parts and system:
            return _count_tex(text, system, parts["count"].strip(), parts.groupdict().get("ends"))
    return _put_up_tex(text)


def _count_tex(text: str, system: CountSystem, written: str, ends: str | None) -> float:
    if system.direct and "/" in written:
        raise UnreadableQuantity(text, _WANTED, hint=f"plies of {system.symbol} are written 25 {system.symbol} x 2")
    count = _plied(text, written)
    if count <= 0 or (ends is not None and int(ends) == 0):
        raise UnreadableQuantity(text, _WANTED, hint="a count is above zero")
    single = count * system.constant if system.direct else system.constant / count
    return exact_float(single * int(ends or "1"), text, _WANTED)


def _plied(text: str, written: str) -> Fraction:
    """The count in `30`, `2.5` or `30/2`, exact."""
    first, *more = (part.strip() for part in written.split("/"))
    if len(more) > 1:
        raise UnreadableQuantity(text, _WANTED, hint="one count and its plies")
    try:
        return resultant_count(read_number(first), read_number(more[0])) if more else read_number(first)
    except BadInput as fault:
        raise UnreadableQuantity(text, _WANTED) from fault


def _put_up_tex(text: str) -> float:
    cursor = Cursor(lex(text))
    first, first_unit = _measure_told_twice(cursor, text)
    if not cursor.skip(*_PER):
        raise UnreadableQuantity(text, _WANTED, hint="write length / mass")
    second, second_unit = _measure_told_twice(cursor, text)
    if not cursor.at_end or first_unit.kind == second_unit.kind:
        raise UnreadableQuantity(text, _WANTED, hint="one length and one mass")
    length_cm, mass_g = (first, second) if first_unit.kind == "length" else (second, first)
    return exact_float(100_000 * mass_g / length_cm, text, _WANTED)


def _measure_told_twice(cursor: Cursor, text: str) -> tuple[Fraction, Unit]:
    """A measure and perhaps the same in the other system in brackets; the metric one counts."""
    value, unit = _measure(cursor, text)
    if not cursor.skip("("):
        return value, unit
    again, other = _measure(cursor, text)
    if not cursor.skip(")"):
        raise UnreadableQuantity(text, _WANTED, hint="a bracket is not closed")
    if other.kind != unit.kind or abs(value - again) > _ONE_MEASURE * max(value, again):
        raise UnreadableQuantity(text, _WANTED, hint="the brackets say something else")
    return (again, other) if other.metric else (value, unit)


def _measure(cursor: Cursor, text: str) -> tuple[Fraction, Unit]:
    """A length in cm or a mass in g with the unit it was written in; a unit alone means one of it."""
    value = Fraction(1)
    if cursor.peek().kind == "number":
        try:
            value = read_number(cursor.take().text)
        except UnreadableQuantity as fault:
            raise UnreadableQuantity(text, _WANTED, hint=fault.hint) from fault
    word = cursor.take()
    unit = find_unit(word.text)
    if unit is None or unit.kind == "time":
        hint = unit_hint(word.text, "length") or unit_hint(word.text, "mass")
        raise UnreadableQuantity(text, _WANTED, hint=hint if word.text else "say which units")
    if value <= 0:
        raise UnreadableQuantity(text, _WANTED, hint="both are above zero")
    return value * unit.factor, unit
