"""How steady it is: lift and trim with their spread, what tips it, how it swings, the load on the hook."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.units import format_length, format_mass
from model.water.depth import spare_at_depth
from model.water.righting import Loaded
from model.water.stability import TEST_LOAD, righting_curve, stability
from tui.phrases import lift_text, trim_text

if TYPE_CHECKING:
    from model.review import Report
    from model.survey import Survey
    from model.vectors import Vector

CURVE_WIDTH = 24


def steadiness(report: Report) -> str:
    """Everything about balance, a line each."""
    found = report.survey
    if not found.balance.mass:
        return "There is nothing to float yet."
    return "\n".join([*_lift(found), *_points(found), *_swings(found), *_load(found), *_curve(found)])


def _lift(found: Survey) -> list[str]:
    spread, kit, unit = found.spread, found.kit, found.design.units
    lines = [
        f"In water: it {lift_text(found.balance)}, give or take {format_mass(spread.spare)}",
        f"At rest {trim_text(found.balance)}, give or take {max(spread.pitch, spread.roll):.1f}°",
    ]
    squeeze = found.design.brief.foam_squeeze
    if squeeze:
        deep = spare_at_depth(found.parts, found.balance, squeeze)
        does = "floats up" if deep >= 0 else "sinks"
        lines.append(f"At depth, foam squeezed by {squeeze:g} %: it {does} with {format_mass(abs(deep))}")
    foam = f" and {format_length(kit.foam_length, unit)} of foam" if kit.foam else ""
    return [*lines, f"Trim kit for the pool: {kit.washers} washers{foam} cover that"]


def _points(found: Survey) -> list[str]:
    balance, unit = found.balance, found.design.units
    return [
        f"Weight acts at G: {_place(balance.g, found)}",
        f"Lift acts at B: {_place(balance.b, found)}",
        f"Lift point above balance point (BG): {format_length(balance.bg, unit)}",
    ]


def _place(at: Vector, found: Survey) -> str:
    sides = (("ahead", "aft"), ("to port", "to starboard"), ("up", "down"))
    words = [
        f"{format_length(abs(step), found.design.units)} {pair[step < 0]}"
        for step, pair in zip(at, sides, strict=True)
    ]
    return ", ".join(words)


def _swings(found: Survey) -> list[str]:
    calm = stability(found.design, found.arrangement, found.frame, found.parts, found.balance, found.thrust)
    lines = [
        f"One swing in {name}: {seconds:.1f} s"
        for name, seconds in (("roll", calm.roll_period), ("pitch", calm.pitch_period))
        if seconds is not None
    ]
    if calm.tipped:
        lines.append(f"{format_mass(TEST_LOAD)} on the hook: {_tilt(calm.tipped)}")
    return lines


def _load(found: Survey) -> list[str]:
    calm = stability(found.design, found.arrangement, found.frame, found.parts, found.balance, found.thrust)
    load = found.design.brief.load
    if load is None or calm.loaded is None:
        return []
    held = calm.loaded
    if held.margin is None:
        return [f"{load.name} on the hook: {_tilt(held)}; it floats up with it all the same"]
    return [
        f"{load.name} on the hook: {_tilt(held)}; holding it takes {held.needed:.1f} N, and the upright "
        f"thrusters pull {held.margin:.1f} times that"
    ]


def _tilt(held: Loaded) -> str:
    if held.pitch is None or held.roll is None:
        return "nothing decides how it lies"
    bow = f"{'bow' if held.pitch >= 0 else 'stern'} up {abs(held.pitch):.0f}°"
    side = f"{'port' if held.roll >= 0 else 'starboard'} side up {abs(held.roll):.0f}°"
    return f"{bow}, {side}"


def _curve(found: Survey) -> list[str]:
    curve = righting_curve(found.balance)
    most = max((abs(moment) for _, moment in curve), default=0.0) or 1.0
    lines = ["Tilted from rest by, it turns back with:"]
    for angle, moment in curve:
        mark = "█" * round(CURVE_WIDTH * abs(moment) / most)
        lines.append(f"{angle:>4}°  {mark} {abs(moment):.3f} N·m")
    return lines
