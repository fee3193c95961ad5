"""The ease that a pattern means: stated, or finished measure less the body that a size is meant for."""

from typing import Any

from loopwright.garment import Garment
from loopwright.pattern import PatternFacts
from loopwright.season.sizing import wish_of
from tests.fit.test_advice import woman


def pattern(**more: Any) -> PatternFacts:
    facts = {
        "key": "p",
        "name": "P",
        "construction": "raglan",
        "gauge": "20 sts = 10 cm",
        "sizes": "S (M, L)",
        "finished": {"bust_girth": "90 (98, 107) cm", "upper_arm_girth": "32 (-, 36) cm"},
    }
    return PatternFacts.model_validate(facts | more)


def test_it_is_the_middle_of_finished_less_body() -> None:
    """Ease of 10, 12 and 13 cm: the middle size decides."""
    meant = pattern(to_fit={"bust_girth": "80 (86, 94) cm", "upper_arm_girth": "28 (30, -) cm"})
    assert meant.designed_ease_cm("bust_girth") == 12
    assert meant.designed_ease_cm("upper_arm_girth") == 4
    assert meant.designed_ease_cm("hip_girth") is None


def test_what_it_states_stands_before_what_follows() -> None:
    assert (
        pattern(to_fit={"bust_girth": "80 (86, 94) cm"}, ease={"bust_girth": "-4 cm"}).designed_ease_cm("bust_girth")
        == -4
    )


def test_her_own_figure_then_her_style_then_the_pattern() -> None:
    meant, body = pattern(ease={"bust_girth": "12 cm"}), woman(bust_girth="90 cm")

    def wanted(**more: Any) -> tuple[float, str]:
        facts = {"key": "g", "name": "G", "pattern": "p", "yarns": {"main": {"yarn": "y", "colour": "c"}}}
        wish = wish_of(Garment.model_validate(facts | more), meant, body, None)
        assert wish is not None
        return wish.intended_cm["bust_girth"], wish.wished_by["bust_girth"]

    assert wanted() == (12, "as the pattern means it")
    assert wanted(fit="loose") == (12.5, "loose fit")
    assert wanted(fit="loose", ease={"bust_girth": "3 cm"}) == (3, "your own figure")
