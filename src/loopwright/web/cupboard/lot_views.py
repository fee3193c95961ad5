"""The page of one lot: weigh it, change it, photograph it, take it out; and the page that adds one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, cast

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from loopwright.season.cupboard_report import LotReport
from loopwright.store import changes
from loopwright.store.cupboard import Cupboard, one_lot
from loopwright.store.errors import ChangeRefused
from loopwright.store.photos import photo_bytes
from loopwright.units import BadInput, mass_text
from loopwright.web.cupboard.form import fields_of, lot_form, told, typed_fields, weighing
from loopwright.web.cupboard.page import lot_page
from loopwright.web.cupboard.photo import read_photo
from loopwright.web.cupboard.views import HtmxRequest, found_cupboard, frame
from loopwright.web.reading import reader_of, wording_of
from loopwright.yarn import Lot, length_in_lot

__all__ = ["add", "change", "metres", "photo", "photo_away", "put_photo", "show", "take_out", "weigh"]

PHOTO_POLICY = "default-src 'none'"
"""A photo may do nothing at all, should a browser take it for something else."""
_KEPT_BY_A_BROWSER_S = 31_536_000


@require_safe
def show(request: HttpRequest, key: str, lot_key: str) -> HttpResponse:
    """Show one lot."""
    cupboard = found_cupboard(key)
    return _page(request, key, cupboard, _lot(cupboard, lot_key))


@require_safe
def metres(request: HttpRequest, key: str, lot_key: str) -> HttpResponse:
    """Say how many metres the yarn on the scale is; nothing is kept."""
    cupboard = found_cupboard(key)
    report, digest = _lot(cupboard, lot_key)
    reader, wording = reader_of(request, cupboard.season), wording_of(request, cupboard.season)
    try:
        said = weighing(request.GET, reader)
        lot = Lot.model_validate(
            _fields(report.lot) | {"mass_g": said.mass_g} | ({"put_ups": 0} if said.is_all else {})
        )
        whole = f", with the whole balls {wording.estimate(length_in_lot(lot, report.yarn))}" if lot.put_ups else ""
        alone = length_in_lot(lot.model_copy(update={"put_ups": 0}), report.yarn)
        says = f"{wording.mass(said.mass_g)} is {wording.estimate(alone)}{whole}."
    except (BadInput, ValueError) as error:
        says = str(error) if isinstance(error, BadInput) else "That is no mass that a lot can have."
    if cast(HtmxRequest, request).htmx:
        return render(request, "cupboard/_metres.html", {"says": says})
    return _page(request, key, cupboard, (report, digest), asked=request.GET, says=says)


@require_POST
def weigh(request: HttpRequest, key: str, lot_key: str) -> HttpResponse:
    """Keep what the scale says of a lot."""
    cupboard = found_cupboard(key)
    report, digest = _lot(cupboard, lot_key)
    try:
        said = weighing(request.POST, reader_of(request, cupboard.season))
        changes.change_entry(
            key, "cupboard", lot_key, f"weighed {_called(report)}: {mass_text(said.mass_g)}", said.fields
        )
    except (BadInput, ChangeRefused) as error:
        return _page(request, key, cupboard, (report, digest), asked=request.POST, faults={"weigh": _faults(error)})
    return HttpResponseRedirect(reverse("lot", args=[key, lot_key]))


@require_POST
def change(request: HttpRequest, key: str, lot_key: str) -> HttpResponse:
    """Keep what she changed of a lot; with a fault nothing is written and the form holds it."""
    cupboard = found_cupboard(key)
    report, digest = _lot(cupboard, lot_key)
    typed = typed_fields(request.POST)
    try:
        changes.change_entry(key, "cupboard", lot_key, f"changed the lot {_called(report)}", fields_of(typed))
    except (BadInput, ChangeRefused) as error:
        return _page(request, key, cupboard, (report, digest), typed=typed, faults={"change": _faults(error)})
    return HttpResponseRedirect(reverse("lot", args=[key, lot_key]))


@require_POST
def take_out(request: HttpRequest, key: str, lot_key: str) -> HttpResponse:
    """Take a lot out of the cupboard; undo puts it back, with its photo."""
    cupboard = found_cupboard(key)
    report, digest = _lot(cupboard, lot_key)
    try:
        changes.remove_entry(key, "cupboard", lot_key, f"took out {_called(report)}")
    except (BadInput, ChangeRefused) as error:
        return _page(request, key, cupboard, (report, digest), faults={"take-out": _faults(error)})
    return HttpResponseRedirect(reverse("cupboard", args=[key]))


@require_http_methods(["GET", "HEAD", "POST"])
def add(request: HttpRequest, key: str) -> HttpResponse:
    """Show the form of a new lot, or add it; with a fault nothing is written and the form holds what was typed."""
    cupboard = found_cupboard(key)
    typed = typed_fields(request.POST)
    typed.setdefault("yarn", request.GET.get("yarn", ""))
    faults: tuple[str, ...] = ()
    if request.method == "POST":
        try:
            return HttpResponseRedirect(reverse("lot", args=[key, _add(key, cupboard, typed)]))
        except (BadInput, ChangeRefused) as error:
            faults = _faults(error)
    shown = frame(request, key, cupboard) | {
        "fields": lot_form({}, cupboard.season, reader_of(request, cupboard.season), typed),
        "faults": faults,
    }
    return render(request, "cupboard/add.html", shown, status=422 if faults else 200)


def _add(key: str, cupboard: Cupboard, typed: Mapping[str, str]) -> str:
    yarn = cupboard.season.yarn_by_key.get(typed.get("yarn", ""))
    if yarn is None:
        raise BadInput(typed.get("yarn", ""), "one of the yarns", place="Yarn")
    colour = typed.get("colour", "")
    if not colour:
        raise BadInput("", "the name of the colour, as on the band", place="Colour")
    fields = {name: value for name, value in fields_of(typed).items() if value not in ("", None)}
    return changes.add_entry(key, "cupboard", f"{yarn.name} {colour}", f"added {yarn.name}, {colour}", fields)


@require_POST
def put_photo(request: HttpRequest, key: str, lot_key: str) -> HttpResponse:
    """Keep a photo of a lot, written anew; the one before can be had back with undo."""
    cupboard = found_cupboard(key)
    report, digest = _lot(cupboard, lot_key)
    uploaded = request.FILES.get("photo")
    try:
        if uploaded is None:
            raise BadInput("", "a photo", place="Photo")
        changes.put_lot_photo(key, lot_key, read_photo(uploaded.read()))
    except BadInput as error:
        return _page(request, key, cupboard, (report, digest), faults={"photo": (str(error),)})
    return HttpResponseRedirect(reverse("lot", args=[key, lot_key]))


@require_POST
def photo_away(request: HttpRequest, key: str, lot_key: str) -> HttpResponse:
    """Take a lot's photo away."""
    _lot(found_cupboard(key), lot_key)
    changes.take_lot_photo_away(key, lot_key)
    return HttpResponseRedirect(reverse("lot", args=[key, lot_key]))


