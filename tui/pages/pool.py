"""Pool day: what is gone through first, what is measured, what came out, and the notebook."""

from __future__ import annotations

from collections.abc import Callable

from model.building.cautions import DEFER, WATER
from tui.forms.section import Section
from tui.pages.page import Page
from tui.pages.pool_before import before_section
from tui.pages.pool_log import log_section
from tui.pages.pool_results import results_section
from tui.pages.pool_trials import trials_section


class PoolPage(Page):
    """The day at the pool."""

    WHY = (
        "Go through the list aloud before every dive. Then measure: what the water says comes before what "
        "was worked out."
    )
    SAFETY = " ".join((WATER[0], WATER[2], WATER[4]))
    HELP = (
        "Before is the list to go through aloud before every dive, and what an adult looks at. Space ticks a "
        "line; the button begins anew for the next dive.\n\n"
        "Trials is the card: choose a line, read how it is measured, press Enter and write what you "
        "measured. It stands beside what the model says. Where a trial can correct the model, the line "
        "below says how, and Correct the model does it; F2 takes it back. A measurement cannot tell two "
        "causes apart: look at the other one first.\n\n"
        "Results is every trial with the day. Notebook is every decision as it was made; write down why. "
        "Shift+F4 makes the notebook as a page for a browser.\n\n"
        f"{' '.join((*WATER, DEFER))}"
    )

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Before, trials, results, notebook."""
        return (
            ("Before", before_section),
            ("Trials", trials_section),
            ("Results", results_section),
            ("Notebook", log_section),
        )
