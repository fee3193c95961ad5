"""Hypothesis strategies for everything that a season holds, and for whole valid seasons.

Every field is drawn, within what its record allows, and every key leads somewhere. Floats are any floats of the
range, so that a property over seasons is also one over the last digit of every quantity.
"""

import datetime as dt
from decimal import Decimal
from typing import TypeVar

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from loopwright.body import MEASURES, Body, EarlierMeasures, Wearer
from loopwright.calendar import DaysOff, Pace
from loopwright.calendar.pace import FabricPace
from loopwright.chart import SYMBOLS, NamedChart
from loopwright.chart.named import RepeatPart, RoleMark
from loopwright.fabric import STRUCTURES, Gauge, Swatch, Unravelled
from loopwright.garment import Changes, Garment, RolePlan
from loopwright.garment.garment import Strand
from loopwright.garment.wanted.colours import ColourPlan, ColourRun
from loopwright.parcels import Offer, Postage, Shop
from loopwright.parcels.shop import PostageStep
from loopwright.pattern import Construction, Ease, FinishedMeasures, PatternFacts, RoleAmount, ToFit
from loopwright.season import Rate, Season
from loopwright.units import Money
from loopwright.yarn import FIBRES, FibreShare, Lot, Yarn, YarnOrder
from loopwright.yarn.order import OrderLine

__all__ = ["bodies", "charts", "garments", "keys", "lots", "patterns", "seasons", "shops", "swatches", "texts", "yarns"]

T = TypeVar("T")
CURRENCIES = ("NZD", "AUD", "EUR", "GBP", "JPY", "KWD")

texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)
names = texts.map(str.strip)
keys = st.from_regex(r"[a-z0-9]{1,5}(-[a-z0-9]{1,4}){0,2}", fullmatch=True)
fabrics = st.sampled_from(sorted(STRUCTURES))
dates = st.dates(dt.date(1900, 1, 1), dt.date(2199, 12, 31))
shades = st.from_regex(r"#[0-9a-f]{6}", fullmatch=True)


def numbers(low: float, high: float) -> SearchStrategy[float]:
    """Any float of a range, from a tenth on, often a whole number as people write it."""
    return st.one_of(st.integers(int(low) + 1, int(high)).map(float), st.floats(max(low, 0.1), high))


lengths_cm = numbers(0, 400)
yarn_lengths_m = numbers(1, 20_000)
masses_g = numbers(0, 5_000)
needles_mm = numbers(0, 25)
shares = numbers(0, 1)
growths_cm = st.one_of(numbers(0, 50), numbers(0, 50).map(lambda cm: -cm))
counts = st.integers(1, 1000)


def maybe(strategy: SearchStrategy[T]) -> SearchStrategy[T | None]:
    """A value or nothing."""
    return st.none() | strategy


def some(strategy: SearchStrategy[T], least: int = 0, most: int = 3) -> SearchStrategy[tuple[T, ...]]:
    """A few values."""
    return st.lists(strategy, min_size=least, max_size=most).map(tuple)


@st.composite
def blends(draw: DrawFn) -> tuple[FibreShare, ...]:
    """No fibre said, or up to three that sum to 100 %."""
    fibres = draw(st.lists(st.sampled_from([*sorted(FIBRES), "other"]), unique=True, max_size=3))
    if not fibres:
        return ()
    smaller = [draw(numbers(0, 30)) for _ in fibres[1:]]
    return tuple(FibreShare(fibre=f, percent=p) for f, p in zip(fibres, [100 - sum(smaller), *smaller], strict=True))


@st.composite
def yarns(draw: DrawFn, key: str = "rust") -> Yarn:
    """A kind of yarn."""
    return Yarn(
        key=key,
        name=draw(names),
        fibres=draw(blends()),
        length_m=draw(yarn_lengths_m),
        mass_g=draw(masses_g),
        needle_mm=draw(maybe(needles_mm)),
        plies=draw(maybe(st.integers(1, 12))),
        note=draw(names),
    )


