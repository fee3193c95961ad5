"""The page that adds a chart: an empty one, one from a file, or one made of a picture."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from django.core.files.uploadedfile import UploadedFile
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from loopwright.chart import Chart, ChartRole, chart_fields, plain_chart, read_chart_csv, read_chart_svg
from loopwright.chart.from_picture import PictureWish, chart_from_picture
from loopwright.chart.grid import named_roles
from loopwright.chart.png_form import read_chart_png
from loopwright.fabric import Gauge
from loopwright.season import Season
from loopwright.season.chart_report import USUAL_GAUGE
from loopwright.season.colour_choices import likeness
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.units import BadInput
from loopwright.web.charts.views import frame, told
from loopwright.web.season.views import found

__all__ = ["add"]

KINDS: Final = {"empty": "an empty one", "file": "from a file", "picture": "from a picture"}
_BEGINS: Final = {
    "kind": "empty",
    "columns": "24",
    "rows": "24",
    "stitches": "60",
    "colours": "4",
    "palette": "found",
    **dict.fromkeys(("name", "garment", "swatch", "worked", "two_in_a_row", "dither", "keep_specks"), ""),
}
"""What the form begins with."""
_GREYS: Final = ("#efe9dc", "#39464d", "#8f5a3c", "#8a8f73")
"""Colours that a chart for no garment begins with: invented."""


@require_http_methods(["GET", "HEAD", "POST"])
def add(request: HttpRequest, key: str) -> HttpResponse:
    """Ask what the chart is to be, or add it; with a fault nothing is written and the form holds what was typed."""
    season = found(key)
    faults: tuple[str, ...] = ()
    if request.method == "POST":
        try:
            return HttpResponseRedirect(reverse("chart", args=[key, _added(request, key, season)]))
        except (ChangeRefused, BadInput) as error:
            faults = told(error)
    typed = _BEGINS | (request.POST.dict() or request.GET.dict())
    shown = frame(request, key, season) | {"typed": typed, "faults": faults, "kinds": KINDS}
    shown["path"] = reverse("chart-add", args=[key])
    return render(request, "charts/new.html", shown, status=422 if faults else 200)


def _added(request: HttpRequest, key: str, season: Season) -> str:
    typed = request.POST
    name = typed.get("name", "").strip()
    if not name:
        raise BadInput(found="", wanted="a name for the chart", place="Name")
    garment, swatch = typed.get("garment", ""), typed.get("swatch", "")
    chart = _chart(request, season, typed, garment, swatch)
    fields = {name: value for name, value in chart_fields(chart).items() if value is not None}
    if garment in season.garment_by_key:
        fields["shades"] = {
            role: shade
            for role, shade in fields.get("shades", {}).items()
            if shade != dict(_garment_palette(season, garment)).get(role)
        } or None
    fields |= {"name": name, "garment": garment or None, "swatch": swatch or None}
    if typed.get("worked") == "in the round":
        fields["worked"] = "in the round"
    whole = {name: value for name, value in fields.items() if value is not None}
    return changes.add_entry(key, "charts", name, f"added the chart {name}", whole)


def _chart(request: HttpRequest, season: Season, typed: Mapping[str, str], garment: str, swatch: str) -> Chart:
    kind = typed.get("kind", "empty")
    if kind == "picture":
        return _from_picture(request, season, typed, garment, swatch)
    if kind == "file":
        return _from_file(_sent(request, "file", "a chart as CSV, PNG or SVG"))
    roles = tuple(ChartRole(role, shade) for role, shade in _garment_palette(season, garment))
    columns, rows = (_number(typed, name, label) for name, label in (("columns", "Stitches"), ("rows", "Rows")))
    return plain_chart(columns, rows, roles or named_roles(_GREYS[:2]))


def _number(typed: Mapping[str, str], name: str, label: str) -> int:
    text = typed.get(name, "").strip()
    if not text.isdecimal() or len(text) > 6:
        raise BadInput(found=text, wanted="a whole number", place=label)
    return int(text)


def _sent(request: HttpRequest, name: str, wanted: str) -> UploadedFile[Any]:
    sent = request.FILES.get(name)
    if not isinstance(sent, UploadedFile):
        raise BadInput(found="no file", wanted=wanted, place="File")
    return sent


def _from_file(sent: UploadedFile[Any]) -> Chart:
    content, name = sent.read(), (sent.name or "").lower()
    try:
        if content.startswith(b"\x89PNG"):
            return read_chart_png(content)
        text = content.decode("utf-8")
    except UnicodeDecodeError:
        raise BadInput(found=name or "a file", wanted="a chart as CSV, PNG or SVG", place="File") from None
    return read_chart_svg(text) if "<svg" in text[:2000] else read_chart_csv(text)


def _garment_palette(season: Season, garment: str) -> list[tuple[str, str | None]]:
    """Give the roles of a garment with their likenesses."""
    if garment not in season.garment_by_key:
        return []
    roles = season.garment_by_key[garment].yarns
    return [(role.key, likeness(season, role.yarn, role.colour, role.lots)) for role in roles]


def _gauge(season: Season, garment: str, swatch: str) -> Gauge:
    key = swatch or (season.garment_by_key[garment].swatch if garment in season.garment_by_key else None)
    return season.swatch_by_key[key].gauge if key in season.swatch_by_key else USUAL_GAUGE


def _from_picture(request: HttpRequest, season: Season, typed: Mapping[str, str], garment: str, swatch: str) -> Chart:
    """Turn a picture into a chart on the garment's yarns, or on colours that are found in it."""
    sent = _sent(request, "picture", "a picture as JPEG, PNG or WebP")
    known = [(role, shade) for role, shade in _garment_palette(season, garment) if shade]
    own = typed.get("palette") == "garment"
    if own and len(known) < 2:
        raise BadInput(
            found=f"{len(known)} colours with a likeness",
            wanted="a garment with two or more, or colours found in the picture",
            place="Colours",
        )
    wish = PictureWish(
        stitches=_number(typed, "stitches", "Stitches"),
        gauge=_gauge(season, garment, swatch),
        palette=tuple(ChartRole(role, shade) for role, shade in known) if own else (),
        colours=len(known) if own else _number(typed, "colours", "How many"),
        two_in_a_row="two_in_a_row" in typed,
        dither="dither" in typed,
        despeckle="keep_specks" not in typed,
    )
    return chart_from_picture(sent.read(), wish).chart
