"""The page of sections: which part takes how much, and how far a remnant reaches."""

from __future__ import annotations

from collections.abc import Mapping

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_safe

from loopwright.season import Season, plan
from loopwright.season.remnant_report import remnant_report, tails_of
from loopwright.season.remnant_words import read_remnant_g, remnant_lines
from loopwright.season.section_table import section_table
from loopwright.season.wording import Wording
from loopwright.units import BadInput
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found

__all__ = ["show"]

ASKED = ("section", "mass", "done", "role", "then")


@require_safe
def show(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show the need section by section; with a remnant written down, what it can still knit."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    reader, wording = reader_of(request, season), wording_of(request, season)
    planned = plan(season, reader).garment(garment_key)
    asked = {name: str(request.GET.get(name, "")).strip() for name in ASKED}
    lines, fault = _remnant(season, garment_key, asked, wording)
    shown = {
        "key": key,
        "season": season,
        "garment": season.garment_by_key[garment_key],
        "why_not": planned.answer("draft").sentence,
        "view": section_table(planned, tails_of(season, garment_key) if planned.sections else (), wording),
        "roles": [role.key for role in season.garment_by_key[garment_key].yarns],
        "asked": asked,
        "lines": lines,
        "fault": fault,
        "path": reverse("sections", args=[key, garment_key]),
        "reader": reader,
    }
    return render(request, "sections/page.html", shown)


def _remnant(season: Season, garment_key: str, asked: Mapping[str, str], wording: Wording) -> tuple[list[str], str]:
    """Say what the remnant can knit, or what is wrong with what was asked."""
    if not any(asked.values()):
        return [], ""
    try:
        return remnant_lines(
            remnant_report(
                season,
                garment_key,
                asked["section"],
                read_remnant_g(asked["mass"], "On the scale"),
                done=_count(asked["done"]),
                role=asked["role"] or None,
                then_g=read_remnant_g(asked["then"], "Of another colour") if asked["then"] else None,
            ),
            wording,
        ), ""
    except BadInput as error:
        return [], str(error)


def _count(text: str) -> int:
    if not text:
        return 0
    if not text.isdecimal() or len(text) > 6:
        raise BadInput(found=text, wanted="a whole number of rows", place="Rows done")
    return int(text)
