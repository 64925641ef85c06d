"""The section Results: every trial with its day, beside what the model says."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.pool.kinds import KINDS
from model.pool.results import Result, difference_words, results
from tui.forms.items import Column, Row
from tui.forms.listing import Listing, ListSection
from tui.pages.noting import back
from tui.pages.pool_trials import result_words

if TYPE_CHECKING:
    from model.review import Report


def results_section() -> ListSection:
    """The section Results."""
    return ListSection(
        Listing(
            title="Results",
            columns=(
                Column("When", 16),
                Column("What", 14),
                Column("Measured", 15, right=True),
                Column("Off the model by"),
            ),
            rows=rows,
            entries=lambda report, key: (),
            marks=lambda report, key: ("", ""),
            empty="Nothing is measured yet. Write the first reading under Trials.",
            remove=back("trials", "a trial taken back"),
            removing="Take back",
            note=lambda report, key: next(
                (_note(report, each) for each in results(report.survey) if each.trial.id == key), ""
            ),
        )
    )


def rows(report: Report) -> list[Row]:
    """The trials that stand, the newest first."""
    return [_row(report, result) for result in results(report.survey)[::-1]]


def _row(report: Report, result: Result) -> Row:
    trial, kind = result.trial, KINDS[result.trial.kind]
    measured = kind.words(trial.value, report.design.units)
    return Row(trial.id, (trial.when, kind.title, measured, difference_words(report.survey, result)))


def _note(report: Report, result: Result) -> str:
    older = "" if result.newest else " A later trial of the same thing stands."
    who = f" Noted by {result.trial.who}." if result.trial.who else ""
    notes = f" {result.trial.notes}" if result.trial.notes else ""
    return f"{result_words(report, result)}{older}{who}{notes}"
