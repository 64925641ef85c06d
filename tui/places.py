"""In which section of its page a finding is put right, where what it is about does not tell."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.steps import page_of

if TYPE_CHECKING:
    from model.coach.finding import Finding

SECTIONS: dict[str, dict[str, str]] = {
    "stock": {
        "material.pipe-disallowed": "Range",
        "stock.box-short": "In the box",
        "stock.measure-wrong": "Measure",
    },
    "layout": {
        "frame.bars-none": "Bars",
        "size.limit-over": "Size",
        "size.hoop-tight": "Size",
        "size.gate-tight": "Size",
        "size.limit-near": "Tolerance",
    },
    "thrusters": {
        "thruster.move-missing": "Thrusters",
        "thruster.holes-unplanned": "Tie holes",
        "thruster.tie-alone": "Tie holes",
        "thruster.tie-aside": "Tie holes",
        "thruster.tie-along": "Tie holes",
        "thruster.tie-wide": "Tie holes",
        "thruster.tie-large": "Tie holes",
        "thruster.tie-small": "Tie holes",
        "motion.thrust-pitches": "Thrusters",
        "motion.climb-tips": "Thrusters",
        "motion.thrust-aside": "Thrusters",
        "motion.hands-alike": "Thrusters",
        "load.lift-weak": "Thrusters",
    },
    "gear": {"load.hook-missing": "Parts", "load.trim-off": "Parts"},
    "floats": {
        "balance.weight-over": "Solve",
        "balance.lift-little": "Solve",
        "balance.lift-over": "Solve",
        "balance.thrust-taken": "Solve",
        "balance.thrust-beaten": "Solve",
        "balance.thrust-sunk": "Solve",
        "balance.foam-squeezed": "Solve",
        "balance.trim-off": "Solve",
        "balance.order-inverted": "Foam",
        "balance.bg-small": "Foam",
        "balance.weight-tips": "Foam",
    },
    "holes": {
        "opening.none-flooded": "Air",
        "opening.drain-missing": "Air",
        "opening.valley-undrained": "Air",
        "opening.socket-open": "Pipes",
        "air.pocket-trapped": "Air",
        "air.pocket-tilted": "Air",
        "air.void-closed": "Air",
        "air.void-plugged": "Plugs",
        "sealing.leak-sinks": "Pipes",
    },
    "money": {"money.limit-over": "To buy", "money.commitments-over": "To buy"},
    "build": {"build.joint-loose": "Work", "build.foam-late": "Work"},
    "pool": {"trial.weight-off": "Trials", "trial.trim-off": "Trials", "trial.spare-off": "Trials"},
}
"""By the key of the page and the code."""
NUMBERS: dict[str, dict[str, str]] = {
    "brief": {
        "": "overall length",
        "More rules": "smallest hoop",
        "Course": "time over the course",
        "Water": "density of the water",
        "Coach": "trim at rest",
    },
    "stock": {"": "cut A"},
    "layout": {
        "": "cut A",
        "Planes": "overall length",
        "Size": "overall length",
        "Tolerance": "error of the length",
        "Outline": "area head on",
    },
    "fittings": {"": "cut A"},
    "thrusters": {"": "pull of", "Speed": "top speed", "Drag": "drag ahead", "Compare": "top speed"},
    "gear": {"": "weight"},
    "wires": {"": "current with all motors on"},
    "floats": {
        "": "trim at rest",
        "Solve": "spare buoyancy",
        "Steadiness": "lift point above balance point",
    },
    "holes": {"": "air caught, level"},
    "money": {"": "spent"},
    "build": {"": "cut A"},
    "pool": {"": "weight"},
}
"""By the key of the page and the title of the section, how the name of the number begins that is asked for
there; that of "" where the section has none of its own."""


def number_of(step: str, section: str) -> str:
    """How the name of the number begins whose story is told first."""
    numbers = NUMBERS.get(step, {})
    return numbers.get(section) or numbers.get("", "")


def section_of(finding: Finding) -> str:
    """The title of the section, or "" where that of the thing will do."""
    return SECTIONS.get(page_of(finding.step), {}).get(finding.code, "")
