"""The table of changes that can be taken back."""

from __future__ import annotations

from django.db import models
from django.utils import timezone

from loopwright.store.keys import LONGEST_KEY

__all__ = ["Revision"]


class Revision(models.Model):
    """One change to one season, and how the season is on the other side of it.

    ``other_side`` is the season as it was before the change; once the change is undone, as it was after it. It is
    nothing where there was no season. The season is named by its key, since it may be forgotten meanwhile.
    """

    season_key = models.CharField(max_length=LONGEST_KEY, db_index=True)
    made_at = models.DateTimeField(default=timezone.now)
    says = models.TextField()
    other_side = models.JSONField(null=True)
    undone = models.BooleanField(default=False)

    class Meta:
        """Changes stand in the order in which they were made."""

        ordering = ["pk"]

    def __str__(self) -> str:
        return f"{self.season_key}: {self.says}"
