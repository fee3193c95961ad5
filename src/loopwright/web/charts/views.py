"""The page of charts, and the bench of one: seen, drawn on, set, written out, taken away."""

from __future__ import annotations

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect, JsonResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from loopwright.chart import NamedChart, chart_csv
from loopwright.chart.png_form import chart_png
from loopwright.pictures.chart_view import shaded
from loopwright.season import Season, entry_fields
from loopwright.season.chart_report import chart_report
from loopwright.store import changes
from loopwright.store.errors import ChangedMeanwhile, ChangeRefused
from loopwright.units import BadInput
from loopwright.web.charts.form import EMPTY, Refused, drawn_in, rows_typed, settings_typed, under_its_label
from loopwright.web.charts.laying import laying_view
from loopwright.web.charts.page import about, cards, cautions, drawing_of, editor_data, lying_on, row_lines, views
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found

__all__ = [
    "answers",
    "bench",
    "draw",
    "found_chart",
    "frame",
    "keep",
    "rows",
    "save",
    "show",
    "show_all",
    "take_away",
    "told",
    "words",
]

ROWS_ON_THE_PAGE = 40
STITCHES_ON_THE_PAGE = 120
"""A chart of more rows or stitches has its words on a page of their own."""


@require_safe
def show_all(request: HttpRequest, key: str) -> HttpResponse:
    """Show every chart of the season."""
    season = found(key)
    return render(request, "charts/page.html", frame(request, key, season) | {"cards": cards(season)})


