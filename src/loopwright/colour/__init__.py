"""Colour science: spaces, differences, contrast, other eyes, mixing and order. It knows nothing of garments.

Colours are numpy arrays of sRGB with a last axis of three, 0 to 1, unless a name says otherwise.

Text                `read_hex`, `read_hexes`, `write_hex`
Spaces              `linear_from_srgb`, `srgb_from_linear`, `xyz_from_linear`, `linear_from_xyz`, `lab_from_xyz`,
                    `xyz_from_lab`, `oklab_from_linear`, `linear_from_oklab`, `lch_from_lab`, `lab_from_lch`;
                    in one step `lab_from_srgb`, `srgb_from_lab`, `oklab_from_srgb`, `srgb_from_oklab`;
                    `lightness`, `luminance`, `WHITE_XYZ`, `Floats`
Difference          `delta_e_cie76`, `delta_e_ciede2000`, `difference_matrix`
Other eyes          `as_seen`, `grey_view`, `vision_matrix`, `Vision`, `VISIONS`, `SEVERITIES`
Contrast            `judge_pair`, `judge_pairs` and `PairContrast`, `grade_of`, `Grade`, `GRADES`, `REMARKS`, `Remark`,
                    `separation`, `held_forward`; of pages `wcag_ratio`, `TEXT_RATIO`, `LARGE_OR_LINE_RATIO`
Strands together    `mix_strands`, `strand_shares`, `blur_distance_m`
Order of a fade     `fade_order` and `Fade`; `shortest_path`, `path_length`, `EXACT_UP_TO`, `MOST_POINTS`
Colours for roles   `rank_assignments`, `Assignments`, `Assignment`, `MOST_ASSIGNMENTS`
Basis of verdicts   `LIMITS`, `Limit`
"""

from loopwright.colour.assignments import MOST_ASSIGNMENTS, Assignment, Assignments, rank_assignments
from loopwright.colour.contrast import (
    GRADES,
    LARGE_OR_LINE_RATIO,
    REMARKS,
    TEXT_RATIO,
    Grade,
    PairContrast,
    Remark,
    grade_of,
    held_forward,
    judge_pair,
    judge_pairs,
    separation,
    wcag_ratio,
)
from loopwright.colour.difference import delta_e_cie76, delta_e_ciede2000, difference_matrix
from loopwright.colour.hex_text import read_hex, read_hexes, write_hex
from loopwright.colour.limits import LIMITS, Limit
from loopwright.colour.marl import blur_distance_m, mix_strands, strand_shares
from loopwright.colour.order import Fade, fade_order
from loopwright.colour.path import EXACT_UP_TO, MOST_POINTS, path_length, shortest_path
from loopwright.colour.spaces import (
    WHITE_XYZ,
    Floats,
    lab_from_lch,
    lab_from_srgb,
    lab_from_xyz,
    lch_from_lab,
    lightness,
    linear_from_oklab,
    linear_from_srgb,
    linear_from_xyz,
    luminance,
    oklab_from_linear,
    oklab_from_srgb,
    srgb_from_lab,
    srgb_from_linear,
    srgb_from_oklab,
    xyz_from_lab,
    xyz_from_linear,
)
from loopwright.colour.vision import SEVERITIES, VISIONS, Vision, as_seen, grey_view, vision_matrix

__all__ = [
    "EXACT_UP_TO",
    "GRADES",
    "LARGE_OR_LINE_RATIO",
    "LIMITS",
    "MOST_ASSIGNMENTS",
    "MOST_POINTS",
    "REMARKS",
    "SEVERITIES",
    "TEXT_RATIO",
    "VISIONS",
    "WHITE_XYZ",
    "Assignment",
    "Assignments",
    "Fade",
    "Floats",
    "Grade",
    "Limit",
    "PairContrast",
    "Remark",
    "Vision",
    "as_seen",
    "blur_distance_m",
    "delta_e_cie76",
    "delta_e_ciede2000",
    "difference_matrix",
    "fade_order",
    "grade_of",
    "grey_view",
    "held_forward",
    "judge_pair",
    "judge_pairs",
    "lab_from_lch",
    "lab_from_srgb",
    "lab_from_xyz",
    "lch_from_lab",
    "lightness",
    "linear_from_oklab",
    "linear_from_srgb",
    "linear_from_xyz",
    "luminance",
    "mix_strands",
    "oklab_from_linear",
    "oklab_from_srgb",
    "path_length",
    "rank_assignments",
    "read_hex",
    "read_hexes",
    "separation",
    "shortest_path",
    "srgb_from_lab",
    "srgb_from_linear",
    "srgb_from_oklab",
    "strand_shares",
    "vision_matrix",
    "wcag_ratio",
    "write_hex",
    "xyz_from_lab",
    "xyz_from_linear",
]
