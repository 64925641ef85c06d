"""Moments of inertia of the starters against watertight meshes, and added mass against published values."""

import numpy as np
import pytest

from model.design import Design
from model.motion.inertia import added_inertia, added_share, dry_inertia, flooding_inertia, period
from model.motion.shapes import Wet
from model.motion.tensor import Tensor
from model.parts import Cylinder
from model.preset_files import read_preset
from model.presets import built_in_folder
from model.survey import survey
from model.water.balance import GRAVITY
from tests.reference.meshes import _on_bar, _sockets, rod, tube, vehicle
from tests.reference.raw_frame import Raw, vector

STARTERS = sorted((built_in_folder() / "starters").glob("*.toml"))
KG_M2 = 1e-9
"""kg m2 in a g mm2."""


def about(mesh, mass, g):
    """Inertia [g mm2] of an evenly filled mesh about a point, by the parallel axis theorem."""
    return mesh.moment_inertia * mass / mesh.volume + point(mass, mesh.center_mass, g)


def point(mass, at, g):
    arm = at - g
    return mass * (arm @ arm * np.eye(3) - np.outer(arm, arm))


def solids(raw: Raw):
    """What carries mass: meshes of pipe, of the sockets of each fitting and of foam, in g."""
    sockets = {joint: _sockets(raw, joint) for joint in raw.at}
    for bar, ends in raw.bars.items():
        pipe = raw.pipe(bar)
        places = []
        for here, there in (("start", "end"), ("end", "start")):
            joint, socket = ends[here], sockets[ends[here]][1][bar]
            along = raw.at[ends[there]] - raw.at[joint]
            inset = raw.centre_to_face(socket) - raw.push_in(bar, socket)
            places.append(raw.at[joint] + along / np.linalg.norm(along) * inset)
        mesh = tube(*places, raw.mm(pipe["outside_diameter"]), raw.mm(pipe["bore"]))
        yield mesh, mesh.volume * pipe["density"] * 1e-6
    for joint, (fitting, taken) in sockets.items():
        ways = dict(raw.arms(joint))
        hubs = [
            rod(raw.at[joint], raw.at[joint] + ways[bar] * raw.centre_to_face(socket), raw.mm(fitting["hub"]))
            for bar, socket in taken.items()
        ]
        for hub in hubs:
            yield hub, fitting["mass"] * hub.volume / sum(h.volume for h in hubs)
    yield from foam(raw)


def foam(raw: Raw):
    """Floats as tubes: stretched over the pipe where it is threaded."""
    foams = {item["id"]: item for item in raw.tables["supplies"].get("foams", [])}
    for item in raw.run.get("floats", []):
        foot, along = _on_bar(raw, item)
        kind, pipe = foams[item["foam"]], raw.mm(raw.pipe(item["bar"])["outside_diameter"])
        outside, hole = raw.mm(kind["outside_diameter"]), raw.mm(kind.get("hole", 0))
        mass = np.pi / 4 * (outside**2 - hole**2) * raw.mm(item["length"]) * kind.get("density", 28) * 1e-6
        reach = along * raw.mm(item["length"]) / 2
        if "beside" in item:
            foot = foot + np.array(vector(item["beside"])) * (outside + pipe) / 2
            yield tube(foot - reach, foot + reach, outside, hole), mass
        else:
            inner = max(hole, pipe)
            yield tube(foot - reach, foot + reach, np.sqrt(outside**2 - hole**2 + inner**2), inner), mass


@pytest.mark.parametrize("path", STARTERS, ids=[path.stem for path in STARTERS])
def test_inertia_of_each_starter_agrees_with_its_meshes(path):
    design = read_preset(path).payload
    assert isinstance(design, Design)
    found, raw = survey(design), Raw(design)
    g = np.array(found.balance.g) * 1e3
    frame_and_foam = list(solids(raw))
    wanted = sum(about(mesh, mass, g) for mesh, mass in frame_and_foam)
    pieces = vehicle(raw)
    skipped = len(raw.bars) + len(raw.at)
    floats = {part.id for part in found.parts if part.kind == "float"}
    rest = [
        lump
        for part, lump in zip(found.parts[skipped:], pieces[skipped:], strict=True)
        if part.id not in floats
    ]
    wanted = wanted + sum(
        about(lump.outside[0], lump.mass, g) if lump.outside else point(lump.mass, lump.mass_centre, g)
        for lump in rest
    )
    got = matrix(dry_inertia(found.parts, found.balance.g))
    np.testing.assert_allclose(got, wanted * KG_M2, atol=1e-3 * np.max(wanted) * KG_M2)


