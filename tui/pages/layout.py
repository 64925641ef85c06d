"""The layout: overall size, planes and bars; the saw cuts follow."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from typing import TYPE_CHECKING

from model.coach.sentences import listed
from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.kinds import COUNT, MASS, MONEY, TEXT, YES_NO, choice
from tui.forms.listing import ListSection
from tui.forms.section import FormSection, Section
from tui.pages.layout_bars import BARS
from tui.pages.layout_outline import OUTLINE
from tui.pages.layout_planes import PLANES
from tui.pages.layout_runs import runs_section
from tui.pages.layout_size import SIZE
from tui.pages.layout_tolerance import TOLERANCE
from tui.pages.page import Page
from tui.pages.words import JOININGS

if TYPE_CHECKING:
    from model.review import Report

ARRANGEMENT, PIN = Ref("arrangement"), Ref("pin")
BORES = choice(("flooded: water is let in", "flooded"), ("sealed for good", "sealed"))


def frame_entries(report: Report) -> tuple[Entry, ...]:
    """Flooded or sealed, dry or cemented; what it is called."""
    return (
        field(
            ARRANGEMENT,
            "bores",
            "The pipes are",
            BORES,
            help="Sealed is for good: every joint is glued, no hole is drilled, nothing can be changed "
            "later. Flooded is the usual way.",
        ),
        field(ARRANGEMENT, "joining", "The joints are", choice(*JOININGS)),
        *_pin_entries(report),
        field(ARRANGEMENT, "name", "Name", TEXT, help="What this arrangement is called."),
        field(ARRANGEMENT, "notes", "Notes", TEXT, help="Anything to remember about it."),
    )


def _pin_entries(report: Report) -> tuple[Entry, ...]:
    """The screw or tie that holds a pinned joint, where there is one."""
    if not any(joint.joining == "pinned" for joint in report.survey.frame.joints.values()):
        return ()
    about = "pins"
    return (
        field(PIN, "name", "Pinned with", TEXT, help="A screw or a tie through both walls.", about=about),
        field(PIN, "each_end", "At each pipe end", COUNT, about=about),
        field(PIN, "mass", "One weighs", MASS, about=about),
        field(PIN, "price", "Price of one", MONEY, about=about),
        field(PIN, "counts", "Counts on the bill", YES_NO, about=about),
    )


def frame_facts(report: Report) -> str:
    """How many joints are held in which way, and what the pins come to."""
    ways = Counter(joint.joining for joint in report.survey.frame.joints.values())
    held = listed([f"{ways[way]} {words.split(':')[0]}" for words, way in JOININGS if ways[way]] or ["none"])
    pins = sum(line.quantity for line in report.survey.bill.lines if line.kind == "pin")
    return f"Joints: {held}." + (f" Pins: {pins}." if pins else "")


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
        "Button Draw: build the frame on the drawing itself, with a cursor or the mouse. Section Bars: add "
        "a bar by choosing two crossings, split one where a plane crosses it to get a tee, or press Mirror "
        "to have a bar or a whole side on the other side too. Change a cut and the planes move; a piece "
        "that is already sawn holds them. Section Planes: name and move them.\n\n"
        "Section Size: three ways to say how large it is, side by side: overall, centre to centre, or the "
        "cut of a bar. Change any one and the other two follow; pieces of one letter stay alike.\n\n"
        "Section Tolerance: saw cuts and push-in depths are never exact. It says how far each size may come "
        "out, most likely and at worst, and how far the diagonals of each rectangle may differ. Section "
        "Outline: how much it shows to the water, and which hoop or gate it passes through. "
        "Section Runs: a second arrangement for another run, and what differs; its name is under Joints.\n\n"
        "In a table: a adds, d removes, left and right move a plane a little, Enter goes to the fields.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Bars first, since that is where the cuts are."""
        return (
            ("Bars", lambda: ListSection(BARS)),
            ("Planes", lambda: ListSection(PLANES)),
            ("Size", lambda: ListSection(SIZE)),
            ("Tolerance", lambda: ListSection(TOLERANCE)),
            ("Outline", lambda: ListSection(OUTLINE)),
            ("Runs", runs_section),
            ("Joints", lambda: FormSection("Joints", frame_entries, frame_facts, ("arrangement",))),
        )
