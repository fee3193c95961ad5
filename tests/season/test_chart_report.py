"""Charts in a season: shades, gauge and yarn from what they point to, answers in words."""

from collections.abc import Mapping

import pytest
from pydantic import ValidationError

from loopwright.chart import chart_csv
from loopwright.files import demo_text, read_season_text, write_season_text
from loopwright.season import Season, with_entry
from loopwright.season.chart_answers import chart_answers, row_list
from loopwright.season.chart_report import chart_report
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Measures, Reader

DEMO = read_season_text(demo_text(), "demo", "toml")


def changed(**fields: object) -> Season:
    return with_entry(DEMO, "charts", "tide-line", fields)


def answers(season: Season, measures: Measures = "metric") -> Mapping[str, str]:
    told = chart_answers(chart_report(season, "tide-line"), Wording(Reader(measures=measures)))
    return {one.key: " ".join((one.sentence, *one.reasons)) for one in told}


def test_the_garment_s_yarns_colour_it() -> None:
    report = chart_report(DEMO, "tide-line")
    assert [role.shade for role in report.chart.roles] == ["#dccdae", "#a2502f", "#23424f"]
    assert [one.name for one in report.roles] == ["Oat", "Rust", "Sea ink"]
    own = chart_report(changed(shades={"contrast-1": "#112233"}), "tide-line")
    assert own.chart.roles[1].shade == "#112233"


def test_its_own_gauge_stands_before_a_swatch() -> None:
    assert chart_report(DEMO, "tide-line").gauge_from == "counted on the swatch stripes"
    report = chart_report(changed(gauge="20 sts x 28 rows = 10 cm"), "tide-line")
    assert report.ratio == pytest.approx(20 / 28)
    alone = chart_report(changed(garment=None), "tide-line")
    assert (alone.counted, alone.fits) == (False, ())


def test_the_answers_say_where_to_catch() -> None:
    told = answers(DEMO)
    assert told["size"].startswith("12 stitches by 12 rounds, that is 5.5 cm by 4 cm.")
    assert told["colours"] == "Yes, in every row."
    assert told["floats"].startswith("Four floats: the longest passes 11 stitches, 5 cm, in row 6.")


def test_three_colours_in_a_row_are_told() -> None:
    kept = list(DEMO.chart_by_key["tide-line"].rows)
    kept[0] = "rmmmsmmmmmmm"
    assert answers(changed(rows=kept))["colours"].startswith("No: row 12 has up to 3.")


def test_a_small_child_has_a_shorter_limit() -> None:
    season = with_entry(DEMO, "bodies", "tam", {"age_years": 2})
    report = chart_report(season, "tide-line")
    assert (report.limit, report.for_young_child) == (3, True)
    assert "for a small child" in answers(season)["floats"]


def test_it_is_laid_over_the_stretches_of_the_garment_that_keep_a_count() -> None:
    fits = {one.section: one.fit for one in chart_report(DEMO, "tide-line").fits}
    assert fits["body"].in_the_round
    for fit in fits.values():
        assert fit.whole * fit.width + fit.plain + fit.cut == fit.count


def test_a_repeat_of_two_comes_out_even_on_an_even_body() -> None:
    rows = ["mr", "rm"] * 2
    report = chart_report(changed(rows=rows), "tide-line")
    assert {one.fit.exact for one in report.fits if one.fit.count % 2 == 0} == {True}


def test_yarn_is_told_in_the_reader_s_measures() -> None:
    assert " yd for the chart" in answers(DEMO, measures="imperial")["yarn"]


def test_a_key_that_leads_nowhere_is_told() -> None:
    with pytest.raises(ValidationError, match="the garment 'tent', which is not there"):
        changed(garment="tent")
    with pytest.raises(ValidationError, match="the swatch 'tent', which is not there"):
        changed(swatch="tent")
    with pytest.raises(BadInput, match="the chart 'tent'"):
        chart_report(DEMO, "tent")


@pytest.mark.parametrize("format", ["toml", "json"])
def test_the_season_file_keeps_it(format: str) -> None:
    text = write_season_text(DEMO, format)  # type: ignore[arg-type]
    again = read_season_text(text, "again", format)  # type: ignore[arg-type]
    assert again == DEMO
    assert chart_csv(again.charts[0].chart) == chart_csv(DEMO.charts[0].chart)


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ([], ""),
        ([3], "3"),
        ([1, 2, 5], "1 and 2, 5"),
        ([1, 2, 3, 7], "1 to 3, 7"),
        (range(1, 60, 2), "and 18 places more"),
    ],
)
def test_rows_are_listed_in_stretches(numbers: list[int], words: str) -> None:
    assert words in row_list(numbers)
