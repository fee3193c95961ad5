"""Bodies worked from the hem up with flat fronts and backs: closed or open in front, as a tube or in pieces."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from loopwright.garment.draft import Edge, Join, Landmark, Needle, Piece, Section
from loopwright.garment.draft.section import Face
from loopwright.garment.parts.band import Stretch, neck_stretches, picked_up_band, side_stretch
from loopwright.garment.parts.cardigan import front_bands, half_front_stitches
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.edge import edge_before
from loopwright.garment.parts.face import FacePlan, face_sections, half_face_sections
from loopwright.garment.parts.girth import SEAM
from loopwright.garment.parts.neck import Faces, half_front
from loopwright.garment.parts.short_rows import BUST_KEY, bust_notes, bust_section, bust_turns
from loopwright.garment.parts.taper import BOTH_EDGES
from loopwright.garment.parts.torso import TorsoPlan, rows_below, torso_plan, torso_up
from loopwright.garment.wanted import Brief
from loopwright.units import Told

__all__ = [
    "StraightBody",
    "armhole_stretches",
    "closed_body",
    "neckband",
    "open_body",
    "rows_above_and_below",
    "shoulder_joins",
    "side_seams",
]


@dataclass(frozen=True, slots=True)
class StraightBody:
    """The pieces of a body, and where its uppers lie.

    :ivar is_tube: whether it is one tube below the underarm.
    :ivar is_open: whether it opens in front; then the one front is made twice, mirrored.
    """

    pieces: tuple[Piece, ...]
    is_tube: bool
    is_open: bool
    faces: Faces
    joins: tuple[Join, ...] = ()
    notes: tuple[Told, ...] = ()

    def upper(self, face: Literal["front", "back"]) -> tuple[Piece, tuple[Section, ...]]:
        """Give the piece and the sections of one face above the underarm."""
        for piece in self.pieces:
            sections = tuple(one for one in piece.sections if one.key == face or one.key.startswith(f"{face} "))
            if sections:
                return piece, sections
        raise KeyError(face)


def rows_above_and_below(brief: Brief, measured: Measured, *, flat: bool) -> tuple[int, int]:
    """Give the rows from the underarm to the top of the shoulder, and from the top of the hem edge to the underarm.

    :param flat: below the underarm.
    :raises BadInput: the hem edge and the armhole take more than the length.
    """
    gauge = brief.gauge
    above = max(round(brief.measures.need("armhole_depth") * gauge.rows_or_usual_per_10cm / 10), 6)
    measured.rows("armhole_depth", above)
    above_cm = above * 10 / gauge.rows_or_usual_per_10cm
    return above, rows_below(brief, "an armhole", above_cm, measured, flat=flat)


def _lower(brief: Brief, plan: TorsoPlan, key: str, name: str, *, left: float | None = None) -> tuple[Section, Section]:
    """Give hem edge and body up to the underarm."""
    tube = plan.edges is None
    hem = edge_before(brief.options.hem, plan.hip, brief.gauge, "hem", in_the_round=tube)
    needle = torso_up(Needle(plan.hip, in_the_round=tube, left=left), plan, brief)
    return hem, needle.section(key, name, brief.fabric, brief.gauge, begins="carried on", after="hem")


def _landmarks(plan: TorsoPlan, body: str, upper: Section) -> tuple[Landmark, ...]:
    waist = (Landmark("waist", body, plan.below),) if plan.waist is not None else ()
    return (
        Landmark("hem", "hem", 0),
        *waist,
        Landmark("underarm", upper.key, 0),
        Landmark("neck", upper.key, upper.rows),
    )


def closed_body(brief: Brief, faces: Faces, rows: int, measured: Measured, *, tube: bool) -> StraightBody:
    """Give a body that is closed in front: one tube, or a front and a back."""
    bust = faces.back.stitches * 2 if tube else faces.back.stitches
    plan = torso_plan(
        brief,
        bust,
        rows,
        measured,
        share=1 if tube else 0.5,
        edges=None if tube else BOTH_EDGES,
        seam=0 if tube else SEAM,
    )
    notes = bust_notes(bust_turns(brief, faces.front.stitches))
    if tube:
        lower = _lower(brief, plan, "body", "body")
        back = _upper(brief, faces.back, "back", "back")
        front = _upper_front(brief, faces.front, "front")
        piece = Piece("body", "body", "bottom up", (*lower, *back, *front), _landmarks(plan, "body", front[-3]))
        return StraightBody((piece,), True, False, faces, notes=notes)
    pieces = []
    for key, upper in (
        ("back", _upper(brief, faces.back, "back", "whole")),
        ("front", _upper_front(brief, faces.front, "whole")),
    ):
        lower = _lower(brief, plan, "body", f"body of the {key}")
        pieces.append(Piece(key, key, "bottom up", (*lower, *upper), _landmarks(plan, "body", upper[-3])))
    return StraightBody(tuple(pieces), False, False, faces, notes=notes)


def _upper(brief: Brief, plan: FacePlan, key: str, face: Face, after: str = "body") -> tuple[Section, ...]:
    return face_sections(plan, key, f"upper {key}", brief.fabric, brief.gauge, after=after, face=face)


def _upper_front(brief: Brief, plan: FacePlan, face: Face) -> tuple[Section, ...]:
    """Give a whole front above the underarm, upon its bust short rows if there are any."""
    turns = bust_turns(brief, plan.stitches)
    if turns is None:
        return _upper(brief, plan, "front", face)
    bust = bust_section(brief, turns, plan.stitches, face=face)
    return bust, *_upper(brief, plan, "front", face, after=BUST_KEY)


def open_body(brief: Brief, faces: Faces, rows: int, measured: Measured) -> StraightBody:
    """Give a body that opens in front: a back, a front made twice, and a band along each front edge."""
    plan = torso_plan(brief, faces.back.stitches, rows, measured, share=0.5, edges=BOTH_EDGES, seam=SEAM)
    back_upper = _upper(brief, faces.back, "back", "whole")
    back = Piece(
        "back",
        "back",
        "bottom up",
        (*_lower(brief, plan, "body", "body of the back"), *back_upper),
        _landmarks(plan, "body", back_upper[0]),
    )
    half = half_front_stitches(brief, faces.front.stitches - SEAM, seam=SEAM // 2)
    half_plan = replace(
        plan,
        bust=half,
        hip=half + (plan.hip - plan.bust) // 2,
        waist=None if plan.waist is None else half + (plan.waist - plan.bust) // 2,
        edges=("right",),
    )
    lower: tuple[Section, ...] = _lower(brief, half_plan, "body", "body of the front")
    left = float(lower[1].left_edge[-1])
    turns = bust_turns(brief, faces.front.stitches)
    if turns is not None:
        lower = (*lower, bust_section(brief, turns, half, edges=("right",), left=left))
    upper = half_face_sections(
        half_front(faces, half, brief.options.neckline or "round"),
        "front",
        "upper front",
        brief.fabric,
        brief.gauge,
        after=lower[-1].key,
        left=left,
    )
    front = Piece(
        "front", "front", "bottom up", (*lower, upper), _landmarks(half_plan, "body", upper), made=2, mirrored=True
    )
    edge = [side_stretch("front", one, "left") for one in lower]
    edge.append(side_stretch("front", upper, "left", to_row=faces.front.neck_row - 1))
    bands, joins, notes = front_bands(brief, edge, edge)
    notes += bust_notes(turns)
    return StraightBody((back, front, *bands), False, True, faces, tuple(joins), tuple(notes))


def shoulder_joins(body: StraightBody) -> list[Join]:
    """Join each shoulder of the back to the front's, cast off together; left meets right as both are seen outside."""
    back_piece, back = body.upper("back")
    front_piece, front = body.upper("front")
    joins = []
    for side, other in (("left", "right"), ("right", "left")):
        on_back = next(one for one in back if one.key == f"back {side} shoulder")
        on_front = front[0] if body.is_open else next(one for one in front if one.key == f"front {other} shoulder")
        joins.append(
            Join(
                "three-needle cast-off",
                Edge(back_piece.key, on_back.key, "end", on_back.live),
                Edge(front_piece.key, on_front.key, "end", on_front.live),
            )
        )
    return joins


