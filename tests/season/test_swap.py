"""What else a garment could be knitted in: the season's yarns, its cupboard and a catalogue."""

from typing import Any

import pytest

from loopwright.files.catalogue import read_catalogue_text
from loopwright.season.free_yarn import free_yarn
from loopwright.season.settle import settle
from loopwright.season.swap import Swap, swap
from loopwright.season.swap_options import SwapOption
from loopwright.units import BadInput, Money
from tests.season.small import season

SOFT = {"name": "Kiln Soft", "fibres": {"merino": 100}, "length": "118 m", "mass": "50 g"}
FINE = {"name": "Kiln Fine", "fibres": {"wool": 100}, "length": "480 m", "mass": "100 g"}
LINEN = {"name": "Kiln Flax", "fibres": {"linen": 100}, "length": "120 m", "mass": "50 g"}
SOFT_AT_HOME = {"yarn": "soft", "colour": "Moss", "put_ups": 4}
FINE_AT_HOME = {"yarn": "fine", "colour": "Ink", "put_ups": 5}


def swapped(changes: dict[str, Any] | None = None, **how: Any) -> Swap:
    own: dict[str, Any] = {"yarns.soft": SOFT, "yarns.fine": FINE, "yarns.flax": LINEN}
    own |= {"cupboard.moss": SOFT_AT_HOME, "cupboard.ink": FINE_AT_HOME}
    return swap(season(own | (changes or {})), "jumper", **how)


def option(found: Swap, *yarns: str) -> SwapOption:
    return next(one for one in found.options if one.yarns == yarns)


def test_the_closest_stands_first_and_the_original_nowhere() -> None:
    found = swapped()
    assert found.options[0].yarns == ("soft",)
    assert all(one.yarns != ("dk",) for one in found.options)
    assert (found.answer.tone, found.answer.sentence) == ("yes", "Kiln Soft comes close to Kiln DK.")
    assert found.compared == 4


def test_the_original_is_the_garment_as_it_is_planned() -> None:
    small = season()
    (need,) = settle(small, small.garment_by_key["jumper"]).needs
    found = swapped().original
    assert found.garment_m is not None
    assert found.garment_g is not None
    assert found.garment_m.mean == pytest.approx(need.strand_m.mean)
    assert found.garment_m.sd == pytest.approx(need.strand_m.sd)
    assert found.garment_g.mean == pytest.approx(need.mass_g)


def test_put_ups_and_price_are_for_the_whole_role() -> None:
    offers = [{"yarn": "soft", "price": "8.00 NZD"}, {"yarn": "soft", "price": "35.00 NZD", "balls": 5}]
    found = option(swapped({"shops.loft.offers": offers}), "soft")
    assert found.put_ups is not None
    balls = found.put_ups["soft"]
    assert found.price == Money(min(800 * balls, 3500 * -(-balls // 5)), "NZD")
    assert option(swapped(), "soft").price is None


def test_prices_of_another_currency_go_by_the_rate_of_the_season() -> None:
    shop = {
        "name": "Far",
        "currency": "EUR",
        "postage": {"flat": "5.00 EUR"},
        "offers": [{"yarn": "soft", "price": "5.00 EUR"}],
    }
    found = option(swapped({"shops.far": shop}), "soft")
    assert found.put_ups is not None
    assert found.price == Money(990 * found.put_ups["soft"], "NZD")


def test_what_is_reserved_for_another_garment_is_not_free() -> None:
    other = {
        "name": "Other",
        "pattern": "plain",
        "for": "mo",
        "swatch": "plain",
        "yarns": {"main": {"yarn": "soft", "colour": "Moss"}},
    }
    alone, shared = swapped(), swapped({"garments.other": other})
    assert option(alone, "soft").free["soft"][0].length_m.mean == pytest.approx(472)
    assert "soft" not in option(shared, "soft").free
    assert (option(alone, "soft").source, option(shared, "soft").source) == ("cupboard", "season")


def test_what_this_role_has_reserved_is_free() -> None:
    small = season()
    assert free_yarn(small, "jumper", "main")["dk"][0].length_m.mean == pytest.approx(12 * 120)


def test_the_chance_that_the_cupboard_suffices() -> None:
    few = option(swapped(), "soft").p_enough
    many = option(swapped({"cupboard.moss": SOFT_AT_HOME | {"put_ups": 40}}), "soft").p_enough
    none = option(swapped(), "flax").p_enough
    assert few is not None
    assert many is not None
    assert few < 0.05
    assert many > 0.95
    assert none is None


def test_two_fine_strands_from_the_cupboard() -> None:
    found = option(swapped(held=True), "fine", "fine")
    assert found.name == "2 × Kiln Fine"
    assert found.comparison.verdict == "close"
    assert found.put_ups is not None
    assert found.p_enough is not None
    metres = found.comparison.substitute.garment_m
    assert metres is not None
    assert found.put_ups["fine"] >= 2 * metres.mean / 480


def test_a_catalogue_is_ranked_with_the_rest() -> None:
    text = "name,fibres,metres,grams,price\nTidal,wool,120,50,7.00 EUR\nReed,linen,120,50,3.00 EUR\n"
    found = swapped(catalogue=read_catalogue_text(text, "shop.csv"))
    best = found.options[0]
    assert (best.name, best.source, best.comparison.score) == ("Tidal", "catalogue", 0)
    assert best.put_ups is not None
    assert best.price == Money(700 * best.put_ups["row-1"], "EUR")
    assert found.compared == 6


def test_without_a_fibre() -> None:
    found = swapped(without=["merino"], held=True)
    assert all("merino" not in one.comparison.substitute.fibres for one in found.options)
    assert ("fine", "fine") in [one.yarns for one in found.options]


def test_no_swatch_no_size_no_other_yarn() -> None:
    unsized = swapped({"garments.jumper.swatch": None, "garments.jumper.for": None})
    assert not unsized.by_swatch
    assert unsized.original.garment_m is None
    assert option(unsized, "soft").put_ups is None
    alone = swap(season({"yarns.lace": None}), "jumper")
    assert (alone.options, alone.answer.tone) == ((), "no")


def test_cautions_are_for_what_works() -> None:
    assert [one.key for one in swapped(without=["merino"]).cautions] == ["swap"]
    keys = [one.key for one in swapped(held=True).cautions]
    assert keys[:2] == ["swap", "itch"]
    assert "flame-cellulose" not in keys


def test_a_garment_or_role_that_is_not_there() -> None:
    with pytest.raises(BadInput, match="one of main"):
        swapped(role="contrast")
    with pytest.raises(BadInput, match="one of jumper"):
        swap(season(), "coat")
