"""Options that a garment without front, neck and sleeves has no use for are refused, not passed over."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.garment.wanted import Brief, DraftOptions, Trim
from loopwright.units import BadInput

__all__ = ["refuse_unsuited"]

_NO_SLEEVES: tuple[object, ...] = (None, "none")


def _told(value: object) -> str:
    return "" if isinstance(value, bool | Trim) else f" {value}"


def refuse_unsuited(brief: Brief, **suited: tuple[object, ...]) -> None:
    """Refuse every option that is neither left as it is by itself, nor suited to the construction.

    :param suited: by option, the values that can be made; an empty tuple for an option of which any value can.
    :raises BadInput: at the first other one, saying which can be made.
    """
    usual = DraftOptions().over(brief.fabric)
    allowed: Mapping[str, tuple[object, ...]] = {"sleeves": _NO_SLEEVES, **suited}
    for name, field in DraftOptions.model_fields.items():
        value = getattr(brief.options, name)
        if value == getattr(usual, name) or (name in allowed and (not allowed[name] or value in allowed[name])):
            continue
        wanted = " or ".join(str(one) for one in suited.get(name, ())) or "it left out"
        key = field.alias or name
        raise BadInput(
            found=f"{key.replace('_', ' ')}{_told(value)} for a {brief.construction.value}", wanted=wanted, place=key
        )
