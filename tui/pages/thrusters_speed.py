"""How it moves: speeds, turns and tilts with their spread, and a run on paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.runs import run_time
from model.survey import motion_of
from tui.phrases import cannot_text, turn_text

if TYPE_CHECKING:
    from model.motion.motion import Motion
    from model.motion.span import Span
    from model.review import Report

NOTE = "Numbers from published drag coefficients; the second and third tell how far off they may be."

SLIDES = "   but left alone it slides away before it has come round"
"""What is said of a turn that does not end."""


def speeds(report: Report) -> str:
    """Everything about motion, a line each."""
    if not report.design.arrangement.thrusters:
        return "Add a thruster first: without one it goes nowhere."
    motion = motion_of(report.survey)
    return "\n".join(
        [*_runs(motion), *_turns(motion), *_cannot(motion), *_tilts(motion), *_course(report), NOTE]
    )


def _runs(motion: Motion) -> list[str]:
    lines = []
    named = (("ahead", motion.ahead), ("astern", motion.astern), ("up", motion.up), ("down", motion.down))
    for name, run in (*named, ("up with the load", motion.laden)):
        if run is None:
            continue
        lines.append(f"Top speed {name}: {run.top.text('m/s')}")
        if name == "ahead":
            lines.append(f"   9/10 of it after {run.time.text('s')} and {run.distance.text('m')}")
            if run.stop:
                lines.append(f"   stops within {run.stop.text('m')} with the thrusters astern")
            else:
                lines.append(f"   cannot brake: rolls out in {run.coast.text('m')} with the motors off")
    return lines


def _turns(motion: Motion) -> list[str]:
    """A quarter turn each way, the rate that it comes to, and how far the slower one slides off its spot."""
    lines = []
    for side, turn in (("port", motion.port), ("starboard", motion.starboard)):
        if turn:
            lines.append(f"A quarter turn to {side}: {turn.quarter.text('s')}")
            lines.append(f"   and then {turn.rate.text('degrees a second', 0)}")
    if motion.slower_turn:
        lines.append(f"   it ends {motion.drift.text('m')} off its spot" if motion.drift else SLIDES)
    return lines


def _cannot(motion: Motion) -> list[str]:
    """What it cannot do, in one line."""
    turn = "" if motion.slower_turn else turn_text(motion)
    words = "; ".join(word for word in (turn, cannot_text(motion)) if word)
    return [words[:1].upper() + words[1:]] if words else []


def _tilts(motion: Motion) -> list[str]:
    lines = []
    for name, attitude in (("ahead", motion.driven), ("up", motion.climbing)):
        if attitude is None:
            continue
        if attitude.pitch is None:
            lines.append(f"Full thrust {name} turns it over")
        else:
            lines.append(f"Full thrust {name} tilts it {_either(attitude.pitch, 'bow up', 'stern up', 1)}")
    if motion.veer is not None:
        lines.append(f"Each metre at full thrust turns it {_either(motion.veer, 'to port', 'to starboard')}")
        lines.append(f"   holding it straight takes {100 * motion.held_straight:.0f} % of what turns it")
    if motion.hand_roll is not None:
        roll = _either(motion.hand_roll, "port side up", "starboard side up", 1)
        lines.append(f"What is left of the propellers' torque rolls it {roll}")
    return lines


def _either(span: Span, above: str, below: str, digits: int = 0) -> str:
    """An angle to one side or the other, and how far off it may be."""
    side = above if span.value >= 0 else below
    return f"{abs(span.value):.{digits}f}° {side}, {span.sides(above, below, '°', digits)}"


def _course(report: Report) -> list[str]:
    if not report.design.brief.course:
        return []
    timed = run_time(report.survey)
    legs = [f"   {leg.words}: {leg.time.text('s') if leg.time else leg.problem}" for leg in timed.legs]
    total = timed.total.text("s") if timed.total else "not possible yet"
    return [f"The course of the brief on paper: {total}", *legs]
