"""The templates that reports and pages share."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Any, Final

from jinja2 import Environment, StrictUndefined

from loopwright.documents.typography import tied

__all__ = ["LOOK_DIR", "TEMPLATE_DIR", "page_environment"]

_HERE: Final = Path(str(files("loopwright.documents")))
TEMPLATE_DIR: Final = _HERE / "templates"
"""Templates of answers, working and reports."""
LOOK_DIR: Final = _HERE / "look"
"""Style sheets of what stands in the templates."""


def page_environment(**options: Any) -> Environment:
    """Make a template environment: everything is escaped, and a name that is not there is a fault.

    :param options: passed on to :class:`jinja2.Environment`, such as a loader.
    """
    environment = Environment(**{**options, "autoescape": True, "undefined": StrictUndefined, "trim_blocks": True})
    environment.filters["tied"] = tied
    return environment
