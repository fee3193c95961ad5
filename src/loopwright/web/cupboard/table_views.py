"""The cupboard as a table: given out whole, and taken in step by step with nothing kept before it was shown."""

from __future__ import annotations

from collections.abc import Container
from typing import Any, Final, cast

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from loopwright.files.cupboard_table import (
    ASIDE,
    FIELDS,
    Choice,
    Grid,
    cupboard_rows,
    entries_to_keep,
    read_table,
    take_in,
    understand,
    write_csv,
    write_xlsx,
)
from loopwright.season import plan
from loopwright.season.cupboard_report import CupboardUse, cupboard_use, lot_report
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.store.keys import free_key, key_from_name
from loopwright.units import BadInput
from loopwright.web.cupboard.table_page import columns_view, grid_from_text, grid_text, taking_view
from loopwright.web.cupboard.views import found_cupboard, frame
from loopwright.web.season.views import found

__all__ = ["make_key", "save", "show"]

_TYPES: Final = {
    "csv": "text/csv; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
_CHOICES: Final = {
    "leave": "Leave them as they are here",
    "update": "Take the amounts from the file",
    "add": "Add them once more, as lots of their own",
}


def make_key(name: str, taken: Container[str]) -> str:
    """Make a key from a name that is not among those taken."""
    return free_key(key_from_name(name), taken)


@require_safe
def save(request: HttpRequest, key: str, ending: str) -> HttpResponse:
    """Give the whole cupboard as a table."""
    if ending not in _TYPES:
        raise Http404(f"the cupboard is given as csv or xlsx, not as {ending}")
    season = found(key)
    try:
        use = cupboard_use(season, plan(season))
    except BadInput:  # a season that cannot be planned still has its yarn
        use = CupboardUse()
    yarns = season.yarn_by_key
    rows = cupboard_rows(lot_report(lot, yarns[lot.yarn], use) for lot in season.cupboard)
    content = write_csv(rows) if ending == "csv" else write_xlsx(rows, "Cupboard")
    response = HttpResponse(content, content_type=_TYPES[ending])
    response["Content-Disposition"] = f'attachment; filename="{key}-cupboard.{ending}"'
    return response


@require_http_methods(["GET", "HEAD", "POST"])
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Read a table, ask what its columns mean where that is not clear, show what it holds, and then keep it."""
    if request.method != "POST":
        return _page(request, key)
    try:
        grid = _grid(request)
    except BadInput as error:
        return _page(request, key, faults=[str(error)])
    columns = understand(grid, _said(request, grid))
    shown: dict[str, Any] = {
        "grid": grid_text(grid),
        "name": grid.name,
        "columns": columns_view(grid, columns),
        "column_faults": [str(fault) for fault in columns.faults],
        "ask": not columns.is_clear or "ask" in request.POST,
    }
    if shown["ask"]:
        return _page(request, key, shown)
    taken = take_in(grid, columns, found(key), make_key)
    choice = cast(Choice, request.POST.get("choice") if request.POST.get("choice") in _CHOICES else "leave")
    if "keep" in request.POST and not taken.faults:
        added, changed = entries_to_keep(taken, choice)
        try:
            changes.change_entries(key, f"took in {grid.name}", added=added, changed=changed)
        except (BadInput, ChangeRefused) as error:
            return _page(request, key, shown, faults=str(error).splitlines())
        return HttpResponseRedirect(reverse("cupboard", args=[key]))
    return _page(request, key, shown | {"view": taking_view(taken), "choice": choice})


def _grid(request: HttpRequest) -> Grid:
    uploaded = request.FILES.get("file")
    if uploaded is not None:
        return read_table(uploaded.read(), (uploaded.name or "the file")[:80])
    if request.POST.get("grid"):
        return grid_from_text(request.POST["grid"])
    raise BadInput("", "a table as .csv or .xlsx", place="File")


def _said(request: HttpRequest, grid: Grid) -> dict[int, str]:
    """Give what she says that the columns mean."""
    said = {place: request.POST.get(f"column-{place}", "") for place in range(len(grid.headings))}
    return {place: means for place, means in said.items() if means}


def _page(
    request: HttpRequest, key: str, shown: dict[str, Any] | None = None, *, faults: list[str] | None = None
) -> HttpResponse:
    usual: dict[str, Any] = {"grid": "", "name": "", "columns": (), "column_faults": [], "ask": False, "view": None}
    told = usual | {"choice": "leave"} | (shown or {})
    told |= {"faults": faults or [], "fields": FIELDS, "aside": ASIDE, "choices": _CHOICES}
    return render(
        request,
        "cupboard/take_in.html",
        frame(request, key, found_cupboard(key)) | told,
        status=422 if faults else 200,
    )