@st.composite
def bodies(draw: DrawFn, key: str = "ina") -> Body:
    """A person with any of the measures; the bust or chest is one that a wearer can have."""
    measures = draw(measured())
    days = draw(st.lists(dates, unique=True, max_size=2))
    taken = st.dictionaries(st.sampled_from(sorted(measures)), dates, max_size=2) if measures else st.just({})
    return Body(
        key=key,
        name=draw(names),
        wearer=draw(st.sampled_from(Wearer)),
        age_years=draw(maybe(st.floats(0, 120))),
        measured_on=draw(maybe(dates)),
        taken_on=draw(taken),
        earlier=tuple(EarlierMeasures(measured_on=day, **in_record(draw(measured()))) for day in days),
        note=draw(names),
        **in_record(measures),
    )


@st.composite
def measured(draw: DrawFn) -> dict[str, float]:
    """A few measures by key; the bust or chest is one that a wearer can have."""
    found = draw(st.dictionaries(st.sampled_from(sorted(MEASURES)), lengths_cm, max_size=6))
    found |= {one: draw(st.floats(30, 220)) for one in ("bust_girth", "chest_girth") if one in found}
    mass_kg = draw(maybe(numbers(0, 500)))
    return found if mass_kg is None else found | {"mass": mass_kg}


def in_record(measures: dict[str, float]) -> dict[str, float]:
    """Measures under the names that a record has for them."""
    return {"mass_kg" if key == "mass" else f"{key}_cm": value for key, value in measures.items()}


@st.composite
def gauges(draw: DrawFn) -> Gauge:
    """A gauge that a hand-knitter can have."""
    return Gauge(stitches_per_10cm=draw(st.floats(3, 150)), rows_per_10cm=draw(maybe(st.floats(3, 150))))


@st.composite
def swatches(draw: DrawFn, key: str = "swatch", of: tuple[str, ...] = ("rust",)) -> Swatch:
    """A swatch of one or two strands, counted before washing, after it, or both, in one place or several."""
    written = st.sampled_from(["11 sts / 2 in", "5.5 st/in", "15 rows = 5 cm", '22 sts, 15 ridges = 4"'])
    more = st.one_of(gauges(), written)
    counted = st.one_of(st.just(()), st.tuples(gauges()), st.tuples(gauges(), more), st.tuples(gauges(), more, more))
    before, after = draw(st.tuples(counted, counted).filter(any))
    swatch = Swatch(
        key=key,
        yarns=draw(some(st.sampled_from(of), least=1, most=2)),
        fabric=draw(fabrics),
        needle_mm=draw(maybe(needles_mm)),
        before=before,
        after=after,
        places=draw(st.integers(1, 50)),
        mass_g=draw(maybe(masses_g)),
        width_cm=draw(maybe(lengths_cm)),
        height_cm=draw(maybe(lengths_cm)),
        stretch=draw(maybe(shares)),
        note=draw(names),
    )
    loop_mm = 400 / swatch.stitches.mean
    if not (3 < loop_mm < 150 and draw(st.booleans())):
        return swatch
    stitches = draw(st.integers(10, 200))
    measured = Unravelled.read(f"{stitches} sts = {stitches * loop_mm / 10:.2f} cm")
    return swatch.model_copy(update={"unravelled": measured})


@st.composite
def lots(draw: DrawFn, key: str = "lot", of: tuple[str, ...] = ("rust",)) -> Lot:
    """Put-ups, opened yarn on the scale, or both."""
    put_ups = draw(st.integers(0, 20))
    return Lot(
        key=key,
        yarn=draw(st.sampled_from(of)),
        colour=draw(names),
        shade=draw(maybe(shades)),
        dye_lot=draw(names),
        put_ups=put_ups,
        mass_g=draw(maybe(masses_g) if put_ups else masses_g),
        kept_in=draw(names),
        note=draw(names),
    )


def rows(size_count: int, figures: SearchStrategy[float]) -> SearchStrategy[tuple[float | None, ...]]:
    """A size row with at least one figure."""
    return st.tuples(*(maybe(figures) for _ in range(size_count))).filter(any)


