"""Yarn that a garment takes, per role and section, with its doubt; and whether there is enough.

* :func:`section_needs`, :class:`SectionNeed`, :func:`together`: a draft's rows, edges, seams and ends, and their sums.
* :func:`loop_by_gauge`, :func:`loop_on_swatch`, :class:`Loop`: the yarn in one stitch.
* :func:`needs_by_sections`, :class:`DraftsOfGarment`: both joined with the pattern's amounts, for a drafted garment.
* :func:`stated_need`: the pattern's amounts, scaled for size, gauge and length.
* :func:`modelled_need`, :func:`yarn_density`, :func:`role_needs`: from the area, for what cannot be drafted.
* :func:`row_lengths`, :func:`rows_possible`, :func:`change_rows`: what a remnant can still knit.
* :func:`long_tails`: how long to make the tail of a cast-on.
* :func:`p_with_balls`, :func:`balls_to_buy`: chances and counts.
"""

from loopwright.need.by_sections import DraftsOfGarment, needs_by_sections
from loopwright.need.enough import balls_to_buy, metres_in_balls, p_with_balls
from loopwright.need.loops import Loop, loop_by_gauge, loop_on_swatch
from loopwright.need.model import modelled_need, yarn_density
from loopwright.need.remnant import RowLengths, change_rows, finishing_from_row, p_rows, row_lengths, rows_possible
from loopwright.need.roles import RoleNeed, role_needs
from loopwright.need.sections import StrandOfRole, section_needs, swatch_need
from loopwright.need.shared_error import SectionNeed, together
from loopwright.need.stated import extra_length_m, gauge_factor, stated_need
from loopwright.need.tail import Tail, long_tails

__all__ = [
    "DraftsOfGarment",
    "Loop",
    "RoleNeed",
    "RowLengths",
    "SectionNeed",
    "StrandOfRole",
    "Tail",
    "balls_to_buy",
    "change_rows",
    "extra_length_m",
    "finishing_from_row",
    "gauge_factor",
    "long_tails",
    "loop_by_gauge",
    "loop_on_swatch",
    "metres_in_balls",
    "modelled_need",
    "needs_by_sections",
    "p_rows",
    "p_with_balls",
    "role_needs",
    "row_lengths",
    "rows_possible",
    "section_needs",
    "stated_need",
    "swatch_need",
    "together",
    "yarn_density",
]
