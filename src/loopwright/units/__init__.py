"""Plain numbers with fixed units inside, and text only at this edge.

Lengths are in cm, yarn in m, masses in g, grist in tex, times in minutes, money in minor units. The room
imports nothing but the standard library.

What goes wrong     `LoopwrightError`, `BadInput`, `UnreadableQuantity`, `MixedCurrencies`
Units               `Unit`, `UNITS`, `Kind`, `find_unit`
Numbers             `read_number`, `write_fraction`, `round_half_up`
Reading             `read_quantity` and `Quantity`, `read_length_cm`, `read_yarn_length_m`, `read_mass_g`,
                    `read_minutes`, `read_share`, `read_gauge` and `GaugeCount`,
                    `read_window_count` and `WindowCount`, `read_grist_tex`
Grist               `CountSystem`, `COUNT_SYSTEMS`, `find_count_system`, `tex_from_count`, `count_from_tex`,
                    `resultant_count`, `tex_from_put_up`, `length_of_mass_m`, `mass_of_length_g`
Money               `Money`, `currency_decimals`, `read_money`, `write_money`
For whom            `Reader`, `Measures`, `Words`, `term`, `Term`, `TERMS`
Writing for people  `write_length`, `write_yarn_length`, `write_mass`, `write_gauge`, `write_hours`,
                    `write_share`, `write_percent`, `write_doubt`, `write_length_doubt`, `write_yarn_length_doubt`,
                    `write_mass_doubt`
Lengths in words    `Told`, `told`
Writing for files   `length_text`, `yarn_length_text`, `mass_text`
"""

from loopwright.units.doubt import write_doubt, write_length_doubt, write_mass_doubt, write_yarn_length_doubt
from loopwright.units.errors import BadInput, LoopwrightError, MixedCurrencies, UnreadableQuantity
from loopwright.units.exact_text import length_text, mass_text, yarn_length_text
from loopwright.units.factors import UNITS, Kind, Unit, find_unit
from loopwright.units.fraction import read_number, round_half_up, write_fraction
from loopwright.units.gauge_reading import GaugeCount, WindowCount, read_gauge, read_window_count
from loopwright.units.grist import (
    COUNT_SYSTEMS,
    CountSystem,
    count_from_tex,
    find_count_system,
    length_of_mass_m,
    mass_of_length_g,
    resultant_count,
    tex_from_count,
    tex_from_put_up,
)
from loopwright.units.grist_reading import read_grist_tex
from loopwright.units.lengths_told import Told, told
from loopwright.units.money import Money, currency_decimals, read_money
from loopwright.units.reader import Measures, Reader, Words
from loopwright.units.reading import (
    Quantity,
    read_length_cm,
    read_mass_g,
    read_minutes,
    read_quantity,
    read_share,
    read_yarn_length_m,
)
from loopwright.units.words import TERMS, Term, term
from loopwright.units.writing import (
    write_gauge,
    write_hours,
    write_length,
    write_mass,
    write_money,
    write_percent,
    write_share,
    write_yarn_length,
)

__all__ = [
    "COUNT_SYSTEMS",
    "TERMS",
    "UNITS",
    "BadInput",
    "CountSystem",
    "GaugeCount",
    "Kind",
    "LoopwrightError",
    "Measures",
    "MixedCurrencies",
    "Money",
    "Quantity",
    "Reader",
    "Term",
    "Told",
    "Unit",
    "UnreadableQuantity",
    "WindowCount",
    "Words",
    "count_from_tex",
    "currency_decimals",
    "find_count_system",
    "find_unit",
    "length_of_mass_m",
    "length_text",
    "mass_of_length_g",
    "mass_text",
    "read_gauge",
    "read_grist_tex",
    "read_length_cm",
    "read_mass_g",
    "read_minutes",
    "read_money",
    "read_number",
    "read_quantity",
    "read_share",
    "read_window_count",
    "read_yarn_length_m",
    "resultant_count",
    "round_half_up",
    "term",
    "tex_from_count",
    "tex_from_put_up",
    "told",
    "write_doubt",
    "write_fraction",
    "write_gauge",
    "write_hours",
    "write_length",
    "write_length_doubt",
    "write_mass",
    "write_mass_doubt",
    "write_money",
    "write_percent",
    "write_share",
    "write_yarn_length",
    "write_yarn_length_doubt",
    "yarn_length_text",
]
