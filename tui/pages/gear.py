"""The gear: hook, camera, other parts, and the tether."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from model.design import Attachment, edits
from model.design.edits import Ref
from tui.forms.acts import Act
from tui.forms.entry import Entry, field, part
from tui.forms.items import Column
from tui.forms.kinds import COUNT, LENGTH, MASS, MASS_PER_M, MONEY, SIZES, TEXT, YES_NO, choice
from tui.forms.listing import ListSection
from tui.forms.section import FormSection, Section
from tui.pages.choosing import asks, bar_entry, place_entry
from tui.pages.fixed import fixed_list, removed
from tui.pages.page import Page
from tui.pages.words import in_unit, shown

if TYPE_CHECKING:
    from model.review import Report

TETHER = Ref("tether")
KINDS = (("hook", "hook"), ("camera", "camera"), ("something else", "other"))
OFFSETS = ("Offset ahead", "Offset to port", "Offset up")


def cells(report: Report, item: Attachment) -> tuple[str, ...]:
    """What it is and weighs."""
    return item.kind, f"{item.mass * 1000:.0f} g", f"{item.mass_in_water * 1000:.0f} g"


def entries(report: Report, item: Attachment, ref: Ref) -> tuple[Entry, ...]:
    """What can be said of one part."""
    about = item.name
    return (
        field(
            ref,
            "kind",
            "What it is",
            choice(*KINDS),
            help="A hook, a camera, or something else.",
            about=about,
        ),
        *(
            part(ref, "offset", number, label, LENGTH, about=about)
            for number, label in reversed(tuple(enumerate(OFFSETS)))
        ),
        field(
            ref,
            "size",
            "Size, l x w x h",
            SIZES,
            help="Length x width x height, like "
            + in_unit(report, "60 x 40 x 40.", "2 1/2 x 1 1/2 x 1 1/2."),
            about=about,
        ),
        field(ref, "mass", "Weight in air", MASS, about=about),
        field(ref, "mass_in_water", "Weight in water", MASS, about=about),
        field(ref, "price", "Price", MONEY, help="What it costs.", about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=about),
        field(ref, "notes", "Notes", TEXT, help="Anything to remember about it.", about=about),
    )


def parts_list() -> ListSection:
    """The list of attachments."""
    return fixed_list(
        "attachment",
        "Parts",
        (
            Column("Kind", 6, least=72),
            Column("In air", 6, right=True),
            Column("Wet", 6, right=True, least=64),
        ),
        cells,
        entries,
        add_part,
        "No hook, camera or other part yet. Press Add.",
    )


def add_part(section: ListSection) -> None:
    """Ask what it is, and add it."""
    section.pick(
        "What do you fix to the frame?",
        KINDS,
        lambda kind: section.ask(
            f"{'part' if kind == 'other' else kind} added",
            lambda design: edits.add_attachment(design, kind),
        ),
        "hook",
    )


def tether_entries(report: Report) -> tuple[Entry, ...]:
    """What can be said of the tether, if there is one."""
    tether = report.design.arrangement.tether
    if tether is None:
        return ()
    return (
        bar_entry(TETHER, ""),
        place_entry(TETHER, ""),
        field(TETHER, "diameter", "Diameter", LENGTH, help="Outside diameter of the cable or bundle."),
        field(TETHER, "hanging", "Hanging length", LENGTH),
        field(TETHER, "mass_per_m", "Weight of 1 m in air", MASS_PER_M),
        field(TETHER, "mass_in_water_per_m", "Weight of 1 m in water", MASS_PER_M),
        field(TETHER, "floats", "Small floats", COUNT),
        field(TETHER, "float_lift", "One float lifts", MASS),
        field(TETHER, "price", "Price", MONEY, help="What it costs."),
        field(TETHER, "counts", "Counts on the bill", YES_NO),
    )


def tether_facts(report: Report) -> str:
    """What the tether does to the vehicle."""
    tether = report.design.arrangement.tether
    if tether is None:
        return "No tether yet. Press Add: the vehicle carries a part of it, and that counts."
    bar = report.survey.frame.bars[tether.bar].name
    return f"Tied to '{bar}', {shown(report, tether.hanging)} of it hang from the vehicle."


def remove_tether(section: Section) -> None:
    """The tether taken away."""
    if section.report and section.report.design.arrangement.tether:
        section.ask(*removed(section.report, TETHER))
    else:
        section.say("! There is no tether to remove.")


def tether_form() -> FormSection:
    """The section for the tether."""
    acts = (
        Act("add", "Add", asks("tether added", edits.add_tether)),
        Act("remove", "Remove", remove_tether),
    )
    return FormSection("Tether", tether_entries, tether_facts, ("tether",), acts)


class GearPage(Page):
    """Hook, camera, tether."""

    WHY = (
        "What hangs on the frame weighs, sticks out and drags. Weigh each part in air and again hung "
        "in water. The tether pulls where it is tied."
    )
    SAFETY = (
        "Hooks: no sharp points towards hands. Tether: one named handler, never alone, no loops round wrists "
        "or ankles; lift the vehicle by its frame, never by the tether. Low-voltage DC only, plugs and "
        "battery dry and two metres back, a fuse at the battery, no mains at the poolside. Epoxy and acetone "
        "stay off skin, in moving air. The pool's rules come first."
    )
    HELP = (
        "Weigh each part in air, then hung in water from a thin thread. A part that floats has a weight in "
        "water below zero: tie a known weight to it and take that off again.\n\n"
        "Of the tether only the hanging length counts; its handler carries the rest.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Parts and the tether."""
        return (("Parts", parts_list), ("Tether", tether_form))
