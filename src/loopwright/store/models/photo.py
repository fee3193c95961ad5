"""The table of photos of lots."""

from __future__ import annotations

from django.db import models
from django.utils import timezone

__all__ = ["LotPhotoRow"]


class LotPhotoRow(models.Model):
    """A photo under the digest of its bytes; which lot it shows is said by the season, so that undo can say it too.

    A row is never changed. ``picture`` and ``small`` are JPEG, written anew by us.
    """

    digest = models.CharField(max_length=64, unique=True)
    width = models.PositiveIntegerField()
    height = models.PositiveIntegerField()
    picture = models.BinaryField()
    small = models.BinaryField()
    kept_at = models.DateTimeField(default=timezone.now)

    def __str__(self) -> str:
        return self.digest
