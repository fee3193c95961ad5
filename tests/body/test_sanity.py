"""Measures that do not agree: what is told, how surely, and what is left alone.

The rules are plain anatomy or our judgement, each with its source in ``data/body/orders.csv``; published means stand
beside the checks that use them.
"""

import pytest

from loopwright.body import MEASURES, Body, BodyDoubt, Wearer, body_doubts
from loopwright.data import table
from loopwright.units import Reader


def doubts(wearer: str = "woman", **measures: str) -> tuple[BodyDoubt, ...]:
    return body_doubts(Body.model_validate({"key": "ina", "name": "Ina", "wearer": wearer, **measures}))


def only(wearer: str = "woman", **measures: str) -> BodyDoubt:
    (doubt,) = doubts(wearer, **measures)
    return doubt


# --- Two waists ---------------------------------------------------------------------------------------------


def test_two_waists_that_contradict_one_another() -> None:
    found = only(waist_natural_girth="88 cm", waist_navel_girth="79 cm")
    assert found.measures == ("waist_natural_girth", "waist_navel_girth")
    assert found.sentence.startswith("Natural waist 88 cm is more than waist at the navel 79 cm")
    assert "bending sideways" in found.to_do


def test_two_waists_of_a_woman_that_are_one() -> None:
    """ANSUR 1988 women: 72.6 natural, 79.2 at the navel (cross-read)."""
    assert "read alike" in only(waist_natural_girth="79 cm", waist_navel_girth="79.5 cm").sentence
    assert doubts("man", waist_natural_girth="84 cm", waist_navel_girth="84.5 cm") == ()


def test_waists_as_the_survey_has_them_are_left_alone() -> None:
    assert doubts(waist_natural_girth="72.6 cm", waist_navel_girth="79.2 cm") == ()


def test_a_back_taped_to_the_navel() -> None:
    """ANSUR 1988 women: 36.7 to the natural waist, 44.3 to the navel (cross-read)."""
    assert "nearer to the usual length down to the navel" in only(back_neck_to_waist="44.3 cm").sentence
    assert doubts(back_neck_to_waist="36.7 cm") == ()


def test_a_tall_back_is_longer() -> None:
    assert doubts(back_neck_to_waist="43.5 cm", height="186 cm") == ()


# --- Order, sums, ranges ------------------------------------------------------------------------------------


@pytest.mark.parametrize("row", table("body/orders.csv"), ids=lambda row: f"{row['lesser']}<{row['greater']}")
def test_every_pair_in_the_wrong_order_is_told(row: dict[str, str]) -> None:
    wearer = "man" if row["greater"] == "chest_girth" else "woman"
    usual = MEASURES[row["greater"]].usual.get(Wearer(wearer))
    greater = usual.p50_cm if usual else 40
    found = doubts(wearer, **{row["greater"]: f"{greater} cm", row["lesser"]: f"{greater + 4} cm"})
    assert any({row["lesser"], row["greater"]} & set(one.measures) for one in found)


def test_a_pair_names_both_what_was_found_and_what_is_usual() -> None:
    found = only(wrist_girth="24 cm", forearm_girth="23.6 cm")
    assert found.sureness == "cannot be"
    assert found.sentence == (
        "Wrist 24 cm is more than forearm 23.6 cm, but the wrist is the thinnest place of the arm. "
        "Nine in ten women have: wrist 14.2 cm to 16.8 cm, forearm 23.5 cm to 29.6 cm."
    )


def test_the_limits_of_a_pair() -> None:
    """High bust over full bust: at most 1.6 cm in ASTM D5585-11e1, table 1 (read); 3 cm are let pass."""
    assert doubts(bust_girth="90 cm", high_bust_girth="93 cm") == ()
    assert only(bust_girth="90 cm", high_bust_girth="93.1 cm").sureness == "unlikely"


def test_parts_that_do_not_make_the_whole() -> None:
    found = only(back_neck_to_hip="70 cm", back_neck_to_waist="38 cm", waist_to_hip="15 cm")
    assert "does not agree with back neck to waist and waist to hip, which come to 53 cm" in found.sentence


def test_an_arm_that_was_raised() -> None:
    found = only(back_neck_to_wrist="88 cm", shoulder_width_back="37 cm", arm_length_shoulder_to_wrist="54 cm")
    assert "half the shoulder" in found.sentence
    assert "raised" in found.to_do


def test_inches_without_their_unit() -> None:
    found = only(head_girth="22 cm")
    assert found.sureness == "cannot be"
    assert found.to_do == "Did you mean 22 in? Look at the unit, or measure again."


def test_a_large_body_is_no_mistake() -> None:
    assert doubts(bust_girth="150 cm", hip_girth="155 cm", height="165 cm", wrist_girth="19 cm") == ()


def test_a_child_is_held_to_no_grown_up_s_measure() -> None:
    assert doubts("child", chest_girth="44 cm", head_girth="40 cm", height="60 cm", wrist_girth="10 cm") == ()
    assert only("child", head_girth="90 cm").sureness == "unlikely"


# --- Together -----------------------------------------------------------------------------------------------


def test_a_measure_that_does_not_go_with_the_others() -> None:
    found = only(bust_girth="90 cm", hip_girth="99 cm", height="165 cm", wrist_girth="21 cm")
    assert found.measures[0] == "wrist_girth"
    assert found.suspects == ("wrist_girth",)
    assert "does not go with full bust, hip and height: 15.4" in found.sentence


def test_one_wrong_measure_does_not_cast_doubt_on_the_others() -> None:
    found = doubts(bust_girth="90 cm", hip_girth="99 cm", height="165 cm", wrist_girth="21 cm", hand_girth="18.5 cm")
    assert {one.measures[0] for one in found} == {"wrist_girth"}


def test_what_cannot_be_comes_first() -> None:
    found = doubts(head_girth="22 cm", waist_natural_girth="88 cm", waist_navel_girth="79 cm")
    assert [one.sureness for one in found] == ["cannot be", "unlikely"]


def test_they_are_told_in_the_reader_s_measures() -> None:
    body = Body(key="ina", name="Ina", wearer=Wearer.WOMAN, waist_natural_girth_cm=88.9, waist_navel_girth_cm=76.2)
    assert "35 in is more than waist at the navel 30 in" in body_doubts(body, Reader("imperial"))[0].sentence


def test_nothing_is_doubted_where_nothing_is_known() -> None:
    assert doubts() == ()
