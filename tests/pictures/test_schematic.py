"""The schematic: true shapes to one scale, every measure with its count, no words over words."""

from __future__ import annotations

import re
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.constructions.any import _DRAFTS
from loopwright.garment.draft import Draft, Needle, Piece
from loopwright.garment.draft.lie import AREA_TOLERANCE
from loopwright.pattern import Construction
from loopwright.pictures import schematic
from loopwright.pictures.schematic_layout import NARROW, WIDE, lay_out
from loopwright.pictures.schematic_views import views_of
from loopwright.units import Reader
from tests.garment.wanted_measures import briefs
from tests.pictures.drawings import HOSTILE, colours_of, drawn, is_grey, spoken
from tests.pictures.garment_samples import sample, samples

METRIC, IMPERIAL = Reader(), Reader("imperial")
BODY = {"bust_girth": 92.0, "waist_girth": 76.0, "hip_girth": 100.0, "scye_depth": 20.0}
SVG = "{http://www.w3.org/2000/svg}"
TOPS = [one for one in _DRAFTS if one.is_top]


def texts(svg: str) -> list[str]:
    return [one.text or "" for one in drawn(svg).iter(f"{SVG}text")]


def check_words(made: Draft, reader: Reader, *, narrow: bool, body: bool) -> None:
    sheet = lay_out(made, reader, narrow=narrow, body_cm=BODY if body else None)
    words = sheet.words()
    for one in words:
        box = one.box
        assert box.left >= 0, one
        assert box.top >= 0, one
        assert box.right <= sheet.look.width, one
        assert box.bottom <= sheet.height, one
    meeting = [(one.text, other.text) for one, other in combinations(words, 2) if one.box.meets(other.box)]
    assert meeting == []


def test_every_construction_is_sampled() -> None:
    assert {made.construction for made in samples().values()} == {one.value for one in _DRAFTS}


@pytest.mark.parametrize("narrow", [True, False])
@pytest.mark.parametrize("name", samples())
def test_no_words_meet_and_none_leaves_the_sheet(name: str, narrow: bool) -> None:
    check_words(samples()[name], METRIC, narrow=narrow, body=True)
    check_words(samples()[name], IMPERIAL, narrow=narrow, body=False)


@settings(max_examples=25, deadline=None)
@given(st.data(), st.sampled_from(TOPS), st.booleans())
def test_no_words_meet_on_any_body_at_any_gauge(data: st.DataObject, construction: Construction, narrow: bool) -> None:
    check_words(draft(data.draw(briefs(construction))), METRIC, narrow=narrow, body=False)


@pytest.mark.parametrize("name", samples())
def test_a_section_is_drawn_with_the_area_of_its_stitches(name: str) -> None:
    for placed, _, _ in lay_out(samples()[name], METRIC).placed:
        if placed.view.lying is not None:
            (outline,) = placed.shape.sections.values()
            knitted = sum(one.area_cm2 for one in placed.view.piece.sections)
            assert Polygon(outline).area == pytest.approx(knitted, rel=AREA_TOLERANCE)
            continue
        for section in placed.view.piece.sections:
            cells = float(section.flat_stitches.sum()) * section.stitch_width_cm * section.row_height_cm
            assert Polygon(placed.shape.sections[section.key]).area == pytest.approx(cells, rel=1e-6)


@pytest.mark.parametrize("name", samples())
def test_every_stitch_is_drawn(name: str) -> None:
    """Shares of a yoke are drawn apart; of a sleeve's, rows without a stitch are left out, with the few beside them."""
    made = samples()[name]
    shown = sum(view.piece.worked * int((re.findall(r"make (\d)", view.made) or ["1"])[0]) for view in views_of(made))
    assert shown == pytest.approx(made.stitches, rel=2e-3)


@pytest.mark.parametrize("narrow", [True, False])
def test_all_pieces_are_drawn_to_one_scale(narrow: bool) -> None:
    made = sample(worked="flat")
    sheet = lay_out(made, METRIC, narrow=narrow)
    groups = [
        one for one in drawn(schematic(made, METRIC, narrow=narrow)).iter(f"{SVG}g") if one.get("class") == "piece"
    ]
    for group, (placed, _, _) in zip(groups, sheet.placed, strict=True):
        (path,) = (one.attrib["d"] for one in group.iter(f"{SVG}path") if one.attrib["class"] == "outline")
        across = [float(x) for x, _ in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path)]
        widest = max(float(one.flat_stitches.max()) * one.stitch_width_cm for one in placed.view.piece.sections)
        assert max(across) - min(across) == pytest.approx(widest * sheet.scale, abs=0.02)


def test_widths_and_counts_are_written_together() -> None:
    # By hand: a tube of n stitches at 22 to 10 cm lies n / 44 · 10 cm wide.
    made = sample()
    hem = int(made.section("body", "hem").stitches[0])
    words = texts(schematic(made, METRIC))
    at = words.index(f"{hem * 10 / 22:.1f}".rstrip("0").rstrip(".") + f" cm round, {hem} sts")
    assert words[at - 1] == f"{hem * 10 / 44:.1f}".rstrip("0").rstrip(".") + " cm"


