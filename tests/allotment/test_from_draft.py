"""Sections and meetings from a draft."""

import math
from dataclasses import dataclass

import pytest

from loopwright.allotment import allot, sections_of
from loopwright.allotment.from_draft import VISIBILITY, part_of
from loopwright.allotment.model import AllotmentProblem, LotSupply
from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction

MEASURES = {
    "bust_girth": 100,
    "length": 60,
    "armhole_depth": 21,
    "shoulder_width": 39,
    "upper_arm_girth": 34,
    "wrist_girth": 21,
    "sleeve_length": 45,
}


@dataclass(frozen=True)
class Need:
    piece: str
    section: str
    name: str
    length_m: float
    own_sd_m: float
    shared_sd_m: float


def drafted(construction: Construction, **options: object) -> Draft:
    brief = Brief(
        construction,
        GarmentMeasures.model_validate(MEASURES),
        Gauge(stitches_per_10cm=20, rows_per_10cm=28),
        DraftOptions.model_validate(options),
        head_girth_cm=57,
    )
    return draft(brief)


def needs_of(made: Draft) -> list[Need]:
    """A hundredth of a metre a stitch, two hundredths of it in own doubt and six in common."""
    lengths = [(piece, one, 0.01 * one.worked * piece.made) for piece, one in made.sections()]
    return [Need(p.key, s.key, s.name, metres, 0.02 * metres, 0.06 * metres) for p, s, metres in lengths]


TOPS = (Construction.DROP, Construction.SET_IN, Construction.SLEEVELESS)


@pytest.mark.parametrize("construction", TOPS)
@pytest.mark.parametrize("opens_in_front", [False, True])
def test_the_yarn_and_its_doubts_are_those_of_the_needs(construction: Construction, opens_in_front: bool) -> None:
    made = drafted(construction, opens_in_front=opens_in_front)
    needs = needs_of(made)
    sections, _ = sections_of("top", "main", needs, made, strands=2)
    assert sum(one.length_m for one in sections) == pytest.approx(2 * sum(need.length_m for need in needs))
    assert math.hypot(*(one.own_sd_m for one in sections)) == pytest.approx(
        2 * math.hypot(*(need.own_sd_m for need in needs))
    )
    assert sum(one.shared_sd_m for one in sections) == pytest.approx(2 * sum(need.shared_sd_m for need in needs))
    assert len(sections) == sum(piece.made for piece, _ in made.sections())


@pytest.mark.parametrize("construction", TOPS)
def test_every_section_meets_another(construction: Construction) -> None:
    made = drafted(construction)
    sections, meetings = sections_of("top", "main", needs_of(made), made)
    assert {key for meeting in meetings for key in (meeting.one, meeting.other)} == {one.key for one in sections}


def place(made: Draft, one: str, other: str) -> set[str]:
    _, meetings = sections_of("top", "main", needs_of(made), made)
    return {
        meeting.place
        for meeting in meetings
        if {one, other} == {key.removeprefix("top/main/") for key in (meeting.one, meeting.other)}
    }


def test_places_of_a_set_in_cardigan() -> None:
    made = drafted(Construction.SET_IN, opens_in_front=True)
    assert place(made, "back/hem", "back/body") == {"hem"}
    assert place(made, "back/body", "back/back") == {"plain field"}
    assert place(made, "sleeve 1/cuff", "sleeve 1/sleeve") == {"cuff"}
    assert place(made, "sleeve 1/sleeve", "sleeve 2/sleeve") == {"pair"}
    assert place(made, "back/body", "front 1/body") == {"seam"}
    assert place(made, "back/back", "sleeve 2/cap") == {"seam"}
    assert place(made, "left band/band", "front 1/body") == {"band"}
    assert place(made, "left band/band", "front 2/body") == set()
    assert place(made, "left band/band", "right band/band") == {"pair"}


def test_a_round_yoke_begins_at_an_edge_that_the_eye_expects_and_a_raglan_in_a_plain_field() -> None:
    assert place(drafted(Construction.YOKE), "body/body", "yoke/yoke") == {"yoke edge"}
    assert place(drafted(Construction.RAGLAN), "body/body", "yoke/yoke") == {"plain field"}


def test_parts_rank_as_common_practice_has_them() -> None:
    """Hem, cuffs, bands, sleeves, back. Common practice, no source."""
    ranked = sorted(VISIBILITY, key=lambda part: VISIBILITY[part])
    assert [part for part in ranked if part in {"hem", "cuff", "front band", "neckband", "sleeve", "back"}] == [
        "hem",
        "cuff",
        "front band",
        "neckband",
        "sleeve",
        "back",
    ]
    assert part_of("right band", "band") == "front band"


def test_a_need_without_a_section_stands_alone() -> None:
    sections, meetings = sections_of("scarf", "main", [Need("whole", "main", "Scarf", 200, 4, 10)], None)
    assert [one.length_m for one in sections] == [200]
    assert meetings == ()


def test_two_dye_lots_of_a_set_in_jumper_change_at_edges_and_seams() -> None:
    made = drafted(Construction.SET_IN)
    needs = needs_of(made)
    sections, meetings = sections_of("top", "main", needs, made)
    lots = (LotSupply("a", "dk", "Oat", "1", 330, 4), LotSupply("b", "dk", "Oat", "2", 225, 4))
    problem = AllotmentProblem(sections, meetings, lots, {("top", "main"): ("a", "b")})
    found = allot(problem, with_next_best=False)
    assert found.uncovered == ()
    assert found.levels.plain == 0
    assert found.of("top/main/sleeve 1/sleeve")[0].lots == found.of("top/main/sleeve 2/sleeve")[0].lots
