"""The numbers of a survey in words, the same on screen and on the command line.  No screen here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.units import Unit, format_length, format_mass

if TYPE_CHECKING:
    from model.extents import Extents
    from model.motion.motion import Motion
    from model.power.wiring import Wiring
    from model.survey import Survey
    from model.vectors import Vector
    from model.water.balance import Balance

SIDES = ("long", "wide", "high")
LEVEL_DEG = 0.05
"""[deg] Below this a tilt is shown as level."""


def size_lines(extents: Extents, unit: Unit) -> list[tuple[str, str]]:
    """The outside size, and how it stands against its limit."""
    if extents.box is None:
        return [("Size", "nothing to measure yet")]
    size = ("Size", box_text(extents.size, unit))
    if extents.limit is None:
        return [size, ("Limit", "none written in the brief")]
    over = [
        f"{format_length(much, unit)} too {side}"
        for much, side in zip(extents.over, SIDES, strict=True)
        if much > 0
    ]
    return [size, ("Limit", f"{', '.join(over) or 'fits'}: the limit is {box_text(extents.limit, unit)}")]


def box_text(size: Vector, unit: Unit) -> str:
    """Length x width x height with the unit once."""
    return " x ".join(format_length(side, unit, with_unit=False) for side in size) + f" {unit}"


def lift_text(balance: Balance) -> str:
    """Spare buoyancy in grams and newtons, with what it does in words."""
    grams, newtons = format_mass(abs(balance.spare)), f"{abs(balance.net):.2f} N"
    if balance.spare > 0:
        return f"floats: {grams} ({newtons}) to spare"
    return f"sinks: {grams} ({newtons}) short" if balance.spare < 0 else "neither floats nor sinks"


def speed_text(moving: Motion) -> str:
    """Top speed ahead and the slower quarter turn, each with how far it may be off, and what it cannot do."""
    if not moving.body.drives:
        return "no thruster yet: it goes nowhere by itself"
    ahead = f"ahead {moving.ahead.top.text('m/s')}" if moving.ahead else "nothing drives it ahead"
    words = [ahead, turn_text(moving), cannot_text(moving)]
    return "; ".join(word for word in words if word)


def turn_text(moving: Motion) -> str:
    """The slower quarter turn, or to which sides it does not turn."""
    turn = moving.slower_turn
    if turn:
        return f"a quarter turn in {turn.quarter.text('s')}"
    if moving.port or moving.starboard:
        return f"it turns to {'port' if moving.port else 'starboard'} only"
    return "it cannot turn"


def cannot_text(moving: Motion) -> str:
    """Where it cannot go by its thrusters; nothing where it goes astern, up and down."""
    runs = (("astern", moving.astern), ("up", moving.up), ("down", moving.down))
    ways = [way for way, run in runs if run is None]
    if not ways:
        return ""
    return f"it cannot go {' or '.join(filter(None, (', '.join(ways[:-1]), ways[-1])))}"


def power_text(wires: Wiring | None) -> str:
    """The volts at the worst motor, the current and the minutes, all motors on."""
    if wires is None:
        return "no wiring planned"
    if wires.motor_volts is None:
        return "no motor to feed"
    minutes = f", for {wires.minutes:.0f} minutes" if wires.minutes is not None else ""
    return f"{wires.motor_volts:.1f} V at the worst motor, {wires.amps:.1f} A in all{minutes}"


def stalled_text(survey: Survey) -> str:
    """What the motor that draws most does to its fuse when its propeller is held fast."""
    from model.power.stall import fate_words, worst_stall

    found = worst_stall(survey.arrangement, survey.wiring) if survey.wiring else None
    if found is None:
        return ""
    name = next(item.name for item in survey.arrangement.thrusters if item.id == found.thruster)
    return f"{name} draws {found.amps:.1f} A, {fate_words(found)}"


def trim_text(balance: Balance) -> str:
    """How it comes to rest under water, in words."""
    if balance.pitch is None or balance.roll is None:
        return "nothing decides it yet"
    tilts = [
        f"{abs(angle):.1f}° {up if angle > 0 else down}"
        for angle, up, down in (
            (balance.pitch, "bow up", "stern up"),
            (balance.roll, "port side up", "starboard side up"),
        )
        if abs(angle) >= LEVEL_DEG
    ]
    return ", ".join(tilts) or "level"


def money_text(survey: Survey) -> str:
    """What is spent and still to be bought together, and what that leaves of the limit."""
    from model.money.ledger import ledger  # brings all of the money, which the first page can do without

    found = ledger(survey.design, survey.bill)
    total = found.spent + found.committed
    if found.limit is None or found.left is None:
        return f"{total:.2f} {found.currency} spent, no limit"
    rest = f"{found.left:.2f} left" if found.left >= 0 else f"{-found.left:.2f} too much"
    return f"{total:.2f} of {found.limit:.2f} {found.currency}, {rest}"
