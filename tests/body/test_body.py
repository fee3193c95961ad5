"""A person's measures, and the list of what can be measured."""

import pytest

from loopwright.body import MEASURES, Body


def body(**facts: object) -> Body:
    return Body.model_validate({"key": "ina", "name": "Ina", "wearer": "woman", **facts})


def test_every_measure_of_the_list_can_stand_on_a_body() -> None:
    fields = {name.removesuffix("_cm") for name in Body.model_fields if name.endswith("_cm")}
    assert fields == set(MEASURES)


def test_every_measure_says_how_to_take_it_and_how_exactly() -> None:
    assert [key for key, facts in MEASURES.items() if not facts.how_to or facts.plan_sd_cm <= 0] == []


def test_the_two_waists_are_two_measures() -> None:
    """ANSUR 1988 women, mean: 72.6 natural, 79.2 at the navel (cross-read); never one for the other."""
    both = body(waist_natural_girth="72.6 cm", waist_navel_girth="79.2 cm")
    assert (both.measure_cm("waist_natural_girth"), both.measure_cm("waist_navel_girth")) == (72.6, 79.2)


def test_bust_of_a_woman_else_chest() -> None:
    assert body(bust_girth="96 cm", chest_girth="90 cm").chest_or_bust_cm == 96
    assert body(chest_girth="104 cm").chest_or_bust_cm == 104


def test_what_is_unknown_is_none() -> None:
    assert body().chest_or_bust_cm is None
    assert body().measure_cm("hip_girth") is None


def test_inches_read_as_centimetres_are_caught() -> None:
    with pytest.raises(ValueError, match=r"did you mean 29 in\?"):
        body(bust_girth="29 cm")


@pytest.mark.parametrize("girth", ["5 cm", "300 cm"])
def test_a_girth_that_nobody_has(girth: str) -> None:
    with pytest.raises(ValueError, match="from 30 to 220 cm"):
        body(bust_girth=girth)


@pytest.mark.parametrize(
    ("wearer", "age", "young"),
    [("child", 2, True), ("child", None, True), ("child", 3, False), ("woman", None, False)],
)
def test_who_is_a_young_child(wearer: str, age: float | None, young: bool) -> None:
    assert body(wearer=wearer, age_years=age).is_young_child is young


def test_a_misspelt_measure_is_not_dropped() -> None:
    with pytest.raises(ValueError, match="hip_grith"):
        body(hip_grith="100 cm")
