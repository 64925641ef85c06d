"""The cutting plan as a scene: each stick with its pieces, lengths to scale, the longest piece first."""

from model.drawing.scene import Label, Scene, Shape
from model.frame.layout import Frame
from model.money.shopping import LaidStick, PipePlan, laid
from model.units import Unit, format_length

WIDE = 160.0
"""[mm] On the sheet, for the longest stick."""
HIGH, ROW = 7.0, 17.0
"""[mm] Height of a stick, and from one to the next."""
LETTER = 2.2
"""[mm] Width of a letter, about: a piece that is narrower than its words has its letter alone."""


def cutting_scene(plan: PipePlan, frame: Frame, unit: Unit) -> Scene:
    """All sticks of a cutting plan, one under the other."""
    sticks = [(pipe.pipe.name, stick) for pipe in plan.plans for stick in laid(pipe, frame)]
    longest = max((stick.source.length for _, stick in sticks), default=1.0)
    scale = WIDE / longest
    shapes: list[Shape] = []
    labels: list[Label] = []
    for number, (name, stick) in enumerate(sticks, 1):
        base = -ROW * number
        shapes.append(_block(0.0, stick.source.length * scale, base, "fitting"))
        labels.append(Label(_heading(number, name, stick, unit), (0.0, base + HIGH + 1.5), "title"))
        at = 0.0
        for bar in stick.bars:
            wide = (bar.cut or 0.0) * scale
            shapes.append(_block(at, at + wide, base, "bar"))
            labels.append(
                Label(_words(bar.letter, bar.cut or 0.0, wide, unit), (at + 0.8, base + 2.4), "bar")
            )
            at += wide + _kerf(stick) * scale
    return Scene(
        name="sticks",
        title=f"Cutting plan, scale 1:{1000 / scale:.0f} along the pipe" if sticks else "Cutting plan",
        low=(0.0, -ROW * len(sticks)),
        high=(WIDE, 0.0),
        shapes=tuple(shapes),
        labels=tuple(labels),
    )


def _heading(number: int, pipe: str, stick: LaidStick, unit: Unit) -> str:
    where = "from the box" if stick.source.on_hand else "bought"
    left = format_length(stick.rest, unit)
    return f"Stick {number}: {format_length(stick.source.length, unit)} of {pipe}, {where}; left over {left}"


def _words(letter: str, cut: float, wide: float, unit: Unit) -> str:
    """The letter and the length of a piece, as far as they go into it."""
    full = f"{letter} {format_length(cut, unit, with_unit=False)}"
    return full if len(full) * LETTER <= wide else letter if len(letter) * LETTER <= wide else ""


def _kerf(stick: LaidStick) -> float:
    """What the saw eats between two pieces [m], as the plan left room for it."""
    free = stick.source.length - stick.rest - sum(bar.cut or 0.0 for bar in stick.bars)
    return max(0.0, free) / max(1, len(stick.bars))


def _block(left: float, right: float, base: float, role: str) -> Shape:
    outline = ((left, base), (right, base), (right, base + HIGH), (left, base + HIGH))
    return Shape(outline, "bar" if role == "bar" else "fitting")
