"""The table of seasons."""

from __future__ import annotations

from django.db import models

from loopwright.store.keys import LONGEST_KEY

__all__ = ["SeasonRow"]


class SeasonRow(models.Model):
    """A season's own fields; its bodies, yarns and so on are entries of their own.

    ``facts`` holds what has no column, under the names of the season file. ``source_text`` is the file as she loaded
    it, and empty once anything was changed. ``photos`` holds the digest of the photo of each lot that has one, by the
    lot's key. ``version`` grows with every change.
    """

    key = models.SlugField(max_length=LONGEST_KEY, unique=True)
    name = models.TextField()
    today = models.DateField()
    facts = models.JSONField(default=dict)
    source_text = models.TextField(blank=True, default="")
    source_format = models.CharField(max_length=4, default="toml")
    photos = models.JSONField(default=dict)
    position = models.PositiveIntegerField(default=0)
    version = models.PositiveIntegerField(default=1)
    kept_at = models.DateTimeField(auto_now_add=True)
    changed_at = models.DateTimeField(auto_now=True)

    class Meta:
        """Seasons stand in the order in which they came."""

        ordering = ["position", "pk"]

    def __str__(self) -> str:
        return self.key
