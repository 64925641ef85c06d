"""The section Before: the list before a dive, what to bring, and what an adult looks at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design.edits.evidence import done_steps, tick, untick
from model.pool.checklist import MARK, before_a_dive, checklist, still_open, tick_name
from tui import stamp
from tui.forms.acts import Act
from tui.forms.items import Column, Row
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.noting import AUTHOR, author_words

if TYPE_CHECKING:
    from model.design import Design
    from model.review import Report

DONE, OPEN = "√", "·"
GROUPS = {"bring": "Bring", "adult": "An adult looks", "dive": "Before", "after": "After"}


def before_section() -> ListSection:
    """The section Before."""
    return ListSection(
        Listing(
            title="Before",
            columns=(Column("Done", 4), Column("When", 14), Column("What")),
            rows=rows,
            entries=lambda report, key: (),
            marks=lambda report, key: ("", ""),
            empty="",
            tick=ticked,
            acts=(Act("anew", "Begin anew", begin_anew), AUTHOR),
            facts=standing,
            note=lambda report, key: checklist(report.survey)[key],
        )
    )


def rows(report: Report) -> list[Row]:
    """A row for each line."""
    done = done_steps(report.design)
    return [
        Row(key, (DONE if tick_name(key) in done else OPEN, GROUPS[key.partition(":")[0]], words))
        for key, words in checklist(report.survey).items()
    ]


def standing(report: Report) -> str:
    """How much was gone through."""
    count = len(before_a_dive(report.survey))
    ready = count - still_open(report.design, report.survey)
    return f"{ready} of {count} lines are gone through. {author_words()}"


def ticked(report: Report, key: str) -> Asking:
    """The line gone through, or open again."""
    step = tick_name(key)
    if step in done_steps(report.design):
        return "a line open again", lambda design: untick(design, step, stamp.now())
    return "a line gone through", lambda design: tick(design, step, stamp.now(), stamp.who())


def begin_anew(section: ListSection) -> None:
    """All ticks of the list taken away for the next dive; the notebook keeps them."""

    def opened(design: Design) -> Design:
        for step in done_steps(design):
            if step.startswith(MARK):
                design = untick(design, step, stamp.now())
        return design

    section.ask("the list before a dive begun anew", opened)
