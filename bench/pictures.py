"""Pictures of a garment, in stitches a second, beside every stitch drawn as a polygon by Pillow in the same run."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from PIL import Image, ImageDraw

from bench.drafts import GAUGE, MEASURES
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief
from loopwright.pattern import Construction
from loopwright.pictures.fabric_view import fabric_view
from loopwright.pictures.front_back import draw_garment
from loopwright.pictures.placing import placed
from loopwright.pictures.png import direct_png
from loopwright.pictures.wide_frame import frame_of

PX = 1000
FIRST_S, AGAIN_S = 0.15, 0.04
"""What the first picture of a full adult front may take, and the same in other colours."""
COLOURS = {"main": ("#4f7583",)}


def polygons(made: Draft) -> Image.Image:
    """The straightforward way: every stitch a polygon with a V on it, the parts in the same places."""
    lying = placed(made, "front")
    frame = frame_of(lying, (), PX)
    picture = Image.new("RGB", (frame.width, frame.height), "#fbfbfa")
    pen = ImageDraw.Draw(picture)
    corner = np.array([frame.left, frame.top]) * frame.scale
    for patch in lying.patches:
        rows = patch.rows
        for row in range(rows.rows):
            count = max(round(float(rows.shown[row])), 1)
            u = np.linspace(rows.left[row], rows.right[row], count + 1)
            low, high = (
                np.column_stack(patch.lie.to_picture(u, np.full(count + 1, v))) * frame.scale - corner
                for v in (rows.ends[row], rows.ends[row + 1])
            )
            for one in range(count):
                corners = [tuple(low[one]), tuple(low[one + 1]), tuple(high[one + 1]), tuple(high[one])]
                pen.polygon(corners, fill="#4f7583")
                foot = tuple((low[one] + low[one + 1]) / 2)
                pen.line([corners[3], foot, corners[2]], fill="#3c5964")
    return picture


def pictures(seconds: Callable[[Callable[[], object]], float], line: Callable[[str, float, str, float], None]) -> None:
    """Measure with these two, the clock and the printer of ``bench``."""
    print(f"Pictures, an adult's front in fine yarn, {PX} pixels")
    for construction in (Construction.SET_IN, Construction.RAGLAN, Construction.YOKE):
        made = draft(Brief(construction, MEASURES, GAUGE))
        stitches = sum(float(patch.rows.shown.sum()) for patch in placed(made, "front").patches)
        slow = seconds(lambda made=made: polygons(made))  # type: ignore[misc]
        ours = seconds(lambda made=made: draw_garment(made, longest_px=PX))  # type: ignore[misc]
        name = f"{construction.value}, {stitches / ours / 1e6:.2f} million stitches/s"
        line(name, ours, "polygons by Pillow", ours / slow)
        line("  the same", ours, f"the {FIRST_S * 1000:.0f} ms that it may take", ours / FIRST_S)
    picture = draw_garment(made, longest_px=PX)
    again = seconds(lambda: picture.png(COLOURS))
    line(f"other colours, {stitches / again / 1e6:.0f} million stitches/s", again, "polygons by Pillow", again / slow)
    line("  the same", again, f"the {AGAIN_S * 1000:.0f} ms that it may take", again / AGAIN_S)
    for name, strands in (("one strand", ["#4f7583"]), ("a marl of two", ["#22304f", "#efe6d2"])):
        took = seconds(lambda strands=strands: direct_png(fabric_view(GAUGE, [["m"]], {"m": strands}).srgb))  # type: ignore[misc]
        line(f"fabric from near, {name}", took, "the front", took / ours)
