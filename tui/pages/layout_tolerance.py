"""The section Tolerance: how far the build may come out from the drawing, and whether it still fits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design.edits import Ref
from model.tolerance import Rectangle, SizeError, chance_over, rectangles, size_errors
from model.vectors import AXES
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH
from tui.forms.listing import Listing
from tui.pages.layout_size import SIZE_NAMES
from tui.pages.words import bare, in_unit, percent, shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report

COACH = Ref("thresholds")


def sizes_of(report: Report) -> tuple[SizeError, ...]:
    """The errors of length, width and height."""
    survey = report.survey
    limits = report.design.brief.thresholds
    return size_errors(survey.arrangement, survey.frame, survey.parts, survey.extents, limits)


def shapes_of(report: Report) -> tuple[Rectangle, ...]:
    """The rectangles of the frame."""
    return rectangles(report.survey.frame, report.design.brief.thresholds)


def tolerance_rows(report: Report) -> list[Row]:
    """Length, width and height, then the diagonals of each rectangle."""
    return [
        *(_size_row(report, error) for error in sizes_of(report) if error.bars),
        *(_shape_row(report, number, shape) for number, shape in enumerate(shapes_of(report))),
    ]


def _size_row(report: Report, error: SizeError) -> Row:
    size = report.survey.extents.size[error.axis]
    chance = "-" if error.chance is None else percent(error.chance)
    errors = (bare(report, error.errors.rss), bare(report, error.errors.worst))
    return Row(f"size:{error.axis}", (SIZE_NAMES[error.axis], bare(report, size), *errors, chance))


def _shape_row(report: Report, number: int, shape: Rectangle) -> Row:
    joints = report.survey.frame.joints
    corners = " to ".join(joints[shape.joints[corner]].name for corner in (0, 2))
    sides = " x ".join(bare(report, side) for side in shape.sides)
    errors = (bare(report, shape.diagonals.rss), bare(report, shape.diagonals.worst))
    return Row(f"shape:{number}", (f"diagonals: {corners}", sides, *errors, "-"))


def standing(report: Report) -> str:
    """The chance that the size limit is broken, in a sentence."""
    chance = chance_over(sizes_of(report))
    if chance is None:
        return "No cut is exact. The brief sets no size limit, so none can be broken."
    return f"No cut is exact. Chance that the build breaks the size limit: {percent(chance)}."


def tolerance_note(report: Report, key: str) -> str:
    """What the chosen line means, and what to do about it."""
    kind, _, number = key.partition(":")
    frame = report.survey.frame
    if kind == "shape":
        shape = shapes_of(report)[int(number)]
        corners = ", ".join(frame.joints[joint].name for joint in shape.joints)
        return f"Corners {corners}. Measure both diagonals of the dry frame: alike is square."
    error = next(error for error in sizes_of(report) if error.axis == int(number))
    names = ", ".join(frame.bars[bar].name for bar in error.bars)
    off, worst = shown(report, error.errors.rss), shown(report, error.errors.worst)
    return (
        f"Bars in a row: {names}. Nearly every build is off by less than {off}, either way, and none by "
        f"more than {worst}."
    )


def tolerance_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """The error of a cut and the scatter of the push-in depth."""
    saw, hand, mark = (
        in_unit(report, *each) for each in (("1.6 mm", "1/16 in"), ("3 mm", "1/8 in"), ("1 mm", "1/32 in"))
    )
    return (
        field(
            COACH,
            "cut_error",
            "A cut is off by",
            LENGTH,
            help=f"Saw ten pieces, measure them, write the largest miss. {saw} with a hand saw is usual.",
        ),
        field(
            COACH,
            "insertion_scatter",
            "Push-in differs by",
            LENGTH,
            help=f"From joint to joint. {hand} by hand is usual, {mark} when you push to a pencil mark.",
        ),
    )


def marked(report: Report, key: str) -> tuple[str, str]:
    """The first bar of a row, or the first corner of a rectangle."""
    kind, _, number = key.partition(":")
    if kind == "shape":
        return ("joint", shapes_of(report)[int(number)].joints[0])
    error = next(error for error in sizes_of(report) if error.axis == int(number))
    return ("bar", error.bars[0])


def locate(report: Report, about: About) -> str | None:
    """The row of a size, where a finding is about one."""
    key = f"size:{AXES.index(about.id)}" if about.kind == "axis" else ""
    return key if any(row.key == key for row in tolerance_rows(report)) else None


TOLERANCE = Listing(
    title="Tolerance",
    columns=(
        Column("What comes out"),
        Column("Drawn", 13, right=True),
        Column("Off by", 6, right=True),
        Column("Worst", 6, right=True),
        Column("Too large", 11, right=True, least=66),
    ),
    rows=tolerance_rows,
    entries=tolerance_entries,
    marks=marked,
    empty="No bars yet: there is nothing to be off.",
    facts=standing,
    note=tolerance_note,
    locate=locate,
)
