"""The layout: overall size, planes and bars; the saw cuts follow."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from model.design import edits
from model.design.edits import PLANE_KINDS, Ref
from tui.forms.entry import Entry, field
from tui.forms.kinds import DERIVED_LENGTH, TEXT, choice
from tui.forms.listing import ListSection
from tui.forms.section import FormSection, Section
from tui.pages.layout_bars import BARS
from tui.pages.layout_planes import PLANES
from tui.pages.page import Page
from tui.pages.words import JOININGS, shown, sizes

if TYPE_CHECKING:
    from model.review import Report

ARRANGEMENT = Ref("arrangement")
SIZE_NAMES = ("length", "width", "height")
BORES = choice(("flooded: water is let in", "flooded"), ("sealed for good", "sealed"))


def overall(report: Report) -> str:
    """The size of the whole vehicle against the limit."""
    extents = report.survey.extents
    words = f"Overall {sizes(report, extents.size)}, hubs, thrusters and floats included"
    if extents.limit is None:
        return f"{words}. The brief sets no size limit."
    limit = f"{words}; the limit is {sizes(report, extents.limit)}"
    over = [
        f"{shown(report, excess)} too much in {name}"
        for name, excess in zip(SIZE_NAMES, extents.over, strict=True)
        if excess
    ]
    return f"{limit}: {', '.join(over) if over else 'it fits'}."


def size_entries(report: Report) -> tuple[Entry, ...]:
    """Drive the frame by its overall size; choose flooded or sealed."""
    return (
        *(_size_entry(report, number) for number in range(3)),
        field(
            ARRANGEMENT,
            "bores",
            "The pipes are",
            BORES,
            help="Sealed is for good: every joint is glued, no hole is drilled, nothing can be changed "
            "later. Flooded is the usual way.",
        ),
        field(ARRANGEMENT, "joining", "The joints are", choice(*JOININGS)),
        field(ARRANGEMENT, "name", "Name", TEXT, help="What this arrangement is called."),
        field(ARRANGEMENT, "notes", "Notes", TEXT, help="Anything to remember about it."),
    )


def _size_entry(report: Report, number: int) -> Entry:
    kind, now = PLANE_KINDS[number], report.survey.extents.size[number]
    return Entry(
        key=f"size-{number}",
        label=f"Overall {SIZE_NAMES[number]}",
        kind=DERIVED_LENGTH,
        get=lambda report: report.survey.extents.size[number],
        edit=lambda wanted: lambda design: edits.resize(design, kind, now, wanted),
        help=f"Change it and all {kind}s move in proportion; the cuts follow.",
    )


class LayoutPage(Page):
    """The frame on its planes."""

    WHY = (
        "Small and light is quick, large and wide is steady; a broad front costs speed. "
        "Change a length and the saw cuts follow."
    )
    SAFETY = (
        "Saws and cutters: eye protection on, clamp the work, an adult at the saw, fingers clear of the "
        "blade. A ratchet cutter throws shards and bites fingers; sweep up dust and do not breathe it. "
        "Sealed pipes are glued with primer and solvent cement: moving air, gloves, no flames, and never "
        "heat PVC. A sealed pipe is never heated, is opened slowly, and is sealed for good. The makers' "
        "instructions, your school's rules and local codes come first."
    )
    HELP = (
        "The frame lies on planes: stations lie across the vehicle, sides along it, levels flat. A joint "
        "is where three planes cross, a bar runs between two joints in one line.\n\n"
        "Section Size: change an overall size and all planes move in proportion. Section Planes: name and "
        "move them. Section Bars: add a bar by choosing two crossings, split one where a plane crosses it "
        "to get a tee, or change a cut and let its plane move.\n\n"
        "In a table: a adds, d removes, left and right move a plane a little, Enter goes to the fields.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Bars first, since that is where the cuts are."""
        kinds = ("vehicle", "design", "arrangement", "size", "")
        return (
            ("Bars", lambda: ListSection(BARS)),
            ("Planes", lambda: ListSection(PLANES)),
            ("Size", lambda: FormSection("Size", size_entries, overall, kinds)),
        )