@require_safe
@cache_control(max_age=_KEPT_BY_A_BROWSER_S, private=True, immutable=True)
def photo(request: HttpRequest, key: str, digest: str, size: str) -> HttpResponse:
    """Give a photo of this season, as JPEG; its address is made from its bytes, so it never changes."""
    content = None
    if size in {"large", "small"} and digest in changes.photos_of(key).values():
        content = photo_bytes(digest, small=size == "small")
    if content is None:
        raise Http404("there is no such photo")
    return HttpResponse(content, content_type="image/jpeg", headers={"Content-Security-Policy": PHOTO_POLICY})


def _lot(cupboard: Cupboard, lot_key: str) -> tuple[LotReport, str]:
    found = one_lot(cupboard, lot_key)
    if found is None:
        raise Http404(f"the season has no lot '{lot_key}'")
    return found[0], found[1] or ""


def _called(report: LotReport) -> str:
    return report.lot.colour or report.lot.key


def _fields(lot: Lot) -> dict[str, Any]:
    """Give a lot's fields as the record names them."""
    return {name: getattr(lot, name) for name in type(lot).model_fields}


def _faults(error: BadInput | ChangeRefused) -> tuple[str, ...]:
    return (str(error),) if isinstance(error, BadInput) else tuple(told(fault) for fault in error.faults)


def _kept(lot: Lot) -> dict[str, Any]:
    """Give a lot as its form shows it: quantities as text."""
    kept = lot.model_dump(mode="json", by_alias=True, exclude_none=True)
    return {name: "" if value in (0, None) else value for name, value in kept.items()}


def _page(
    request: HttpRequest,
    key: str,
    cupboard: Cupboard,
    found: tuple[LotReport, str],
    *,
    typed: Mapping[str, str] | None = None,
    asked: Mapping[str, Any] | None = None,
    says: str = "",
    faults: Mapping[str, Iterable[str]] | None = None,
) -> HttpResponse:
    report, digest = found
    asked = asked or {}
    shown = frame(request, key, cupboard) | {
        "view": lot_page(report, digest, wording_of(request, cupboard.season)),
        "fields": lot_form(_kept(report.lot), cupboard.season, reader_of(request, cupboard.season), typed),
        "asked": {name: asked.get(name, "") for name in ("mass", "less", "what")},
        "says": says,
        "faults": {place: tuple(lines) for place, lines in (faults or {}).items()},
        "path": reverse("lot", args=[key, report.lot.key]),
    }
    return render(request, "cupboard/lot.html", shown, status=422 if faults else 200)
