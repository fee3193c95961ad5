"""Photos of lots: kept once under the digest of their bytes, in the database.

In the database and not as files beside it: a photo then comes to be in the same transaction as the change that puts it
in, undo never finds it gone, PostgreSQL keeps it like SQLite, and a backup of the one file holds it. They are small,
see :mod:`loopwright.web.cupboard.photo`. Photos that no lot shows any more stay, since undo may ask for them.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass

from loopwright.store.models import LotPhotoRow

__all__ = ["LotPhoto", "keep_photo", "photo_bytes"]


@dataclass(frozen=True, slots=True)
class LotPhoto:
    """A photo as it is kept.

    :ivar picture, small: the bytes of two JPEGs, the second for lists.
    :ivar width, height: of the picture, in pixels.
    """

    picture: bytes
    small: bytes
    width: int
    height: int

    @property
    def digest(self) -> str:
        """Give the SHA-256 of the picture, in hexadecimal digits."""
        return hashlib.sha256(self.picture).hexdigest()


def keep_photo(photo: LotPhoto) -> None:
    """Keep a photo, unless the very same is there. Part of the transaction that it is called in."""
    LotPhotoRow.objects.get_or_create(
        digest=photo.digest,
        defaults={"picture": photo.picture, "small": photo.small, "width": photo.width, "height": photo.height},
    )


def photo_bytes(digest: str, *, small: bool = False) -> bytes | None:
    """Give a photo as JPEG, or None where none is kept under the digest."""
    field = "small" if small else "picture"
    kept = LotPhotoRow.objects.filter(digest=digest).values_list(field, flat=True).first()
    return None if kept is None else bytes(kept)
