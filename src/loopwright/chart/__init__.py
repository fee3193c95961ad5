"""Charts: a grid of roles and stitches, read, fitted, measured, and written in several forms.

Grid                `Chart`, `ChartRole`, `RepeatBox`, `plain_chart`, `NamedChart`, `chart_fields`
Symbols             `SYMBOLS`, `Symbol`, `symbol`
Reading             `read_row`, `row_words`, `count_faults`
Moving              `mirrored`, `upside_down`, `quarter_turned`, `shifted`, `tiled`, `unrolled`
Floats              `find_floats`, `long_floats`, `catch_cells`, `usual_limit`, `roles_per_row`
Repeats             `fit_chart`, `fit_round`, `fit_flat`, `fit_rows`, `laid_out`, `mirror_axes`
Yarn                `metres_by_role`, `areas_per_role`
Forms               `chart_csv`, `read_chart_csv`, `read_chart_svg`

What needs Pillow is had from its own module: :mod:`~loopwright.chart.from_picture` turns a picture into a chart,
:mod:`~loopwright.chart.png_form` writes and reads a picture of one point a cell.
"""

from loopwright.chart.amounts import RoleMetres, metres_by_role
from loopwright.chart.areas import areas_per_role
from loopwright.chart.catches import LongFloat, catch_cells, long_floats, usual_limit, young_child_limit
from loopwright.chart.csv_form import chart_csv, read_chart_csv
from loopwright.chart.floats import Floats, find_floats, roles_per_row
from loopwright.chart.grid import MOST_ROLES, MOST_SIDE, Cells, Chart, ChartRole, RepeatBox, plain_chart
from loopwright.chart.moves import mirrored, quarter_turned, shifted, tiled, unrolled, upside_down
from loopwright.chart.named import NamedChart, chart_fields
from loopwright.chart.reading import CountFault, RowRead, Stretch, count_faults, read_row, row_counts, row_words
from loopwright.chart.repeat import Fit, RowFit, fit_chart, fit_flat, fit_round, fit_rows, laid_out, mirror_axes
from loopwright.chart.svg_form import read_chart_svg
from loopwright.chart.symbols import SYMBOLS, Symbol, symbol

__all__ = [
    "MOST_ROLES",
    "MOST_SIDE",
    "SYMBOLS",
    "Cells",
    "Chart",
    "ChartRole",
    "CountFault",
    "Fit",
    "Floats",
    "LongFloat",
    "NamedChart",
    "RepeatBox",
    "RoleMetres",
    "RowFit",
    "RowRead",
    "Stretch",
    "Symbol",
    "areas_per_role",
    "catch_cells",
    "chart_csv",
    "chart_fields",
    "count_faults",
    "find_floats",
    "fit_chart",
    "fit_flat",
    "fit_round",
    "fit_rows",
    "laid_out",
    "long_floats",
    "metres_by_role",
    "mirror_axes",
    "mirrored",
    "plain_chart",
    "quarter_turned",
    "read_chart_csv",
    "read_chart_svg",
    "read_row",
    "roles_per_row",
    "row_counts",
    "row_words",
    "shifted",
    "symbol",
    "tiled",
    "unrolled",
    "upside_down",
    "usual_limit",
    "young_child_limit",
]
