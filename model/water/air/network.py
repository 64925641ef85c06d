"""From the frame, its openings and its plugs to the network of bores."""

from collections.abc import Iterable
from typing import Literal

from msgspec import Struct

from model.design import Opening, Plug
from model.frame.layout import BarPlace, Frame, JointPlace
from model.vectors import Grid, Vector, add, dot, scale
from model.water.air.bores import Bore, Corner, Groove, Meeting, Mouth, Network, Rim
from model.water.air.drilling import fault, outward_of
from model.water.air.sockets import is_cap, length_one, socket_of

LEAST = 1e-6
"""[m] A piece of bore shorter than this is none."""


class _Arm(Struct, frozen=True):
    """A bore's end at a joint: its number, and its direction away from there."""

    bore: int
    to: Vector
    radius: float


class _Builder:
    """Collects the pieces of a network; shapes that are alike are kept once."""

    def __init__(self, frame: Frame) -> None:
        self.frame = frame
        self.bores: list[Bore] = []
        self.grooves: list[Groove] = []
        self.mouths: list[Mouth] = []
        self.meetings: list[Meeting] = []
        self.rims: dict[Rim, int] = {}
        self.corners: dict[Corner, int] = {}
        self.arms: dict[str, list[_Arm]] = {joint: [] for joint in frame.joints}
        self.of_bar: dict[str, list[int]] = {bar: [] for bar in frame.bars}

    def network(self) -> Network:
        return Network(
            bores=tuple(self.bores),
            grooves=tuple(self.grooves),
            mouths=tuple(self.mouths),
            rims=tuple(self.rims),
            meetings=tuple(self.meetings),
            corners=tuple(self.corners),
        )

    def add_bar(self, bar: BarPlace, plugs: Iterable[Plug]) -> None:
        """The bore of a bar from joint to joint, parted by its plugs."""
        walls = [self._end_wall(joint, bar) for joint in bar.joints]
        low, high = walls[0], bar.spacing - walls[1]
        for begin, end in _parted(low, high, bar, plugs):
            number = len(self.bores)
            at = add(bar.start, scale(bar.along, begin))
            self.bores.append(Bore(bar.id, "", at, bar.along, end - begin, bar.pipe.bore / 2, begin))
            self.of_bar[bar.id].append(number)
            if begin == low:
                self._add_end(bar, number, bar.joints[0], bar.along)
            if end == high:
                self._add_end(bar, number, bar.joints[1], scale(bar.along, -1))

    def _end_wall(self, joint: str, bar: BarPlace) -> float:
        """How far the bore of a bar ends short of a joint [m]: the end wall of a cap."""
        socket = socket_of(self.frame.joints[joint], bar.id)
        return socket.laying_length if socket and is_cap(self.frame.joints[joint]) else 0.0

    def _add_end(self, bar: BarPlace, number: int, joint: str, to: Vector) -> None:
        place = self.frame.joints[joint]
        socket = socket_of(place, bar.id)
        if socket is not None:
            pushed = bar.insertions[bar.joints.index(joint)]
            self._add_groove(number, place.at, to, socket.laying_length, socket.depth - pushed)
        elif len(place.arms) == 1:
            self._add_end_mouth(number, place.at, to, bar.pipe.bore, "end", joint)
        if not is_cap(place):
            self.arms[joint].append(_Arm(number, to, bar.pipe.bore / 2))

    def _add_groove(self, bore: int, joint: Vector, to: Vector, stop: float, length: float) -> None:
        """The ring between the end of a pipe and the stop of its socket, as wide as the pipe outside."""
        room = self.bores[bore]
        wide = self.frame.bars[room.bar].pipe.outside_diameter / 2
        if length > LEAST and wide > room.radius:
            first = add(joint, scale(to, stop))
            last = add(first, scale(to, length))
            start = first if dot(to, room.along) > 0 else last
            self.grooves.append(Groove(bore, start, length, wide))

    def add_joint(self, joint: JointPlace) -> None:
        """The empty sockets of a joint, and the meetings of all bores there."""
        for to in joint.match.spare if joint.match else ():
            self._add_spare(joint, to)
        arms = self.arms[joint.id]
        for number, a in enumerate(arms):
            for b in arms[:number]:
                corner = Corner(b.to, a.to, min(a.radius, b.radius))
                kind = self.corners.setdefault(corner, len(self.corners))
                self.meetings.append(Meeting((b.bore, a.bore), joint.id, joint.at, kind))

    def _add_spare(self, joint: JointPlace, to: Grid) -> None:
        if joint.match is None or is_cap(joint):
            return
        socket, pipe = joint.match.sockets[to], self.frame.bars[joint.arms[0].bar].pipe
        along = length_one(to)
        number = len(self.bores)
        self.bores.append(Bore("", joint.id, joint.at, along, socket.centre_to_face, pipe.bore / 2))
        stop = add(joint.at, scale(along, socket.laying_length))
        self.grooves.append(Groove(number, stop, socket.depth, pipe.outside_diameter / 2, face=True))
        face = add(joint.at, scale(along, socket.centre_to_face))
        self._add_end_mouth(number, face, along, pipe.outside_diameter, "socket", joint.id)
        self.arms[joint.id].append(_Arm(number, along, pipe.bore / 2))

    def _add_end_mouth(
        self, bore: int, at: Vector, along: Vector, diameter: float, kind: Literal["socket", "end"], id: str
    ) -> None:
        rim = self._rim(Rim(along, None, self.bores[bore].radius, diameter / 2))
        self.mouths.append(Mouth(bore, at, rim, kind, id, at, diameter))

    def add_opening(self, opening: Opening) -> None:
        """The one or two holes of an opening; none where it cannot be drilled so."""
        bar = self.frame.bars[opening.bar]
        offset = opening.at * bar.spacing
        number = self._bore_at(bar, offset)
        if number is None or fault(self.frame, opening):
            return
        outward = outward_of(bar, opening.face)
        if outward is None:
            return
        self._add_hole(number, bar.point(opening.at), outward, opening)
        if opening.through:
            self._add_hole(number, bar.point(opening.at), scale(outward, -1), opening)

    def _add_hole(self, bore: int, at: Vector, outward: Vector, opening: Opening) -> None:
        room = self.bores[bore]
        rim = self._rim(Rim(room.along, outward, room.radius, opening.diameter / 2))
        centre = add(at, scale(outward, room.radius))
        self.mouths.append(Mouth(bore, at, rim, "opening", opening.id, centre, opening.diameter))

    def _bore_at(self, bar: BarPlace, offset: float) -> int | None:
        for number in self.of_bar[bar.id]:
            bore = self.bores[number]
            if bore.offset - LEAST <= offset <= bore.offset + bore.length + LEAST:
                return number
        return None

    def _rim(self, rim: Rim) -> int:
        return self.rims.setdefault(rim, len(self.rims))


def network_of(frame: Frame, openings: Iterable[Opening] = (), plugs: Iterable[Plug] = ()) -> Network:
    """The bores of a frame with its openings and plugs.

    Where no fitting fits a joint, the bores meet there as if one did; a single bar without a fitting
    is open at its end.
    """
    builder = _Builder(frame)
    stoppers = list(plugs)
    for bar in frame.bars.values():
        builder.add_bar(bar, [plug for plug in stoppers if plug.bar == bar.id])
    for joint in frame.joints.values():
        builder.add_joint(joint)
    for opening in openings:
        builder.add_opening(opening)
    return builder.network()


def _parted(low: float, high: float, bar: BarPlace, plugs: Iterable[Plug]) -> list[tuple[float, float]]:
    """The stretches of a bar's bore [m from its start] that its plugs leave free."""
    free = [(low, high)]
    for plug in plugs:
        first, last = plug.at * bar.spacing - plug.length / 2, plug.at * bar.spacing + plug.length / 2
        free = [
            (begin, end)
            for low, high in free
            for begin, end in ((low, min(high, first)), (max(low, last), high))
        ]
    return [(begin, end) for begin, end in free if end - begin > LEAST]
