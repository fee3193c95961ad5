"""A pattern's size block, pasted as text: read with every fault and its place, written back, turned into fields.

* :func:`read_size_block`: text to a :class:`SizeBlock`; :func:`write_size_block`: the way back.
* :func:`to_pattern_fields`, :func:`missing_fields`: what of it stands in a season file, and what is still wanted.
* :func:`fields_into`: what changes in a pattern that is there already.
"""

from loopwright.pattern.size_block.fields import missing_fields, to_pattern_fields
from loopwright.pattern.size_block.merge import fields_into
from loopwright.pattern.size_block.reader import read_size_block
from loopwright.pattern.size_block.tokens import Place
from loopwright.pattern.size_block.tree import (
    BlockFault,
    Figure,
    MeasureRow,
    PutUp,
    Reading,
    Remark,
    SizeBlock,
    YarnRow,
)
from loopwright.pattern.size_block.words import row_name
from loopwright.pattern.size_block.write import figure_text, reading_text, write_size_block

__all__ = [
    "BlockFault",
    "Figure",
    "MeasureRow",
    "Place",
    "PutUp",
    "Reading",
    "Remark",
    "SizeBlock",
    "YarnRow",
    "fields_into",
    "figure_text",
    "missing_fields",
    "read_size_block",
    "reading_text",
    "row_name",
    "to_pattern_fields",
    "write_size_block",
]
