"""The trade between two measures as a plot: a dot for each design, axes with round numbers, and as SVG."""

from collections.abc import Iterator
from math import ceil, floor, log10
from string import ascii_uppercase

from msgspec import Struct

from model.compare import MEASURES, Comparison, Measure
from model.drawing.diagram_svg import xml_text

AHEAD, QUARTER, STEADINESS = MEASURES[0], MEASURES[1], MEASURES[2]
STEPS = (1.0, 2.0, 5.0, 10.0)
MARKS = 5
"""About how many numbers stand along an axis."""
WIDTH, HEIGHT, EDGE, ROOM = 120.0, 80.0, 18.0, 6.0
"""[mm] A plot, the room for its numbers, and between two lines of the list."""
LETTER = 3.0
"""[mm] Between the letters of designs that stand in one place."""
STYLE = """
svg { background: #fff; font-family: sans-serif; }
text { font-size: 3.2px; fill: #000; } .title { font-size: 4.2px; font-weight: bold; }
line { stroke: #999; stroke-width: 0.2; } .axis { stroke: #000; stroke-width: 0.4; }
circle { fill: #1f4e79; stroke: #1f4e79; stroke-width: 0.4; }
circle.beaten { fill: #fff; stroke: #888; } text.beaten { fill: #6b6b6b; }
"""


class Axis(Struct, frozen=True):
    """A scale with round numbers.

    Attributes:
        words: what is along it, with its unit.
        marks: the round numbers, the first and the last its ends.
        digits: after the point.
    """

    words: str
    marks: tuple[float, ...]
    digits: int

    def share(self, value: float) -> float:
        """Where a value lies, 0 at the first mark and 1 at the last."""
        return (value - self.marks[0]) / (self.marks[-1] - self.marks[0])

    def text(self, mark: float) -> str:
        """A mark as it is written."""
        return f"{mark:.{self.digits}f}"


class Dot(Struct, frozen=True):
    """A design on the plot: its sign, its name, its two numbers, and who beats it (or "")."""

    sign: str
    name: str
    across: float
    up: float
    beaten_by: str


class Trade(Struct, frozen=True):
    """Designs by two measures; those without one of the two numbers are left out."""

    across: Axis
    up: Axis
    dots: tuple[Dot, ...]


def trades(found: Comparison) -> tuple[Trade, ...]:
    """Speed against steadiness and against turning, as far as there are numbers."""
    made = (trade(found, AHEAD, other) for other in (STEADINESS, QUARTER))
    return tuple(each for each in made if each is not None)


def trade(found: Comparison, across: Measure, up: Measure) -> Trade | None:
    """Two measures against each other; None where no design has both."""
    dots = []
    for number, (standing, other) in enumerate(zip(found.standings, found.beaten, strict=True)):
        x, y = across.of(standing), up.of(standing)
        if x is not None and y is not None:
            beaten = "" if other is None else found.standings[other].name
            dots.append(Dot(sign_of(found, number), standing.name, x, y, beaten))
    if not dots:
        return None
    return Trade(
        _axis(across, [dot.across for dot in dots]), _axis(up, [dot.up for dot in dots]), tuple(dots)
    )


def letter_of(number: int) -> str:
    """A letter for each design: A to Z, then A again."""
    return ascii_uppercase[number % len(ascii_uppercase)]


def sign_of(found: Comparison, number: int) -> str:
    """The letter of a design; a small one where another beats it, so that grey is not all that says so."""
    letter = letter_of(number)
    return letter if found.beaten[number] is None else letter.lower()


def _axis(measure: Measure, values: list[float]) -> Axis:
    low, high = min(values), max(values)
    span = max(high - low, 0.1 * max(abs(low), abs(high)), 1e-6)
    power = 10.0 ** floor(log10(span / MARKS))
    step = next(size * power for size in STEPS if size * power >= span / MARKS * 0.999)
    first, last = floor(low / step), ceil(high / step)
    last = max(last, first + 1)
    marks = tuple(step * number for number in range(first, last + 1))
    unit = f" [{measure.unit}]" if measure.unit else ""
    return Axis(f"{measure.name}{unit}", marks, max(0, -floor(log10(step) + 1e-9)))


def trade_svg(plots: tuple[Trade, ...], title: str) -> str:
    """Plots above one another with the names of the designs beside them, as an SVG document."""
    names = {dot.sign + dot.name: dot for plot in plots for dot in plot.dots}.values()
    high = 12 + len(plots) * (HEIGHT + EDGE + 8)
    high = max(high, 20 + ROOM * len(names))
    wide = EDGE + WIDTH + 90
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}mm" height="{high:g}mm" '
        f'viewBox="0 0 {wide:g} {high:g}">',
        f"<style>{STYLE}</style>",
        f'<text class="title" x="6" y="8">{xml_text(title)}</text>',
    ]
    for number, plot in enumerate(plots):
        lines += _plot(plot, 16 + number * (HEIGHT + EDGE + 8))
    for number, dot in enumerate(names):
        beaten = f" (beaten by {dot.beaten_by})" if dot.beaten_by else ""
        shade = ' class="beaten"' if dot.beaten_by else ""
        place = f'x="{EDGE + WIDTH + 8:g}" y="{20 + ROOM * number:g}"'
        lines.append(f"<text{shade} {place}>{dot.sign} {xml_text(dot.name + beaten)}</text>")
    return "\n".join([*lines, "</svg>"])


def _plot(plot: Trade, top: float) -> Iterator[str]:
    """One plot with its upper edge at a height [mm]."""
    left, bottom = EDGE, top + HEIGHT
    for mark in plot.across.marks:
        x = left + plot.across.share(mark) * WIDTH
        yield f'<line x1="{x:.2f}" y1="{top:.2f}" x2="{x:.2f}" y2="{bottom:.2f}"/>'
        yield f'<text text-anchor="middle" x="{x:.2f}" y="{bottom + 5:.2f}">{plot.across.text(mark)}</text>'
    for mark in plot.up.marks:
        y = bottom - plot.up.share(mark) * HEIGHT
        yield f'<line x1="{left:.2f}" y1="{y:.2f}" x2="{left + WIDTH:.2f}" y2="{y:.2f}"/>'
        yield f'<text text-anchor="end" x="{left - 2:.2f}" y="{y + 1:.2f}">{plot.up.text(mark)}</text>'
    yield f'<line class="axis" x1="{left}" y1="{top:.2f}" x2="{left}" y2="{bottom:.2f}"/>'
    yield f'<line class="axis" x1="{left}" y1="{bottom:.2f}" x2="{left + WIDTH}" y2="{bottom:.2f}"/>'
    yield f'<text x="{left}" y="{top - 2:.2f}">{xml_text(plot.up.words)}</text>'
    words = xml_text(plot.across.words)
    yield f'<text text-anchor="end" x="{left + WIDTH}" y="{bottom + 10:.2f}">{words}</text>'
    beside: dict[tuple[int, int], int] = {}
    for dot in sorted(plot.dots, key=lambda dot: not dot.beaten_by):  # nothing grey hides what is not
        x, y = left + plot.across.share(dot.across) * WIDTH, bottom - plot.up.share(dot.up) * HEIGHT
        shade, place = ' class="beaten"' if dot.beaten_by else "", (round(x), round(y))
        beside[place] = number = beside.get(place, -1) + 1
        yield f'<circle{shade} cx="{x:.2f}" cy="{y:.2f}" r="1.2"/>'
        yield f'<text{shade} x="{x + 2 + LETTER * number:.2f}" y="{y - 1:.2f}">{dot.sign}</text>'
