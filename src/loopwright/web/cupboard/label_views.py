"""The page of labels, made to be printed."""

from __future__ import annotations

import datetime as dt
from typing import Final

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_safe

from loopwright.season.cupboard_report import LotReport
from loopwright.store.cupboard import Cupboard, lots_found, lots_named
from loopwright.web.cupboard.labels import ON_A_SHEET, label_of, sheets
from loopwright.web.cupboard.views import found_cupboard, frame, number_of, searched
from loopwright.web.reading import wording_of

__all__ = ["MOST_LABELS", "show"]

MOST_LABELS: Final = 10 * ON_A_SHEET
"""Labels at once; a search gives fewer."""


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show the labels of the lots that are named or searched for."""
    cupboard, search = found_cupboard(key), searched(request)
    named = request.GET.getlist("lot")[:MOST_LABELS]
    lots, count = _lots(cupboard, named, search)
    first = number_of(request, "first", 1, ON_A_SHEET)
    day, faults = _day(request.GET.get("date", "").strip())
    wording = wording_of(request, cupboard.season)
    labels = [label_of(one, _address(request, key, one), day, wording) for one in lots]
    shown = frame(request, key, cupboard) | {
        "sheets": sheets(labels, first),
        "count": len(labels),
        "left_out": count - len(labels),
        "first": first,
        "date": day.isoformat(),
        "search": search,
        "named": named,
        "faults": faults,
        "host": request.get_host(),
        "only_here": request.get_host().rpartition(":")[0] in {"localhost", "127.0.0.1", "[::1]"}
        or request.get_host() in {"localhost", "127.0.0.1", "[::1]"},
        "most": MOST_LABELS,
    }
    return render(request, "cupboard/labels.html", shown)


def _lots(cupboard: Cupboard, named: list[str], search: str) -> tuple[tuple[LotReport, ...], int]:
    if named:
        lots = lots_named(cupboard, named)
        return lots, len(lots)
    found = lots_found(cupboard, search, 1, MOST_LABELS)
    return found.lots, found.count


def _address(request: HttpRequest, key: str, report: LotReport) -> str:
    """Give the address of a lot's page under the host by which this page was asked for."""
    return request.build_absolute_uri(reverse("lot", args=[key, report.lot.key]))


def _day(text: str) -> tuple[dt.date, tuple[str, ...]]:
    """Give the day that stands on the labels: the one asked for, else today's by this machine's clock."""
    try:
        return (dt.date.fromisoformat(text), ()) if text else (timezone.localdate(), ())
    except ValueError:
        return timezone.localdate(), (f"Date: found “{text[:40]}”; wanted a day such as 2027-03-01",)
