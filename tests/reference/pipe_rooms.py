"""The rooms inside a frame's pipes from the raw numbers of its file, for ``Voxels``.  Lengths in mm."""

import numpy as np

from tests.reference.raw_frame import Raw, vector
from tests.reference.voxels import Voxels


def unit(point):
    """A vector brought to length 1."""
    return np.asarray(point, float) / np.linalg.norm(point)


def voxels(design, size, spare=()):
    """The bores of a design's first arrangement as cubes of a size [mm].

    Args:
        spare: for each empty socket, the joint and the direction in which it points; which way a
            fitting with an empty socket is turned is the team's choice, so it has to be said.
    """
    raw = Raw(design)
    rooms, ends = [], []
    for bar in raw.bars.values():
        rooms += bar_rooms(raw, bar, ends)
    for joint, to in spare:
        rooms += socket_rooms(raw, joint, unit(to), ends)
    cubes = Voxels(rooms, size, [plug_wall(raw, plug) for plug in raw.run.get("plugs", [])])
    for end in ends:
        cubes.open_end(*end)
    for opening in raw.run.get("openings", []):
        drill(raw, cubes, opening)
    return cubes


def fitting_at(raw, joint):
    """The fitting at a joint (that with the fewest spare sockets), or None where none fits."""
    found = raw.candidates(joint)
    return found[0][0] if found else None


def bar_rooms(raw, bar, ends):
    """The bore of a bar from joint to joint, and the wider rings short of the stops."""
    first, last = raw.at[bar["start"]], raw.at[bar["end"]]
    along = unit(last - first)
    pipe = raw.pipe(bar["id"])
    bore, outside = raw.mm(pipe["bore"]) / 2, raw.mm(pipe["outside_diameter"]) / 2
    reach, rings = [], []
    for joint, at, to in ((bar["start"], first, along), (bar["end"], last, -along)):
        fitting = fitting_at(raw, joint)
        if fitting is None:
            reach.append(at)
            if len(raw.arms(joint)) == 1:
                ends.append((at, -to, bore))
            continue
        socket = fitting["sockets"][0]
        stop = at + to * raw.mm(socket["laying_length"])
        pipe_end = stop + to * (raw.mm(socket["depth"]) - raw.push_in(bar["id"], socket))
        reach.append(stop if len(fitting["sockets"]) == 1 else at)
        if np.linalg.norm(pipe_end - stop) > 1e-6:
            rings.append((stop, pipe_end, outside))
    return [(reach[0], reach[1], bore), *rings]


def socket_rooms(raw, joint, to, ends):
    """An empty socket: its bore from the centre of the fitting, and the socket itself, open at its face."""
    fitting, at = fitting_at(raw, joint), raw.at[joint]
    pipe = raw.pipe(raw.arms(joint)[0][0])
    bore, outside = raw.mm(pipe["bore"]) / 2, raw.mm(pipe["outside_diameter"]) / 2
    socket = fitting["sockets"][0]
    stop = at + to * raw.mm(socket["laying_length"])
    face = at + to * raw.centre_to_face(socket)
    ends.append((face, to, outside))
    return [(at, stop, bore), (stop, face, outside)]


def place(raw, item):
    """The point on a bar's axis where something sits, and the bar's direction."""
    bar = raw.bars[item["bar"]]
    first, last = raw.at[bar["start"]], raw.at[bar["end"]]
    return first + (last - first) * item.get("at", 0.5), unit(last - first)


def plug_wall(raw, plug):
    """The stretch of a bore that a plug fills, a little wider than the bore."""
    at, along = place(raw, plug)
    half = raw.mm(plug.get("length", 10.0 / raw.factor)) / 2
    return at - along * half, at + along * half, raw.mm(raw.pipe(plug["bar"])["bore"]) * 0.6


def drill(raw, cubes, opening):
    """One or both walls drilled."""
    at, along = place(raw, opening)
    face = np.array(vector(opening.get("face", "+z")))
    outward = unit(face - along * (face @ along))
    reach = raw.mm(raw.pipe(opening["bar"])["bore"]) / 2 + cubes.size
    radius = raw.mm(opening.get("diameter", 6.0 / raw.factor)) / 2
    cubes.drill(at, outward, radius, reach)
    if opening.get("through"):
        cubes.drill(at, -outward, radius, reach)
