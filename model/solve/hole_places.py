"""Where a hole may be drilled: on the pipe that shows, clear of sockets and of what is fixed to it.

A bar too short for that is drilled through its fitting instead, between the stops of the sockets.
"""

from collections.abc import Iterator
from itertools import product

from msgspec import Struct

from model.design import Opening
from model.frame.layout import BarPlace, JointPlace
from model.parts import Cylinder, Part
from model.survey import Survey
from model.vectors import AXES, Vector, dot, unit
from model.water.air.drilling import fault
from model.water.air.sockets import is_cap, socket_of

HOLE = 0.006
"""[m] Diameter of a new hole, unless the brief asks for more (common practice)."""
MARGIN = 0.004
"""[m] Between the edge of a hole and what is tied, clamped or threaded there (common practice)."""
FOOT = 0.015
"""[m] Half the length of bar that a mount, a tie-off or an attachment holds on to (common practice)."""
PENCIL = 0.0005
"""[m] Kept besides, so that rounding a place does not bring it nearer to a socket than one diameter."""
GAP_LEAST = 0.003
"""[m] A gap between pipe end and stop narrower than this is no place for a drill."""
ASIDE = 0.3
"""A face that points more than this towards what is strapped beside the bar is taken by it."""
FACES = tuple(
    "".join(sign + axis for sign, axis in zip(signs, AXES, strict=True) if sign)
    for signs in product(("", "+", "-"), repeat=3)
    if 1 <= sum(map(bool, signs)) <= 2
)
"""The six sides and the twelve half-way between two of them."""


class Spot(Struct, frozen=True):
    """A place to drill.

    Attributes:
        bar, at, face, through: as of an opening.
        fitting: whether it is in the fitting at that end of the bar.
    """

    bar: str
    at: float
    face: str
    through: bool
    fitting: bool

    @property
    def trouble(self) -> int:
        """How much trouble it is to mark and drill: slanting sides and fittings are more."""
        return (len(self.face) > 2) + 2 * self.fitting

    def opening(self, identity: str, name: str, diameter: float) -> Opening:
        """The hole drilled there."""
        return Opening(
            id=identity,
            name=name,
            bar=self.bar,
            at=self.at,
            face=self.face,
            through=self.through,
            diameter=diameter,
        )


class Taken(Struct, frozen=True):
    """A stretch of bar [m from its start] that something sits on; on one side only where that is named."""

    low: float
    high: float
    side: str | None


def opposite(face: str) -> str:
    """The side across from a side.

    >>> opposite("+y-z")
    '-y+z'
    """
    return face.translate(str.maketrans("+-", "-+"))


def hole_size(found: Survey) -> float:
    """Diameter of a new hole [m]."""
    return max(HOLE, found.design.brief.thresholds.hole_least)


def spots(found: Survey) -> list[Spot]:
    """Everywhere that a hole may be drilled; on pipe before in fittings, plain sides before slanting ones."""
    taken = taken_stretches(found)
    size = hole_size(found)
    on_pipe = [spot for bar in found.frame.bars.values() for spot in _on_bar(found, bar, taken[bar.id], size)]
    in_fittings = [spot for joint in found.frame.joints.values() for spot in _in_fitting(found, joint, size)]
    return sorted(on_pipe, key=lambda spot: len(spot.face)) + sorted(
        in_fittings, key=lambda spot: len(spot.face)
    )


def spots_on(found: Survey, bar: BarPlace) -> list[Spot]:
    """Everywhere on the pipe of one bar."""
    return list(_on_bar(found, bar, taken_stretches(found)[bar.id], hole_size(found)))


def taken_stretches(found: Survey) -> dict[str, list[Taken]]:
    """What sits on each bar."""
    taken: dict[str, list[Taken]] = {bar: [] for bar in found.frame.bars}
    run = found.arrangement
    lengths = {part.id: _length(part) for part in found.parts if part.kind == "ballast"}
    for piece in run.floats:
        _take(found, taken, piece.bar, piece.at, piece.length / 2, piece.beside)
    for plug in run.plugs:
        _take(found, taken, plug.bar, plug.at, plug.length / 2, None)
    for weight in run.ballasts:
        _take(found, taken, weight.bar, weight.at, lengths[weight.id] / 2, weight.beside)
    for item in (*run.thrusters, *run.attachments, *((run.tether,) if run.tether else ())):
        _take(found, taken, item.bar, item.at, FOOT, None)
    return taken


def _length(part: Part) -> float:
    """Length of a rod, or of a stack of washers [m]."""
    solid = part.solids[0]
    return solid.length if isinstance(solid, Cylinder) else 0.0


def _take(
    found: Survey, taken: dict[str, list[Taken]], bar: str, at: float, half: float, side: str | None
) -> None:
    middle = at * found.frame.bars[bar].spacing
    taken[bar].append(Taken(middle - half, middle + half, side))


def _on_bar(found: Survey, bar: BarPlace, taken: list[Taken], size: float) -> Iterator[Spot]:
    edge = bar.pipe.outside_diameter + PENCIL
    low, high = bar.faces[0] + edge, bar.spacing - bar.faces[1] - edge
    if low > high or not bar.spacing:
        return
    for face in _sides(bar.along):
        busy = [piece for piece in taken if piece.side is None or _is_aside(face, piece.side)]
        for place in _free_places(low, high, busy, size / 2 + MARGIN):
            yield Spot(bar.id, round(place / bar.spacing, 4), face, through=True, fitting=False)


def _free_places(low: float, high: float, busy: list[Taken], room: float) -> list[float]:
    """The middle, both ends and the edges of what is in the way [m], where nothing is."""
    wanted = [(low + high) / 2, low, high]
    for piece in busy:
        wanted += [piece.low - room, piece.high + room]
    return [
        place
        for place in wanted
        if low <= place <= high and all(not piece.low - room < place < piece.high + room for piece in busy)
    ]


def _in_cap(found: Survey, joint: JointPlace) -> Iterator[Spot]:
    """Through the wall of a cap, beyond the end of its pipe."""
    bar = found.frame.bars[joint.arms[0].bar]
    socket, end = socket_of(joint, bar.id), bar.joints.index(joint.id)
    if socket is None or not bar.spacing:
        return
    gap = socket.depth - bar.insertions[end]
    if gap > GAP_LEAST:
        offset = socket.laying_length + gap / 2
        share = offset / bar.spacing
        for face in _sides(bar.along):
            yield Spot(bar.id, round(1 - share if end else share, 4), face, through=True, fitting=True)


def _in_fitting(found: Survey, joint: JointPlace, size: float) -> Iterator[Spot]:
    """Through the middle of a fitting, where no socket leaves."""
    if joint.match is None:
        return
    if is_cap(joint):
        yield from _in_cap(found, joint)
        return
    seen: set[str] = set()
    for arm in joint.arms:
        bar = found.frame.bars[arm.bar]
        at = float(bar.joints[1] == joint.id)
        for face in FACES:
            if face in seen or abs(dot(unit(face), bar.along)) > 1e-9:
                continue
            seen.add(face)
            for through in (True, False):
                spot = Spot(bar.id, at, face, through, fitting=True)
                if fault(found.frame, spot.opening("o", "hole", size)) is None:
                    yield spot
                    break


def _sides(along: Vector) -> list[str]:
    """The sides of a bar, one of each two that are opposite."""
    across = [face for face in FACES if abs(dot(unit(face), along)) < 1e-9]
    return [face for face in across if face.startswith("+")]


def _is_aside(face: str, side: str) -> bool:
    return abs(dot(unit(face), unit(side))) > ASIDE
