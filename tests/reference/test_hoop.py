"""The smallest hoop against shapely's smallest circle round the projected meshes."""

from math import sqrt

import numpy as np
import pytest
import shapely

from model.hoop import smallest_circle, smallest_gate, smallest_hoop
from model.parts import Block, Cylinder, Part
from model.preset_files import read_preset
from model.survey import survey
from tests.reference.meshes import rod, vehicle
from tests.reference.raw_frame import Raw
from tests.reference.test_mass_properties import flat_and_busy, hexagon, sealed_box, tent
from tests.reference.test_silhouette import STARTERS, part


def circle_and_box(meshes):
    """Diameter, width and height [mm] of what meshes show from ahead."""
    points = shapely.multipoints(np.concatenate([mesh.vertices[:, [1, 2]] for mesh in meshes]))
    low_y, low_z, high_y, high_z = points.bounds
    return 2 * shapely.minimum_bounding_radius(points), high_y - low_y, high_z - low_z


def compare(parts, meshes):
    diameter, width, height = circle_and_box(meshes)
    assert smallest_hoop(parts).diameter * 1e3 == pytest.approx(diameter, abs=0.1)
    assert np.array(smallest_gate(parts)) * 1e3 == pytest.approx([width, height], abs=0.1)


@pytest.mark.parametrize("build", [flat_and_busy, sealed_box, tent, hexagon])
def test_the_hoop_of_a_vehicle(build):
    design = build()
    compare(survey(design).parts, [mesh for lump in vehicle(Raw(design)) for mesh in lump.outside])


@pytest.mark.parametrize("path", STARTERS, ids=lambda path: path.stem)
def test_the_hoop_of_each_starter(path):
    design = read_preset(path).payload
    compare(survey(design).parts, [mesh for lump in vehicle(Raw(design)) for mesh in lump.outside])


@pytest.mark.parametrize("seed", range(12))
def test_rods_in_any_direction(seed):
    dice = np.random.default_rng(seed)
    ends = dice.uniform(-0.3, 0.3, (dice.integers(1, 9), 2, 3))
    radii = dice.uniform(0.005, 0.06, len(ends))
    solids = [
        Cylinder(tuple(map(float, a)), tuple(map(float, b)), float(r))
        for (a, b), r in zip(ends, radii, strict=True)
    ]
    compare([part(*solids)], [rod(a * 1e3, b * 1e3, 2e3 * r) for (a, b), r in zip(ends, radii, strict=True)])


@pytest.mark.parametrize("seed", range(20))
def test_the_smallest_circle_round_points(seed):
    points = np.random.default_rng(seed).normal(size=(30, 2))
    centre, radius = smallest_circle([tuple(map(float, point)) for point in points])
    assert radius == pytest.approx(shapely.minimum_bounding_radius(shapely.multipoints(points)), rel=1e-9)
    assert max(np.linalg.norm(points - centre, axis=1)) == pytest.approx(radius, rel=1e-9)


def test_by_hand():
    """A block of 30 x 40 mm needs a hoop of 50; two rods along x stand 100 mm apart, 20 mm thick: 120."""
    block = Block((0.0, 0.1, 0.2), (0.5, 0.03, 0.04))
    found = smallest_hoop([part(block)])
    assert (found.diameter, *found.centre) == pytest.approx((0.05, 0.1, 0.2))
    rods = [Cylinder((0.0, y, 0.0), (1.0, y, 0.0), 0.01) for y in (-0.05, 0.05)]
    assert smallest_hoop([part(*rods)]).diameter == pytest.approx(0.12)
    third = Cylinder((0.0, 0.0, 0.05 * sqrt(3)), (1.0, 0.0, 0.05 * sqrt(3)), 0.01)
    assert smallest_hoop([part(*rods, third)]).diameter == pytest.approx(2 * (0.1 / sqrt(3) + 0.01))
    assert smallest_gate([part(*rods)]) == pytest.approx((0.12, 0.02))


def test_nothing_needs_no_hoop():
    empty = Part("tether", "t", "t", 0.0, 0.0, (0, 0, 0), (0, 0, 0), ())
    assert smallest_hoop([empty]) is None
    assert smallest_gate([]) is None
