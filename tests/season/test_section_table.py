"""The need of a garment section by section, as both readers see it."""

from __future__ import annotations

import pytest

from loopwright.need import SectionNeed, Tail
from loopwright.season.result import Answer, GarmentPlan, State
from loopwright.season.section_table import section_table
from loopwright.season.wording import Wording
from loopwright.units import Reader

METRIC = Wording(Reader())
IMPERIAL = Wording(Reader(measures="imperial", words="american"))


def need(section: str, role: str, length_m: float, mass_g: float | None, made: int = 1) -> SectionNeed:
    return SectionNeed(
        piece="sleeve" if made > 1 else "body",
        section=section,
        name=section,
        made=made,
        role=role,
        length_m=length_m,
        own_sd_m=3.0,
        shared_sd_m=4.0,
        mass_g=mass_g,
        working=(),
    )


def planned(*sections: SectionNeed) -> GarmentPlan:
    return GarmentPlan(
        key="vest",
        name="Vest",
        state=State.READY,
        pattern="own",
        construction="drop",
        fabric="stocking stitch",
        wearer=None,
        due=None,
        size=None,
        sections=sections,
    )


def test_a_row_a_section_with_a_column_a_role() -> None:
    """Doubt: 3 and 4 m at right angles make 5 (Pythagoras); masses add."""
    told = section_table(
        planned(need("hem", "main", 40, 20), need("hem", "trim", 10, 5), need("cuff", "main", 25, None, made=2)),
        (),
        METRIC,
    )
    assert told.roles == ("main", "trim")
    hem, cuff = told.rows
    assert (hem.key, hem.name, cuff.name) == ("body hem", "hem", "cuff × 2")
    assert hem.metres == ("40.0 ± 5.0 m", "10.0 ± 5.0 m")
    assert (hem.mass, cuff.metres[1]) == ("25 g", "")
    assert [hem.share, cuff.share] == pytest.approx([1, 25 / 50])
    assert "shared out" in told.note


def test_where_she_says_where_the_colours_go_nothing_is_shared_out() -> None:
    placed = planned(need("hem", "main", 40, 20), need("hem", "trim", 10, 5)).model_copy(
        update={"answers": (Answer(key="colour-places", question="Where do the colours go?", sentence="There."),)}
    )
    assert section_table(placed, (), METRIC).note == ""


def test_one_role_needs_no_note() -> None:
    assert section_table(planned(need("hem", "main", 40, 20)), (), METRIC).note == ""


def test_a_garment_that_is_knitted_through_has_no_share() -> None:
    (row,) = section_table(planned(need("hem", "main", 0, 0)), (), METRIC).rows
    assert row.share == 0


def test_without_sections_there_are_no_rows() -> None:
    told = section_table(planned(), (), METRIC)
    assert (told.roles, told.rows, told.note, told.tails) == ((), (), "", ())


@pytest.mark.parametrize(
    ("tail", "wording", "said"),
    [
        (
            Tail(piece="back", section="hem", made=1, stitches=98, tail_cm=239.2, least_cm=None),
            METRIC,
            "Cast on 98 stitches for back, hem: a long tail of 240 cm.",
        ),
        (
            Tail(piece="sleeve", section="sleeve cuff", made=2, stitches=1042, tail_cm=50.8, least_cm=40),
            IMPERIAL,
            "Cast on 1,042 stitches for sleeve cuff, 2 times: a long tail of 20 in.",
        ),
    ],
)
def test_tails_are_told_in_the_readers_measures(tail: Tail, wording: Wording, said: str) -> None:
    """50.8 cm is 20 in, as an inch is 2.54 cm (International Yard and Pound agreement, 1959)."""
    assert section_table(planned(), (tail,), wording).tails == (said,)
