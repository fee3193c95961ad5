"""Scarf, a flat rectangle, and cowl, the same as a tube; an edge before and after the fabric.

Counts: width × gauge to the nearest that holds the repeat, length × rows. Source: definition of gauge, and handbooks'
rounding to the repeat.
"""

from __future__ import annotations

from loopwright.garment.draft import Draft, Landmark, Needle, Piece, lawful
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.edge import edge_after, edge_before
from loopwright.garment.parts.suited import refuse_unsuited
from loopwright.garment.shaping import nearest_count
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["draft_cowl", "draft_rectangle"]


def draft_rectangle(brief: Brief) -> Draft:
    """Give the draft of a scarf or another flat rectangle.

    :param brief: ``width`` is across the rows, ``length`` from end to end, edges included. Of the options it takes
        ``hem``, worked at both ends, and ``repeat``, whose stitches beyond whole repeats are the edge stitches.
    :raises BadInput: edges longer than the length, or an option that a rectangle has no use for.
    """
    refuse_unsuited(brief, worked=("flat",), direction=("bottom up",), hem=(), repeat=())
    return _between_edges(brief, tube=False)


def draft_cowl(brief: Brief) -> Draft:
    """Give the draft of a cowl.

    :param brief: ``width`` is its girth, all the way round, and ``length`` its height, edges included. Of the options
        it takes ``hem``, worked at both rims, and ``repeat``.
    :raises BadInput: edges higher than the cowl, or an option that a cowl has no use for.
    """
    refuse_unsuited(brief, worked=("in the round",), direction=("bottom up",), hem=(), repeat=())
    return _between_edges(brief, tube=True)


def _between_edges(brief: Brief, *, tube: bool) -> Draft:
    measured = Measured(brief.measures, brief.gauge)
    stitches = _stitches(brief, measured, tube=tube)
    hem = brief.options.hem
    first = edge_before(hem, stitches, brief.gauge, "first edge", in_the_round=tube)
    last = edge_after(hem, stitches, brief.gauge, "last edge", in_the_round=tube, after="body")
    rows = _rows(brief, first.height_cm + last.height_cm, tube=tube)
    body = (
        Needle(stitches, in_the_round=tube)
        .plain(rows)
        .section("body", brief.construction.value, brief.fabric, brief.gauge, begins="carried on", after="first edge")
    )
    key = brief.construction.value
    piece = Piece(key, key, "bottom up", (first, body, last), (Landmark("hem", "first edge", 0),))
    measured.length("length", piece.height_cm, "" if tube else "worked flat, each edge begins on a right-side row")
    return lawful(
        Draft(
            construction=key, direction="bottom up", gauge=brief.gauge, pieces=(piece,), checks=tuple(measured.checks)
        )
    )


def _stitches(brief: Brief, measured: Measured, *, tube: bool) -> int:
    wanted = brief.gauge.stitches_in(brief.measures.need("width"))
    repeat = brief.options.repeat
    if repeat is None:
        count = nearest_count(wanted, least=2)
        measured.width("width", count, "a fabric has 2 stitches at the least")
        return count
    over = repeat.plus % repeat.multiple if tube or repeat.plus < 0 else repeat.plus
    count = nearest_count(wanted, multiple=repeat.multiple, plus=over, least=max(repeat.multiple + over, 2))
    measured.width("width", count, f"the repeat {repeat} must {'go round' if tube else 'fit'} in whole")
    return count


def _rows(brief: Brief, edges_cm: float, *, tube: bool) -> int:
    """Give the rows between two edges, an even number where they are worked to and fro."""
    row_cm = 10 / brief.gauge.rows_or_usual_per_10cm
    length = brief.measures.need("length")
    wanted = (length - edges_cm) / row_cm
    rows = round(wanted) if tube else 2 * round(wanted / 2)
    if rows < 1:
        raise BadInput(
            found=told("length {} with edges that take {} together", length, edges_cm),
            wanted=told("length of at least {}, or lower edges", edges_cm + (1 if tube else 2) * row_cm),
            place="length",
        )
    return rows
