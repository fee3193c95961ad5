"""The command line: one module per verb. Each reads its arguments, calls what does the work, and prints.

Nothing heavy is imported before a verb runs, so that ``--help`` comes at once.
"""

from loopwright.cli.app import main

__all__ = ["main"]
