"""The verb ``plan``."""

from __future__ import annotations

from loopwright.cli.options import AsJson, Check, MeasuresOption, ReportFolder, SeasonFile, WordsOption

__all__ = ["plan"]


def plan(
    file: SeasonFile,
    as_json: AsJson = False,
    report: ReportFolder = None,
    measures: MeasuresOption = None,
    words: WordsOption = None,
    check: Check = False,
) -> None:
    """Plan a season file and answer its questions.

    First the season's: what to make, is there enough yarn, what to buy, what it costs, is there time; then each
    garment's. No database is touched.
    """
    from loopwright.cli.answering import answer
    from loopwright.files import read_season

    answer(read_season(file), as_json=as_json, report=report, measures=measures, words=words, check=check)
