"""The first page: her seasons, and loading one."""

from __future__ import annotations

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_POST, require_safe

from loopwright.files import Format, demo_text, read_season_text
from loopwright.pictures import stitch_icon
from loopwright.season import Season
from loopwright.store import changes
from loopwright.store.errors import NoSuchSeason, SeasonIsThere
from loopwright.units import LoopwrightError

__all__ = ["bring_back", "icon", "load", "load_demo", "show"]

MOST_BYTES = 5_000_000


@require_safe
def show(request: HttpRequest) -> HttpResponse:
    """Show her seasons, or how to begin when there is none."""
    return _page(request)


def _page(request: HttpRequest, *, text: str = "", faults: list[str] | None = None) -> HttpResponse:
    shown = {
        "seasons": changes.season_list(),
        "put_away": changes.put_away_list(),
        "text": text,
        "faults": faults or [],
        "path": "/",
    }
    return render(request, "home/page.html", shown, status=422 if faults else 200)


@require_POST
def load(request: HttpRequest) -> HttpResponse:
    """Take in a season file, uploaded or pasted; with a fault nothing is written and the text stays on the page."""
    uploaded = request.FILES.get("file")
    # A browser ends the lines of a form's text as the protocol wants them, not as they were.
    text, name = request.POST.get("text", "").replace("\r\n", "\n"), "the pasted text"
    if uploaded is not None:
        name = uploaded.name or "the file"
        if uploaded.size is None or uploaded.size > MOST_BYTES:
            return _page(request, faults=[f"{name}: found more than 5 MB; wanted a season file"])
        try:
            text = uploaded.read().decode("utf-8-sig")
        except UnicodeDecodeError:
            return _page(request, faults=[f"{name}: found bytes that are not text; wanted a season file in UTF-8"])
    if not text.strip():
        return _page(request, faults=["found no file and no text; wanted one of them"])
    ending: Format = "json" if name.lower().endswith(".json") or text.lstrip().startswith("{") else "toml"
    try:
        return _keep(read_season_text(text, name, ending), text, ending, f"loaded {name}")
    except LoopwrightError as error:
        return _page(request, text=text, faults=str(error).splitlines())


@require_POST
def load_demo(request: HttpRequest) -> HttpResponse:
    """Take in the season that comes with the program."""
    text = demo_text()
    return _keep(read_season_text(text, "the demo season", "toml"), text, "toml", "loaded the demo season")


def _keep(season: Season, text: str, ending: Format, says: str) -> HttpResponse:
    """Keep a season under its name; one of that name gives way and can be had back by undo."""
    key = changes.keep_season(season, text=text, text_format=ending, says=says)
    return HttpResponseRedirect(reverse("season", args=[key]))


@require_POST
def bring_back(request: HttpRequest, key: str) -> HttpResponse:
    """Bring back a season that was put away."""
    try:
        changes.bring_back(key)
    except SeasonIsThere:
        pass  # a second press of the button: it is there, as wished
    except NoSuchSeason as error:
        raise Http404(str(error)) from error
    return HttpResponseRedirect(reverse("season", args=[key]))


@require_safe
@cache_control(max_age=86400)
def icon(request: HttpRequest) -> HttpResponse:
    """Give the site's icon: one knit stitch."""
    return HttpResponse(stitch_icon(), content_type="image/svg+xml")
