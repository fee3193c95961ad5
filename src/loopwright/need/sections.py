"""Need of every section of a draft: its rows, stitch by stitch, its edges, its seams and its ends."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

from loopwright.fabric import Gauge, StructureName
from loopwright.garment.draft import Draft, Piece, Section
from loopwright.need.edges import (
    CAST_OFF_LOOPS,
    CAST_ON_LOOPS,
    SEAM_TIMES,
    TAIL_M,
    ball_ends_m,
    join_loops,
    role_loops,
    seam_length_cm,
    tails,
)
from loopwright.need.loops import Loop
from loopwright.need.shared_error import SectionNeed
from loopwright.uncertainty import Origin, Step
from loopwright.units import BadInput

__all__ = ["SWATCH", "StrandOfRole", "counted_m", "section_needs", "swatch_need"]

SECTION_RELATIVE_SD: Final = 0.02
"""How far one section strays from the garment's mean tension, as a share; our judgement."""
FLOAT_RELATIVE_SD: Final = 0.1
"""Doubt of floats, as a share: how loosely they lie; our judgement."""
EDGE_RELATIVE_SD: Final = 0.15
"""Doubt of an edge's loops, as a share: cast-off 1.2 to 1.5, three-needle 3 to 4 widths; our judgement."""
FINISHING_RELATIVE_SD: Final = 0.4
"""Doubt of seams and ends, as a share: they go by habit; our judgement."""
SWATCH: Final = "swatch"
"""Key under which the swatch itself stands."""


@dataclass(frozen=True, slots=True)
class StrandOfRole:
    """What a role is knitted with.

    :ivar loop: yarn in one stitch.
    :ivar grist_tex: of the whole strand, all yarns held together; None where it is not known.
    :ivar put_up_m: metres in a put-up, for the ends that it leaves; None where it is not known.
    """

    loop: Loop
    grist_tex: float | None = None
    put_up_m: float | None = None


@dataclass(frozen=True, slots=True)
class _Place:
    """What the yarn of one role knits of one section, and how it is called.

    :ivar stitches, edges: stitches, and loops of edges, of one piece.
    :ivar floated: stitches that it passes behind, of one piece.
    :ivar tails: of all pieces.
    :ivar joined: loops of edges joined by count, of all pieces; ``seams_cm`` likewise.
    """

    piece: Piece
    section: Section
    role: str
    stitches: int
    edges: float
    floated: int
    tails: int
    joined: float = 0.0
    seams_cm: float = 0.0

    @property
    def name(self) -> str:
        own, whole = self.section.name, self.piece.name
        if own in whole:
            return whole
        return own if whole in own else f"{whole}, {own}"


def section_needs(
    draft: Draft, strands: Mapping[str, StrandOfRole], *, shape_relative_sd: float = 0.0, main: str = "main"
) -> tuple[SectionNeed, ...]:
    r"""Give the need of every section and role of a draft, in the order of knitting.

    .. math:: L = l\left(\sum_i n_i + e\right) + w\,F + 2.5\,S + 0.15\,T + B

    with the loop length l of the section's fabric, :math:`n_i` the stitches of its rows, e the loops of its edges, F
    the stitches that its yarn passes behind and w their width, S its seams, T its tails and B what ball ends leave
    over (:mod:`loopwright.need.edges`). Source: arithmetic on the draft; loops as in :mod:`loopwright.need.loops`; a
    float adds what it spans, as in :func:`loopwright.chart.metres_by_role`.

    :param strands: what each role is knitted with.
    :param shape_relative_sd: doubt that the stitches knitted are those of the draft, as a share, shared by all.
    :param main: the role that knits sections of which nothing else is said.
    :raises BadInput: a role of the draft has no yarn.
    """
    needs = []
    for place in _places(draft, main):
        if place.role not in strands:
            raise BadInput(
                found=f"rows of {place.name} in {place.role}", wanted=f"a yarn for the role {place.role}", place="yarns"
            )
        needs.append(_need(place, strands[place.role], shape_relative_sd))
    return tuple(needs)


def counted_m(draft: Draft, strand: StrandOfRole, role: str, main: str = "main", *, floats: bool = True) -> float:
    """Give the metres of strand that one role takes in a draft: the sum of its sections, without their working.

    :param floats: whether what runs behind other stitches counts.
    """
    counts = (_counts(place, strand) for place in _places(draft, main) if place.role == role)
    return math.fsum(one.length_m - (0.0 if floats else one.floats_m) for one in counts)


@lru_cache(maxsize=512)
def _places(draft: Draft, main: str) -> tuple[_Place, ...]:
    """Give what each role knits of each section; the same for every strand, so counted once for a draft."""
    return tuple(_each_place(draft, main))


def _each_place(draft: Draft, main: str) -> Iterator[_Place]:
    for piece, section in draft.sections():
        if not section.rows:
            continue
        shares = role_loops(section, main)
        left = tails(piece, section, main)
        last = next(reversed(shares))
        for role, loops in shares.items():
            place = _Place(
                piece,
                section,
                role,
                loops.stitches,
                loops.total - loops.stitches,
                int(loops.floated.sum()),
                left[role] * piece.made,
            )
            if role == last:
                place = replace(
                    place, joined=join_loops(draft, piece, section), seams_cm=seam_length_cm(draft, piece, section)
                )
            yield place


