"""True-size templates to wrap round a pipe: where its holes go, to be taped on and drilled through.

The way round the pipe is laid out flat: an angle t (in radians) stands at t x diameter / 2.
Printed side out, the joint at the bottom: moving right goes round as the axis crosses the first line.
"""

from collections.abc import Iterator
from math import atan2, pi
from textwrap import wrap

from msgspec import Struct

from model.building.fitting_steps import from_sawn_end, side_words
from model.drawing.svg import clean
from model.frame.layout import BarPlace
from model.survey import Survey
from model.thrust.mounts import mount_plans
from model.units import Unit, format_length
from model.vectors import Vector, cross, dot, unit

MM = 1000.0
TAB = 8.0
"""[mm] That the paper overlaps, to tape it."""
LONGEST = 225.0
"""[mm] Of one template on a page."""
ROOM = 12.0
"""[mm] Shown beyond the last hole."""
RULER = 100.0
"""[mm] A line to measure whether the printer kept the size."""
SEAM = pi / 8
"""[rad] From the seam of the paper to the first line: between any two directions at 45 degrees."""
NAME_LETTERS, ROW = 38, 3.4
"""Letters of a line beside the paper; [mm] from one line to the next."""
FACES: tuple[str, ...] = ("+z", "+y", "-z", "-y", "+x", "-x")


class Hole(Struct, frozen=True):
    """A hole on a bar: its place from the sawn end at the joint where the bar starts [m], and its side."""

    name: str
    from_end: float
    face: str
    diameter: float
    through: bool


class Template(Struct, frozen=True):
    """One piece of paper.

    Attributes:
        start: where its lower edge lies from the sawn end [m].
        length, round: of the paper along the pipe and round it, without the tab [m].
        holes: each with its place on the paper, round and along [m]; a hole right through stands twice.
        lines: the sides of the vehicle, and where they are round the pipe [m].
    """

    bar: BarPlace
    end: str
    start: float
    length: float
    round: float
    holes: tuple[tuple[Hole, float, float], ...]
    lines: tuple[tuple[str, float], ...]


def holes_by_bar(survey: Survey) -> dict[str, list[Hole]]:
    """All holes to drill in pipe, tie holes and openings, by bar and from its start."""
    found: dict[str, list[Hole]] = {}
    for plan in mount_plans(survey.design, survey.arrangement, survey.frame, survey.parts):
        for tie in plan.holes:
            hole = Hole(f"tie of {plan.name}", tie.from_end, tie.face, tie.diameter, True)
            found.setdefault(tie.bar, []).append(hole)
    for item in survey.arrangement.openings:
        bar = survey.frame.bars[item.bar]
        hole = Hole(item.name, from_sawn_end(bar, item.at), item.face, item.diameter, item.through)
        found.setdefault(item.bar, []).append(hole)
    return {bar: sorted(holes, key=lambda hole: hole.from_end) for bar, holes in found.items()}


def templates(survey: Survey) -> tuple[Template, ...]:
    """The templates of all bars that are drilled; holes far apart get papers of their own."""
    found = []
    for id, holes in holes_by_bar(survey).items():
        bar = survey.frame.bars[id]
        if bar.cut is None:
            continue
        inside = [
            hole for hole in holes if 0 <= hole.from_end <= bar.cut and _angle(bar, hole.face) is not None
        ]
        while inside:
            start = 0.0 if inside[0].from_end <= (LONGEST - ROOM) / MM else inside[0].from_end - ROOM / MM
            here = [hole for hole in inside if hole.from_end - start <= (LONGEST - ROOM) / MM]
            found.append(_template(survey, bar, start, here))
            inside = inside[len(here) :]
    return tuple(found)


def _template(survey: Survey, bar: BarPlace, start: float, holes: list[Hole]) -> Template:
    radius = bar.pipe.outside_diameter / 2
    around = 2 * pi * radius
    length = min(max(hole.from_end for hole in holes) - start + ROOM / MM, (bar.cut or 0.0) - start)
    placed = []
    for hole in holes:
        for turn in (0.0, pi) if hole.through else (0.0,):
            at = _round(((_angle(bar, hole.face) or 0.0) + turn), radius)
            placed.append((hole, at, hole.from_end - start))
    lines = [
        (side_words(face).removesuffix(" side"), _round(angle, radius))
        for face in FACES
        if (angle := _angle(bar, face)) is not None
    ]
    end = survey.frame.joints[bar.joints[0]].name
    return Template(bar, end, start, length, around, tuple(placed), tuple(lines))


