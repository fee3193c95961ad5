"""Linear density of yarn: between tex and the other count systems, exactly.

Direct systems give mass per length, `tex = count × c`; indirect ones give length per mass, `tex = c /
count`. The constants follow from 1 yd = 0.9144 m and 1 lb = 453.59237 g (1959); they agree with every
printed digit of the table in ASTM D2260 (conversion factors); tex itself is ASTM D861 and ISO 1144.
"""

from dataclasses import dataclass
from fractions import Fraction

from loopwright.units.errors import BadInput
from loopwright.units.factors import OUNCE, POUND, YARD

__all__ = [
    "COUNT_SYSTEMS",
    "CountSystem",
    "count_from_tex",
    "find_count_system",
    "length_of_mass_m",
    "mass_of_length_g",
    "resultant_count",
    "tex_from_count",
    "tex_from_put_up",
]

_TEX_PER_G_PER_M = 1000


@dataclass(frozen=True, slots=True)
class CountSystem:
    """A way of stating how fine a yarn is.

    Args:
        symbol: how it is written, such as `Nm`.
        direct: True for mass per length, `tex = count × constant`; False for length per mass,
            `tex = constant / count`.
        constant: in tex × the system's own unit (or tex per unit for a direct system), exact.
        definition: what one unit of it is.
        aliases: other spellings that are read, in lower case.
    """

    symbol: str
    direct: bool
    constant: Fraction
    definition: str
    aliases: tuple[str, ...] = ()


def _per_lb(symbol: str, yards: int, definition: str, *aliases: str) -> CountSystem:
    """An indirect system whose unit is a hank of so many yards per pound."""
    constant = _TEX_PER_G_PER_M * POUND.factor / (yards * YARD.factor / 100)
    return CountSystem(symbol, False, constant, definition, aliases)


def _per_mass(symbol: str, length_m: Fraction, mass_g: Fraction, definition: str, *aliases: str) -> CountSystem:
    """An indirect system that counts lengths in a given mass."""
    return CountSystem(symbol, False, _TEX_PER_G_PER_M * mass_g / length_m, definition, aliases)


_YARD_M = YARD.factor / 100
_METRE_M = Fraction(1)

COUNT_SYSTEMS: tuple[CountSystem, ...] = (
    CountSystem("tex", True, Fraction(1), "grams per 1000 m"),
    CountSystem("dtex", True, Fraction(1, 10), "grams per 10 000 m", ("decitex",)),
    CountSystem("ktex", True, Fraction(1000), "kilograms per 1000 m", ("kilotex",)),
    CountSystem("den", True, Fraction(1, 9), "grams per 9000 m", ("denier",)),
    CountSystem("Nm", False, Fraction(1000), "metres per gram (metric count)"),
    _per_lb("NeC", 840, "840 yd hanks per lb (English cotton count)", "ne", "cc"),
    _per_lb("NeK", 560, "560 yd hanks per lb (worsted count)", "wc", "nw"),
    _per_lb("run", 1600, "1600 yd lengths per lb (American woollen run)", "nar"),
    _per_lb("cut", 300, "300 yd lengths per lb (American woollen cut)", "nac"),
    _per_lb("lea", 300, "300 yd lengths per lb (linen lea)", "nel"),
    _per_lb("YSW", 256, "256 yd skeins per lb (Yorkshire woollen skein)"),
    _per_lb("yd/lb", 1, "yards per pound", "ypp"),
    _per_mass("yd/oz", _YARD_M, OUNCE.factor, "yards per ounce"),
    _per_mass("yd/100g", _YARD_M, Fraction(100), "yards per 100 g"),
    _per_mass("yd/50g", _YARD_M, Fraction(50), "yards per 50 g"),
    _per_mass("m/100g", _METRE_M, Fraction(100), "metres per 100 g"),
    _per_mass("m/50g", _METRE_M, Fraction(50), "metres per 50 g"),
)

_BY_NAME = {name: system for system in COUNT_SYSTEMS for name in (system.symbol.lower(), *system.aliases)}


def find_count_system(name: str) -> CountSystem | None:
    """The count system of this name (capitals do not matter), or None."""
    return _BY_NAME.get(name.strip().lower())


def tex_from_count(count: float | Fraction, system: str) -> float:
    """Grist in tex of a single count in the named system.

    `tex = count × c` (direct) or `c / count` (indirect), ASTM D2260.

    >>> tex_from_count(4, "Nm"), round(tex_from_count(1000, "yd/lb"), 3)
    (250.0, 496.055)
    """
    return float(_other_side(count, _named(system), "count"))


def count_from_tex(grist_tex: float | Fraction, system: str) -> float:
    """The count in the named system of a yarn of `grist_tex` (tex); the inverse of `tex_from_count`.

    >>> count_from_tex(250, "Nm"), count_from_tex(250, "den")
    (4.0, 2250.0)
    """
    named = _named(system)
    if named.direct:
        return float(_positive(grist_tex, "grist_tex") / named.constant)
    return float(_other_side(grist_tex, named, "grist_tex"))


def resultant_count(first: Fraction, second: Fraction) -> Fraction:
    """The single count that a plied count such as `30/2` or `2/24` stands for: count divided by plies.

    Metric and cotton counts are printed count first (`30/2`), worsted counts plies first (`2/24`), but both
    orders occur; the smaller number is taken as the plies, which must be whole. Twist take-up is left out.

    >>> resultant_count(Fraction(30), Fraction(2)), resultant_count(Fraction(2), Fraction(24))
    (Fraction(15, 1), Fraction(12, 1))
    """
    plies, count = sorted((first, second))
    if plies < 1 or plies.denominator != 1:
        raise BadInput(f"{first}/{second}", "a count and a whole number of plies, such as 30/2 or 2/24")
    return count / plies


def tex_from_put_up(length_m: float, mass_g: float) -> float:
    """Grist in tex of a put-up: `1000 × mass_g / length_m`, the definition of tex.

    >>> tex_from_put_up(400, 100)
    250.0
    """
    length, mass = _positive(length_m, "length_m"), _positive(mass_g, "mass_g")
    return float(_TEX_PER_G_PER_M * mass / length)


def length_of_mass_m(mass_g: float, grist_tex: float) -> float:
    """Metres in `mass_g` grams of a yarn of `grist_tex`: `1000 × mass_g / grist_tex`.

    >>> length_of_mass_m(78, 250)
    312.0
    """
    return float(_TEX_PER_G_PER_M * Fraction(mass_g) / _positive(grist_tex, "grist_tex"))


def mass_of_length_g(length_m: float, grist_tex: float) -> float:
    """Grams in `length_m` metres of a yarn of `grist_tex`: `length_m × grist_tex / 1000`.

    >>> mass_of_length_g(312, 250)
    78.0
    """
    return float(Fraction(length_m) * _positive(grist_tex, "grist_tex") / _TEX_PER_G_PER_M)


def _other_side(value: float | Fraction, system: CountSystem, name: str) -> Fraction:
    """`value × c` for a direct system, `c / value` for an indirect one."""
    exact = _positive(value, name)
    return exact * system.constant if system.direct else system.constant / exact


def _named(system: str) -> CountSystem:
    found = find_count_system(system)
    if found is None:
        raise BadInput(system, "a count system: " + ", ".join(s.symbol for s in COUNT_SYSTEMS))
    return found


def _positive(value: float | Fraction, name: str) -> Fraction:
    """The exact value of a finite number above zero."""
    if not 0 < value < float("inf"):
        raise BadInput(str(value), "a finite number above zero", place=name)
    return Fraction(value)
