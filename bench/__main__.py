"""Print what planning costs: each figure beside another of the same run, so that the machine cancels out.

Run it with `make bench`, or one part alone with `python -m bench colour`. Seconds depend on the machine; the ratios are
what to compare between two states of the code.
"""

import datetime as dt
import statistics
import sys
import time
import tomllib
from collections.abc import Callable
from decimal import Decimal
from importlib.resources import files

from bench.allotment import allotments
from bench.charts import charts
from bench.colour import colours
from bench.colouring import colouring
from bench.cupboard import cupboards
from bench.drafts import drafts
from bench.pictures import pictures
from bench.seasons import purchase, season_of
from bench.substitution import substitutes
from loopwright.calendar import Job, best_order
from loopwright.calendar.order import EXACT_UP_TO
from loopwright.parcels import cheapest_parcels
from loopwright.records import FROM_FILE
from loopwright.season import Season, plan
from tests.parcels.mixed_integer import least_cost_minor

TODAY = dt.date(2027, 3, 1)


def seconds(work: Callable[[], object], least_s: float = 0.4) -> float:
    """The median time of at least three runs, and of as many as fit into ``least_s``."""
    times: list[float] = []
    begun = time.perf_counter()
    while len(times) < 3 or time.perf_counter() - begun < least_s:
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def line(name: str, took_s: float, beside: str, ratio: float) -> None:
    print(f"  {name:<46}{took_s * 1000:>10.1f} ms   {ratio:>8.2f} × {beside}")


def planning() -> None:
    text = files("loopwright.data").joinpath("demo", "winter.toml").read_text(encoding="utf-8")
    demo = Season.model_validate(tomllib.loads(text), context=FROM_FILE)
    unit = seconds(lambda: plan(demo))
    print("Planning")
    line(f"the demo, {len(demo.garments)} garments", unit, "itself", 1)
    reading = seconds(lambda: Season.model_validate(tomllib.loads(text), context=FROM_FILE))
    line("reading the demo from its file", reading, "planning it", reading / unit)
    for number in (7, 20, 50):
        season = season_of(number)
        took = seconds(lambda season=season: plan(season))  # type: ignore[misc]
        per_garment = took / number / (unit / len(demo.garments))
        line(f"{number} garments", took, "the demo's, per garment", per_garment)


def ordering() -> None:
    print("Order of making")
    jobs = [Job(f"g{n}", 10 + 7 * n % 31, 2, due_at=40.0 + 23 * n % 190) for n in range(50)]
    unit = seconds(lambda: best_order(jobs[:7]))
    line("7 garments, proven", unit, "itself", 1)
    for number in (8, 20, 50):
        took = seconds(lambda number=number: best_order(jobs[:number]))  # type: ignore[misc]
        how = "proven" if number <= EXACT_UP_TO else "by moving single ones"
        line(f"{number} garments, {how}", took, "that of 7", took / unit)


def buying() -> None:
    print("Parcels, exact, beside the mixed-integer programme")
    rates = {"NZD": Decimal(1)}
    for needs, shops in ((3, 3), (5, 3), (6, 4), (9, 3)):
        short, sellers = purchase(needs, shops)
        ours = seconds(lambda short=short, sellers=sellers: cheapest_parcels(short, sellers, rates, "NZD", TODAY))  # type: ignore[misc]
        twin = seconds(lambda short=short, sellers=sellers: least_cost_minor(short, sellers))  # type: ignore[misc]
        found = cheapest_parcels(short, sellers, rates, "NZD", TODAY).total.minor
        same = "same cost" if found == least_cost_minor(short, sellers) else "ANOTHER COST"
        line(f"{needs} shortfalls, {shops} shops", ours, f"the programme ({same})", ours / twin)


PARTS: dict[str, Callable[[], None]] = {
    "planning": planning,
    "ordering": ordering,
    "buying": buying,
    "allotment": lambda: allotments(seconds, line),
    "drafts": lambda: drafts(seconds, line),
    "colouring": lambda: colouring(seconds, line),
    "pictures": lambda: pictures(seconds, line),
    "colour": lambda: colours(seconds, line),
    "charts": lambda: charts(seconds, line),
    "cupboard": lambda: cupboards(seconds, line),
    "substitution": lambda: substitutes(seconds, line),
}

if __name__ == "__main__":
    chosen = sys.argv[1:] or list(PARTS)
    unknown = [part for part in chosen if part not in PARTS]
    if unknown:
        sys.exit(f"found {', '.join(unknown)}; wanted some of {', '.join(PARTS)}")
    for part in chosen:
        PARTS[part]()
