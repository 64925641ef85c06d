"""The holes: let water into the pipes and air out, or seal them for good."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from model.design import Opening, Plug, edits
from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.items import Column
from tui.forms.kinds import LENGTH, TEXT, YES_NO
from tui.forms.listing import ListSection
from tui.forms.section import FormSection, Section
from tui.pages.choosing import asks
from tui.pages.fixed import fixed_list
from tui.pages.holes_air import air_section
from tui.pages.layout import ARRANGEMENT, BORES
from tui.pages.page import Page
from tui.pages.words import FACES, bare, direction_words, faces, in_unit

if TYPE_CHECKING:
    from model.review import Report

SEALED = (
    "Sealed is for good: every joint is glued, nothing can be changed, and the frame floats up much more. "
    "Dry-fit, weigh and try everything first."
)


def cells(report: Report, hole: Opening) -> tuple[str, ...]:
    """Side and diameter."""
    both = ", through" if hole.through else ""
    return f"{FACES.get(hole.face, direction_words(hole.face))}{both}", bare(report, hole.diameter)


def entries(report: Report, hole: Opening, ref: Ref) -> tuple[Entry, ...]:
    """What can be said of one hole."""
    about = hole.name
    return (
        field(ref, "face", "Drilled", faces(), about=about),
        field(
            ref,
            "diameter",
            "Diameter",
            LENGTH,
            help=f"Below about {in_unit(report, '6 mm', '1/4 in')} water holds the air in.",
            about=about,
        ),
        field(ref, "through", "Through both walls", YES_NO, about=about),
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=about),
        field(ref, "notes", "Notes", TEXT, help="Anything to remember about it.", about=about),
    )


def holes_list() -> ListSection:
    """The list of holes."""
    return fixed_list(
        "opening",
        "Holes",
        (Column("Side", 13), Column("Drill", 6, right=True, least=64)),
        cells,
        entries,
        asks("hole added", edits.add_opening),
        "No holes yet. Press Add: one on top lets air out, one below lets water in and out.",
        facts=pipes_now,
    )


def plug_entries(report: Report, plug: Plug, ref: Ref) -> tuple[Entry, ...]:
    """What can be said of one plug."""
    about = plug.name
    return (
        field(ref, "length", "Length", LENGTH, about=about),
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=about),
        field(ref, "notes", "Notes", TEXT, help="Anything to remember about it.", about=about),
    )


def plugs_list() -> ListSection:
    """The list of plugs in the bores."""
    return fixed_list(
        "plug",
        "Plugs",
        (Column("Length", 7, right=True),),
        lambda report, plug: (bare(report, plug.length),),
        plug_entries,
        asks("plug added", edits.add_plug),
        "No plugs. One closes a bore to water and air, where a stretch of pipe is to stay dry.",
    )


def pipes_now(report: Report) -> str:
    """Whether the bores are flooded, and how many holes there are."""
    arrangement = report.design.arrangement
    count = len(arrangement.openings)
    holes = f"{count} {'hole' if count == 1 else 'holes'}"
    if arrangement.bores == "sealed":
        return f"The pipes are sealed; {holes} planned. Change it in the section Pipes."
    return f"The pipes are flooded; {holes} planned: low ones drain, high ones let air out."


def pipes_entries(report: Report) -> tuple[Entry, ...]:
    """Flooded or sealed."""
    return (field(ARRANGEMENT, "bores", "The pipes are", BORES, help=SEALED),)


def pipes_form() -> FormSection:
    """Flooded or sealed, with what it means."""
    return FormSection(
        "Pipes", pipes_entries, lambda report: f"{pipes_now(report)}\n{SEALED}", ("arrangement", "design", "")
    )


class HolesPage(Page):
    """Openings in the pipes."""

    WHY = (
        "Air caught in the pipes lifts where you do not want it. Drill high up to let air out and low "
        "down to let water in, or seal it all for good."
    )
    SAFETY = (
        "Drilling: eye protection, clamp the pipe in a notched block, no hand behind the wall that is "
        "drilled, no loose sleeves or gloves, hair tied back, an adult at the drill. Let the bit cool, brush "
        "dust away, do not blow it. A glued, sealed pipe is never heated, and is opened slowly. The makers' "
        "instructions and your school's rules come first."
    )
    HELP = (
        "A flooded frame needs a hole low down to drain and one high up to let the air out; each closed-off "
        "stretch of pipe needs its own. Holes of 6 mm or more let air pass. Keep them a pipe's width away "
        "from the face of a socket.\n\nIn the table: a adds, c copies, d removes, left and right move it.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Holes, the air in the pipes, flooded or sealed, plugs."""
        return (("Holes", holes_list), ("Air", air_section), ("Pipes", pipes_form), ("Plugs", plugs_list))
