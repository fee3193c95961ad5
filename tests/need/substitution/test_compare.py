"""One substitute beside its original."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.fabric import expected_wash, loop_length_mm
from loopwright.need.substitution import LIMITS, VERDICTS, compare
from loopwright.need.substitution.side import unlike_share
from tests.need.substitution.yarns import DK, original, yarn

FIBRES = st.sampled_from(["wool", "merino", "cotton", "silk", "alpaca", "nylon", "linen", "mohair"])
TEX = st.floats(30, 2000)


def verdicts(*fibres_and_tex: tuple[dict[str, float], float]) -> dict[str, str]:
    strands = [yarn(f"y{n}", fibres, tex) for n, (fibres, tex) in enumerate(fibres_and_tex)]
    return {reason.trait: reason.verdict for reason in compare(original(), strands).reasons}


@given(TEX, FIBRES)
def test_a_strand_is_close_to_itself(tex: float, fibre: str) -> None:
    one = yarn("one", {fibre: 100}, tex)
    found = compare(original(one), [one])
    assert (found.verdict, found.score) == ("close", 0)
    assert found.substitute == found.original


def test_wool_has_the_loop_of_the_fabric_room() -> None:
    """The rest of the program takes every yarn as smooth wool; for wool both must agree."""
    found = compare(original(), [yarn("thin", {"merino": 100}, 300)])
    assert found.substitute.loop_mm.mean == pytest.approx(loop_length_mm(original().gauge, 300, "washed"))
    assert found.original.loop_mm.mean == pytest.approx(loop_length_mm(original().gauge, 400, "washed"))


def test_mass_of_the_fabric_by_hand() -> None:
    """22 × 30 sts, 400 tex: 66,000 sts to the square metre times loop times tex."""
    loop = loop_length_mm(original().gauge, 400, "washed")
    found = compare(original(), [DK]).original.mass_g_m2
    assert found.mean == pytest.approx(66_000 * loop / 1000 * 400 / 1000)
    assert found.sd / found.mean == pytest.approx(math.hypot(0.03, 0.06), rel=0.05)


def test_the_garment_goes_with_the_loops_and_the_grist() -> None:
    found = compare(original(), [yarn("cotton", {"cotton": 100}, 460)])
    ours, theirs = found.original, found.substitute
    assert theirs.garment_m is not None
    assert theirs.garment_g is not None
    assert theirs.garment_m.mean == pytest.approx(1000 * theirs.loop_mm.mean / ours.loop_mm.mean)
    assert theirs.garment_g.mean == pytest.approx(theirs.garment_m.mean * 0.46)
    assert theirs.garment_g.relative_sd > theirs.garment_m.relative_sd > 0.05


def test_without_a_need_there_is_no_garment() -> None:
    found = compare(original(need_m=None), [DK]).substitute
    assert (found.garment_m, found.garment_g) == (None, None)


@given(TEX, TEX)
def test_a_thicker_yarn_is_tighter_heavier_and_wants_fewer_stitches(one: float, other: float) -> None:
    thin, thick = sorted((one, other))
    sides = [compare(original(), [yarn("x", {"wool": 100}, tex)]).substitute for tex in (thin, thick)]
    assert sides[0].thickness_mm.mean <= sides[1].thickness_mm.mean
    assert sides[0].tightness.mean <= sides[1].tightness.mean
    assert sides[0].cover.mean <= sides[1].cover.mean
    assert sides[0].mass_g_m2.mean <= sides[1].mass_g_m2.mean
    assert sides[0].own_stitches_per_10cm.mean >= sides[1].own_stitches_per_10cm.mean


@pytest.mark.parametrize(
    ("tex", "verdict"),
    [(400, "close"), (438, "close"), (364, "close"), (500, "works with care"), (540, "another fabric")],
)
def test_grist_alone(tex: float, verdict: str) -> None:
    """Grist within 10 % needs no new swatch (craft rule); 5 and 15 % of the diameter are our limits."""
    assert verdicts(({"wool": 100}, tex))["thickness"] == verdict


def test_superwash_for_wool_is_named_for_its_growth() -> None:
    found = compare(original(), [yarn("sw", {"superwash wool": 100}, 400)])
    assert found.verdict == "works with care"
    assert found.reasons[0].sentence == (
        "The first wash usually changes its length by +4 to +15 %, the original's by −2 to +4 %."
    )


def test_washing_is_that_of_the_fabric_room() -> None:
    blend = [yarn("a", {"merino": 80, "nylon": 20}, 250), yarn("b", {"mohair": 70, "silk": 30}, 120)]
    assert compare(original(), blend).substitute.wash == expected_wash(blend)


def test_cotton_for_wool_is_another_fabric() -> None:
    found = verdicts(({"cotton": 100}, 460))
    assert (found["warmth"], found["elasticity"]) == ("another fabric", "another fabric")
    assert found["thickness"] == "close"


def test_cotton_as_thick_as_wool_is_heavier_by_16_to_25_percent() -> None:
    """Equal thickness takes 1.52/1.31 to 0.50/0.40 times the grist: yarn geometry of our study, section 7 (derived)."""
    found = compare(original(), [yarn("cotton", {"cotton": 100}, 400 * 0.50 / 0.40)])
    assert found.thickness_ratio.mean == pytest.approx(1)
    assert 1.16 <= found.substitute.mass_g_m2.mean / found.original.mass_g_m2.mean <= 1.25 + 1e-9


def test_the_doubt_of_thickness_grows_with_what_lies_another_way() -> None:
    like = compare(original(), [yarn("m", {"merino": 100}, 400)]).thickness_ratio
    half = compare(original(), [yarn("h", {"merino": 50, "cotton": 50}, 400)]).thickness_ratio
    unlike = compare(original(), [yarn("c", {"cotton": 100}, 400)]).thickness_ratio
    assert like.relative_sd < half.relative_sd < unlike.relative_sd
    assert unlike_share({"wool": 100}, {"merino": 60, "cotton": 40}) == pytest.approx(0.4)
    assert unlike_share({"wool": 100}, {}) == 1


@pytest.mark.parametrize(
    ("fibres", "words"),
    [
        ({"cotton": 100}, "machine wash at 40 °C"),
        ({"superwash wool": 75, "nylon": 25}, "gentle machine wash at 40 °C, 30 °C is safer"),
        ({"cotton": 95, "silk": 5}, "by hand at 30 °C"),
        ({"wool": 90, "other": 10}, "not known: by hand at 30 °C until the band says otherwise"),
        ({}, "not known: by hand at 30 °C until the band says otherwise"),
    ],
)
def test_care_goes_by_the_most_delicate_fibre(fibres: dict[str, float], words: str) -> None:
    assert compare(original(), [yarn("x", fibres, 400)]).substitute.care.words == words


def test_a_yarn_without_fibres_is_never_close() -> None:
    found = compare(original(), [yarn("x", {}, 400)])
    assert found.verdict == "works with care"
    assert found.substitute.wash is None
    assert "ask before someone with an allergy wears it" in found.skin[0]


def test_ranks_that_are_not_known_need_care_even_where_washing_is_alike() -> None:
    silk = original(yarn("silk", {"silk": 100}, 400))
    found = {reason.trait: reason.verdict for reason in compare(silk, [yarn("x", {}, 400)]).reasons}
    assert found["care"] == "close"
    assert {found[trait] for trait in ("drape", "warmth", "elasticity", "wash_length")} == {"works with care"}


def test_care_in_words_and_in_the_ranking_are_one() -> None:
    for fibres in ({"wool": 90, "other": 10}, {"cotton": 95, "silk": 5}, {"nylon": 100}, {"other": 100}, {}):
        found = compare(original(), [yarn("x", fibres, 400)])
        (off,) = (reason.off for reason in found.reasons if reason.trait == "care")
        assert off == max(found.substitute.care.step - found.original.care.step, 0)


def test_a_fibre_that_is_new_on_the_skin_is_named_and_an_old_one_is_not() -> None:
    found = compare(original(), [yarn("x", {"wool": 60, "mohair": 40}, 400)])
    assert [note.split(":")[0] for note in found.skin] == ["New on the skin, mohair"]


def test_half_of_mohair_is_taken_as_brushed() -> None:
    smooth = compare(original(), [yarn("x", {"wool": 51, "mohair": 49}, 400)]).thickness_ratio.mean
    brushed = compare(original(), [yarn("x", {"wool": 50, "mohair": 50}, 400)]).thickness_ratio.mean
    assert smooth == pytest.approx(1)
    assert brushed == pytest.approx(math.sqrt((0.5 / 0.4 + 0.5 / 0.2) * 0.4))


def test_the_verdict_is_the_worst_of_the_reasons() -> None:
    for fibres in ({"wool": 100}, {"superwash wool": 100}, {"silk": 100}):
        found = compare(original(), [yarn("x", fibres, 420)])
        assert found.verdict == max((reason.verdict for reason in found.reasons), key=VERDICTS.index)
        assert found.reasons[0].verdict == found.verdict
        assert found.works == (found.verdict != "another fabric")


def test_a_squeezed_yarn_is_named_and_a_thinner_one_never() -> None:
    """Below 0.85 of the shortest loop it is squeezed hard (our study's check of loop length)."""
    assert verdicts(({"wool": 100}, 600))["squeeze"] == "another fabric"
    tight = original(yarn("rope", {"wool": 100}, 700))
    found = {reason.trait: reason.verdict for reason in compare(tight, [yarn("x", {"wool": 100}, 690)]).reasons}
    assert found["squeeze"] == "close"


def test_every_limit_has_its_basis() -> None:
    for limit in LIMITS.values():
        assert limit.basis
        assert limit.source
        assert limit.status
        assert 0 < limit.close < limit.end
