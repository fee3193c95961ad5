"""Nine values of the conditional normal curve, computed by a script of another hand, to the digits printed there.

Source: the project's reference notes on bodies, section "Filling in from any set of known measures", computed from the
public release of ANSUR II (Gordon et al. 2014, NATICK/TR-15/007; US Government work). Status: read.
"""

import pytest

from loopwright.body.survey import Sex, conditional, dimensions

WOMAN = {"bust": 95.0, "height": 165.0, "weight": 68.0}
MAN = {"bust": 104.0, "height": 178.0, "weight": 82.0}
LARGER = {"bust": 110.0, "waist_navel": 100.0, "hip": 116.0, "height": 160.0}
PRINTED = 0.005 * 1.001
"""Half of the last printed decimal."""


@pytest.mark.parametrize(
    ("sex", "known", "target", "mean", "sd"),
    [
        ("F", WOMAN, "wrist", 15.54, 0.53),
        ("F", WOMAN, "upper_arm_flexed", 30.31, 1.39),
        ("F", WOMAN, "hip", 101.79, 2.88),
        ("F", WOMAN, "sleeve_outseam", 55.09, 1.78),
        ("M", MAN, "neck", 39.06, 1.47),
        ("M", MAN, "upper_arm_flexed", 34.75, 1.88),
        ("M", MAN, "biacromial", 41.65, 1.43),
        ("F", LARGER, "upper_arm_flexed", 35.51, 1.72),
        ("F", LARGER, "armpit_to_wrist_v", 42.46, 2.01),
    ],
)
def test_a_dimension_given_others(sex: Sex, known: dict[str, float], target: str, mean: float, sd: float) -> None:
    found = conditional(sex, known, target)
    assert [found.mean, found.sd] == pytest.approx([mean, sd], abs=PRINTED)


@pytest.mark.parametrize(
    ("sex", "key", "mean", "sd"),
    [
        ("F", "bust", 94.69, 8.27),
        ("F", "waist_navel", 86.09, 9.99),
        ("M", "head", 57.44, 1.60),
        ("M", "wrist", 17.59, 0.90),
    ],
)
def test_a_mean_of_the_survey(sex: Sex, key: str, mean: float, sd: float) -> None:
    """Means and deviations of all rows; ours leave out 20 people held back for a blind test, hence 0.03 cm."""
    found = dimensions(sex)[key]
    assert [found.mean, found.sd] == pytest.approx([mean, sd], abs=0.03)
