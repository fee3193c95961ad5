"""What people read: answers laid out for a page, and reports that stand alone.

* :func:`season_report`: one HTML file of a season's plan, with nothing outside it.
* :func:`page_environment`: the templates that reports and pages share.
* :func:`differences`: what a change does to a garment's figures.
* :class:`SeasonView`, :class:`GarmentView`: what a page shows, ready to be laid out.
"""

from loopwright.documents.difference import Difference, differences
from loopwright.documents.draft_view import DraftView, draft_view, schematic_of
from loopwright.documents.environment import LOOK_DIR, TEMPLATE_DIR, page_environment
from loopwright.documents.report import season_report
from loopwright.documents.view import GarmentView, SeasonView, garment_view, season_view

__all__ = [
    "LOOK_DIR",
    "TEMPLATE_DIR",
    "Difference",
    "DraftView",
    "GarmentView",
    "SeasonView",
    "differences",
    "draft_view",
    "garment_view",
    "page_environment",
    "schematic_of",
    "season_report",
    "season_view",
]
