"""Every construction for real people and for every size of a table, at many gauges and in every way it can be made.

The people are 88 adults of two surveys (``tests/published/people.py``); sizes of children and women are those of the
packaged table. Each draft must keep the laws; a refusal must name what is in the way and what would do.
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator

import pytest

from loopwright.body import size_table
from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft, broken_laws
from loopwright.garment.wanted import Brief, DraftOptions, measures_for_body
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.published.people import PEOPLE

TOPS = [one for one in Construction if one.is_top]
EASES: list[dict[str, float]] = [
    {"bust_girth": 4, "upper_arm_girth": 2, "shoulder_width": -0.5},
    {"bust_girth": 8, "upper_arm_girth": 4, "shoulder_width": 0.5},
    {"bust_girth": 16, "upper_arm_girth": 8, "shoulder_width": 2},
]
WAYS: dict[Construction, list[dict[str, object]]] = {
    Construction.DROP: [
        {"worked": worked, "neckline": neck, "sleeves": sleeves, "opens_in_front": opens}
        for worked, neck, sleeves, opens in itertools.product(
            ("flat", "in the round"), ("boat", "round", "V", "high"), (None, "none"), (False, True)
        )
    ],
    Construction.SET_IN: [
        {"worked": worked, "neckline": neck, "opens_in_front": opens}
        for worked, neck, opens in itertools.product(("flat", "in the round"), ("boat", "round", "V"), (False, True))
        if not (opens and worked == "in the round")
    ],
    Construction.SLEEVELESS: [{"neckline": neck} for neck in ("boat", "round", "V")],
    Construction.RAGLAN: [
        {"direction": direction, "neckline": neck, "opens_in_front": opens}
        for direction, neck, opens in itertools.product(("top down", "bottom up"), ("round", "V"), (False, True))
    ],
    Construction.YOKE: [
        {"direction": direction, "opens_in_front": opens}
        for direction, opens in itertools.product(("top down", "bottom up"), (False, True))
    ],
}


def bodies() -> Iterator[tuple[dict[str, float], float | None]]:
    """Body measures by key, and the head, of every person and every size."""
    for person in PEOPLE:
        known = person.body.known()
        bust = known.get("bust_girth", known.get("chest_girth"))
        if bust is not None:
            # What no survey took, in its usual proportion to height (common practice, no source).
            lengths = {"back_neck_to_waist": 0.245 * known["height"], "scye_depth": 0.115 * known["height"]}
            yield (
                {"underarm_to_wrist": 0.26 * known["height"], **lengths, **known, "bust_girth": bust},
                known.get("head_girth"),
            )
    for table in ("women", "children"):
        yield from ((dict(body), None) for body in size_table(table).values())


def briefs(construction: Construction) -> Iterator[Brief]:
    chance = random.Random(f"drafts of {construction.value}")
    for body, head_cm in bodies():
        for _ in range(6):
            stitches = chance.uniform(14, 36)
            yield Brief(
                construction,
                measures_for_body(body, chance.choice(EASES), construction),
                Gauge(stitches_per_10cm=stitches, rows_per_10cm=stitches * chance.uniform(1.25, 1.45)),
                DraftOptions.model_validate(chance.choice(WAYS[construction])),
                head_girth_cm=head_cm,
            )


def drafts(construction: Construction) -> tuple[list[tuple[Brief, Draft]], list[str]]:
    made, refused = [], []
    for brief in briefs(construction):
        try:
            made.append((brief, draft(brief)))
        except BadInput as fault:
            refused.append(str(fault))
    return made, refused


@pytest.mark.parametrize("construction", TOPS, ids=str)
def test_real_people_can_be_knitted_for(construction: Construction) -> None:
    made, refused = drafts(construction)
    assert len(made) + len(refused) > 400
    assert len(refused) <= 0.02 * len(made), refused[:3]
    assert all("wanted" in fault for fault in refused)
    for brief, one in made:
        assert broken_laws(one) == (), brief
        for check in one.checks:
            assert check.is_exact or check.reason, (brief, check)
            if check.name in ("bust_girth", "length"):
                assert abs(check.off_cm) <= 2 * check.grain_cm, (brief, check)
