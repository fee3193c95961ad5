"""A garment drafted: to a pattern's measures, with what she changes, or on her own."""

from __future__ import annotations

import re
import unicodedata
from typing import Any

import pytest

from loopwright.season import GarmentPlan, plan
from loopwright.season.drafted import Drafted
from loopwright.season.grading import graded
from loopwright.season.remake import draft_of
from loopwright.units import BadInput, Reader
from tests.season.small import season

J = "garments.jumper"
BODY = {
    "name": "Mo",
    "wearer": "woman",
    "bust_girth": "92 cm",
    "hip_girth": "98 cm",
    "shoulder_width_back": "37 cm",
    "back_neck_to_waist": "41 cm",
    "scye_depth": "19 cm",
    "upper_arm_girth": "29 cm",
    "wrist_girth": "16 cm",
    "underarm_to_wrist": "43 cm",
    "head_girth": "56 cm",
}


def jumper(changes: dict[str, Any] | None = None) -> GarmentPlan:
    return plan(season(changes)).garment("jumper")


def drafted(changes: dict[str, Any] | None = None) -> Drafted:
    found = jumper(changes).drafted
    assert found is not None
    return found


def measure(found: Drafted, name: str) -> float:
    return next(one.drafted_cm for one in found.measures if one.name == name)


def test_the_draft_comes_to_the_patterns_finished_measures() -> None:
    """A grain of half a stitch of 22 to 10 cm each way, or half a row of 30."""
    found = drafted({f"{J}.size": "M"})
    for name, wanted in (("bust_girth", 100), ("upper_arm_girth", 35), ("sleeve_length", 45), ("length", 58)):
        assert measure(found, name) == pytest.approx(wanted, abs=0.5), name


def test_at_another_gauge_the_patterns_counts_are_kept() -> None:
    """Widths follow the counts: 100 cm at 22 to 10 cm are 220 stitches, at any gauge."""
    own = drafted({f"{J}.size": "M"})
    finer = drafted({f"{J}.size": "M", "swatches.plain.after": "24 sts x 30 rows = 10 cm"})
    bust = [next(one for one in found.sections if one.key == "body").last for found in (own, finer)]
    assert bust[0] == bust[1] == 220
    assert measure(finer, "bust_girth") == pytest.approx(220 / 2.4)


def test_a_longer_body_has_more_rows_and_nothing_else() -> None:
    """4 cm at 30 rows to 10 cm are 12 rows."""
    plain, longer = drafted({f"{J}.size": "M"}), drafted({f"{J}.size": "M", f"{J}.changes.body_longer": "4 cm"})
    rows = {one.key: one.rows for one in plain.sections if one.piece == "body"}
    more = {one.key: one.rows - rows[one.key] for one in longer.sections if one.piece == "body"}
    assert {key: count for key, count in more.items() if count} == {"body": 12}


def test_shorter_sleeves_take_less_yarn() -> None:
    long, short = jumper({f"{J}.size": "M"}), jumper({f"{J}.size": "M", f"{J}.draft.sleeves": "short"})
    assert short.drafted is not None
    assert long.drafted is not None
    assert short.drafted.stitches < long.drafted.stitches
    assert short.roles[0].need_m.mean < long.roles[0].need_m.mean
    assert short.finished_cm["sleeve_length"] == pytest.approx(0.28 * 45)


def test_her_own_measure_stands_before_the_patterns() -> None:
    found = drafted({f"{J}.size": "M", f"{J}.draft.measures": {"upper_arm_girth": "40 cm"}})
    assert measure(found, "upper_arm_girth") == pytest.approx(40, abs=0.5)


def test_an_edge_of_which_only_the_depth_is_written_keeps_its_fabric() -> None:
    found = drafted({f"{J}.size": "M", f"{J}.draft.neckband": {"depth": "4 cm"}})
    neckband = next(one for one in found.sections if one.piece == "neckband")
    assert (neckband.fabric, neckband.rows) == ("1x1 rib", 12)


def test_what_cannot_be_knitted_says_what_would() -> None:
    found = jumper({f"{J}.size": "M", f"{J}.draft.hem": {"depth": "50 cm"}})
    assert found.drafted is None
    assert "wanted" in found.answer("draft").sentence


OWN: dict[str, Any] = {
    "bodies.mo": BODY,
    f"{J}.pattern": None,
    f"{J}.draft": {"construction": "set-in sleeve"},
}


def test_a_draft_of_her_own_fits_its_wearer() -> None:
    """Standard ease at the bust is 5 to 10 cm, read in three places; ours is the middle."""
    found = jumper(OWN)
    assert found.answer("fit").tone == "yes"
    assert found.finished_cm["bust_girth"] == pytest.approx(92 + 7.5)
    assert found.drafted is not None
    assert found.state == "short of yarn" or found.roles


