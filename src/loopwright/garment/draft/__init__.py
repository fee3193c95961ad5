"""The structure of a garment: pieces of sections of rows, with a count for every row and every shaping in its place.

* :class:`Section`, :class:`Shaping`, :class:`Kind`: a run of rows of one fabric; :class:`Needle` knits one.
* :class:`Piece`, :class:`Join`, :class:`Draft`: what sections make up, and how pieces meet.
* :class:`MeasureCheck`: a finished measure, wanted and drafted.
* :func:`section_outline_cm`, :func:`piece_outlines_cm`, :func:`edge_length_cm`,
  :func:`shaped_length_cm`: shapes from counts and gauge.
* :func:`shaping_runs`: the shaping of a section told in runs.
* :func:`plain_draft`: a draft as plain lists, for machines.
* :func:`broken_laws`, :func:`lawful`: what holds for every draft.
"""

from loopwright.garment.draft.laws import CAP_EASE_MOST, BrokenDraft, broken_laws, lawful
from loopwright.garment.draft.needle import Change, Needle, Place
from loopwright.garment.draft.outline import edge_length_cm, piece_outlines_cm, section_outline_cm, shaped_length_cm
from loopwright.garment.draft.piece import Direction, Draft, Edge, Join, Landmark, MeasureCheck, Piece
from loopwright.garment.draft.plain import plain_draft
from loopwright.garment.draft.section import Counts, Kind, Part, RoleCells, RoleRun, Section, Shaping
from loopwright.garment.draft.summary import ShapingRun, shaping_runs

__all__ = [
    "CAP_EASE_MOST",
    "BrokenDraft",
    "Change",
    "Counts",
    "Direction",
    "Draft",
    "Edge",
    "Join",
    "Kind",
    "Landmark",
    "MeasureCheck",
    "Needle",
    "Part",
    "Piece",
    "Place",
    "RoleCells",
    "RoleRun",
    "Section",
    "Shaping",
    "ShapingRun",
    "broken_laws",
    "edge_length_cm",
    "lawful",
    "piece_outlines_cm",
    "plain_draft",
    "section_outline_cm",
    "shaped_length_cm",
    "shaping_runs",
]