def _round(angle: float, radius: float) -> float:
    """Where an angle [rad] lies on the paper [m]; the seam is kept clear of the sides that are drilled."""
    return (angle + SEAM) % (2 * pi) * radius


def _angle(bar: BarPlace, face: str) -> float | None:
    """How far round the pipe a side lies [rad, 0 to 2 pi] from the first line; None along the pipe."""
    out = unit(face)
    across: Vector = (0.0, 0.0, 1.0) if abs(bar.along[2]) < 0.9 else (1.0, 0.0, 0.0)
    right = cross(bar.along, across)
    x, y = dot(out, across), dot(out, right)
    if abs(x) < 1e-6 and abs(y) < 1e-6:
        return None
    return atan2(y, x) % (2 * pi)


def template_svg(template: Template, units: Unit) -> str:
    """One template in true size, with a line to measure the print by."""
    return "\n".join(_svg(template, units))


def _svg(template: Template, units: Unit) -> Iterator[str]:
    left, top = 14.0, 12.0
    wide, high = template.round * MM, template.length * MM
    width, height = max(left + wide + TAB + 60, RULER + 40), top + high + 22
    foot = top + high
    yield f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.3f}mm" height="{height:.3f}mm" '
    yield f'viewBox="0 0 {width:.3f} {height:.3f}">'
    yield "<style>svg { font-family: sans-serif; } text { font-size: 2.8px; }"
    yield "line { stroke: #000; stroke-width: 0.2; } .side { font-size: 2.4px; }"
    yield "polygon, circle { fill: none; stroke: #000; stroke-width: 0.3; }</style>"
    yield _frame(left, top, wide, high, "cut")
    yield _frame(left + wide, top, TAB, high, "tab")
    for words, at in template.lines:
        yield _line(left + at * MM, top, left + at * MM, foot)
        yield f'<text x="{left + at * MM + 0.6:.3f}" y="{top - 1.5:.3f}" class="side">{clean(words)}</text>'
    for hole, at, along in template.holes:
        yield from _hole(left + at * MM, foot - along * MM, hole)
    yield from _words(template, units, left, foot, left + wide + TAB + 2, top)
    yield "</svg>"


def _hole(x: float, y: float, hole: Hole) -> Iterator[str]:
    radius = hole.diameter / 2 * MM
    yield f'<circle class="hole" cx="{x:.3f}" cy="{y:.3f}" r="{radius:.3f}"/>'
    yield _line(x - radius - 2, y, x + radius + 2, y)
    yield _line(x, y - radius - 2, x, y + radius + 2)


def _words(
    template: Template, units: Unit, left: float, foot: float, beside: float, top: float
) -> Iterator[str]:
    bar = template.bar
    edge = "the sawn end"
    if template.start > 0:
        edge = f"a line {format_length(template.start, units)} from the sawn end"
    yield _text(left, foot + 4, f"{bar.letter} {bar.name}: lay this edge on {edge} at {template.end}")
    yield _line(left, foot + 9, left + RULER, foot + 9)
    yield _line(left, foot + 7.5, left, foot + 10.5)
    yield _line(left + RULER, foot + 7.5, left + RULER, foot + 10.5)
    yield _text(left, foot + 14, "This line must measure 100 mm (3 15/16 in): print at actual size, 100 %.")
    seen = dict.fromkeys(hole for hole, _, _ in template.holes)
    y = top + ROW
    for hole in seen:
        size, at = format_length(hole.diameter, units), format_length(hole.from_end, units)
        deep = "right through" if hole.through else "one wall"
        for words in (*wrap(hole.name, NAME_LETTERS)[:2], f"{size}, {deep}, {at} from the end"):
            yield _text(beside, y, words)
            y += ROW
        y += ROW / 2


def _frame(x: float, y: float, wide: float, high: float, style: str) -> str:
    corners = ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
    points = " ".join(f"{a:.3f},{b:.3f}" for a, b in corners)
    return f'<polygon class="{style}" points="{points}"/>'


def _line(x1: float, y1: float, x2: float, y2: float) -> str:
    return f'<line x1="{x1:.3f}" y1="{y1:.3f}" x2="{x2:.3f}" y2="{y2:.3f}"/>'


def _text(x: float, y: float, words: str) -> str:
    return f'<text x="{x:.3f}" y="{y:.3f}">{clean(words)}</text>'
