"""What the lists of things that are fixed to bars have in common."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from model.design import edits
from model.design.edits import Ref
from tui.forms.items import Column, Row
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.choosing import bar_entry, place_entry, place_words
from tui.pages.words import shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report
    from tui.forms.entry import Entry

STEP = {"mm": 0.005, "in": 0.0254 / 4}
"""[m] One step of the arrow keys along a bar."""
BAR = Column("On bar", 14, least=60)
PLACE = Column("Place", 12, right=True)


def fixed_list(
    kind: str,
    title: str,
    columns: tuple[Column, ...],
    cells: Callable[[Report, Any], tuple[str, ...]],
    entries: Callable[[Report, Any, Ref], tuple[Entry, ...]],
    add: Callable[[ListSection], None],
    empty: str,
    **more: Any,
) -> ListSection:
    """A list section for one kind of thing that is fixed to a bar.

    Args:
        cells: what stands in the columns between the name and the bar.
        entries: the fields between the name and the place.
        more: further attributes of the listing.
    """
    listing = Listing(
        title=title,
        columns=(Column("Name"), *columns, BAR, PLACE),
        rows=lambda report: [_row(report, kind, item, cells) for item in edits.pieces(report.design, kind)],
        entries=lambda report, key: _entries(report, Ref(kind, key), entries),
        marks=lambda report, key: (kind, key),
        empty=empty,
        add=add,
        copy=lambda report, key: copied(report, Ref(kind, key)),
        remove=lambda report, key: removed(report, Ref(kind, key)),
        nudge=lambda report, key, steps: nudged(report, Ref(kind, key), steps),
        locate=lambda report, about: located(report, kind, about),
    )
    return ListSection(replace(listing, **more))


def _row(report: Report, kind: str, item: Any, cells: Callable[[Report, Any], tuple[str, ...]]) -> Row:
    bar = report.survey.frame.bars[item.bar].name
    return Row(item.id, (item.name, *cells(report, item), bar, place_words(report, Ref(kind, item.id))))


def _entries(
    report: Report, ref: Ref, entries: Callable[[Report, Any, Ref], tuple[Entry, ...]]
) -> tuple[Entry, ...]:
    item = edits.find(report.design, ref)
    mine = entries(report, item, ref)
    return (mine[0], bar_entry(ref, item.name), place_entry(ref, item.name), *mine[1:])


def _name(report: Report, ref: Ref) -> str:
    return str(edits.find(report.design, ref).name)


def copied(report: Report, ref: Ref) -> Asking:
    """One more like this."""
    return f"{_name(report, ref)} copied", lambda design: edits.copy_item(design, ref)


def removed(report: Report, ref: Ref) -> Asking:
    """This one taken away."""
    return f"{_name(report, ref)} removed", lambda design: edits.remove_item(design, ref)


def nudged(report: Report, ref: Ref, steps: int) -> Asking:
    """This one moved a little along its bar."""
    by = steps * STEP[report.design.units]
    way = "on" if steps > 0 else "back"
    label = f"{_name(report, ref)} {shown(report, abs(by))} {way}"
    return label, lambda design: edits.nudge(design, ref, by)


def located(report: Report, kind: str, about: About) -> str | None:
    """The row that a finding is about: the thing itself, or the first one on its bar."""
    items = edits.pieces(report.design, kind)
    if about.kind == kind:
        return next((item.id for item in items if item.id == about.id), None)
    return next((item.id for item in items if about.kind == "bar" and item.bar == about.id), None)
