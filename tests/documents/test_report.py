"""The report: one file that stands alone, with every answer and every working."""

import re

import pytest

from loopwright.documents import season_report
from loopwright.files import demo_text, read_season_text
from loopwright.season import Answer, Season, SeasonPlan, plan
from loopwright.season.wording import Wording
from loopwright.units import Reader
from tests.documents.pages import read_page, text_of
from tests.pictures.drawings import HOSTILE, drawn

NAMESPACE = "http://www.w3.org/2000/svg"


def answers_of(planned: SeasonPlan) -> list[Answer]:
    return [*planned.answers, *(answer for garment in planned.garments for answer in garment.answers)]


def spoilt(old: str, new: str) -> str:
    """The report of the demo season with one piece of its file changed."""
    text = demo_text()
    assert old in text
    season = read_season_text(text.replace(old, new), "spoilt", "toml")
    return season_report(season, plan(season))


# --- It stands alone ----------------------------------------------------------------------------------------


def test_it_is_well_built(report: str) -> None:
    assert report.startswith("<!doctype html>")
    assert read_page(report).faults == []


def test_it_fetches_nothing(report: str) -> None:
    bare = report.replace(f'xmlns="{NAMESPACE}"', "")
    assert re.findall(r"https?:|//[a-z]|url\(|@import|src=|srcset|<link|<iframe|<object", bare) == []


def test_it_runs_nothing(report: str) -> None:
    page = read_page(report)
    assert page.count("script") == 0
    assert [name for _, attributes in page.elements for name in attributes if name.startswith("on")] == []


def test_it_leads_nowhere(report: str) -> None:
    assert read_page(report).values("href") == []


def test_it_prints(report: str) -> None:
    assert "@media print" in report
    assert "break-before: page" in report


def test_every_drawing_is_well_formed(report: str) -> None:
    drawings = re.findall(rf'<svg xmlns="{NAMESPACE}".*?</svg>', report, flags=re.DOTALL)
    assert len(drawings) > 20
    for drawing in drawings:
        drawn(drawing)


def test_equal_seasons_are_equal_text(season: Season, report: str) -> None:
    assert season_report(season, plan(season)) == report


# --- All is in it -------------------------------------------------------------------------------------------


def test_every_question_has_its_sentence(planned: SeasonPlan, report: str) -> None:
    lines = text_of(report).splitlines()
    assert [answer.question for answer in answers_of(planned) if answer.question not in lines] == []
    assert [answer.sentence for answer in answers_of(planned) if answer.sentence not in lines] == []


def test_every_reason_is_there(planned: SeasonPlan, report: str) -> None:
    lines = text_of(report).splitlines()
    reasons = [reason for answer in answers_of(planned) for reason in answer.reasons]
    assert len(reasons) > 20
    assert [reason for reason in reasons if reason not in lines] == []


def test_every_figure_shows_its_working(season: Season, planned: SeasonPlan, report: str) -> None:
    lines = text_of(report).splitlines()
    wording = Wording(Reader(measures=season.measures, words=season.words), season.today.year)
    figures = [figure for answer in answers_of(planned) for figure in answer.figures if figure.estimate]
    assert len(figures) > 30
    for figure in figures:
        start = lines.index(f"{figure.label}: {figure.text}")
        assert figure.estimate is not None
        for step in figure.estimate.steps:
            start = lines.index(step.says, start)
            assert lines[start + 1] == wording.step(step), figure.label


def test_every_caution_is_there_and_defers(planned: SeasonPlan, report: str) -> None:
    text = text_of(report)
    cautions = [*planned.cautions, *(caution for garment in planned.garments for caution in garment.cautions)]
    assert [caution.text for caution in cautions if caution.text not in text] == []
    assert "follow your local ones" in text


def test_yarn_on_its_way_is_told_by_its_name(report: str) -> None:
    assert "of Old Jetty DK Kelp, dye lot 19, here by 5 March" in text_of(report)


# --- What a file says stays text ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('name = "Winter at Wethers Reach"', f"name = '''{HOSTILE}'''"),
        ('name = "Winter at Wethers Reach"', f"name = 'Winter'\nnote = '''{HOSTILE}'''"),
        ('name = "Cardigan for herself"', f"name = '''{HOSTILE}'''"),
        ('name = "Long Headland Aran"', f"name = '''{HOSTILE}'''"),
        ('"Tarn"', f"'''{HOSTILE}'''"),
        ('dye_lot = "416"', f"dye_lot = '''{HOSTILE}'''"),
        ('name = "Garnkontor Ebbmark"', f"name = '''{HOSTILE}'''"),
        ('name = "Slipway"', f"name = '''{HOSTILE}'''"),
        ('name = "Ina"', f"name = '''{HOSTILE}'''"),
    ],
)
def test_hostile_text_is_shown_as_it_is(old: str, new: str) -> None:
    html = spoilt(old, new)
    assert "<script" not in html
    assert read_page(html).faults == []
    assert " ".join(HOSTILE.split()) in text_of(html)
