r"""The survey from which gaps are filled: 24 dimensions of adults, and the normal curve of one given others.

ANSUR II: 1986 women and 4082 men of the US Army, 17 to 58 years old, measured 2010 to 2012 (Gordon et al. 2014,
NATICK/TR-15/007). Fitter and younger than the public; weight rules cut off the extremes. No children.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from loopwright.data import table

__all__ = ["Conditional", "Dimension", "Sex", "conditional", "correlation", "dimensions"]

Sex = Literal["F", "M"]


@dataclass(frozen=True, slots=True)
class Dimension:
    """One dimension of the survey for one sex: cm, or kg for ``weight``.

    :ivar p01, p99: the range within which a relation may be trusted.
    :ivar n: how many people were measured.
    """

    key: str
    definition: str
    mean: float
    sd: float
    p01: float
    p99: float
    n: int
    source: str


@dataclass(frozen=True, slots=True)
class Conditional:
    """A dimension given others: mean and standard deviation of one person, and what each known one weighs.

    :ivar weights: change of the mean per unit of each known dimension.
    """

    mean: float
    sd: float
    weights: Mapping[str, float]


@cache
def dimensions(sex: Sex) -> Mapping[str, Dimension]:
    """Give the dimensions of one sex by key. Source: ``data/body/survey_dimensions.csv``."""
    return {
        row["dimension"]: Dimension(
            key=row["dimension"],
            definition=row["definition"],
            mean=float(row["mean"]),
            sd=float(row["sd"]),
            p01=float(row["p01"]),
            p99=float(row["p99"]),
            n=int(row["n"]),
            source=row["source"],
        )
        for row in table("body/survey_dimensions.csv")
        if row["sex"] == sex
    }


@cache
def _correlations(sex: Sex) -> dict[tuple[str, str], float]:
    rows = [row for row in table("body/survey_correlations.csv") if row["sex"] == sex]
    one_way = {(row["first"], row["second"]): float(row["r"]) for row in rows}
    return one_way | {(second, first): r for (first, second), r in one_way.items()}


def correlation(sex: Sex, first: str, second: str) -> float:
    """Give the correlation of two dimensions. Source: ``data/body/survey_correlations.csv``.

    :raises KeyError: the survey has no such dimension.
    """
    return 1.0 if first == second else _correlations(sex)[first, second]


def conditional(sex: Sex, known: Mapping[str, float], target: str) -> Conditional:
    r"""Give one dimension given others, all taken as jointly normal.

    .. math:: m = \mu_t + w^\top (v - \mu_K), \quad s^2 = \sigma_t^2 - w^\top c, \quad S w = c

    with :math:`S` the covariances of the known dimensions and :math:`c` those with the target. Source: any handbook
    of multivariate statistics, the conditional normal distribution.

    :param known: values in cm (kg for ``weight``) by dimension; with none, the survey's mean and spread come back.
    :raises KeyError: the survey has no such dimension.
    """
    import numpy as np  # noqa: PLC0415 -- only who fills a gap waits for it to load

    every = dimensions(sex)
    if target in known:
        return Conditional(known[target], 0.0, {key: float(key == target) for key in known})
    of = every[target]
    if not known:
        return Conditional(of.mean, of.sd, {})
    names = list(known)
    inside = np.array([[correlation(sex, a, b) * every[a].sd * every[b].sd for b in names] for a in names])
    across = np.array([correlation(sex, target, a) * of.sd * every[a].sd for a in names])
    weights = np.linalg.solve(inside, across)
    away = np.array([known[name] - every[name].mean for name in names])
    variance = of.sd**2 - float(weights @ across)
    by_name = dict(zip(names, map(float, weights), strict=True))
    return Conditional(of.mean + float(weights @ away), math.sqrt(max(variance, 0.0)), by_name)
