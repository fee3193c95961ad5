"""The same season for a reader with inches and American words."""

import re

import pytest

from loopwright.documents import season_report
from loopwright.season import Season, plan
from loopwright.units import Reader, write_yarn_length
from tests.documents.pages import read_page, text_of

AMERICAN = Reader(measures="imperial", words="american")


@pytest.fixture(scope="module")
def sentences(season: Season) -> list[str]:
    """All that is said in answers: questions, sentences, reasons, labels and figures."""
    planned = plan(season, AMERICAN)
    answers = [*planned.answers, *(answer for garment in planned.garments for answer in garment.answers)]
    said = [text for answer in answers for text in (answer.question, answer.sentence, *answer.reasons)]
    return said + [text for answer in answers for figure in answer.figures for text in (figure.label, figure.text)]


@pytest.fixture(scope="module")
def american(season: Season) -> str:
    return season_report(season, plan(season, AMERICAN), AMERICAN)


@pytest.mark.parametrize("metric", [r"\d (cm|mm|m|g|kg)\b", "tension", "stocking stitch", "cast off", "colour\\b"])
def test_nothing_metric_or_british_is_said(sentences: list[str], metric: str) -> None:
    assert [text for text in sentences if re.search(metric, text)] == []


@pytest.mark.parametrize("own", ["in", "yd", "oz"])
def test_her_own_units_are_said(sentences: list[str], own: str) -> None:
    assert any(re.search(rf"[\d½¼¾] {own}\b", text) for text in sentences)


def test_her_own_words_are_said(sentences: list[str]) -> None:
    assert "Is my gauge right?" in sentences


def test_dates_have_the_month_first(sentences: list[str]) -> None:
    said = " ".join(sentences)
    assert "March 19" in said
    assert not re.search(r"\d (March|April|May|June|July)\b", said)


def test_the_report_follows(american: str) -> None:
    assert read_page(american).faults == []
    text = text_of(american)
    assert "All sizes at your own gauge" in text
    assert not re.search(r"\btension\b", text)


def test_what_the_report_shows_beside_answers_follows(season: Season, american: str) -> None:
    text = text_of(american)
    taken = plan(season).garment("shawl").roles[0].taken[0]
    assert f"{write_yarn_length(taken.metres, AMERICAN)} reserved of Ropewalk Lace Damson" in text
    assert "stockinette" in text


def test_measures_and_words_are_two_choices(season: Season) -> None:
    planned = plan(season, Reader(measures="imperial", words="british"))
    assert planned.garment("cardigan").answer("fabric").question == "Is my tension right?"
    # By hand: 106 cm × 17/17.5 = 102.97 cm, 40.5 in; less the 96 cm of the body 6.97 cm, 2.7 in.
    assert planned.garment("cardigan").answer("fit").sentence == "Yes, M: bust 40½ in, 2¾ in of ease."
