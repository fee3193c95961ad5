"""The page on charts: its examples are read, and are one chart."""

import re
import tomllib
from dataclasses import replace
from pathlib import Path

import numpy as np

from loopwright.chart import ChartRole, NamedChart, read_chart_csv
from loopwright.records import FROM_FILE

TEXT = (Path(__file__).parents[2] / "docs" / "charts.md").read_text("utf-8")


def test_both_examples_are_the_same_chart() -> None:
    (toml,) = re.findall(r"```toml\n(.*?)```", TEXT, re.DOTALL)
    (csv,) = re.findall(r"```text\n(.*?)```", TEXT, re.DOTALL)
    fields = tomllib.loads(toml)["charts"]["tide-line"]
    named = NamedChart.model_validate({"key": "tide-line", **fields}, context=FROM_FILE).chart
    read = read_chart_csv(csv)
    assert np.array_equal(named.cells, read.cells)
    plain = tuple(ChartRole(role.name) for role in read.roles)
    assert replace(read, roles=plain) == named
