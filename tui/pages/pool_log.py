"""The section Notebook: every decision as it was made, with reasons, and what else it holds."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design import Decision
from tui.forms.acts import Act
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import LONG_TEXT, TEXT
from tui.forms.listing import Listing, ListSection
from tui.messages import SheetsRequested
from tui.pages.noting import AUTHOR, author_words, noted, noted_entry

if TYPE_CHECKING:
    from model.review import Report


def log_section() -> ListSection:
    """The section Notebook."""
    return ListSection(
        Listing(
            title="Notebook",
            columns=(Column("When", 16), Column("What was decided"), Column("Why", 14)),
            rows=rows,
            entries=entries,
            marks=lambda report, key: ("", ""),
            empty="No decision is noted yet. Each change of the design is, as soon as it is made.",
            acts=(
                Act("write", "Write the notebook", lambda section: section.post_message(SheetsRequested())),
                AUTHOR,
            ),
            facts=standing,
            note=note,
        )
    )


def standing(report: Report) -> str:
    """What the notebook will hold."""
    kept = report.design.evidence
    tries, cuts = sum(t.stands for t in kept.trials), sum(cut.stands for cut in kept.cuts)
    lines = sum(line.stands for line in kept.ledger)
    return (
        "The notebook will hold the problem, the alternatives, the drawings, every number with its formula, "
        f"decisions ({len(kept.log)}), sawn pieces ({cuts}), trials ({tries}), purchases ({lines}), "
        f"and what is still open. {author_words()}"
    )


def rows(report: Report) -> list[Row]:
    """The decisions, the newest first."""
    return [
        Row(entry.id, (entry.when, _what(entry), entry.why or "-"))
        for entry in report.design.evidence.log[::-1]
    ]


def _what(entry: Decision) -> str:
    return entry.what if entry.stands else f"(taken back) {entry.what}"


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """Why it was decided, and who decided it."""
    entry = noted(report, "log", key)
    if entry is None:
        return ()
    return (
        noted_entry("log", entry, "why", "Why", LONG_TEXT, help="In your own words; a judge asks for it."),
        noted_entry("log", entry, "who", "Who decided it", TEXT),
    )


def note(report: Report, key: str) -> str:
    """From what to what."""
    entry = noted(report, "log", key)
    if entry is None:
        return ""
    who = f" By {entry.who}." if entry.who else ""
    back = f" Taken back {entry.taken_back}." if entry.taken_back else ""
    return f"{entry.what}. From: {entry.before or 'not there'}. To: {entry.after or 'not there'}.{who}{back}"
