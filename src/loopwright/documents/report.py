"""One self-contained HTML file of a season's plan, made to be printed too."""

from __future__ import annotations

from jinja2 import FileSystemLoader

from loopwright.documents.environment import LOOK_DIR, TEMPLATE_DIR, page_environment
from loopwright.documents.view import season_view
from loopwright.season import Season, SeasonPlan
from loopwright.season.wording import Wording
from loopwright.units import Reader

__all__ = ["season_report"]


def season_report(season: Season, plan: SeasonPlan, reader: Reader | None = None) -> str:
    """Give the report as one HTML text: no script, no font, no picture from anywhere else.

    :param plan: made of this season.
    :param reader: measures and words of the figures outside the answers; the season's own when left out.
    """
    wording = Wording(reader or Reader(measures=season.measures, words=season.words), season.today.year)
    environment = page_environment(loader=FileSystemLoader(TEMPLATE_DIR))
    look = "\n".join((LOOK_DIR / name).read_text(encoding="utf-8") for name in ("ground.css", "answers.css"))
    return environment.get_template("report.html").render(
        view=season_view(season, plan, wording, with_drafts=True), look=look
    )
