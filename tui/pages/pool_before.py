"""The section Before: the list before a dive, what to bring, and what an adult looks at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design.edits.evidence import done_steps, tick, untick
from model.pool.card import kit_words
from model.pool.safety import AFTER_DIVE, PRE_DIVE, inspection
from tui import stamp
from tui.forms.acts import Act
from tui.forms.items import Column, Row
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.noting import AUTHOR, author_words

if TYPE_CHECKING:
    from model.design import Design
    from model.review import Report

MARK = "before a dive: "
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
            note=lambda report, key: _lines(report)[key],
        )
    )


def _lines(report: Report) -> dict[str, str]:
    """Every line by its key, which is its own words: a line that changes is to be ticked again."""
    groups = (
        ("bring", kit_words(report.survey)),
        ("adult", inspection(report.survey)),
        ("dive", PRE_DIVE),
        ("after", AFTER_DIVE),
    )
    return {f"{group}:{words}": words for group, lines in groups for words in lines}


def step_of(key: str) -> str:
    """What a tick of a line is called in the evidence."""
    words = f"{MARK}{key.partition(':')[2]}"
    return words if len(words) <= 120 else f"{words[:117]}..."


def rows(report: Report) -> list[Row]:
    """A row for each line."""
    done = done_steps(report.design)
    return [
        Row(key, (DONE if step_of(key) in done else OPEN, GROUPS[key.partition(":")[0]], words))
        for key, words in _lines(report).items()
    ]


def standing(report: Report) -> str:
    """How much was gone through."""
    done, keys = done_steps(report.design), [key for key in _lines(report) if not key.startswith("after")]
    ready = sum(step_of(key) in done for key in keys)
    return f"{ready} of {len(keys)} lines are gone through. {author_words()}"


def ticked(report: Report, key: str) -> Asking:
    """The line gone through, or open again."""
    step = step_of(key)
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