@st.composite
def patterns(draw: DrawFn, key: str = "pattern", roles: tuple[str, ...] = ("main",)) -> PatternFacts:
    """Facts of a pattern in one to four sizes; roles may be stated in any of the three ways, or not at all."""
    word = st.text(st.characters(categories=["L", "N"]), min_size=1, max_size=6)
    sizes = draw(some(word, least=1, most=4).filter(lambda one: len(set(one)) == len(one)))
    points = draw(st.sets(st.sampled_from(sorted(FinishedMeasures.model_fields)), max_size=4))
    fitted = draw(st.sets(st.sampled_from(sorted(ToFit.model_fields)), max_size=2))
    whole = st.integers(1, 60).map(float)
    stated = {"length_m": numbers(0, 5_000), "mass_g": masses_g, "balls": whole}
    ways = [draw(st.sampled_from(sorted(stated))) for _ in roles]
    return PatternFacts(
        key=key,
        name=draw(names),
        by=draw(names),
        construction=draw(st.sampled_from(Construction)),
        wearer=draw(maybe(st.sampled_from(Wearer))),
        fabric=draw(fabrics),
        gauge=draw(gauges()),
        needle_mm=draw(maybe(needles_mm)),
        sizes=sizes,
        finished=FinishedMeasures(**{point: draw(rows(len(sizes), numbers(0, 300))) for point in sorted(points)}),
        to_fit=ToFit(**{point: draw(rows(len(sizes), numbers(0, 300))) for point in sorted(fitted)}),
        ease=Ease(bust_girth=draw(maybe(numbers(-10, 30)))),
        opens_in_front=draw(st.booleans()),
        ball_length_m=draw(yarn_lengths_m),
        ball_mass_g=draw(masses_g),
        yarn=tuple(
            RoleAmount(key=role, **{way: draw(rows(len(sizes), stated[way]))})
            for role, way in zip(roles, ways, strict=True)
        )
        if draw(st.booleans())
        else (),
        note=draw(names),
    )


@st.composite
def changes_of(draw: DrawFn, pattern: PatternFacts, roles: tuple[str, ...]) -> Changes:
    """Changes that the pattern's facts allow: a bust among its sizes, lengths that it states."""
    finished = pattern.finished
    busts = [girth for girth in finished.bust_girth or () if girth is not None]
    return Changes(
        bust_girth_cm=draw(maybe(st.sampled_from(busts))) if busts else None,
        body_longer_cm=draw(maybe(numbers(0, 30))) if finished.length else None,
        sleeves_longer_cm=draw(maybe(numbers(0, 30))) if finished.sleeve_length else None,
        role=draw(st.sampled_from(roles)),
    )


@st.composite
def colour_plans(draw: DrawFn, roles: tuple[str, ...]) -> ColourPlan:
    """Stripes in any of the roles, at any of the places."""
    stripe = st.builds(ColourRun, role=st.sampled_from(roles), times=st.integers(1, 40))
    runs = st.lists(stripe, min_size=1, max_size=4).map(tuple)
    places = st.sampled_from(sorted(ColourPlan.model_fields))
    return ColourPlan(**draw(st.dictionaries(places, runs, max_size=3)))