@require_safe
def show(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Show the bench of a chart."""
    season, named = found_chart(key, chart_key)
    return bench(request, key, season, named)


@require_POST
def draw(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Keep what was drawn; answers JSON, since a script asks. What is drawn in one sitting is one change."""
    _, named = found_chart(key, chart_key)
    try:
        drawn = drawn_in(request)
        kept, version = changes.draw_chart(
            key, chart_key, f"drew {named.name}", drawn.changes, known=drawn.known, last_version=drawn.last_version
        )
    except ChangedMeanwhile as error:
        known = found_chart(key, chart_key)[1].fingerprint
        return JsonResponse({"faults": [str(error)], "meanwhile": True, "known": known}, status=422)
    except (ChangeRefused, BadInput) as error:
        return JsonResponse({"faults": list(told(error))}, status=422)
    return JsonResponse({"known": kept.fingerprint, "version": version})


@require_safe
def answers(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Give the answers alone, after something was drawn."""
    season, named = found_chart(key, chart_key)
    shown = frame(request, key, season) | {"alone": True, "path": reverse("chart", args=[key, chart_key])}
    return render(request, "charts/_answers.html", shown | _answers(request, season, named))


@require_POST
def keep(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Keep what she wrote about a chart; with a fault nothing is written and the form holds it."""
    season, named = found_chart(key, chart_key)
    try:
        changes.change_entry(key, "charts", chart_key, f"changed the chart {named.name}", settings_typed(request.POST))
    except (ChangeRefused, BadInput) as error:
        return bench(request, key, season, named, Refused("settings", told(error), _texts(request)))
    return HttpResponseRedirect(reverse("chart", args=[key, chart_key]))


@require_POST
def rows(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Keep the rows that were written as text."""
    season, named = found_chart(key, chart_key)
    written: dict[str, Any] = {"rows": rows_typed(request.POST.get("rows", ""))}
    written["stitches"] = rows_typed(request.POST.get("stitches", "")) or None
    try:
        changes.change_entry(key, "charts", chart_key, f"wrote the rows of {named.name}", written)
    except (ChangeRefused, BadInput) as error:
        return bench(request, key, season, named, Refused("rows", told(error), _texts(request)))
    return HttpResponseRedirect(reverse("chart", args=[key, chart_key]))


@require_POST
def take_away(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Take a chart out of the season; undo has it back."""
    season, named = found_chart(key, chart_key)
    try:
        changes.remove_entry(key, "charts", chart_key, f"took away the chart {named.name}")
    except ChangeRefused as error:
        return bench(request, key, season, named, Refused("taking away", tuple(lying_on(season, named)) or told(error)))
    return HttpResponseRedirect(reverse("charts", args=[key]))


@require_safe
def words(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Show every row of a chart in words."""
    season, named = found_chart(key, chart_key)
    shown = frame(request, key, season) | {"chart": named, "about": about(season, named), "lines": row_lines(named)}
    return render(request, "charts/words.html", shown)


@require_safe
def save(request: HttpRequest, key: str, chart_key: str, ending: str) -> HttpResponse:
    """Give a chart as a file: a table, a picture of one point a cell, or a drawing."""
    season, named = found_chart(key, chart_key)
    report = chart_report(season, chart_key)
    if ending == "csv":
        response = HttpResponse(chart_csv(report.chart), content_type="text/csv; charset=utf-8")
    elif ending == "png":
        response = HttpResponse(chart_png(shaded(report.chart)), content_type="image/png")
    elif ending == "svg":
        response = HttpResponse(drawing_of(season, named, report), content_type="image/svg+xml")
        response["Content-Security-Policy"] = "default-src 'none'"
    else:
        raise Http404(f"a chart is written as csv, png or svg, not as {ending}")
    if "look" not in request.GET:
        response["Content-Disposition"] = f'attachment; filename="{chart_key}.{ending}"'
    return response


def found_chart(key: str, chart_key: str) -> tuple[Season, NamedChart]:
    """Give the season of this key and its chart, or say that there is none."""
    season = found(key)
    if chart_key not in season.chart_by_key:
        raise Http404(f"the season has no chart '{chart_key}'")
    return season, season.chart_by_key[chart_key]


def told(error: ChangeRefused | BadInput) -> tuple[str, ...]:
    """Say what is wrong, one line each."""
    return (str(error),) if isinstance(error, BadInput) else tuple(under_its_label(one) for one in error.faults)


def frame(request: HttpRequest, key: str, season: Season) -> dict[str, Any]:
    """Give what every page of charts needs."""
    return {
        "key": key,
        "season": season,
        "past": changes.history(key),
        "path": request.path if request.method in ("GET", "HEAD") else reverse("charts", args=[key]),
        "reader": reader_of(request, season),
    }


def _answers(request: HttpRequest, season: Season, named: NamedChart) -> dict[str, Any]:
    report = chart_report(season, named.key)
    return {"answers": views(report, wording_of(request, season)), "cautions": cautions(report)}


def _texts(request: HttpRequest) -> dict[str, str]:
    return {name: str(text) for name, text in request.POST.items()}


def bench(
    request: HttpRequest, key: str, season: Season, named: NamedChart, refused: Refused | None = None
) -> HttpResponse:
    """Show the bench of a chart.

    :param refused: what one of its forms could not keep, which then stands in it again.
    """
    chart, wording = named.chart, wording_of(request, season)
    report = chart_report(season, named.key)
    small = chart.rows <= ROWS_ON_THE_PAGE and chart.columns <= STITCHES_ON_THE_PAGE
    kept = entry_fields(season, "charts", named.key)
    faults = {refused.form: refused.faults} if refused else {}
    written = refused.typed if refused and refused.form in ("settings", "rows") else {}
    laid = refused.typed if refused and refused.form == "laying" else request.GET.dict()
    shown = frame(request, key, season) | {
        "chart": named,
        "about": about(season, named),
        "data": editor_data(named, report, imperial=reader_of(request, season).measures == "imperial"),
        "lines": row_lines(named) if small else (),
        "typed": {**EMPTY, **kept, **(kept.get("repeat") or {}), **written},
        "faults": faults.get("settings", ()),
        "row_faults": faults.get("rows", ()),
        "away_faults": faults.get("taking away", ()),
        "laying": laying_view(key, season, named, laid, wording, faults.get("laying", ())),
        "path": reverse("chart", args=[key, named.key]),
        "alone": False,
        "tension": wording.word("tension"),
    }
    shown |= _answers(request, season, named)
    return render(request, "charts/bench.html", shown, status=422 if refused else 200)
