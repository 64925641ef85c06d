"""The section Runs: a second arrangement for another run, and what differs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.arrangements import difference_lines, differences
from model.design.edits.runs import add_run, remove_run, work_on_run
from tui.forms.acts import Act
from tui.forms.items import Column, Row
from tui.forms.listing import Asking, Listing, ListSection

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design import Arrangement
    from model.review import Report


def runs_section() -> ListSection:
    """The section Runs."""
    return ListSection(
        Listing(
            title="Runs",
            columns=(Column("Arrangement"), Column("Bars", 5, right=True), Column("Worked on", 9)),
            rows=rows,
            entries=lambda report, key: (),
            marks=lambda report, key: ("", ""),
            empty="",
            add=lambda section: section.ask("a second arrangement", add_run),
            remove=removed,
            acts=(Act("work-on", "Work on it", work_on),),
            facts=standing,
            note=note,
            locate=locate,
        )
    )


def standing(report: Report) -> str:
    """What arrangements are for, and what the brief asks of them."""
    rule = " The brief asks for the same pieces of frame." if report.design.brief.same_frame else ""
    return f"For two runs that need other things carried: Add makes a second arrangement.{rule}"


def rows(report: Report) -> list[Row]:
    """A row for each arrangement; the first is worked on."""
    first = report.design.arrangement.id
    return [
        Row(run.id, (run.name, str(len(run.bars)), "yes" if run.id == first else "no"))
        for run in report.design.arrangements
    ]


def note(report: Report, key: str) -> str:
    """How a further arrangement differs from the one that is worked on."""
    others = report.design.arrangements[1:]
    found = zip(others, differences(report.design), strict=True)
    lines = next((difference_lines(each) for run, each in found if run.id == key), None)
    if lines is None:
        return "Every page, drawing and sheet is about this one."
    return "\n".join((f"Beside {report.design.arrangement.name}:", *lines))


def _run(report: Report, key: str) -> Arrangement:
    return next(run for run in report.design.arrangements if run.id == key)


def removed(report: Report, key: str) -> Asking:
    """An arrangement taken away."""
    return f"arrangement {_run(report, key).name} removed", lambda design: remove_run(design, key)


def work_on(section: ListSection) -> None:
    """The chosen arrangement put first."""
    report, key = section.report, section.table.chosen
    if report and key:
        section.ask(f"work on {_run(report, key).name}", lambda design: work_on_run(design, key))


def locate(report: Report, about: About) -> str | None:
    """The row of an arrangement that differs; what is said of the first is put right elsewhere."""
    others = (run.id for run in report.design.arrangements[1:])
    return about.id if about.kind == "arrangement" and about.id in others else None