def test_heights_are_written_with_their_rows() -> None:
    made = sample()
    words = texts(schematic(made, METRIC))
    front = made.section("body", "front left shoulder").rows
    armhole = made.section("body", "front").rows + front
    assert f"{made.section('body', 'body').rows} rnds" in words
    assert f"{armhole} rows" in words
    assert words[words.index(f"{front} rows") - 1] == f"{front / 3:.1f}".rstrip("0").rstrip(".") + " cm"


def test_shoulders_neck_and_underarm_of_a_shaped_armhole() -> None:
    made = sample(Construction.SET_IN)
    words = texts(schematic(made, METRIC))
    shoulder = made.section("back", "back left shoulder").live
    across = made.section("back", "back").last
    neck = made.section("back", "back").last - 2 * shoulder
    underarm = made.section("back", "body").last
    assert {f"{count} sts" for count in (shoulder, across, neck, underarm)} <= set(words)


def test_inches_for_who_reads_inches() -> None:
    words = texts(schematic(sample(), IMPERIAL))
    assert any(word.endswith(" in") for word in words)
    assert not any(" cm" in word for word in words)


def test_what_is_made_twice_is_drawn_once_and_says_so() -> None:
    svg = schematic(sample(), METRIC)
    words = texts(svg)
    assert words.count("sleeve") == 1
    assert sum("make 2" in word for word in words) == 1
    assert len([one for one in drawn(svg).iter(f"{SVG}g") if one.get("class") == "piece"]) == len(views_of(sample()))


@pytest.mark.parametrize("name", samples())
def test_every_piece_says_which_way_it_is_knitted(name: str) -> None:
    for placed, _, _ in lay_out(samples()[name], METRIC, narrow=True).placed:
        said = " ".join(word.text for word in placed.words)
        assert placed.view.word in said
        assert placed.arrows or placed.view.word in " ".join(word.text for word in placed.words[-2:])


def test_the_back_of_a_tube_is_dashed_behind_its_front() -> None:
    dashed = [one for one in drawn(schematic(sample(), METRIC)).iter(f"{SVG}path") if "stroke-dasharray" in one.attrib]
    assert len(dashed) == 1
    assert "stroke-dasharray" not in schematic(sample(worked="flat"), METRIC)


def test_a_raglan_is_drawn_with_its_yoke_on_the_body_and_on_the_sleeve() -> None:
    made = sample(Construction.RAGLAN)
    shapes = {placed.view.name: placed.shape for placed, _, _ in lay_out(made, METRIC).placed}
    yoke = sum(one.height_cm for one in made.piece("yoke").sections)
    assert shapes["body"].height == pytest.approx(made.piece("body").height_cm + yoke)
    assert "yoke" not in shapes


def test_both_halves_of_a_raglans_front_are_alike_and_slant_as_the_back_does() -> None:
    (body,) = (view.piece for view in views_of(sample(Construction.RAGLAN)) if view.name == "body")
    left, right, back = (body.section(f"{side} of the upper yoke") for side in ("left front", "right front", "back"))
    assert abs(left.stitches - right.stitches).max() <= 1
    assert abs(left.left_edge - back.left_edge).max() <= 1
    assert abs(left.left_edge + right.left_edge + right.stitches).max() == 0


def test_a_body_stands_behind_to_the_same_scale() -> None:
    # By hand: a bust of 92 cm laid flat is 46 cm wide.
    sheet = lay_out(sample(), METRIC, body_cm=BODY)
    (behind,) = (placed.body for placed, _, _ in sheet.placed if placed.body)
    under = 20.0 * sheet.scale
    assert max(x for x, y in behind if y < 1.6 * under) == pytest.approx(46 / 2 * sheet.scale)
    assert not any(placed.body for placed, _, _ in lay_out(sample(), METRIC).placed)


def test_numbers_can_be_read_on_a_phone_and_on_a_tablet() -> None:
    # 328 px of a 360 px phone and 688 of a 768 px tablet are left for the drawing; least sizes in px are our judgement.
    assert min(word.size for word in lay_out(sample(), METRIC, narrow=True).words()) * 328 / NARROW.width >= 11
    assert WIDE.measure * 688 / WIDE.width >= 11


def test_it_is_grey_and_says_what_it_is() -> None:
    svg = schematic(sample(), METRIC, body_cm=BODY, says=HOSTILE)
    assert spoken(drawn(svg)) == (HOSTILE, HOSTILE)
    assert all(is_grey(colour) for colour in colours_of(svg))
    assert "sleeve (make 2" in (spoken(drawn(schematic(sample(), METRIC)))[0] or "")


def test_a_small_square_drawn_out() -> None:
    gauge = Gauge(stitches_per_10cm=20, rows_per_10cm=30)
    section = Needle(20).plain(30).section("square", "square", "stocking stitch", gauge, ends="cast off")
    square = Draft("square", "bottom up", gauge, (Piece("square", "square", "bottom up", (section,)),))
    svg = schematic(square, METRIC, narrow=True)
    assert svg.replace("><", ">\n<") + "\n" == (Path(__file__).parent / "square.svg").read_text(encoding="utf-8")
