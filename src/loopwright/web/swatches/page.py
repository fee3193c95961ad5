"""What the page of swatches shows, ready to be laid out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from loopwright.documents.view import AnswerView, answer_view
from loopwright.fabric import Swatch
from loopwright.fit.ways_out import Repeat
from loopwright.pictures.swatch import CountedWindow, swatch_figure
from loopwright.season import Answer, Season
from loopwright.season.change import entry_fields
from loopwright.season.swatch_answers import garment_answers_on, gauge_text, needle_text, swatch_answers
from loopwright.season.swatch_report import swatch_report
from loopwright.season.wording import Wording
from loopwright.web.swatches.form import Field, form_of, label_of

__all__ = ["GarmentPart", "SwatchPart", "swatch_parts"]


@dataclass(frozen=True, slots=True)
class GarmentPart:
    """What a swatch means on one garment."""

    key: str
    name: str
    answers: tuple[AnswerView, ...]


@dataclass(frozen=True, slots=True)
class SwatchPart:
    """One swatch on the page.

    :ivar figure: its drawing, as SVG.
    :ivar faults: what is wrong with what was typed; the form then holds it.
    """

    key: str
    title: str
    about: str
    figure: str
    answers: tuple[AnswerView, ...]
    garments: tuple[GarmentPart, ...]
    fields: tuple[Field, ...]
    faults: tuple[str, ...]


def swatch_parts(
    season: Season,
    wording: Wording,
    *,
    repeat: Repeat | None = None,
    length_cm: float | None = None,
    typed: Mapping[str, Mapping[str, str]] | None = None,
    faults: Mapping[str, tuple[str, ...]] | None = None,
) -> tuple[SwatchPart, ...]:
    """Give all swatches of a season in their order.

    :param typed, faults: by swatch, what was written and cannot be kept.
    """
    return tuple(
        _part(season, swatch, wording, repeat, length_cm, (typed or {}).get(swatch.key), (faults or {}).get(swatch.key))
        for swatch in season.swatches
    )


def _part(
    season: Season,
    swatch: Swatch,
    wording: Wording,
    repeat: Repeat | None,
    length_cm: float | None,
    typed: Mapping[str, str] | None,
    faults: tuple[str, ...] | None,
) -> SwatchPart:
    report = swatch_report(season, swatch.key, repeat, length_cm)
    parts = [wording.fabric(report.fabric), " with ".join(report.yarns)]
    if report.needle_mm is not None:
        parts.append(needle_text(report.needle_mm, report.needle))
    return SwatchPart(
        key=swatch.key,
        title=swatch.key.replace("-", " ").capitalize(),
        about=", ".join(parts),
        figure=_figure(swatch, f"{swatch.key}: {gauge_text(report.planned, wording)}"),
        answers=tuple(_view(answer, wording) for answer in swatch_answers(report, wording)),
        garments=tuple(
            GarmentPart(one.key, one.name, tuple(_view(answer, wording) for answer in garment_answers_on(one, wording)))
            for one in report.garments
        ),
        fields=form_of(entry_fields(season, "swatches", swatch.key), wording.reader, typed),
        faults=faults or (),
    )


def _figure(swatch: Swatch, says: str) -> str:
    gauge = swatch.gauge
    density = (gauge.stitches_per_10cm, gauge.rows_or_usual_per_10cm)
    windows = []
    for count in swatch.counts:
        across = count.across_cm or count.along_cm or 10.0
        windows.append(CountedWindow(label_of(count), across, count.along_cm or across))
    return swatch_figure(windows, swatch.width_cm, swatch.height_cm, density, says)


def _view(answer: Answer, wording: Wording) -> AnswerView:
    view = answer_view(answer, wording)
    return view if len(view.evidence) > 1 else replace(view, evidence=())
