"""How it moves: speeds, turns and tilts with their spread, a run on paper, and the same at other sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.runs import run_time
from model.solve.sweep import Sweep, size_sweep
from model.survey import motion_of
from tui.forms.proposal import Offer, ProposalSection, Way

if TYPE_CHECKING:
    from model.motion.motion import Motion
    from model.review import Report

NOTE = "Numbers from published drag coefficients; the second and third tell how far off they may be."
COLUMNS = (
    ("ahead m/s", 11),
    ("turn s", 8),
    ("steady Nm", 10),
    ("pitch", 7),
    ("cm2", 6),
    ("g", 6),
    ("cost", 8),
)


def speeds(report: Report) -> str:
    """Everything about motion, a line each."""
    if not report.design.arrangement.thrusters:
        return "Add a thruster first: without one it goes nowhere."
    motion = motion_of(report.survey)
    return "\n".join([*_runs(motion), *_turns(motion), *_tilts(motion), *_course(report), NOTE])


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
    return lines


def _turns(motion: Motion) -> list[str]:
    return [
        f"A quarter turn to {side}: {turn.quarter.text('s')}"
        for side, turn in (("port", motion.port), ("starboard", motion.starboard))
        if turn
    ]


def _tilts(motion: Motion) -> list[str]:
    lines = []
    for name, attitude in (("ahead", motion.driven), ("up", motion.climbing)):
        if attitude is None:
            continue
        if attitude.pitch is None:
            lines.append(f"Full thrust {name} turns it over")
        else:
            bow = "bow up" if attitude.pitch.value >= 0 else "bow down"
            lines.append(f"Full thrust {name} tilts it {bow} {abs(attitude.pitch.value):.0f}°")
    if motion.veer is not None:
        side = "port" if motion.veer.value >= 0 else "starboard"
        lines.append(f"Each metre under full thrust turns it {abs(motion.veer.value):.0f}° to {side}")
    return lines


def _course(report: Report) -> list[str]:
    if not report.design.brief.course:
        return []
    timed = run_time(report.survey)
    legs = [f"   {leg.words}: {leg.time.text('s') if leg.time else leg.problem}" for leg in timed.legs]
    total = timed.total.text("s") if timed.total else "not possible yet"
    return [f"The course of the brief on paper: {total}", *legs]


def sizes_section() -> ProposalSection:
    """The same design from 70 to 130 % of its size."""
    return ProposalSection(
        "Sizes",
        lambda report: (
            "Small and light is quick, large and wide is steady: the same design from 70 to 130 % of "
            "its size. The best compromise is yours to choose."
        ),
        (Way("sizes", "Work it out", sizes),),
        takes=False,
    )


def sizes(report: Report) -> Offer:
    """A table of sizes; those that another beats in everything say so."""
    if not report.survey.frame.bars:
        return Offer("", "There is no frame yet.", None)
    return Offer("", "\n".join(table(size_sweep(report.survey))), None)


def table(sweep: Sweep) -> list[str]:
    """A line for each size, with its numbers."""
    rows = sweep.comparison.rows
    head = "size  " + "".join(f"{name:>{width}}" for name, width in COLUMNS)
    lines = [head]
    for number, point in enumerate(sweep.points):
        standing = sweep.comparison.standings[number]
        cells = "".join(
            f"{row.texts[number].split(',')[0].split(' ')[0]:>{width}}"
            for row, (_, width) in zip(rows, COLUMNS, strict=False)
        )
        says = ["too large"] if standing.fits is False else []
        says += [] if standing.builds else ["cannot be built"]
        says += [] if point.floats_fit else ["floats too long"]
        worse = sweep.comparison.beaten[number]
        says += [f"{sweep.comparison.standings[worse].name} beats it"] if worse is not None else []
        lines.append(f"{standing.name:>5} {cells}  {', '.join(says)}".rstrip())
    return lines
