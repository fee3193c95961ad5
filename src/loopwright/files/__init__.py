"""The season file: everything one plan is computed from, in one TOML or JSON file.

* :func:`read_season`, :func:`read_season_text`: a file or text to a :class:`~loopwright.season.season.Season`.
* :func:`save_season`, :func:`write_season_text`: the way back; nothing that matters is lost.
* :class:`SeasonFileFaults`, :class:`FileFault`: what is wrong in a file, all at once, with line and field.
* :func:`faults_of`: the same for a season that comes from no file.
* :func:`demo_text`: the demonstration season.
* :func:`demo_text`: the season file that comes with the program.
* :func:`season_schema`: the file's JSON Schema.
"""

from loopwright.files.demo import demo_text
from loopwright.files.explain import faults_of
from loopwright.files.faults import FileFault, SeasonFileFaults
from loopwright.files.schema import season_schema
from loopwright.files.season_file import Format, read_season, read_season_text, save_season, write_season_text

__all__ = [
    "FileFault",
    "Format",
    "SeasonFileFaults",
    "demo_text",
    "faults_of",
    "read_season",
    "read_season_text",
    "save_season",
    "season_schema",
    "write_season_text",
]