@dataclass(frozen=True, slots=True)
class _Counts:
    """Metres of one place, term by term."""

    stitch_mm: float
    edge_loops: float
    stitches_m: float
    floats_m: float
    edges_m: float
    seams_m: float
    tails_m: float
    balls_m: float

    @property
    def length_m(self) -> float:
        return self.stitches_m + self.floats_m + self.edges_m + self.seams_m + self.tails_m + self.balls_m


def _counts(place: _Place, strand: StrandOfRole) -> _Counts:
    stitch_mm = strand.loop.of(_loops_fabric(place.section))
    stitches_m = place.stitches * place.piece.made * stitch_mm / 1000
    floats_m = place.floated * place.piece.made * place.section.stitch_width_cm / 100
    edge_loops = place.edges * place.piece.made + place.joined
    edges_m = edge_loops * stitch_mm / 1000
    return _Counts(
        stitch_mm,
        edge_loops,
        stitches_m,
        floats_m,
        edges_m,
        SEAM_TIMES * place.seams_cm / 100,
        TAIL_M * place.tails,
        ball_ends_m(place.section, stitches_m + floats_m + edges_m, stitch_mm, strand.put_up_m),
    )


def _loops_fabric(section: Section) -> StructureName:
    """Give the fabric whose loop a section's stitches have: where floats are counted by themselves, a plain one."""
    if section.cells is None or section.fabric != "stranded colourwork":
        return section.fabric
    return "stocking stitch in the round" if section.in_the_round else "stocking stitch"


def _need(place: _Place, strand: StrandOfRole, shape_sd: float) -> SectionNeed:
    counts = _counts(place, strand)
    ends_m = counts.tails_m + counts.balls_m
    own = math.hypot(
        SECTION_RELATIVE_SD * counts.stitches_m,
        FLOAT_RELATIVE_SD * counts.floats_m,
        EDGE_RELATIVE_SD * counts.edges_m,
        FINISHING_RELATIVE_SD * (counts.seams_m + ends_m),
    )
    shared = math.hypot(strand.loop.relative_sd(place.section.fabric), shape_sd) * (counts.stitches_m + counts.edges_m)
    times = f" × {place.piece.made}" if place.piece.made > 1 else ""
    terms = (
        ("stitches", f"{place.stitches:,}{times} × {counts.stitch_mm:.4g} mm", counts.stitches_m),
        ("floats", f"{place.floated:,}{times} × {place.section.stitch_width_cm * 10:.3g} mm", counts.floats_m),
        ("edges", f"{counts.edge_loops:,.0f} loops × {counts.stitch_mm:.4g} mm", counts.edges_m),
        ("seams", f"{SEAM_TIMES:g} × {place.seams_cm:.0f} cm", counts.seams_m),
        ("ends", f"{place.tails} × {TAIL_M * 100:.0f} cm, and {counts.balls_m:.2g} m where balls end", ends_m),
    )
    whole = Step(
        says=f"{place.name} in {place.role}",
        working=" + ".join(f"{metres:.4g}" for _, _, metres in terms if metres) + " m",
        value=counts.length_m,
        sd=math.hypot(own, shared),
        unit="m",
        origin=Origin.COMPUTED,
        source="rows of the draft × loop length",
    )
    steps = [
        Step(says=f"{place.name}: {says}", working=working, value=metres, unit="m", origin=Origin.COMPUTED)
        for says, working, metres in terms
        if metres
    ]
    return SectionNeed(
        piece=place.piece.key,
        section=place.section.key,
        name=place.name,
        made=place.piece.made,
        role=place.role,
        length_m=counts.length_m,
        own_sd_m=own,
        shared_sd_m=shared,
        mass_g=None if strand.grist_tex is None else counts.length_m * strand.grist_tex / 1000,
        working=(*steps, whole),
    )


def swatch_need(strand: StrandOfRole, gauge: Gauge, side_cm: float = 15.0, role: str = "main") -> SectionNeed:
    """Give what a square swatch takes, cast on and cast off, where it is still to be knitted.

    :param gauge: of its fabric, the one that the strand's loop is known of.
    :param side_cm: its side; 15 cm, so that 10 cm can be counted away from the edges (common practice).
    """
    stitch_mm = strand.loop.stitch_mm.mean
    across, rows = gauge.stitches_in(side_cm), side_cm * gauge.rows_or_usual_per_10cm / 10
    loops = across * rows + (CAST_ON_LOOPS + CAST_OFF_LOOPS) * across
    length = loops * stitch_mm / 1000 + 2 * TAIL_M
    own, shared = 0.1 * length, strand.loop.stitch_mm.relative_sd * length
    step = Step(
        says=f"a swatch of {side_cm:g} cm in {role}",
        working=f"{loops:,.0f} loops × {stitch_mm:.4g} mm, and two ends",
        value=length,
        sd=math.hypot(own, shared),
        unit="m",
        origin=Origin.COMPUTED,
        source="gauge and loop length",
    )
    return SectionNeed(
        piece=SWATCH,
        section=SWATCH,
        name=SWATCH,
        made=1,
        role=role,
        length_m=length,
        own_sd_m=own,
        shared_sd_m=shared,
        mass_g=None if strand.grist_tex is None else length * strand.grist_tex / 1000,
        working=(step,),
    )
