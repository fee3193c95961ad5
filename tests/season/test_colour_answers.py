"""Do the colours of a garment work? Report and words, on small seasons and on the demonstration."""

from typing import Any

import pytest

from loopwright.colour import GRADES, delta_e_ciede2000, lab_from_srgb, mix_strands, read_hex, read_hexes, write_hex
from loopwright.files import demo_text, read_season_text
from loopwright.season import Answer, Season
from loopwright.season.colour_answers import colour_answer
from loopwright.season.colour_report import ColourReport, colour_report
from loopwright.season.wording import Wording
from loopwright.units import Reader
from tests.season.small import season

PLAIN, STRANDED = "stocking stitch", "stranded colourwork"
ROLES = ("main", "contrast-1", "contrast-2", "contrast-3")


def coloured(shades: dict[str, str | None], *more: str) -> Season:
    """A jumper in these colours, by name, and lots of others: every lot has 12 balls."""
    changes: dict[str, Any] = {}
    for name, shade in shades.items():
        lot = {"yarn": "dk", "colour": name, "put_ups": 12} | ({"shade": shade} if shade else {})
        changes[f"cupboard.{name.lower()}"] = lot
    played = [name for name in shades if name not in more]
    changes["garments.jumper.yarns"] = {
        role: {"yarn": "dk", "colour": name} for role, name in zip(ROLES, played, strict=False)
    }
    changes["patterns.plain.yarn"] = {role: {"length": "300 (320, 340) m"} for role in ROLES[: len(played)]}
    return season(changes)


def report(of: Season, fabric: str = PLAIN, need_m: dict[str, float] | None = None) -> ColourReport:
    return colour_report(of, of.garment_by_key["jumper"], fabric, need_m)


def answer(of: Season, fabric: str = PLAIN, need_m: dict[str, float] | None = None) -> Answer:
    return colour_answer(report(of, fabric, need_m), Wording(Reader()))


def test_light_and_dark_far_apart_read_across_a_room() -> None:
    """From 30 L* on: Zuffi and others 2009, for text; carried over. Chalk is L* 91.50, soot 25.00 by the reference
    table of colours, checked there against a general library: 66.50 apart.
    """
    said = answer(coloured({"Chalk": "#efe6d2", "Soot": "#3b3b3f"}))
    assert (said.key, said.tone) == ("colours", "yes")
    assert said.sentence == "Yes: Chalk and Soot stand 67 L* apart, so a pattern reads, also from across a room."
    (figure,) = said.figures
    assert (figure.label, figure.text.partition(",")[0]) == ("Chalk + Soot", "good: ΔL* 67")


def test_twenty_to_thirty_is_close_up() -> None:
    said = answer(coloured({"Mid": "#777777", "Light": "#bbbbbb"}), STRANDED)
    assert said.tone == "unsure"
    assert said.sentence.startswith("Close up: Mid and Light stand 26 L* apart")


def test_hue_alone_is_for_stripes_and_not_for_motifs() -> None:
    """Cherry and pine: L* 39.3 and 40.8 by the reference's table of pairs, ΔE00 far above 20."""
    pair = coloured({"Cherry": "#b02a37", "Pine": "#2e6b45"})
    assert answer(pair).tone == "unsure"
    assert "In stripes and bands: hue tells Cherry and Pine apart" in answer(pair).sentence
    stranded = answer(pair, STRANDED)
    assert (stranded.tone, stranded.sentence.split(":")[0]) == ("no", "Hardly")
    assert any("protan and deutan" in reason for reason in stranded.reasons)


def test_nearly_the_same_colour_is_no() -> None:
    said = answer(coloured({"Moss": "#6b7a3a", "Fern": "#6f7d3e"}))
    assert said.tone == "no"
    assert any("few people would speak of two colours" in reason for reason in said.reasons)


def test_without_a_likeness_it_says_what_to_do() -> None:
    said = answer(coloured({"Moss": None, "Fern": None}))
    assert said.tone == "unsure"
    assert said.sentence == (
        "Not known: of its colours there is no likeness; take a photo of the skein in daylight, or write its shade."
    )
    assert said.figures == ()


def test_what_is_known_is_answered_and_what_is_not_is_named() -> None:
    said = answer(coloured({"Chalk": "#efe6d2", "Soot": "#3b3b3f", "Fern": None}))
    assert (said.tone, said.sentence.split(":")[0]) == ("unsure", "Yes as far as they are known")
    assert (
        "No likeness of Fern (contrast-2): take a photo of the skein in daylight, or write its shade." in said.reasons
    )


def test_one_known_of_two_is_not_enough() -> None:
    assert "of 1 of its 2 colours" in answer(coloured({"Chalk": "#efe6d2", "Fern": None})).sentence


def test_one_colour_has_nothing_to_stand_apart_from() -> None:
    assert answer(coloured({"Oat": "#d8c7a3"})).tone == "plain"


def test_the_same_colour_in_two_roles_is_one_colour() -> None:
    twice = season(
        {
            "cupboard.oat.shade": "#d8c7a3",
            "garments.jumper.yarns.edge": {"yarn": "dk", "colour": "Oat"},
            "patterns.plain.yarn.edge": {"length": "30 (30, 30) m"},
        }
    )
    (one,) = report(twice).colours
    assert (one.roles, report(twice).pairs) == (("main", "edge"), ())


