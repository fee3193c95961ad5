"""Yarn that a garment takes, per role, with its doubt; and whether there is enough.

* :func:`stated_need`: the pattern's amounts, scaled for size, gauge and length.
* :func:`modelled_need`, :func:`yarn_density`: from the area and the washed swatch's mass and loop length.
* :func:`role_needs`: both joined by their precision, per role.
* :func:`p_with_balls`, :func:`balls_to_buy`: chances and counts.
"""

from loopwright.need.enough import balls_to_buy, metres_in_balls, p_with_balls
from loopwright.need.model import modelled_need, yarn_density
from loopwright.need.roles import RoleNeed, role_needs
from loopwright.need.stated import extra_length_m, gauge_factor, stated_need

__all__ = [
    "RoleNeed",
    "balls_to_buy",
    "extra_length_m",
    "gauge_factor",
    "metres_in_balls",
    "modelled_need",
    "p_with_balls",
    "role_needs",
    "stated_need",
    "yarn_density",
]