def side_seams(body: StraightBody) -> list[Join]:
    """Sew the sides of flat pieces below the underarm, row by row; a tube has none."""
    if body.is_tube:
        return []
    joins = []
    for key in ("hem", "body"):
        rows = body.pieces[0].section(key).rows
        for side, other in (("left", "right"), ("right", "right" if body.is_open else "left")):
            joins.append(Join("sewn", Edge("back", key, _SIDE[side], rows), Edge("front", key, _SIDE[other], rows)))
    return joins


_SIDE: dict[str, Literal["left", "right"]] = {"left": "left", "right": "right"}


def neckband(brief: Brief, body: StraightBody) -> tuple[list[Piece], list[Join]]:
    """Give the band picked up round the neck, in the round, or to and fro where the front opens."""
    back_piece, back = body.upper("back")
    front_piece, front = body.upper("front")
    stretches = neck_stretches(back_piece.key, back[0], back[1], back[2])
    if body.is_open:
        side = side_stretch(front_piece.key, front[0], "left", from_row=body.faces.front.neck_row - 1)
        stretches = [side, *stretches, side]
    else:
        stretches += neck_stretches(front_piece.key, front[0], front[1], front[2])
    piece, joins = picked_up_band(
        stretches, brief.options.neckband, brief.gauge, "neckband", "neckband", in_the_round=not body.is_open
    )
    return [piece], list(joins)


def armhole_stretches(body: StraightBody) -> list[Stretch]:
    """Give one armhole's edge, up the back and down the front; the other is its mirror image."""
    back_piece, back = body.upper("back")
    front_piece, front = body.upper("front")
    edges: list[tuple[str, FacePlan, tuple[Section, ...], Literal["left", "right"]]] = [
        (back_piece.key, body.faces.back, (back[0], back[2]), "left"),
        (front_piece.key, body.faces.front, front[:1] if body.is_open else front[:2], "right"),
    ]
    stretches = []
    for key, plan, sections, side in edges:
        row = 0
        for section in sections:
            to_row = min(plan.slope_row - row, section.rows)
            if to_row > 0:
                stretches.append(side_stretch(key, section, side, to_row=to_row))
            row += section.rows
    return stretches
