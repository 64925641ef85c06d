"""Steps at the saw: mark, cut, deburr, label."""

from collections.abc import Iterator
from itertools import groupby

from model.building.cautions import DEBURR, SAW
from model.building.step import Step
from model.design import COMPARISON_SLACK
from model.frame.layout import BarPlace
from model.money.shopping import LaidStick, PipePlan, laid
from model.survey import Survey
from model.units import Unit, format_length

TIGHT = 0.003
"""[m] With less than this left over, an end that is not square or a slip of the saw costs the last piece."""


def sawing_steps(survey: Survey, plan: PipePlan) -> Iterator[Step]:
    """From whole sticks to labelled pieces."""
    if not survey.cuts:
        return
    yield _mark(survey)
    number = 0
    for pipe in plan.plans:
        for stick in laid(pipe, survey.frame):
            number += 1
            yield _saw(survey, number, stick)
    yield Step(
        "deburr",
        "Take the burr off both ends of every piece, inside and outside",
        ("all pieces; a slight slope on the outer edge lets the pipe start in its socket",),
        "knife, file or deburring tool",
        DEBURR,
        "A finger run round the end feels no lip; the pipe starts in a fitting without force.",
    )
    yield Step(
        "label",
        "Write its letter and its name on every piece, and check it off on the cut sheet",
        tuple(f"{group.letter}: {_names(group.bars)}" for group in survey.cuts),
        "permanent marker, ruler",
        (),
        f"Measure each piece again and note its length: within {_length(0.0015, survey)} is fine.",
    )


def _mark(survey: Survey) -> Step:
    pieces = []
    for group in survey.cuts:
        words = f"{group.letter}: {len(group.bars)} x {_length(group.cut, survey)} of {group.pipe.name}"
        marks = sorted({_push_marks(bar, survey.design.units) for bar in group.bars})
        pieces += [f"{words}; {mark}" for mark in marks]
    return Step(
        "mark",
        "Mark every piece: where to saw, and how far it goes into each fitting",
        tuple(pieces),
        "ruler or tape, pencil, a strip of paper wrapped round the pipe for a square line",
        (),
        "Measure twice: the marks on the pipe against the cut sheet, by somebody else.",
    )


def _push_marks(bar: BarPlace, unit: Unit) -> str:
    """The pencil marks that say how far the pipe goes in."""
    start, end = (format_length(depth, unit) for depth in bar.insertions)
    if start == end:
        return f"push-to mark {start} from each end"
    return f"push-to marks {start} from one end and {end} from the other"


def _saw(survey: Survey, number: int, stick: LaidStick) -> Step:
    """One stick, the shortest piece first, so that there is always something to hold."""
    order = sorted(stick.bars, key=lambda bar: bar.cut or 0.0)
    kerf, unit = survey.design.stock.kerf, survey.design.units
    held = stick.source.length - sum(bar.cut or 0.0 for bar in order[:-1]) - kerf * (len(order) - 1)
    pieces = [
        f"{len(alike)} x {alike[0].letter} {_length(alike[0].cut or 0.0, survey)}"
        for alike in (list(bars) for _, bars in groupby(order, key=lambda bar: bar.letter))
    ]
    least = survey.design.brief.thresholds.hold_least
    cautions: tuple[str, ...] = SAW
    if held < least - COMPARISON_SLACK and (order[-1].cut or 0.0) < held - COMPARISON_SLACK:
        short = f"Only {format_length(held, unit)} is left to hold at the last cut: clamp it, never by hand."
        cautions = (short, *SAW)
    where = "from the box" if stick.source.on_hand else "bought"
    name = stick.bars[0].pipe.name
    return Step(
        f"saw-{number}",
        f"Saw stick {number}: {_length(stick.source.length, survey)} of {name}, {where}",
        (*pieces, f"left over: {_length(stick.rest, survey)}{_tight(stick.rest)}"),
        "saw and mitre box, or ratchet cutter; clamp" if kerf else "ratchet cutter; clamp",
        cautions,
        "In this order, mark and saw one piece after the other, the saw on the waste side of the line.",
    )


def _tight(rest: float) -> str:
    return "" if rest >= TIGHT else "; nothing to spare, so measure the whole stick first"


def _names(bars: tuple[BarPlace, ...]) -> str:
    return ", ".join(bar.name for bar in bars)


def _length(metres: float, survey: Survey) -> str:
    return format_length(metres, survey.design.units)
