"""How Django knows this room."""

from django.apps import AppConfig

__all__ = ["StoreConfig"]


class StoreConfig(AppConfig):
    """The store; its tables begin with ``store_``."""

    name = "loopwright.store"
    label = "store"
    default_auto_field = "django.db.models.BigAutoField"
