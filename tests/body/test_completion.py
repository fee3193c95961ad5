"""Gaps filled from known measures: what is estimated, what is refused, and the laws that every estimate obeys.

The twin inverts the whole covariance matrix of known measures and target at once (the precision matrix), another way
than the room's own; both follow from the density of the normal distribution.
"""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from loopwright.body import MEASURES, Body, Wearer, complete
from loopwright.body.completion import estimate_from, survey_links
from loopwright.body.survey import Sex, conditional, correlation, dimensions
from loopwright.uncertainty import Origin

SEXES: tuple[Sex, ...] = ("F", "M")
NAMES = tuple(dimensions("F"))


def woman(**measures: float) -> Body:
    return Body.model_validate({"key": "ina", "name": "Ina", "wearer": "woman", **measures})


def covariance(sex: Sex, names: tuple[str, ...]) -> np.ndarray:
    every = dimensions(sex)
    return np.array([[correlation(sex, a, b) * every[a].sd * every[b].sd for b in names] for a in names])


@st.composite
def known_and_target(draw: st.DrawFn) -> tuple[Sex, dict[str, float], str]:
    """Some dimensions within three standard deviations, and another one."""
    sex = draw(st.sampled_from(SEXES))
    target, *names = draw(st.lists(st.sampled_from(NAMES), unique=True, min_size=2, max_size=8))
    every = dimensions(sex)
    return sex, {name: every[name].mean + draw(st.floats(-3, 3)) * every[name].sd for name in names}, target


# --- Laws ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("sex", SEXES)
def test_correlations_are_a_matrix_that_a_normal_distribution_can_have(sex: Sex) -> None:
    matrix = covariance(sex, NAMES)
    assert matrix == pytest.approx(matrix.T, rel=1e-12)
    assert np.linalg.eigvalsh(matrix).min() > 0


@given(known_and_target())
@settings(max_examples=60, deadline=None)
def test_it_agrees_with_the_precision_matrix(case: tuple[Sex, dict[str, float], str]) -> None:
    sex, known, target = case
    names = (target, *known)
    precision = np.linalg.inv(covariance(sex, names))
    away = np.array([value - dimensions(sex)[name].mean for name, value in known.items()])
    found = conditional(sex, known, target)
    assert found.mean == pytest.approx(dimensions(sex)[target].mean - precision[0, 1:] @ away / precision[0, 0])
    assert found.sd == pytest.approx(precision[0, 0] ** -0.5)


@given(known_and_target())
@settings(max_examples=60, deadline=None)
def test_one_more_known_never_adds_doubt(case: tuple[Sex, dict[str, float], str]) -> None:
    sex, known, target = case
    fewer = dict(itertools.islice(known.items(), len(known) - 1))
    assert conditional(sex, known, target).sd <= conditional(sex, fewer, target).sd + 1e-9


@given(known_and_target())
@settings(max_examples=40, deadline=None)
def test_what_is_known_is_exact_and_order_is_nothing(case: tuple[Sex, dict[str, float], str]) -> None:
    sex, known, target = case
    name, value = next(iter(known.items()))
    assert (conditional(sex, known, name).mean, conditional(sex, known, name).sd) == (value, 0)
    turned = dict(reversed(list(known.items())))
    assert conditional(sex, turned, target).mean == pytest.approx(conditional(sex, known, target).mean)


def test_with_nothing_known_the_survey_itself_comes_back() -> None:
    wrist = dimensions("F")["wrist"]
    assert conditional("F", {}, "wrist").mean == wrist.mean
    assert conditional("F", {}, "wrist").sd == wrist.sd


def test_a_drawn_crowd_strays_as_the_estimate_says() -> None:
    """Of people drawn from the whole distribution (scipy), those near a bust and a height have wrists as estimated."""
    names = ("wrist", "bust", "height")
    every = dimensions("F")
    mean = [every[name].mean for name in names]
    crowd = stats.multivariate_normal(mean, covariance("F", names), seed=7).rvs(400_000)
    near = crowd[(abs(crowd[:, 1] - 100) < 1) & (abs(crowd[:, 2] - 168) < 1), 0]
    found = conditional("F", {"bust": 100, "height": 168}, "wrist")
    assert near.mean() == pytest.approx(found.mean, abs=0.03)
    assert near.std() == pytest.approx(found.sd, rel=0.05)


