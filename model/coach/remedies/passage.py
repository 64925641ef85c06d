"""Remedies for a hoop or a gate that is too tight, or a size too near its limit: draw planes together."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import round_down, ruler_step
from model.coach.remedies.floats import fit_floats
from model.coach.sentences import length
from model.design import Design
from model.errors import EditError
from model.sizing import set_outside
from model.survey import Survey

WORDS = ("long", "wide", "high")
MARKED = 0.001
"""[m] How far push-in depths differ where pipe is pushed to a pencil mark (common practice, no source)."""
STEPS = (1.0, 0.97, 0.94, 0.9)
"""Shares of what should be enough that are tried, since a hoop is set by corners."""


def narrow(found: Survey, shares: dict[int, float]) -> tuple[Remedy, ...]:
    """The vehicle made narrower, lower, or both; ``shares`` says what of each size may stay."""
    step = ruler_step(found.design.units)
    sizes = found.extents.size
    plans: list[dict[int, float]] = []
    for less in STEPS:
        plans += [{axis: sizes[axis] * share * less for axis, share in shares.items()}]
        if len(shares) > 1:
            plans += [{axis: sizes[axis] * share**2 * less} for axis, share in shares.items()]
    return tuple(
        _narrowed(found, {axis: round_down(size, step) for axis, size in plan.items()}) for plan in plans
    )


def inside(found: Survey, axis: int, size: float) -> tuple[Remedy, ...]:
    """The vehicle made so small along an axis [m] that the build stays inside, or built with more care."""
    smaller = _narrowed(found, {axis: round_down(size, ruler_step(found.design.units))})
    if found.design.brief.thresholds.insertion_scatter <= MARKED:
        return (smaller,)
    words = "1/32 in" if found.design.units == "in" else "1 mm"
    return smaller, Remedy(f"Push each pipe to a pencil mark, and count {words} for it", _to_marks)


def _to_marks(design: Design) -> Design:
    """The design built with a mark on each pipe to push it to."""
    limits = design.brief.thresholds.but(insertion_scatter=MARKED)
    return design.but(brief=design.brief.but(thresholds=limits))


def _narrowed(found: Survey, sizes: dict[int, float]) -> Remedy:
    words = " and ".join(f"{length(size, found.design.units)} {WORDS[axis]}" for axis, size in sizes.items())
    return Remedy(f"Make it {words} overall", partial(_resized, sizes=sizes))


def _resized(design: Design, sizes: dict[int, float]) -> Design:
    """The design with new outside sizes, or as it is where that cannot be."""
    try:
        for axis, size in sizes.items():
            design = set_outside(design, axis, size)
    except EditError:
        return design
    return fit_floats(design)
