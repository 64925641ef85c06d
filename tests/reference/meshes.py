"""A vehicle as watertight meshes, built with trimesh from the raw numbers of its file.

Round things have 256 facets, so that a cylinder's volume is low by 0.01 % and its reach by less
than 0.003 mm.  A fitting's plastic is spread evenly along its sockets, as the model states it.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
import trimesh

from tests.reference.raw_frame import Raw, vector

FACETS = 256
WEIGHING_WATER = 998.2e-6
"""[g/mm3] fresh water at 20 deg C (Tanaka et al. 2001)."""


@dataclass
class Lump:
    """A piece of the vehicle: g, mm3, their centres, and meshes of its outside for the size box."""

    mass: float
    volume: float
    mass_centre: np.ndarray
    volume_centre: np.ndarray
    outside: list[trimesh.Trimesh]


def rod(start: np.ndarray, end: np.ndarray, diameter: float) -> trimesh.Trimesh:
    """A round bar."""
    return trimesh.creation.cylinder(radius=diameter / 2, segment=[start, end], sections=FACETS)


def tube(start: np.ndarray, end: np.ndarray, outside: float, inside: float) -> trimesh.Trimesh:
    """A round tube."""
    if not inside:
        return rod(start, end, outside)
    return trimesh.creation.annulus(inside / 2, outside / 2, segment=[start, end], sections=FACETS)


def mitred(centre: np.ndarray, ways: list[np.ndarray], mesh: trimesh.Trimesh, number: int) -> trimesh.Trimesh:
    """One of two bores that meet at an angle, cut off where the other begins."""
    normal = ways[number] - ways[1 - number]
    normal = normal / np.linalg.norm(normal)
    half_space = trimesh.creation.box((200, 200, 200))
    half_space.apply_transform(trimesh.geometry.align_vectors((0, 0, 1), normal))
    half_space.apply_translation(centre + normal * 100)
    return trimesh.boolean.intersection([mesh, half_space])


def lump(mesh: trimesh.Trimesh, density: float, outside: list[trimesh.Trimesh] | None = None) -> Lump:
    """A solid of one material [g/mm3]."""
    assert mesh.is_watertight
    centre = mesh.center_mass
    return Lump(mesh.volume * density, mesh.volume, centre, centre, [mesh] if outside is None else outside)


def vehicle(raw: Raw) -> list[Lump]:
    """All the pieces of a vehicle whose joints each have exactly one fitting that fits in one way."""
    sealed = raw.run.get("bores") == "sealed"
    sockets = {joint: _sockets(raw, joint) for joint in raw.at}
    lumps = [_pipe(raw, bar, sockets, sealed) for bar in raw.bars]
    lumps += [_fitting(raw, joint, sockets[joint], sealed) for joint in raw.at]
    supplies = raw.tables.get("supplies", {})
    for kind, build in BUILDERS.items():
        lumps += [piece for item in raw.run.get(kind, []) for piece in build(raw, item, supplies)]
    tether = raw.run.get("tether")
    return lumps + ([_tether(raw, tether)] if tether else [])


def _sockets(raw: Raw, joint: str) -> tuple[dict[str, Any], dict[str, Any]]:
    """The fitting of a joint, and the socket of each of its bars."""
    fitting, ways = raw.candidates(joint)[0]
    taken = zip(raw.arms(joint), ways[0], strict=True)
    return fitting, {bar: fitting["sockets"][number] for (bar, _), number in taken}


def _pipe(raw: Raw, bar: str, sockets: dict[str, Any], sealed: bool) -> Lump:
    pipe, ends = raw.pipe(bar), raw.bars[bar]
    a, b = raw.at[ends["start"]], raw.at[ends["end"]]
    along = (b - a) / np.linalg.norm(b - a)
    first, last = (sockets[ends[end]][1][bar] for end in ("start", "end"))
    start = a + along * (raw.centre_to_face(first) - raw.push_in(bar, first))
    end = b - along * (raw.centre_to_face(last) - raw.push_in(bar, last))
    outside = raw.mm(pipe["outside_diameter"])
    wall = tube(start, end, outside, raw.mm(pipe["bore"]))
    full = rod(start, end, outside)
    piece = lump(wall, pipe["density"] * 1e-6, [full])
    if sealed:
        piece.volume = full.volume
    return piece


def _fitting(raw: Raw, joint: str, chosen: Any, sealed: bool) -> Lump:
    fitting, taken = chosen
    ways = dict(raw.arms(joint))
    at, hub = raw.at[joint], raw.mm(fitting["hub"])
    arms = [(ways[bar], socket, bar) for bar, socket in taken.items()]
    hubs = [rod(at, at + to * raw.centre_to_face(socket), hub) for to, socket, _ in arms]
    thin = trimesh.util.concatenate([rod(at, at + to * raw.centre_to_face(s), 1.0) for to, s, _ in arms])
    plastic = fitting["mass"] / (fitting["density"] * 1e-6)
    room = sum(mesh.volume for mesh in _room(raw, at, arms)) if sealed else 0.0
    return Lump(fitting["mass"], plastic + room, thin.center_mass, thin.center_mass, hubs)


def _room(raw: Raw, at: np.ndarray, arms: list[Any]) -> list[trimesh.Trimesh]:
    """The hollow where the bores meet, and the gaps between pipe ends and stops.

    Bores begin flat at the centre, or meet in a mitre where they make an angle of 45 degrees.
    """
    bores, gaps = [], []
    for to, socket, bar in arms:
        stop = stop_of(to, at, socket, raw)
        left = raw.mm(socket["depth"]) - raw.push_in(bar, socket)
        bores.append(rod(at, stop, raw.mm(raw.pipe(bar)["bore"])))
        gaps.append(rod(stop, stop + to * left, raw.mm(raw.pipe(bar)["outside_diameter"])))
    ways = [to for to, _, _ in arms]
    if len(ways) == 2 and 0.1 < abs(ways[0] @ ways[1]) < 0.9:
        longer = [
            rod(at - to * 30, stop_of(to, at, s, raw), raw.mm(raw.pipe(b)["bore"])) for to, s, b in arms
        ]
        return [*(mitred(at, ways, mesh, k) for k, mesh in enumerate(longer)), *gaps]
    return [trimesh.boolean.union(bores), *gaps]


def stop_of(to: np.ndarray, at: np.ndarray, socket: dict[str, Any], raw: Raw) -> np.ndarray:
    """The stop of a socket."""
    return at + to * raw.mm(socket["laying_length"])


def _on_bar(raw: Raw, item: dict[str, Any]) -> tuple[np.ndarray, np.ndarray]:
    """Where something sits on its bar, and the direction of the bar."""
    ends = raw.bars[item["bar"]]
    a, b = raw.at[ends["start"]], raw.at[ends["end"]]
    return a + (b - a) * item.get("at", 0.5), (b - a) / np.linalg.norm(b - a)


def _named(rows: list[dict[str, Any]], identity: str) -> dict[str, Any]:
    return next(row for row in rows if row["id"] == identity)


def _by_weighing(mass: float, in_water: float, centre: np.ndarray, outside: list[trimesh.Trimesh]) -> Lump:
    return Lump(mass, (mass - in_water) / WEIGHING_WATER, centre, centre, outside)


def _thruster(raw: Raw, item: dict[str, Any], supplies: dict[str, Any]) -> list[Lump]:
    foot, _ = _on_bar(raw, item)
    centre = foot + raw.factor * np.array(item.get("offset", (0, 0, 0)))
    motor = _named(supplies["motors"], item["motor"])
    to, half = np.array(vector(item.get("to", "+x"))), raw.mm(motor["body_length"]) / 2
    body = rod(centre - to * half, centre + to * half, raw.mm(motor["body_diameter"]))
    propeller = rod(centre - to * (half + 10), centre - to * half, raw.mm(motor["propeller_diameter"]))
    pieces = [_by_weighing(motor["mass"], motor["mass_in_water"], centre, [body, propeller])]
    if item.get("mount"):
        mount = _named(supplies["mounts"], item["mount"])
        pieces.append(_by_weighing(mount["mass"], mount["mass_in_water"], (foot + centre) / 2, []))
    return pieces


def _float(raw: Raw, item: dict[str, Any], supplies: dict[str, Any]) -> list[Lump]:
    foot, along = _on_bar(raw, item)
    foam, pipe = _named(supplies["foams"], item["foam"]), raw.mm(raw.pipe(item["bar"])["outside_diameter"])
    outside, hole = raw.mm(foam["outside_diameter"]), raw.mm(foam["hole"])
    reach = along * raw.mm(item["length"]) / 2
    if "beside" in item:
        foot = foot + np.array(vector(item["beside"])) * (outside + pipe) / 2
        wide = outside
    else:  # the foam keeps its cross-section where a thicker pipe stretches the hole
        wide = (outside**2 - hole**2 + max(hole, pipe) ** 2) ** 0.5
    foam_mesh = tube(foot - reach, foot + reach, outside, hole)
    return [lump(foam_mesh, foam["density"] * 1e-6, [rod(foot - reach, foot + reach, wide)])]


def _ballast(raw: Raw, item: dict[str, Any], supplies: dict[str, Any]) -> list[Lump]:
    foot, along = _on_bar(raw, item)
    density, wide = item.get("density", 7850.0) * 1e-6, raw.mm(item.get("diameter", 12.0 / raw.factor))
    pipe = raw.mm(raw.pipe(item["bar"])["outside_diameter"])
    side = item.get("beside", "-z")
    inside = 0.0 if side else pipe
    if side:
        foot = foot + np.array(vector(side)) * (wide + pipe) / 2
    reach = along * item["mass"] / density / (np.pi / 4 * (wide**2 - inside**2)) / 2
    return [lump(tube(foot - reach, foot + reach, wide, inside), density)]


def _attachment(raw: Raw, item: dict[str, Any], supplies: dict[str, Any]) -> list[Lump]:
    foot, _ = _on_bar(raw, item)
    centre = foot + raw.factor * np.array(item.get("offset", (0, 0, 0)))
    block = trimesh.creation.box(raw.factor * np.array(item["size"]))
    block.apply_translation(centre)
    return [_by_weighing(item["mass"], item["mass_in_water"], centre, [block])]


def _tether(raw: Raw, item: dict[str, Any]) -> Lump:
    foot, _ = _on_bar(raw, item)
    metres = raw.mm(item["hanging"]) / 1000
    lift = item.get("float_lift", 0) * item.get("floats", 0)
    mass = item["mass_per_m"] * metres
    return _by_weighing(mass, item["mass_in_water_per_m"] * metres - lift, foot, [])


BUILDERS = {"thrusters": _thruster, "floats": _float, "ballasts": _ballast, "attachments": _attachment}