def test_a_draft_of_her_own_takes_its_yarn_from_its_rows() -> None:
    found = jumper(OWN)
    assert found.drafted is not None
    (role,) = found.roles
    loop_m = role.need_m.mean / found.drafted.stitches
    assert 0.008 < loop_m < 0.025  # a stitch of 22 to 10 cm takes 1 to 2 cm of yarn


def test_a_closer_fit_is_a_smaller_garment() -> None:
    assert drafted({**OWN, f"{J}.fit": "close"}).stitches < drafted({**OWN, f"{J}.fit": "loose"}).stitches


def in_inches(changes: dict[str, Any]) -> GarmentPlan:
    return plan(season(changes), Reader(measures="imperial", words="american")).garment("jumper")


def test_notes_are_told_in_the_readers_measures_from_the_same_number() -> None:
    """An inch is 2.54 cm; it is told in quarters, so it is off by an eighth at the most."""
    found = in_inches(OWN)
    assert found.drafted is not None
    note = next(one for one in found.drafted.notes if "high" in one.words)
    (told,) = [
        reason for reason in found.answer("draft").reasons if reason.startswith("The cap is") and "high" in reason
    ]
    inches = re.match(r"The cap is (\d*)([¼½¾]?) in high", told)
    assert inches is not None
    value = float(inches[1] or 0) + (unicodedata.numeric(inches[2]) if inches[2] else 0)
    assert value == pytest.approx(note.lengths_cm[0] / 2.54, abs=1 / 8)
    assert not re.search(r"\d cm", " ".join(found.answer("draft").reasons))
    (metric,) = [one for one in jumper(OWN).answer("draft").reasons if one.startswith("The cap is") and "high" in one]
    assert f"The cap is {note.lengths_cm[0]:.1f} cm high".replace(".0 ", " ") in metric


def test_what_cannot_be_knitted_is_told_in_the_readers_measures() -> None:
    """A hem of 50 cm is 150 rows, 19¾ in of 2.54 cm each to the nearest quarter."""
    wish = {f"{J}.size": "M", f"{J}.draft.hem": {"depth": "50 cm", "fabric": "stocking stitch"}}
    assert "a hem edge of 50 cm" in jumper(wish).answer("draft").sentence
    sentence = in_inches(wish).answer("draft").sentence
    assert "a hem edge of 19¾ in" in sentence
    assert not re.search(r"\d cm", sentence)


def test_a_draft_without_a_swatch_is_refused() -> None:
    with pytest.raises(ValueError, match="a draft of your own without a swatch"):
        season({**OWN, f"{J}.swatch": None})


def test_a_garment_needs_a_pattern_or_a_construction() -> None:
    with pytest.raises(ValueError, match="neither a pattern nor a construction"):
        season({f"{J}.pattern": None})


def test_the_whole_draft_can_be_had_again() -> None:
    here = season({f"{J}.size": "M"})
    planned = plan(here).garment("jumper")
    made = draft_of(here, planned)
    assert made is not None
    assert planned.drafted is not None
    assert made.stitches == planned.drafted.stitches


def test_every_size_of_the_pattern() -> None:
    here = season()
    found = graded(here, here.garment_by_key["jumper"])
    assert list(found.drafts) == ["S", "M", "L"]
    assert not found.faults
    stitches = [draft.stitches for draft in found.drafts.values()]
    assert stitches == sorted(stitches)


def test_a_size_that_cannot_be_drafted_says_why() -> None:
    here = season({"patterns.plain.finished.length": "20 (58, 60) cm"})
    found = graded(here, here.garment_by_key["jumper"])
    assert list(found.drafts) == ["M", "L"]
    assert "with length 20 cm; wanted" in str(found.faults["S"])
    assert 20 in found.faults["S"].lengths_cm


def test_sizes_of_a_table_of_bodies() -> None:
    here = season(OWN)
    found = graded(here, here.garment_by_key["jumper"], "children")
    assert list(found.drafts) == ["2", "4", "6", "8", "10", "12", "14", "16"]


def test_a_repeat_that_must_fit_the_round() -> None:
    here = drafted({f"{J}.size": "M", f"{J}.draft.repeat": "12n"})
    body = next(one for one in here.sections if one.key == "body")
    assert body.last == 216  # of 12n the nearest to 220


def test_a_bad_repeat_is_named() -> None:
    with pytest.raises((ValueError, BadInput), match="a repeat such as"):
        season({f"{J}.draft.repeat": "eight"})


def test_a_reader_of_inches_reads_no_centimetre() -> None:
    here = season({"measures": "imperial", f"{J}.size": "M", f"{J}.draft": {"construction": "set-in sleeve"}})
    answer = plan(here).garment("jumper").answer("draft")
    assert " in" in " ".join(answer.reasons)
    assert " cm" not in " ".join((answer.sentence, *answer.reasons))
