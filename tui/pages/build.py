"""The build: the order of work, the pieces as they were sawn, and the sheets to print."""

from __future__ import annotations

from collections.abc import Callable

from model.building.cautions import DEFER
from tui.forms.section import Section
from tui.pages.build_pieces import pieces_section
from tui.pages.build_work import work_section
from tui.pages.page import Page
from tui.pages.sheets import SheetsSection


class BuildPage(Page):
    """The work at the bench."""

    WHY = (
        "The order saves work: foam goes on before its loop is closed, holes are drilled before motors "
        "hang on. Tick what is done."
    )
    SAFETY = (
        "Eye protection at every saw, drill and cutter; clamp the work; an adult stands by; tie back hair "
        "and sleeves. The cautions of each step stand with it."
    )
    HELP = (
        "Work is the order of work for this design: what, with which tool, the cautions, and how to see that "
        "it is right. Space ticks a step, and ticks it off again; Page Down reads on. Each tick keeps its "
        "time and who was at the keyboard.\n\n"
        "Pieces: measure every piece after it is sawn and type its length. Within 1.5 mm is fine. Beyond "
        "that the coach says what to do: saw it again, or build with it; then the frame and the cuts that "
        "are left follow the piece.\n\n"
        "Sheets makes the pages to print: drawings, cut sheet, drill templates, lists, the notebook.\n\n"
        f"{SAFETY} {DEFER}"
    )

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """The work, the pieces, the sheets."""
        return (("Work", work_section), ("Pieces", pieces_section), ("Sheets", SheetsSection))