def matrix(tensor: Tensor):
    return np.array(
        [
            [tensor.xx, tensor.xy, tensor.xz],
            [tensor.xy, tensor.yy, tensor.yz],
            [tensor.xz, tensor.yz, tensor.zz],
        ]
    )


@pytest.mark.parametrize(("slender", "share"), [(1.2, 0.62), (2.5, 0.78), (5.0, 0.90), (9.0, 0.96)])
def test_added_mass_of_a_cylinder_across_its_axis(slender, share):
    # DNV-RP-C205 table D-2, from memory
    free = Wet(Cylinder((0.0, 0.0, 0.0), (slender * 0.02, 0.0, 0.0), 0.01), butted=False)
    assert added_share(free) == pytest.approx(share, abs=0.005)


@pytest.mark.parametrize(("slender", "share"), [(1.0, 0.58), (2.0, 0.736), (5.0, 0.881), (9.0, 0.933)])
def test_added_mass_agrees_with_a_boundary_element_computation(slender, share):
    # capytaine 3.0.0 in unbounded fluid, two meshes extrapolated: read as printed, ends meshed a little low
    free = Wet(Cylinder((0.0, 0.0, 0.0), (slender * 0.02, 0.0, 0.0), 0.01), butted=False)
    assert added_share(free) == pytest.approx(share, rel=0.12 if slender < 1.2 else 0.05)


def test_added_inertia_of_a_long_pipe_about_its_middle():
    # strip theory: rho pi r^2 L^3 / 12 across the axis, nothing about it (textbook hydrodynamics)
    pipe = Wet(Cylinder((-0.5, 0.0, 0.0), (0.5, 0.0, 0.0), 0.01), butted=True)
    tensor = added_inertia([pipe], 1000.0, (0.0, 0.0, 0.0))
    assert tensor.xx == pytest.approx(0.0, abs=1e-12)
    assert tensor.yy == pytest.approx(1000 * np.pi * 0.01**2 * 1.0**3 / 12, rel=1e-9)
    assert tensor.zz == pytest.approx(tensor.yy)


def test_added_inertia_of_a_pipe_off_the_middle():
    # an upright pipe 0.3 m ahead: turning about z moves all of it sideways at 0.3 w
    pipe = Wet(Cylinder((0.3, 0.0, -0.1), (0.3, 0.0, 0.1), 0.01), butted=True)
    tensor = added_inertia([pipe], 1000.0, (0.0, 0.0, 0.0))
    assert tensor.zz == pytest.approx(1000 * np.pi * 0.01**2 * 0.2 * 0.3**2, rel=1e-9)


def test_flooding_water_lies_along_the_bores():
    design = read_preset(STARTERS[0]).payload
    assert isinstance(design, Design)
    found, raw = survey(design), Raw(design)
    water, sockets = 0.0, {joint: _sockets(raw, joint) for joint in raw.at}
    for bar, ends in raw.bars.items():
        pipe = raw.pipe(bar)
        length = np.linalg.norm(raw.at[ends["end"]] - raw.at[ends["start"]])
        for joint in (ends["start"], ends["end"]):
            socket = sockets[joint][1][bar]
            length -= raw.centre_to_face(socket) - raw.push_in(bar, socket)
        water += np.pi / 4 * raw.mm(pipe["bore"]) ** 2 * length
    # about a far point every gram of water counts with the square of its distance, fittings on top
    far = (100.0, 0.0, 0.0)
    got = flooding_inertia(found.frame, 1000.0, far).yy / 100.0**2
    assert water * 1e-6 < got < water * 1e-6 * 1.35


def test_period_of_a_compound_pendulum():
    # T = 2 pi sqrt(I / (m g d)); a rod of 1 m hung by its end: 2 pi sqrt(2 L / 3 g) (textbook mechanics)
    rod_period = period(1.0 / 3, 1.0, 0.5, GRAVITY)
    assert rod_period == pytest.approx(2 * np.pi * np.sqrt(2 * 1.0 / (3 * 9.80665)))
    assert period(1.0, 1.0, 0.0, GRAVITY) is None
