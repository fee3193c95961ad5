"""Loopwright: plan and make a season of hand-knitted garments, with the working shown.

>>> import loopwright as lw
>>> season = lw.read_season("winter.toml")  # doctest: +SKIP
>>> lw.plan(season).answer("yarn").sentence  # doctest: +SKIP
'Yes, for everything.'

* :func:`read_season`, :func:`save_season`: the season file.
* :class:`Season`, :func:`plan`, :class:`SeasonPlan`: a season in, its plan out.
* :class:`Reader`: in which measures and words to answer.
* :class:`LoopwrightError`, :class:`BadInput`: what is raised on purpose.

A name is imported when it is first used, so that the command line starts at once.
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from loopwright.files import read_season, save_season
    from loopwright.season import Season, SeasonPlan, plan
    from loopwright.units import BadInput, LoopwrightError, Reader

__all__ = [
    "BadInput",
    "LoopwrightError",
    "Reader",
    "Season",
    "SeasonPlan",
    "__version__",
    "plan",
    "read_season",
    "save_season",
]

__version__ = "0.1.0"

_ROOMS = {
    "BadInput": "units",
    "LoopwrightError": "units",
    "Reader": "units",
    "Season": "season",
    "SeasonPlan": "season",
    "plan": "season",
    "read_season": "files",
    "save_season": "files",
}


def __getattr__(name: str) -> object:
    """Import a public name from its room."""
    if name not in _ROOMS:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    value: object = getattr(import_module(f"loopwright.{_ROOMS[name]}"), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    """List the public names, so that a notebook can complete them."""
    return sorted(__all__)
