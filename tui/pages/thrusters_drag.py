"""What holds it back: the share of each kind of part in the drag, and the water that moves along."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.explain_drag import SPEED, shares_by_kind
from model.motion.shares import together
from model.silhouette import silhouettes
from tui.forms.items import Column, Row
from tui.forms.listing import Listing, ListSection
from tui.pages.words import area

if TYPE_CHECKING:
    from model.motion.shares import Facing, Share
    from model.motion.span import Span
    from model.review import Report

ALL = "all"
"""The key of the last row."""
MOST = 2
"""So many parts of a kind are named."""
EMPTY = "Nothing to drag yet: the frame has no bars."


def drag_list() -> ListSection:
    """A row for each kind of part, and one for all."""
    return ListSection(
        Listing(
            title="Drag",
            columns=(
                Column("Parts"),
                Column("Ahead", 6, right=True),
                Column("C_D", 5, right=True),
                Column("cm2", 5, right=True),
                Column("Up", 6, right=True),
                Column("C_D", 5, right=True, least=70),
                Column("cm2", 5, right=True, least=70),
                Column("Water kg", 8, right=True),
            ),
            rows=rows,
            entries=lambda report, key: (),
            marks=lambda report, key: ("", ""),
            empty=EMPTY,
            facts=facts,
            note=note,
        )
    )


def facts(report: Report) -> str:
    """What the water does to the whole, and what it shows to it."""
    kinds = shares_by_kind(report.survey)
    if not kinds:
        return ""
    whole, areas = together(ALL, "", kinds), silhouettes(report.survey.parts)
    return (
        f"At {SPEED:g} m/s {spread(whole.ahead.drag(SPEED), 1)}, up {spread(whole.up.drag(SPEED), 1)}.\n"
        f"Silhouette {area(areas.front)} ahead, {area(areas.side)} side, {area(areas.top)} top."
    )


def spread(drag: Span, digits: int) -> str:
    """A drag with how low and how high it may be."""
    return f"{drag.value:.{digits}f} N ({drag.low:.{digits}f}-{drag.high:.{digits}f})"


def rows(report: Report) -> list[Row]:
    """Each kind ahead and up: share, coefficient, area [cm2]; and the water moved along ahead [kg]."""
    kinds = shares_by_kind(report.survey)
    if not kinds:
        return []
    whole = together(ALL, "all parts", kinds)
    return [Row(share.kind, cells(share, whole)) for share in (*kinds, whole)]


def cells(share: Share, whole: Share) -> tuple[str, ...]:
    """What stands in one row."""
    return (
        share.name,
        *facing_cells(share.ahead, whole.ahead),
        *facing_cells(share.up, whole.up),
        f"{share.added.xx + share.inside:.2f}",
    )


def facing_cells(facing: Facing, whole: Facing) -> tuple[str, str, str]:
    """Share of the drag, coefficient and area one way."""
    part = f"{100 * facing.k / whole.k:.0f} %" if whole.k else "-"
    coefficient = "-" if facing.coefficient is None else f"{facing.coefficient:.2f}"
    return part, coefficient, f"{facing.area * 1e4:.0f}"


def note(report: Report, key: str) -> str:
    """Drag, water moved along and water inside of one kind, and its parts that drag most."""
    kinds = shares_by_kind(report.survey)
    whole = together(ALL, "all parts", kinds)
    share = next((each for each in kinds if each.kind == key), whole)
    added = share.added
    lines = [
        f"{spread(share.ahead.drag(SPEED), 2)} ahead, {spread(share.up.drag(SPEED), 2)} up.",
        f"Moves {added.xx:.2f} kg of water ahead, {added.yy:.2f} sideways, {added.zz:.2f} up.",
    ]
    if share.inside:
        lines.append(f"{share.inside:.2f} kg of water inside it moves along as well.")
    if key == ALL:
        lines.append("Each part counts as if it stood alone.")
    elif share.count > 1:
        lines.append(f"Most ahead: {most_words(report, key)}.")
    return "\n".join(lines)


def most_words(report: Report, kind: str) -> str:
    """The parts of a kind that drag most ahead."""
    found = [share for share in report.survey.shares if share.kind == kind]
    found.sort(key=lambda share: -share.ahead.k)
    return ", ".join(f"{share.name} {share.ahead.drag(SPEED).value:.2f} N" for share in found[:MOST])