# --- A body -------------------------------------------------------------------------------------------------


def test_an_estimate_says_what_it_rests_on() -> None:
    arm = complete(woman(bust_girth_cm=95, height_cm=165, mass_kg=68)).estimates["upper_arm_girth"]
    assert [step.origin for step in arm.steps] == [Origin.MEASURED] * 3 + [Origin.COMPUTED]
    assert "1981 people" in arm.steps[-1].working
    assert "ANSUR II" in arm.steps[-1].source
    assert "flexed" in arm.steps[-1].says


def test_what_is_measured_is_never_estimated() -> None:
    filled = complete(woman(bust_girth_cm=95, hip_girth_cm=100))
    assert not {"bust_girth", "hip_girth"} & set(filled.estimates)
    assert filled.used == ("bust_girth", "hip_girth")


def test_other_places_of_the_body_are_asked_for() -> None:
    """Traps 1, 2, 5, 6 and 8 of the reference notes: other waists, high bust, raised arm, armhole, hair."""
    other = {
        "waist_natural_girth",
        "back_neck_to_waist",
        "armpit_to_waist",
        "high_bust_girth",
        "back_neck_to_wrist",
        "scye_depth",
        "armscye_girth",
        "shoulder_width_back",
        "head_girth",
    }
    filled = complete(woman(bust_girth_cm=95, waist_navel_girth_cm=86, height_cm=165))
    assert other <= set(filled.to_ask)
    assert not other & set(filled.estimates)


def test_a_natural_waist_says_nothing_of_the_survey_s_waist() -> None:
    without = complete(woman(bust_girth_cm=95)).estimates["waist_navel_girth"]
    assert complete(woman(bust_girth_cm=95, waist_natural_girth_cm=70)).estimates["waist_navel_girth"] == without


def test_an_arm_taped_relaxed_is_not_put_in_as_a_flexed_one() -> None:
    assert "upper_arm_girth" not in complete(woman(bust_girth_cm=95, upper_arm_girth_cm=30)).used
    with pytest.raises(ValueError, match="does not take upper_arm_girth"):
        estimate_from(Wearer.WOMAN, {"upper_arm_girth": 30}, "wrist_girth")


def test_a_man_s_chest_stands_for_the_survey_s() -> None:
    man = Body(key="joss", name="Joss", wearer=Wearer.MAN, chest_girth_cm=104, height_cm=178, mass_kg=82)
    assert complete(man).estimates["neck_girth"].mean == pytest.approx(39.06, abs=0.005)


def test_a_child_is_refused() -> None:
    child = Body(key="tam", name="Tam", wearer=Wearer.CHILD, chest_girth_cm=58, height_cm=104)
    filled = complete(child)
    assert filled.estimates == {}
    assert "grown-ups only" in (filled.refused or "")
    with pytest.raises(ValueError, match="grown-ups only"):
        estimate_from(Wearer.CHILD, {"height": 104}, "wrist_girth")


def test_nothing_comes_from_nothing() -> None:
    assert "good beginning" in (complete(woman(head_girth_cm=56)).refused or "")


def test_beyond_the_survey_it_is_a_guess_with_more_doubt() -> None:
    within = complete(woman(bust_girth_cm=116)).estimates["hip_girth"]
    beyond = complete(woman(bust_girth_cm=150)).estimates["hip_girth"]
    assert (within.origin, beyond.origin) == (Origin.COMPUTED, Origin.GUESS)
    assert beyond.sd > 2 * within.sd
    assert "widened" in beyond.steps[-1].working


def test_what_is_doubted_is_left_out() -> None:
    body = woman(bust_girth_cm=95, wrist_girth_cm=33)
    assert complete(body, leave_out={"wrist_girth"}).used == ("bust_girth",)


@pytest.mark.parametrize("wearer", [Wearer.WOMAN, Wearer.MAN])
def test_every_measure_of_a_grown_up_is_estimated_or_asked_for_with_a_reason(wearer: Wearer) -> None:
    links = survey_links(wearer)
    own = {"bust_girth", "high_bust_girth", "under_bust_girth", "front_length_over_bust", "neck_to_bust_point"}
    absent = {"chest_girth"} if wearer is Wearer.WOMAN else own
    assert set(MEASURES) - absent == set(links) - {"mass"}
    assert all(link.is_estimated or link.why for link in links.values())
