"""The demo report's words, kept whole, so that a change of wording is seen in review.

Where the change is wanted, renew the kept text and look at it with ``git diff``::

    RENEW_GOLDEN=1 make test ARGS=tests/documents/test_golden.py
"""

import os
from difflib import unified_diff
from pathlib import Path

from tests.documents.pages import text_of

GOLDEN = Path(__file__).parents[1] / "golden" / "demo_report.txt"


def test_the_demo_report_reads_as_kept(report: str) -> None:
    text = text_of(report) + "\n"
    if os.environ.get("RENEW_GOLDEN"):
        GOLDEN.write_text(text, encoding="utf-8")
    kept = GOLDEN.read_text(encoding="utf-8").splitlines()
    changed = unified_diff(kept, text.splitlines(), "kept", "now", lineterm="", n=1)
    assert "\n".join(changed) == "", "see the head of this file for how to renew"
