"""A cupboard of ten thousand lots: what a page of it and a search cost, beside a cupboard of ten."""

import tempfile
from collections.abc import Callable
from typing import Any

from loopwright.files import demo_text, read_season_text
from loopwright.season import Season

__all__ = ["cupboards"]

LOTS = 10_000
YARNS = 400
COLOURS = ("Heath", "Étang", "Ember", "Straßenstaub", "Fog", "Sloe", "Kelp", "Chalk", "Rime", "Furze")
FIBRES = ("wool", "merino", "alpaca", "linen", "cotton", "silk", "mohair", "nylon")


def season_with(lots: int) -> Season:
    """The demo season with so many lots more, of up to 400 yarns; no chance in it."""
    demo = read_season_text(demo_text(), "demo", "toml")
    tables: dict[str, Any] = demo.model_dump(mode="json", by_alias=True, exclude_defaults=True, exclude_none=True)
    kinds = min(YARNS, lots)
    for number in range(kinds):
        fibres = {FIBRES[number % 8]: 70, FIBRES[(number + 3) % 8]: 30}
        yarn = {"name": f"Yarn No. {number}", "fibres": fibres, "length": f"{100 + number} m", "mass": "50 g"}
        tables["yarns"][f"y{number}"] = yarn
    for number in range(lots):
        tables["cupboard"][f"l{number}"] = {
            "yarn": f"y{number * 7 % kinds}",
            "colour": f"{COLOURS[number % 10]} {number % 97}",
            "dye_lot": f"{number % 1000}",
            "put_ups": number % 9,
            "weighed": f"{1 + number % 49} g",
            "kept_in": f"box {number % 60}",
            "note": "left over" if number % 5 == 0 else "",
        }
    return Season.model_validate(tables)


def cupboards(seconds: Callable[..., float], line: Callable[[str, float, str, float], None]) -> None:
    """Print what the pages cost."""
    from loopwright.web.setup import prepare  # noqa: PLC0415 -- the other parts need no database

    prepare(tempfile.mkdtemp(prefix="loopwright-bench-"))
    from django.conf import settings  # noqa: PLC0415
    from django.test import Client  # noqa: PLC0415

    from loopwright.store import changes, cupboard  # noqa: PLC0415

    settings.ALLOWED_HOSTS = ["testserver"]
    few = changes.keep_season(season_with(10).model_copy(update={"name": "Few"}))
    many = changes.keep_season(season_with(LOTS).model_copy(update={"name": "Many"}))
    browser = Client()

    def ask(key: str, query: str = "") -> None:
        page = browser.get(f"/season/{key}/cupboard/{query}", headers={"hx-request": "true"} if query else {})
        assert page.status_code == 200

    print(f"The cupboard, {LOTS:,} lots")
    unit = seconds(lambda: ask(few))
    line("its page, 10 lots", unit, "itself", 1)
    line("its page", seconds(lambda: ask(many)), "that of 10", seconds(lambda: ask(many)) / unit)
    for query in ("?search=e", "?search=STRASSEN+box+7", "?search=merino", "?search=nothing+of+this", "?page=150"):
        took = seconds(lambda query=query: ask(many, query))
        line(query, took, "the page of 10", took / unit)

    def afresh() -> None:
        cupboard._cupboard.cache_clear()
        ask(many)

    took = seconds(afresh)
    line("its page, the first after a change", took, "the page of 10", took / unit)
    change = {"weighed": "12 g"}, {"weighed": "13 g"}
    turn = [0]

    def weigh() -> None:
        turn[0] += 1
        changes.change_entry(many, "cupboard", "l77", "weighed", change[turn[0] % 2])

    took = seconds(weigh)
    line("weighing a lot", took, "the page of 10", took / unit)
