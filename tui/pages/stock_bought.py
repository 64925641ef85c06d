"""Motors, mounts and foam: what is measured of them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from model.design import edits
from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, MASS, MONEY, TEXT, YES_NO, choice, number
from tui.forms.listing import ListSection
from tui.pages.choosing import pick_preset
from tui.pages.words import bare

if TYPE_CHECKING:
    from model.presets import Preset
    from model.review import Report

METHODS = choice(("ties", "ties"), ("clamp", "clamp"), ("stub in a socket", "stub"))
BOUGHT_COLUMNS = (
    Column("Name"),
    Column("In air", 6, right=True),
    Column("Wet", 6, right=True),
    Column("Pull/by", 7),
    Column("Price", 6, right=True),
)
FOAM_COLUMNS = (
    Column("Foam tube"),
    Column("Outside", 8, right=True),
    Column("Hole", 6, right=True),
    Column("kg/m3", 6, right=True),
    Column("Price", 6, right=True),
)


def bought_rows(kind: str, report: Report) -> list[Row]:
    """Motors or mounts."""
    return [
        Row(
            piece.id,
            (
                piece.name,
                f"{piece.mass * 1000:.0f} g",
                f"{piece.mass_in_water * 1000:.0f} g",
                f"{piece.thrust_ahead:g} N" if kind == "motor" else piece.method,
                f"{piece.price:g}",
            ),
        )
        for piece in edits.pieces(report.design, kind)
    ]


def bought_entries(kind: str, report: Report, key: str) -> tuple[Entry, ...]:
    """What is measured of a motor or a mount."""
    ref = Ref(kind, key)
    about = edits.find(report.design, ref).name
    mine = (
        _motor_entries(ref, about)
        if kind == "motor"
        else (field(ref, "method", "Held by", METHODS, about=about),)
    )
    return (
        field(ref, "name", "Name", TEXT, help="What it is called.", about=about),
        field(ref, "mass", "Weight in air", MASS, about=about),
        field(ref, "mass_in_water", "Weight in water", MASS, about=about),
        *mine,
        field(ref, "price", "Price", MONEY, help="Price of one.", about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
    )


def _motor_entries(ref: Ref, about: str) -> tuple[Entry, ...]:
    return (
        field(ref, "thrust_ahead", "Pull ahead", number("N"), about=about),
        field(ref, "thrust_astern", "Pull astern", number("N"), optional=True, about=about),
        field(ref, "volts", "At", number("V"), about=about),
        field(ref, "body_diameter", "Body diameter", LENGTH, about=about),
        field(ref, "body_length", "Body length", LENGTH, about=about),
        field(ref, "propeller_diameter", "Propeller diameter", LENGTH, about=about),
    )


def foam_rows(report: Report) -> list[Row]:
    """Each kind of foam tube."""
    return [
        Row(
            foam.id,
            (
                foam.name,
                bare(report, foam.outside_diameter),
                bare(report, foam.hole),
                f"{foam.density:g}",
                f"{foam.price:g}",
            ),
        )
        for foam in report.design.supplies.foams
    ]


def foam_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """What is measured of a foam tube."""
    ref = Ref("foam", key)
    about = edits.find(report.design, ref).name
    return (
        field(ref, "name", "Name", TEXT, help="What it is called.", about=about),
        field(ref, "outside_diameter", "Outside diameter", LENGTH, about=about),
        field(ref, "hole", "Hole", LENGTH, about=about),
        field(ref, "density", "Foam weighs", number("kg/m3"), about=about),
        field(ref, "sold_length", "Sold length", LENGTH, about=about),
        field(ref, "price", "Price of one tube", MONEY, about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
    )


def add_from_preset(section: ListSection) -> None:
    """Motors, mounts and foams of a preset beside those of the team."""

    def use(preset: Preset, supplies: Any) -> None:
        section.ask(f"{preset.title} added", lambda design: edits.add_supplies(design, supplies))

    pick_preset(section, "motors", "Which motors, mounts and foam do you have?", use)
