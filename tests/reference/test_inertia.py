"""Moments of inertia of six frames against watertight meshes, and added mass against published tables."""

from math import pi

import numpy as np
import pytest

from model.motion.inertia import added_share, dry_inertia, flooding_inertia, period
from model.motion.shapes import Wet
from model.parts import Cylinder
from model.survey import survey
from model.water.balance import GRAVITY
from tests.model.test_builtin_presets import STARTERS
from tests.reference.meshes import rod, tube, vehicle
from tests.reference.raw_frame import Raw

MM2 = 1e9
"""g mm2 in a kg m2."""


def about(mesh, mass, g):
    """Inertia [g mm2] of a solid of one material about a point, by the parallel axis theorem."""
    scale = mass / mesh.volume
    arm = mesh.center_mass - g
    return mesh.moment_inertia * scale + mass * (arm @ arm * np.eye(3) - np.outer(arm, arm))


def point(mass, at, g):
    arm = at - g
    return mass * (arm @ arm * np.eye(3) - np.outer(arm, arm))


def lump_inertia(raw, lump, g):
    """Inertia of a piece: pipe and foam as tubes, fittings by their hubs, the rest by its first solid."""
    if not lump.outside:
        return point(lump.mass, lump.mass_centre, g)
    meshes = lump.outside if lump.outside[0].metadata.get("spread") else lump.outside[:1]
    whole = sum(mesh.volume for mesh in meshes)
    return sum(about(mesh, lump.mass * mesh.volume / whole, g) for mesh in meshes)


def meshes_of(raw):
    """The lumps of a vehicle, with hollow meshes for pipe and foam, and hubs that share a fitting's mass."""
    lumps = vehicle(raw)
    bars, joints = len(raw.bars), len(raw.at)
    for lump, bar in zip(lumps[:bars], raw.bars, strict=False):
        full = lump.outside[0]
        start, end = axis_ends(full)
        pipe = raw.pipe(bar)
        lump.outside = [tube(start, end, raw.mm(pipe["outside_diameter"]), raw.mm(pipe["bore"]))]
    for lump in lumps[bars : bars + joints]:
        for mesh in lump.outside:
            mesh.metadata["spread"] = True
    foams = {foam["id"]: foam for foam in raw.tables["supplies"].get("foams", [])}
    floats = raw.run.get("floats", [])
    solid = [lump for lump in lumps if is_foam(lump, foams)]
    for lump, item in zip(solid, floats, strict=True):
        start, end = axis_ends(lump.outside[0])
        wide = lump.outside[0].bounding_cylinder.primitive.radius * 2
        hollow = raw.mm(foams[item["foam"]].get("hole", 0))
        lump.outside = [tube(start, end, wide, hollow)]
    return lumps


def is_foam(lump, foams):
    return any(lump.mass / (lump.volume * 1e-6) == pytest.approx(f.get("density", 28), rel=1e-3) for f in foams.values())


def axis_ends(cylinder):
    """The middles of the flat ends of a round mesh."""
    middle, turn = cylinder.center_mass, cylinder.principal_inertia_vectors
    components = np.sort(cylinder.principal_inertia_components)
    odd = int(np.argmax([abs(c - np.median(components)) for c in cylinder.principal_inertia_components]))
    axis = turn[odd]
    reach = np.ptp(cylinder.vertices @ axis) / 2
    return middle - axis * reach, middle + axis * reach


@pytest.mark.parametrize("design", STARTERS.values(), ids=STARTERS.keys())
def test_inertia_of_each_starter_agrees_with_its_meshes(design):
    found = survey(design)
    raw = Raw(design)
    lumps = meshes_of(raw)
    g = np.array(found.balance.g) * 1e3
    wanted = sum(lump_inertia(raw, lump, g) for lump in lumps)
    got = dry_inertia(found.parts, found.balance.g)
    matrix = np.array([[got.xx, got.xy, got.xz], [got.xy, got.yy, got.yz], [got.xz, got.yz, got.zz]])
    np.testing.assert_allclose(matrix * MM2, wanted, atol=1e-3 * np.max(wanted))