def test_strands_held_together_are_mixed_in_light_by_their_grist() -> None:
    mixed = season(
        {
            "cupboard.oat.shade": "#efe6d2",
            "cupboard.haze": {"yarn": "lace", "colour": "Haze", "put_ups": 4, "shade": "#22304f"},
            "garments.jumper.yarns.main.held_with": [{"yarn": "lace", "colour": "Haze"}],
        }
    )
    tex = [50 / 120 * 1000, 25 / 210 * 1000]
    expected = write_hex(mix_strands(read_hexes(["#efe6d2", "#22304f"]), tex))
    assert (report(mixed).colours[0].name, report(mixed).colours[0].shade) == ("Oat + Haze", expected)


def test_a_lot_that_she_named_gives_the_likeness() -> None:
    two = season(
        {
            "cupboard.oat.shade": "#d8c7a3",
            "cupboard.later": {"yarn": "dk", "colour": "Oat", "put_ups": 12, "shade": "#c8b793"},
            "garments.jumper.yarns.main.lots": ["later"],
        }
    )
    assert report(two).colours[0].shade == "#c8b793"


def test_grey_keeps_lightness_and_other_eyes_are_the_published_ones() -> None:
    """Cherry in grey and to protan eyes: the values of the reference (Machado and others 2009)."""
    cherry = report(coloured({"Cherry": "#b02a37", "Pine": "#2e6b45"})).colours[0]
    assert cherry.grey == "#5e5e5e"
    assert cherry.seen == {"protan": "#514c36", "deutan": "#736833", "tritan": "#c20030"}


def test_the_role_with_least_yarn_comes_forward_in_stranded_knitting_only() -> None:
    two = coloured({"Chalk": "#efe6d2", "Soot": "#3b3b3f"})
    need = {"main": 700.0, "contrast-1": 300.0}
    assert report(two, STRANDED, need).held_below == ("contrast-1",)
    assert report(two, PLAIN, need).held_below == ()
    assert report(two, STRANDED, {"main": 700.0}).held_below == ()
    assert any("float runs below" in reason for reason in answer(two, STRANDED, need).reasons)


def test_three_colours_have_an_order_of_a_fade() -> None:
    """Oat, peach, rose of the reference's first fade stand in that order; one step is over 20 ΔE00."""
    three = {"Rose": "#c47a86", "Oat": "#e6d8bd", "Peach": "#e3aa8c"}
    fade = report(coloured(dict(three))).fade
    assert fade is not None
    assert fade.names == ("Oat", "Peach", "Rose")
    last = delta_e_ciede2000(*lab_from_srgb(read_hexes([three["Peach"], three["Rose"]])))
    assert fade.steps[-1] == pytest.approx(float(last))
    assert ("Peach", "Rose") in fade.stripes
    assert report(coloured({"Rose": "#c47a86", "Oat": "#e6d8bd"})).fade is None


def test_her_own_colours_that_stand_further_apart_are_named() -> None:
    many = coloured({"Moss": "#6b7a3a", "Fern": "#6f7d3e", "Chalk": "#efe6d2", "Soot": "#3b3b3f"}, "Chalk", "Soot")
    best = report(many, need_m={"main": 1400.0, "contrast-1": 1500.0}).choices[0]
    assert {one.name for one in best.colours} == {"Chalk", "Soot"}
    assert [one.enough for one in best.colours] == [True, False]
    assert best.grade == GRADES[0].name
    (reason,) = [one for one in answer(many).reasons if one.startswith("Of your own")]
    assert "as main" in reason


def test_what_is_planned_is_not_offered_again_and_nothing_where_yarns_differ() -> None:
    two = coloured({"Chalk": "#efe6d2", "Soot": "#3b3b3f"})
    assert [[one.name for one in choice.colours] for choice in report(two).choices] == [["Soot", "Chalk"]]
    mixed = season(
        {
            "garments.jumper.yarns.edge": {"yarn": "lace", "colour": "Haze"},
            "patterns.plain.yarn.edge": {"length": "30 (30, 30) m"},
        }
    )
    assert report(mixed).choices == ()


def test_the_demonstration_answers_for_every_garment() -> None:
    demo = read_season_text(demo_text(), "demo", "toml")
    tones = {
        garment.key: colour_answer(colour_report(demo, garment, PLAIN), Wording(Reader())).tone
        for garment in demo.garments
    }
    assert tones == {"shawl": "plain", "hat": "no", "pullover": "unsure", "cardigan": "yes", "slipover": "plain"}


def test_a_likeness_changes_nothing_but_what_is_seen() -> None:
    """Lightness is judged by L* of CIELAB alone, whichever of the two is named first."""
    one = report(coloured({"Chalk": "#efe6d2", "Soot": "#3b3b3f"})).pairs[0]
    other = report(coloured({"Soot": "#3b3b3f", "Chalk": "#efe6d2"})).pairs[0]
    apart = abs(float(lab_from_srgb(read_hex("#efe6d2"))[0] - lab_from_srgb(read_hex("#3b3b3f"))[0]))
    assert one.delta_l == pytest.approx(other.delta_l) == pytest.approx(apart)
