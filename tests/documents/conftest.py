"""The demo season, its plan and its report, made once."""

import pytest

from loopwright.documents import season_report
from loopwright.files import demo_text, read_season_text
from loopwright.season import Season, SeasonPlan, plan


@pytest.fixture(scope="session")
def season() -> Season:
    return read_season_text(demo_text(), "demo", "toml")


@pytest.fixture(scope="session")
def planned(season: Season) -> SeasonPlan:
    return plan(season)


@pytest.fixture(scope="session")
def report(season: Season, planned: SeasonPlan) -> str:
    return season_report(season, planned)
