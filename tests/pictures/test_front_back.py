"""Front and back of a garment: every stitch has its area, its proportion and its role's colour."""

from __future__ import annotations

import io
from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image
from scipy import ndimage
from shapely.geometry import Polygon

from loopwright.colour import delta_e_ciede2000, lab_from_srgb, linear_from_srgb, read_hex, srgb_from_linear
from loopwright.fabric import Gauge
from loopwright.garment.draft import Draft, Needle, Piece, RoleCells, RoleRun, Section
from loopwright.pattern import Construction
from loopwright.pictures.front_back import draw_garment, garment_picture, garment_png
from loopwright.pictures.index_layout import FIRST_ROLE, MOST_ROLES, ROLE_ENTRIES
from loopwright.pictures.lie_bent import Along, Ring
from loopwright.pictures.lie_flat import Mirrored, Sagging
from loopwright.pictures.painting import painting_of
from loopwright.pictures.patch import Face, Patch
from loopwright.pictures.placing import placed
from loopwright.pictures.raster import Frame, draw_patch, levels_of
from loopwright.units import BadInput
from tests.pictures.garment_samples import GAUGE, sample, samples

BODY = {"bust_girth": 92.0, "waist_girth": 76.0, "hip_girth": 100.0, "upper_arm_girth": 29.0, "head_girth": 56.0}
FACES: tuple[Face, ...] = ("front", "back")
COLOURS = {"main": ("#4f7583",), "contrast": ("#d8c7a3",)}


def piece_of(stitches: int, rows: int, *, gauge: Gauge = GAUGE, roles: tuple[RoleRun, ...] = ()) -> Draft:
    section = (
        Needle(stitches).plain(rows).section("field", "field", "stocking stitch", gauge, ends="cast off", roles=roles)
    )
    return Draft("rectangle", "bottom up", gauge, (Piece("field", "field", "bottom up", (section,)),))


def charted(made: Draft, key: tuple[str, str], roles: tuple[str, ...], cells: NDArray[np.integer]) -> Draft:
    """Give a draft with one section coloured stitch by stitch."""

    def of(piece: Piece, section: Section) -> Section:
        found = (piece.key, section.key) == key
        return replace(section, cells=RoleCells(roles, cells.astype(np.uint8))) if found else section

    return replace(
        made,
        pieces=tuple(replace(piece, sections=tuple(of(piece, one) for one in piece.sections)) for piece in made.pieces),
    )


