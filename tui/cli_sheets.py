"""``poolwright sheets``: what is printed of a design, written into a folder."""

from __future__ import annotations

import sys
from contextlib import suppress
from datetime import date
from typing import TYPE_CHECKING

from tui.cli_check import READY, UNREADABLE, Outcome
from tui.cli_text import plain

if TYPE_CHECKING:
    from model.sheets.blocks import PaperName

PAPERS: tuple[PaperName, ...] = ("A4", "Letter")


def sheets(file: str, folder: str, paper: PaperName | None) -> Outcome:
    """Write the sheets, drawings, tables and the notebook of one design.

    Args:
        paper: A4 or Letter; None means the one that goes with the units of the design.
    """
    from model.errors import FileProblem
    from model.files import load_design
    from model.review import review
    from model.sheets.write import write_sheets

    try:
        loaded = load_design(file)
        chosen = paper or ("Letter" if loaded.design.units == "in" else "A4")
        report = review(loaded.design)
        written = write_sheets(report, folder, chosen, date.today().isoformat(), told=_tell)
    except FileProblem as problem:
        return Outcome("", (str(problem),), UNREADABLE)
    notes = tuple(f"note: {sentence}" for sentence in (*loaded.warnings, loaded.why) if sentence)
    if report.musts:
        notes += (f"note: {len(report.musts)} things must be put right first; 'poolwright check' names them",)
    return Outcome("".join(f"{plain(str(path))}\n" for path in written), notes, READY)


def _tell(what: str, number: int, count: int) -> None:
    """Progress, for who watches; not into a file."""
    if sys.stderr is not None and sys.stderr.isatty():
        with suppress(OSError):
            print(f"{number}/{count} {plain(what)}", file=sys.stderr, flush=True)
