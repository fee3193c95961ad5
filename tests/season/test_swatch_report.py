"""Everything about one swatch, and the sentences for it."""

import pytest

from loopwright.files import demo_text, read_season_text
from loopwright.season import Answer, Season
from loopwright.season.change import with_entry
from loopwright.season.swatch_answers import garment_answers_on, swatch_answers
from loopwright.season.swatch_report import SwatchReport, swatch_report
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Reader

WORDING = Wording(Reader())


@pytest.fixture(scope="module")
def demo() -> Season:
    return read_season_text(demo_text(), "demo", "toml")


def said(report: SwatchReport) -> dict[str, Answer]:
    answers = [*swatch_answers(report, WORDING)]
    for garment in report.garments:
        answers += garment_answers_on(garment, WORDING)
    return {answer.key: answer for answer in answers}


def aran(demo: Season, **changes: object) -> SwatchReport:
    return swatch_report(with_entry(demo, "swatches", "aran", changes), "aran")


def test_the_doubt_of_a_width_is_that_of_the_counts(demo: Season) -> None:
    report = aran(demo)
    (cardigan,) = report.garments
    for width in cardigan.widths:
        assert width.sd_cm / width.cm == pytest.approx(0.02 / 3**0.5)


def test_every_length_that_is_knitted_to_measure_is_told(demo: Season) -> None:
    (cardigan,) = aran(demo).garments
    assert {one.point for one in cardigan.knit_to} == {"length", "sleeve_length", "armhole_depth"}
    assert all(one.unwashed.cm == pytest.approx(one.finished_cm * 24 / 24.5) for one in cardigan.knit_to)


def test_a_length_that_was_asked_for_is_answered(demo: Season) -> None:
    report = swatch_report(demo, "aran", length_cm=49)
    assert report.asked is not None
    assert report.asked.unwashed.cm == pytest.approx(48)
    assert "Knit a length to 48.0" in said(report)["wash"].reasons[0]


def test_too_many_stitches_name_a_larger_needle_and_warn_of_old_numbers(demo: Season) -> None:
    answer = said(aran(demo, after="19.5 sts x 26 rows = 10 cm"))["needle"]
    assert answer.sentence.startswith("A larger one, ")
    assert "US" in answer.sentence
    assert any("Old numbers differ" in reason for reason in answer.reasons)


def test_both_ways_out_and_the_rows_of_the_cap(demo: Season) -> None:
    """Ina is 96 cm and wants 7.5 more, 103.5; at 19.5 for 17 that is 118.7 of the pattern's, nearest to XL with 122."""
    reasons = " ".join(said(aran(demo, after="19.5 sts x 26 rows = 10 cm"))["ways"].reasons)
    assert "Another size: the counts of " in reasons
    assert "Other counts for " in reasons
    assert "Rows decide the sleeve cap" in reasons
    assert "shorter" in reasons


def test_the_pattern_s_own_gauge_needs_no_way_out(demo: Season) -> None:
    answers = said(aran(demo, after="17 sts x 23 rows = 10 cm"))
    assert "ways" not in answers
    assert answers["needle"].sentence == "Stay with yours: it has the pattern's stitches."


def test_an_unwashed_swatch_is_told_what_its_fibres_usually_do(demo: Season) -> None:
    answers = said(aran(demo, after=None))
    assert answers["wash"].sentence == "Not known: it was not counted after washing."
    assert "common practice, no source" in answers["wash"].reasons[0]
    assert any("wash it as the garment will be washed" in reason for reason in answers["gauge"].reasons)


def test_swapped_counts_are_hard_to_believe(demo: Season) -> None:
    answer = said(aran(demo, after="24 sts x 17.5 rows = 10 cm"))["gauge"]
    assert answer.tone == "unsure"
    assert any("stitches and rows exchanged" in reason for reason in answer.reasons)


def test_a_swatch_that_is_not_there_is_named_with_those_that_are(demo: Season) -> None:
    with pytest.raises(BadInput, match=r"found \"arann\"; wanted one of the swatches aran"):
        swatch_report(demo, "arann")


def test_american_and_imperial_readers_are_answered_in_their_own(demo: Season) -> None:
    gauge = swatch_answers(aran(demo), Wording(Reader("imperial", "american")))[0]
    assert gauge.question == "What is my gauge?"
    assert "17.8 ± 0.2 sts × 24.4 ± 0.3 rows to 4 in" in gauge.sentence
