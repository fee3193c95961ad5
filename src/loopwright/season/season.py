"""A season: the garments planned together, with everything their plan is computed from."""

from __future__ import annotations

from pydantic import model_validator

from loopwright.season.facts import SeasonFacts
from loopwright.season.references import Faults, reference_faults

__all__ = ["Season"]


class Season(SeasonFacts):
    """The facts of a season, every key of which leads somewhere.

    :raises Faults: (inside the validation error) every key that leads nowhere, each with its place.
    """

    @model_validator(mode="after")
    def _every_key_leads_somewhere(self) -> Season:
        faults = reference_faults(self)
        if faults:
            raise Faults(faults)
        return self