@st.composite
def garments(
    draw: DrawFn, key: str, pattern: PatternFacts, of: tuple[Yarn, ...], held: tuple[Lot, ...] = ()
) -> Garment:
    """A garment from a pattern; whose body and which swatch it has is left open."""
    roles = tuple(amount.key for amount in pattern.yarn) or ("main",)
    yarn_keys = st.sampled_from([yarn.key for yarn in of])
    days = sorted(draw(st.lists(dates, min_size=3, max_size=3)))
    ease = draw(st.dictionaries(st.sampled_from(sorted(Ease.model_fields)), growths_cm, max_size=3))
    plans = []
    for role in roles:
        yarn = draw(yarn_keys)
        own_lots = [lot.key for lot in held if lot.yarn == yarn]
        plans.append(
            RolePlan(
                key=role,
                yarn=yarn,
                colour=draw(names),
                strands=draw(st.integers(1, 12)),
                held_with=draw(some(st.builds(Strand, yarn=yarn_keys, colour=names), most=2)),
                lots=draw(some(st.sampled_from(own_lots), most=2)) if own_lots else (),
            )
        )
    return Garment(
        key=key,
        name=draw(names),
        pattern=pattern.key,
        size=draw(maybe(st.sampled_from(pattern.sizes))),
        fit=draw(st.sampled_from(["very close", "close", "standard", "loose", "oversized"])),
        ease=Ease(**ease),
        changes=draw(changes_of(pattern, roles)),
        colours=draw(colour_plans(roles)),
        yarns=tuple(plans),
        sureness=draw(maybe(st.floats(0.5, 1, exclude_max=True))),
        due=draw(maybe(dates)),
        begun_on=draw(maybe(st.just(days[0]))),
        knitted=draw(maybe(st.floats(0, 1, exclude_min=True, exclude_max=True))),
        knitted_off_on=draw(maybe(st.just(days[1]))),
        done_on=draw(maybe(st.just(days[2]))),
        set_aside=draw(st.booleans()),
        note=draw(names),
    )


def money(currency: str) -> SearchStrategy[Money]:
    """An amount of nothing or more."""
    return st.integers(0, 10_000_000).map(lambda minor: Money(minor, currency))


@st.composite
def shops(draw: DrawFn, key: str = "shop", of: tuple[str, ...] = ("rust",), home: str = "NZD") -> Shop:
    """A shop in any currency; its fee at the border is in the season's."""
    currency = draw(st.sampled_from(CURRENCIES))
    price = money(currency)
    tops = sorted(draw(st.sets(masses_g, max_size=3)))
    steps = tuple(PostageStep(up_to_g=top, price=draw(price)) for top in tops)
    offer = st.builds(
        Offer, yarn=st.sampled_from(of), colours=some(names), price=price, balls=counts, in_stock=maybe(counts)
    )
    return Shop(
        key=key,
        name=draw(names),
        country=draw(names),
        currency=currency,
        postage=Postage(
            flat=None if steps else draw(price),
            steps=steps,
            free_from=draw(maybe(price)),
            packing_g=draw(maybe(masses_g)),
        ),
        days_to_arrive=draw(st.integers(0, 365)),
        days_to_arrive_sd=draw(st.floats(0, 180)),
        border_tax=draw(maybe(shares)),
        border_fee=draw(maybe(money(home))),
        offers=draw(some(offer)),
        note=draw(names),
    )


@st.composite
def orders(draw: DrawFn, key: str = "parcel", of: tuple[str, ...] = ("rust",)) -> YarnOrder:
    """A parcel on its way."""
    line = st.builds(OrderLine, yarn=st.sampled_from(of), colour=names, put_ups=counts, dye_lot=names)
    return YarnOrder(key=key, shop=draw(names), arrives_on=draw(dates), lines=draw(some(line, least=1)))


@st.composite
def charts(draw: DrawFn, key: str = "chart", of: tuple[str, ...] = (), swatched: tuple[str, ...] = ()) -> NamedChart:
    """A small chart of one to four roles, with stitches of one box or without."""
    columns, rows = draw(st.integers(1, 8)), draw(st.integers(1, 6))
    marks = draw(st.lists(st.sampled_from("abcxyzMC019"), min_size=1, max_size=4, unique=True))
    roles = draw(st.lists(keys, min_size=len(marks), max_size=len(marks), unique=True))
    signs = "".join(one.mark for one in SYMBOLS if one.boxes == 1)

    def lines(letters: str) -> SearchStrategy[tuple[str, ...]]:
        line = st.text(st.sampled_from(letters), min_size=columns, max_size=columns)
        return st.lists(line, min_size=rows, max_size=rows).map(tuple)

    first, low = draw(st.integers(1, columns)), draw(st.integers(1, rows))
    part = st.builds(
        RepeatPart,
        from_stitch=st.just(first),
        to_stitch=st.integers(first, columns),
        from_row=st.just(low),
        to_row=maybe(st.integers(low, rows)),
    )
    return NamedChart(
        key=key,
        name=draw(names),
        rows=draw(lines("".join(marks))),
        stitches=draw(st.just(()) | lines(signs)),
        roles=tuple(RoleMark(mark=mark, role=role) for mark, role in zip(marks, roles, strict=True)),
        shades=draw(st.dictionaries(st.sampled_from(roles), shades, max_size=2)),
        worked=draw(st.sampled_from(["flat", "in the round"])),
        first_row=draw(st.sampled_from(["right side", "wrong side"])),
        repeat=draw(maybe(part)),
        garment=draw(maybe(st.sampled_from(of))) if of else None,
        swatch=draw(maybe(st.sampled_from(swatched))) if swatched else None,
        gauge=draw(maybe(gauges())),
        note=draw(names),
    )


