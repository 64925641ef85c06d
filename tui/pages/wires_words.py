"""What arrives at the motors, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.power.checks import checks_of

if TYPE_CHECKING:
    from model.review import Report

NO_PLAN = (
    "No wiring planned yet, so each motor is taken to get the volts of its test. Plan the wiring to see "
    "what the cable really leaves."
)


def supply_facts(report: Report) -> str:
    """Current, minutes and the least volts at a motor, all motors running."""
    wires = report.survey.wiring
    if wires is None:
        return NO_PLAN
    if not wires.loads:
        return "No thruster yet, so no current flows: place the motors on the page Thrusters."
    names = {item.id: item.name for item in report.design.arrangement.thrusters}
    worst = min(wires.loads, key=lambda load: load.volts)
    minutes = "" if wires.minutes is None else f", which lasts {wires.minutes:.0f} minutes"
    return (
        f"All running: {wires.amps:.1f} A from the battery{minutes}. The least arrives at "
        f"{names[worst.thruster]}: {worst.volts:.1f} of {wires.power.battery.volts:g} V."
    )


def cable_facts(report: Report) -> str:
    """What is lost on the way, by motor."""
    wires = report.survey.wiring
    if wires is None:
        return NO_PLAN
    lost = [
        f"{item.name} {100 * wires.lost[item.id]:.0f} %"
        for item in report.design.arrangement.thrusters
        if item.id in wires.lost
    ]
    return f"Volts lost on the way, there and back: {', '.join(lost) or 'none, no motor runs'}."


def open_checks(report: Report) -> str:
    """What is settled and what is not, before water and current meet."""
    power = report.design.arrangement.power
    if power is None:
        return NO_PLAN
    return "  ".join(f"{check.name}: {'settled' if check.done else 'OPEN'}" for check in checks_of(power))
