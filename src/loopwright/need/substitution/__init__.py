"""What else could be knitted instead: a substitute beside its original, and a catalogue ranked.

* :class:`Original`, :func:`compare`, :class:`Comparison`: side by side, with verdict and reasons.
* :func:`wish_of`, :func:`rank`, :class:`StrandColumns`: the same score for one strand and for a million.
* :class:`YarnCatalogue`, :func:`rank_catalogue`: a catalogue by column.
* :func:`rank_held`: yarns held together that come to a wanted strand.
* :data:`LIMITS`: how far a substitute may differ, each limit with its basis.
"""

from loopwright.need.substitution.catalogue import YarnCatalogue, catalogue_of, free_of, rank_catalogue
from loopwright.need.substitution.compare import Comparison, Reason, compare
from loopwright.need.substitution.fibre_traits import CARE_STEPS, FIBRE_NAMES, FIBRE_TRAITS
from loopwright.need.substitution.held import held_near, rank_held
from loopwright.need.substitution.limits import LIMITS, VERDICTS, Limit, Verdict
from loopwright.need.substitution.original import Original, Wish, wish_of
from loopwright.need.substitution.purchase import metres_of, put_ups_for
from loopwright.need.substitution.score import Ranking, predicted, rank, rank_keys
from loopwright.need.substitution.side import Side, blend_by_mass
from loopwright.need.substitution.strands import StrandColumns, held_together, strand_columns, strand_of

__all__ = [
    "CARE_STEPS",
    "FIBRE_NAMES",
    "FIBRE_TRAITS",
    "LIMITS",
    "VERDICTS",
    "Comparison",
    "Limit",
    "Original",
    "Ranking",
    "Reason",
    "Side",
    "StrandColumns",
    "Verdict",
    "Wish",
    "YarnCatalogue",
    "blend_by_mass",
    "catalogue_of",
    "compare",
    "free_of",
    "held_near",
    "held_together",
    "metres_of",
    "predicted",
    "put_ups_for",
    "rank",
    "rank_catalogue",
    "rank_held",
    "rank_keys",
    "strand_columns",
    "strand_of",
    "wish_of",
]