@st.composite
def paces(draw: DrawFn) -> Pace:
    """How fast she knits."""
    by_fabric = draw(st.dictionaries(fabrics, numbers(0, 120), max_size=3))
    return Pace(
        stitches_per_minute=draw(maybe(numbers(0, 120))),
        fabrics=tuple(FabricPace(fabric=name, stitches_per_minute=pace) for name, pace in by_fabric.items()),
        overhead=draw(shares),
    )


@st.composite
def spans_off(draw: DrawFn) -> DaysOff:
    """A span without knitting."""
    first, last = sorted([draw(dates), draw(dates)])
    return DaysOff(first=first, last=last, note=draw(names))


@st.composite
def seasons(draw: DrawFn) -> Season:
    """A whole season in which every key leads somewhere."""
    some_keys = st.lists(keys, unique=True, max_size=2)
    one_or_two = st.lists(keys, unique=True, min_size=1, max_size=2)
    home = draw(st.sampled_from(CURRENCIES))
    kinds = tuple(draw(yarns(key)) for key in draw(one_or_two))
    yarn_keys = tuple(yarn.key for yarn in kinds)
    people = tuple(draw(bodies(key)) for key in draw(some_keys))
    samples = tuple(draw(swatches(key, yarn_keys)) for key in draw(some_keys))
    held = tuple(draw(lots(key, yarn_keys)) for key in draw(some_keys))
    facts = tuple(draw(patterns(key, tuple(draw(one_or_two)))) for key in draw(one_or_two))
    sellers = tuple(draw(shops(key, yarn_keys, home)) for key in draw(some_keys))
    made = []
    for key in draw(one_or_two):
        garment = draw(garments(key, draw(st.sampled_from(facts)), kinds, held))
        wearer = draw(maybe(st.sampled_from(people))) if people else None
        swatch = draw(maybe(st.sampled_from(samples))) if samples else None
        known = {"wearer": wearer.key if wearer else None, "swatch": swatch.key if swatch else None}
        made.append(garment.model_copy(update=known))
    rate = st.decimals(Decimal("0.0001"), Decimal(10_000), allow_nan=False)
    foreign = {shop.currency for shop in sellers} - {home}
    return Season(
        name=draw(names),
        today=draw(dates),
        hours_a_week=draw(numbers(0, 100)),
        hours_a_week_sd=draw(maybe(st.floats(0, 60))),
        days_off=draw(some(spans_off(), most=2)),
        currency=home,
        rates=tuple(Rate(currency=one, rate=draw(rate)) for one in sorted(foreign)),
        rates_as_of=draw(maybe(dates)),
        purse=draw(maybe(money(home))),
        sureness=draw(st.floats(0.5, 1, exclude_max=True)),
        measures=draw(st.sampled_from(["metric", "imperial"])),
        words=draw(st.sampled_from(["british", "american"])),
        pace=draw(paces()),
        note=draw(texts),
        bodies=people,
        yarns=kinds,
        swatches=samples,
        cupboard=held,
        patterns=facts,
        garments=tuple(made),
        shops=sellers,
        orders=tuple(draw(orders(key, yarn_keys)) for key in draw(some_keys)),
        charts=tuple(
            draw(charts(key, tuple(one.key for one in made), tuple(one.key for one in samples)))
            for key in draw(some_keys)
        ),
    )
