"""The thrusters: motors in their places, and how each is held."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from model.design import Thruster, edits
from model.design.edits import Ref
from tui.forms.acts import Act
from tui.forms.entry import Entry, field, part
from tui.forms.items import Column
from tui.forms.kinds import LENGTH, TEXT, YES_NO, choice
from tui.forms.listing import ListSection
from tui.forms.section import FormSection, Section
from tui.pages.choosing import asks, name_of, pieces_of
from tui.pages.fixed import fixed_list
from tui.pages.page import Page
from tui.pages.stock_bought import add_from_preset
from tui.pages.thrusters_speed import speeds
from tui.pages.words import direction_words, pushes

if TYPE_CHECKING:
    from model.review import Report

HANDS = (("not known", None), ("right-handed", "right"), ("left-handed", "left"))
OFFSETS = ("Offset ahead", "Offset to port", "Offset up")


def needed(report: Report) -> str:
    """The directions that the task needs."""
    moves = report.design.brief.moves
    return (
        f"The task needs thrust: {', '.join(moves)}." if moves else "The brief names no directions of thrust."
    )


def cells(report: Report, thruster: Thruster) -> tuple[str, ...]:
    """Where it pushes and how it is held."""
    return direction_words(thruster.to), name_of(report, "mount", thruster.mount, "not planned")


def entries(report: Report, thruster: Thruster, ref: Ref) -> tuple[Entry, ...]:
    """What can be said of one thruster."""
    about = thruster.name
    return (
        field(ref, "to", "Pushes the vehicle", pushes(), about=about),
        *(
            part(ref, "offset", number, label, LENGTH, about=about)
            for number, label in reversed(tuple(enumerate(OFFSETS)))
        ),
        field(ref, "motor", "Motor", pieces_of("motor"), help="Which of your motors it is.", about=about),
        field(ref, "mount", "Held by", pieces_of("mount", "not planned yet"), about=about),
        field(ref, "hand", "Propeller turns", choice(*HANDS), about=about),
        field(ref, "guard", "Propeller guard", YES_NO, about=about),
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=about),
        field(ref, "notes", "Notes", TEXT, help="Anything to remember about it.", about=about),
    )


def thruster_list() -> ListSection:
    """The list of thrusters."""
    return fixed_list(
        "thruster",
        "Thrusters",
        (Column("Pushes", 9), Column("Held by", 14, least=72)),
        cells,
        entries,
        asks("thruster added", edits.add_thruster),
        "No thruster yet. Press Add. Without a motor to use, press From a preset first.",
        facts=needed,
        acts=(Act("preset", "Motors from a preset", add_motors),),
    )


def add_motors(section: Any) -> None:
    """Motors and mounts of a preset."""
    add_from_preset(section)


class ThrustersPage(Page):
    """Motors in their places."""

    WHY = (
        "A thruster pushes best in line with the middle, with clear water before and behind its "
        "propeller. Plan how each is held before you cut."
    )
    SAFETY = (
        "Propellers: hands, hair and cords clear; unplug before you touch one. Drilling tie holes: eye "
        "protection, clamp the pipe, no hand behind the wall, no loose sleeves or gloves at the drill, an "
        "adult there. Cut tie tails flush. Batteries: low-voltage DC only, a fuse at the battery, covered "
        "terminals, dry and two metres back from the water; no mains at the poolside. Soldering irons, hot "
        "glue and heat guns burn: an adult, never left alone. The makers' instructions come first."
    )
    HELP = (
        "A thruster sits on a bar, at a place along it, with an offset from the bar's centre line to the "
        "middle of the motor. Pushes says where the vehicle goes when it runs ahead.\n\n"
        "In the table: a adds, c copies, d removes, left and right move it along its bar.\n\n"
        "Clearances: room round each propeller, and what its stream loses. Drag: which parts hold it back; "
        "C_D says how badly a shape goes through the water, about 0.5 for a ball and 1.1 for a pipe across, "
        "and cm2 is what it shows; water that moves along counts like weight when it starts and stops. "
        "Shift+F1 tells where each number comes from.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """The list, how it moves, how it is held, and how it stands beside other sizes and other designs."""
        return (
            ("Thrusters", thruster_list),
            ("Speed", lambda: FormSection("Speed", lambda report: (), speeds)),
            ("Mounts", _mounts),
            ("Tie holes", _ties),
            ("Clearances", _clearances),
            ("Drag", _drag),
            ("Compare", _compare_section),
        )


def _mounts() -> Section:
    from tui.pages.thrusters_mounts import mounts_list

    return mounts_list()


def _ties() -> Section:
    from tui.pages.thrusters_ties import ties_list

    return ties_list()


def _clearances() -> Section:
    from tui.pages.thrusters_clear import clear_list

    return clear_list()


def _drag() -> Section:
    from tui.pages.thrusters_drag import drag_list

    return drag_list()


def _compare_section() -> Section:
    from tui.pages.thrusters_compare import CompareSection  # it brings the size sweep in

    return CompareSection()
