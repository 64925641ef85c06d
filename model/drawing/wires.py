"""The wiring as a scene: battery, fuses, control box, tether and motors, each branch on a line of its own.

A diagram, not to scale: the distances in it are those on the sheet [mm].
"""

from dataclasses import dataclass, field

from model.design import Arrangement, Power, Thruster
from model.drawing.scene import About, Label, Point, Role, Scene, Shape, Stroke
from model.power.circuit import branch_area
from model.power.diagram import box_words, fuse_words, run_words
from model.power.wire import gauge_name
from model.power.wiring import Wiring
from model.units import Unit

ROW = 26.0
"""Height of a branch."""
BATTERY, MAIN, CONTROL, FUSE, SWITCH, CABLE, MOTOR, EDGE = 0.0, 45.0, 88.0, 92.0, 128.0, 172.0, 250.0, 290.0
"""Where things begin, from the left."""
WIDE, HIGH = 30.0, 10.0
"""Size of a box."""
PAIR = 2.0
"""From the middle of a pair to each of its cores."""


@dataclass(slots=True)
class Board:
    """A diagram in the making."""

    strokes: list[Stroke] = field(default_factory=list)
    shapes: list[Shape] = field(default_factory=list)
    labels: list[Label] = field(default_factory=list)

    def box(self, left: float, middle: float, size: Point, role: Role, about: About | None = None) -> None:
        """A box from its left edge and the middle of its height."""
        right, low, top = left + size[0], middle - size[1] / 2, middle + size[1] / 2
        self.shapes.append(Shape(((left, low), (right, low), (right, top), (left, top)), role, about))

    def pair(self, left: float, right: float, height: float, about: About | None = None) -> None:
        """Two cores side by side, + above."""
        for side in (PAIR, -PAIR):
            self.strokes.append(Stroke(((left, height + side), (right, height + side)), "tether", about))

    def text(self, words: str, left: float, height: float) -> None:
        """Words that begin at a place."""
        self.labels.append(Label(words, (left, height), "title"))


def wiring_scene(arrangement: Arrangement, wires: Wiring, unit: Unit) -> Scene:
    """The wiring diagram of an arrangement, the battery on the left and a motor on each line."""
    board = Board()
    rows = [-ROW * number for number in range(max(1, len(arrangement.thrusters)))]
    middle = (rows[0] + rows[-1]) / 2
    _trunk(board, wires.power, middle, unit)
    board.box(CONTROL, middle, (FUSE + 2 * WIDE + 14 - CONTROL, rows[0] - rows[-1] + ROW), "fitting")
    board.text(box_words(wires.power), CONTROL + 2, rows[0] + ROW / 2 - 3.5)
    for side, aside in ((PAIR, 1.0), (-PAIR, 2.5)):
        rail = ((CONTROL + aside, rows[0] + side), (CONTROL + aside, rows[-1] + side))
        board.strokes.append(Stroke(rail, "tether"))
    for thruster, height in zip(arrangement.thrusters, rows, strict=False):
        _branch(board, thruster, wires, height, unit)
    return Scene(
        name="wiring",
        title="Wiring, not to scale",
        low=(BATTERY, rows[-1] - ROW / 2),
        high=(EDGE, rows[0] + ROW / 2),
        strokes=tuple(board.strokes),
        shapes=tuple(board.shapes),
        labels=tuple(board.labels),
    )


def _trunk(board: Board, power: Power, height: float, unit: Unit) -> None:
    """From the battery to the control box."""
    board.pair(BATTERY + WIDE, CONTROL, height)
    board.box(BATTERY, height, (WIDE, 2 * HIGH), "ballast")
    board.text("+", WIDE + 1, height + PAIR + 1)
    board.text("-", WIDE + 1, height - PAIR - 3)
    board.text(f"battery {power.battery.volts:g} V", BATTERY, height + HIGH + 6)
    board.text(f"{power.battery.capacity:g} Ah", BATTERY, height + HIGH + 2)
    board.box(MAIN, height + PAIR, (16.0, 4.0), "bar")
    board.text(fuse_words(power.main_fuse), MAIN - 2, height + 7)
    lead = f"{gauge_name(power.lead_area, inches=unit == 'in')}, {run_words(power.lead_length, unit)}"
    board.text(f"lead {lead}", MAIN - 10, height - 7)
    if power.feed == "one pair":
        board.text("then one pair in the tether:", MAIN - 10, height - 11)
        board.text(_cores(power.core_area, power, unit), MAIN - 10, height - 15)


def _cores(area: float, power: Power, unit: Unit) -> str:
    """A pair of cores as long as the tether."""
    return f"2 x {gauge_name(area, inches=unit == 'in')}, {run_words(power.length, unit)}"


def _branch(board: Board, thruster: Thruster, wires: Wiring, height: float, unit: Unit) -> None:
    """From the control box to one motor."""
    about, power, branch = ("thruster", thruster.id), wires.power, thruster.branch
    load = next(load for load in wires.loads if load.thruster == thruster.id)
    board.pair(CONTROL, MOTOR, height, about)
    if branch.fuse:
        board.box(FUSE, height + PAIR, (16.0, 4.0), "bar", about)
        board.text(fuse_words(branch.fuse), FUSE, height + 4.8)
    board.box(SWITCH, height, (WIDE, HIGH), "bar", about)
    board.text(branch.switching, SWITCH + 1, height - 1)
    colours = " and ".join(branch.colours)
    if power.feed == "one pair":
        board.text(colours, CABLE, height + 5)
    else:
        board.text(f"tether: {colours}", CABLE, height + 5)
        board.text(_cores(branch_area(power, branch), power, unit), CABLE, height - 6)
    board.box(MOTOR, height, (WIDE, 1.4 * HIGH), "thruster", about)
    board.text(thruster.name, MOTOR, height + 8)
    board.text(f"{load.volts:.1f} V, {load.amps:.1f} A", MOTOR, height - 10)
