"""One table for each kind of entry of a season."""

from __future__ import annotations

from django.db import models

from loopwright.store.keys import LONGEST_KEY
from loopwright.store.models.season import SeasonRow

__all__ = [
    "BodyRow",
    "ChartRow",
    "Entry",
    "GarmentRow",
    "LotRow",
    "OrderRow",
    "PatternRow",
    "ShopRow",
    "SwatchRow",
    "YarnRow",
]


class Entry(models.Model):
    """An entry of a season under its key: where it stands, what it is called, and its facts.

    ``folded`` is what it is found by, in folded case: SQLite knows capitals of plain English letters only. A yarn and
    a lot are found by more than their name.
    """

    season = models.ForeignKey(SeasonRow, on_delete=models.CASCADE, related_name="+")
    key = models.CharField(max_length=LONGEST_KEY)
    position = models.PositiveIntegerField()
    name = models.TextField(blank=True)
    folded = models.TextField(blank=True)
    facts = models.JSONField(default=dict)

    class Meta:
        """Entries stand in the order that the season gives them; a key stands once in a season."""

        abstract = True
        ordering = ["position"]
        constraints = [models.UniqueConstraint(fields=["season", "key"], name="%(class)s_key_once")]

    def __str__(self) -> str:
        return self.key


class BodyRow(Entry):
    """The measures of a person."""


class YarnRow(Entry):
    """A kind of yarn."""


class SwatchRow(Entry):
    """A swatch; called by its fabric."""


class LotRow(Entry):
    """Yarn in the cupboard; called by its colour."""


class PatternRow(Entry):
    """The facts of a pattern."""


class GarmentRow(Entry):
    """A garment to be made."""


class ShopRow(Entry):
    """A shop and what it offers."""


class OrderRow(Entry):
    """Yarn on its way; called by its shop."""


class ChartRow(Entry):
    """A chart."""