def pixels_by_role(index: NDArray[np.uint8], roles: tuple[str, ...]) -> dict[str, int]:
    fabric = index[index >= FIRST_ROLE]
    counts = np.bincount((fabric.astype(int) - FIRST_ROLE) // ROLE_ENTRIES, minlength=len(roles))
    return {role: int(count) for role, count in zip(roles, counts, strict=True)}


def lies_true(patch: Patch) -> bool:
    """Whether each stitch keeps its area: not along a curved edge, in the ring of a round yoke, or below its arc."""
    lie = patch.lie.of if isinstance(patch.lie, Mirrored) else patch.lie
    return not isinstance(lie, Along | Ring | Sagging)


# ------------------------------------------------------------------------------------------------------- area
def test_a_role_has_as_many_pixels_as_its_stitches() -> None:
    # By hand: 60 stitches of 10/22 cm by 40 rows of 1/3 cm main, 50 rows contrast. Only whole pixels are counted, so
    # an area is off by less than half its rim.
    made = piece_of(60, 90, roles=(RoleRun("main", 40), RoleRun("contrast", 50)))
    picture = draw_garment(made, longest_px=900)
    counts = pixels_by_role(picture.index, picture.roles)
    stitch = picture.scale**2 * 10 / 22 / 3
    wide, high = 60 * 10 / 22 * picture.scale, 50 / 3 * picture.scale
    for role, rows in (("main", 40), ("contrast", 50)):
        assert counts[role] == pytest.approx(60 * rows * stitch, abs=wide + high)


@pytest.mark.parametrize("name", samples())
def test_every_part_has_the_area_of_its_stitches(name: str) -> None:
    """Slopes drawn for steps are off by 2 % or 2.5 cm² at most; pixels by half the rim."""
    painting = painting_of(samples()[name])
    for face in FACES:
        for patch in placed(samples()[name], face).patches:
            if not lies_true(patch) or patch.inside:
                continue
            knitted = _area_cm2(patch)
            outline = Polygon(patch.outline())
            assert outline.area == pytest.approx(knitted, rel=0.02, abs=2.5)
            left, top, right, bottom = patch.box
            frame = Frame(left - 1, top - 1, 8.0, int((right - left + 2) * 8), int((bottom - top + 2) * 8))
            canvas = np.zeros((frame.height, frame.width), dtype=np.uint8)
            draw_patch(canvas, np.zeros_like(canvas), patch, levels_of(patch, painting, frame.scale), frame)
            assert np.count_nonzero(canvas) / 64 == pytest.approx(outline.area, abs=outline.length / 8 / 2)


def _area_cm2(patch: Patch) -> float:
    shown, first = 0.0, 0
    for one in patch.rows.stretches:
        cell = one.section.stitch_width_cm * one.section.row_height_cm
        shown += float(patch.rows.shown[first : first + one.rows].sum()) * cell
        first += one.rows
    return shown


@pytest.mark.parametrize("construction", [Construction.DROP, Construction.RAGLAN, Construction.SLEEVELESS])
def test_front_and_back_show_every_stitch_of_a_garment(construction: Construction) -> None:
    """But its bands, of which seam ends and ends of the folds overlap; a yoke loses rows with less than a stitch."""
    made = sample(construction)
    shown = sum(
        float(patch.rows.shown.sum())
        for face in FACES
        for patch in placed(made, face).patches
        if not patch.inside and patch.rows.stretches[0].section.key != "band"
    )
    bands = sum(one.worked * piece.made for piece, one in made.sections() if one.key == "band")
    assert shown == pytest.approx(made.stitches - bands, rel=0.004)


@pytest.mark.parametrize("name", ["half-round shawl 0", "triangle shawl 0", "crescent shawl 0"])
def test_a_shawl_shows_each_section_with_its_share(name: str) -> None:
    made = samples()[name]
    picture = draw_garment(made, painting=painting_of(made, edges="edge"), longest_px=900)
    counts = pixels_by_role(picture.index, picture.roles)
    areas = [one.area_cm2 for _, one in made.sections()]
    assert counts["edge"] / sum(counts.values()) == pytest.approx(areas[-1] / sum(areas), abs=0.01)


# ------------------------------------------------------------------------------------------------- proportion, charts
@pytest.mark.parametrize("gauge", [(22, 30), (16, 22), (28, 36), (30, 30)])
def test_a_stitch_is_as_wide_and_as_high_as_the_gauge_says(gauge: tuple[int, int]) -> None:
    """Cells of a chequered chart: their mean width over their mean height is rows over stitches, by definition."""
    made = piece_of(40, 40, gauge=Gauge(stitches_per_10cm=gauge[0], rows_per_10cm=gauge[1]))
    chart = np.indices((40, 40)).sum(axis=0) % 2
    index = draw_garment(charted(made, ("field", "field"), ("a", "b"), chart), longest_px=1000).index
    roles = np.where(index >= FIRST_ROLE, (index.astype(int) - FIRST_ROLE) // ROLE_ENTRIES, -1)
    row, column = (size // 2 + 3 for size in roles.shape)
    across, down = (np.flatnonzero(np.diff(line)) for line in (roles[row], roles[:, column]))
    wide, high = (float(np.diff(edges)[1:-1].mean()) for edges in (across, down))
    assert wide / high == pytest.approx(gauge[1] / gauge[0], rel=0.01)
    assert (len(across), len(down)) == (41, 41)


def where(made: Draft, key: tuple[str, str], row: int, column: int, face: Face) -> tuple[float, float] | None:
    """Where one stitch of a chart is seen, as shares of the picture's width and height."""
    section = made.section(*key)
    chart = np.zeros((section.rows, int(section.stitches.max())), dtype=int)
    chart[row, column] = 1
    picture = draw_garment(charted(made, key, ("main", "dot"), chart), face, longest_px=1200)
    dot = FIRST_ROLE + picture.roles.index("dot") * ROLE_ENTRIES
    y, x = np.nonzero((picture.index >= dot) & (picture.index < dot + ROLE_ENTRIES))
    return (float(x.mean()) / picture.index.shape[1], float(y.mean()) / picture.index.shape[0]) if len(x) else None


def test_a_chart_begins_at_the_left_of_the_front_and_goes_on_at_the_left_of_the_back() -> None:
    made = sample()
    body, stitches = ("body", "body"), made.section("body", "body").last
    first = where(made, body, 0, 2, "front")
    last = where(made, body, 0, stitches // 2 - 3, "front")
    behind = where(made, body, 0, stitches // 2 + 2, "back")
    assert first is not None
    assert last is not None
    assert first[0] + last[0] == pytest.approx(1, abs=0.004)
    assert first[0] < 0.5 < last[0]
    assert behind == pytest.approx(first, abs=0.004)
    assert where(made, body, 0, stitches // 2 + 2, "front") is None


def test_what_is_knitted_from_the_top_hangs_upside_down() -> None:
    """Its first row is its highest, and its left, seen as it is knitted, is the right of the picture."""
    made = sample(Construction.RAGLAN)
    body = ("body", "body")
    first, later = where(made, body, 0, 5, "front"), where(made, body, 60, 5, "front")
    assert first is not None
    assert later is not None
    assert first[1] < later[1]
    assert first[0] > 0.5


# ------------------------------------------------------------------------------------------------------- whole pictures
@pytest.mark.parametrize("name", samples())
def test_every_construction_is_drawn_from_both_sides(name: str) -> None:
    for face in FACES:
        picture = draw_garment(samples()[name], face, body_cm=BODY, longest_px=240)
        assert max(picture.index.shape) == 240
        assert np.count_nonzero(picture.index >= FIRST_ROLE) > 0.08 * picture.index.size


@pytest.mark.parametrize("name", samples())
def test_no_hole_is_left_between_the_parts(name: str) -> None:
    """No ground is enclosed by fabric: told by scipy's labels of what hangs together."""
    for face in FACES:
        index = draw_garment(samples()[name], face, longest_px=600).index
        ground, _ = ndimage.label(np.pad(index < FIRST_ROLE, 1, constant_values=True))
        enclosed = np.count_nonzero(ground > 1)
        assert enclosed == 0


def test_the_same_draft_gives_the_same_bytes() -> None:
    one, other = (draw_garment(sample(), body_cm=BODY, longest_px=300) for _ in range(2))
    assert one.png(COLOURS) == other.png(COLOURS)


def test_other_colours_change_the_palette_alone() -> None:
    made = sample()
    one, other = (
        Image.open(io.BytesIO(garment_png(made, colours, edges="contrast", longest_px=300)))
        for colours in (COLOURS, {"main": ("#a2502f",), "contrast": ("#23424f", "#efe6d2")})
    )
    assert (one.mode, one.size) == ("P", other.size)
    assert np.array_equal(np.asarray(one), np.asarray(other))
    assert one.getpalette() != other.getpalette()
    assert garment_picture(made, edges="contrast", longest_px=300) is garment_picture(
        made, edges="contrast", longest_px=300
    )


@pytest.mark.parametrize("colour", ["#4f7583", "#a2502f", "#23424f", "#84592f"])
@pytest.mark.parametrize("px", [120, 400, 900])
def test_from_afar_the_fabric_has_the_colour_of_its_yarn(colour: str, px: int) -> None:
    """Light adds up; 1.5 ΔE00 is left for the nine shades. Near-white yarn clips, and is left out."""
    picture = draw_garment(piece_of(60, 90), longest_px=px)
    srgb = np.asarray(Image.open(io.BytesIO(picture.png({"main": (colour,)}))).convert("RGB")) / 255
    middle = srgb[px // 4 : -px // 4, srgb.shape[1] // 3 : -srgb.shape[1] // 3]
    mean = srgb_from_linear(linear_from_srgb(middle).mean(axis=(0, 1)))
    assert float(delta_e_ciede2000(lab_from_srgb(mean), lab_from_srgb(read_hex(colour)))) < 1.5


def test_ribs_and_bands_may_have_a_role_of_their_own() -> None:
    made = sample()
    rows = painting_of(made, edges="contrast")
    used = {key: rows.roles[int(roles[0])] for key, roles in rows.rows.items()}
    assert used["body", "hem"] == used["neckband", "band"] == used["sleeve", "cuff"] == "contrast"
    assert used["body", "body"] == used["sleeve", "sleeve"] == "main"


def test_a_picture_tells_so_many_roles_apart() -> None:
    roles = tuple(RoleRun(f"role {place}", 1) for place in range(MOST_ROLES + 1))
    with pytest.raises(BadInput, match=f'{MOST_ROLES + 1} roles"; wanted at most {MOST_ROLES}'):
        draw_garment(piece_of(10, MOST_ROLES + 1, roles=roles))


def test_a_body_stands_behind_what_is_worn() -> None:
    assert draw_garment(sample(), body_cm=BODY, longest_px=300).scale < draw_garment(sample(), longest_px=300).scale
    shawl = samples()["triangle shawl 0"]
    assert draw_garment(shawl, body_cm=BODY, longest_px=300).scale == draw_garment(shawl, longest_px=300).scale
