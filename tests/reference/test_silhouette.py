"""The areas that a vehicle shows, against shapely's union of the projected meshes of its parts."""

from math import pi

import numpy as np
import pytest
import shapely

from model.parts import Block, Cylinder, Part
from model.preset_files import read_preset
from model.presets import built_in_folder
from model.silhouette import silhouettes
from model.survey import survey
from tests.reference.meshes import rod, vehicle
from tests.reference.raw_frame import Raw
from tests.reference.test_mass_properties import flat_and_busy, hexagon, sealed_box, tent

STARTERS = sorted((built_in_folder() / "starters").glob("*.toml"))
VIEWS = {"front": (1, 2), "side": (0, 2), "top": (0, 1)}


def union(meshes, view):
    """The union [mm2] of the shadows of convex meshes."""
    shadows = [shapely.convex_hull(shapely.multipoints(mesh.vertices[:, view])) for mesh in meshes]
    return shapely.union_all(shadows).area


def compare(parts, meshes):
    found = silhouettes(parts)
    for name, view in VIEWS.items():
        assert getattr(found, name) * 1e6 == pytest.approx(union(meshes, list(view)), rel=1e-3), name


@pytest.mark.parametrize("build", [flat_and_busy, sealed_box, tent, hexagon])
def test_the_shadow_of_a_vehicle(build):
    design = build()
    meshes = [mesh for lump in vehicle(Raw(design)) for mesh in lump.outside]
    compare(survey(design).parts, meshes)


@pytest.mark.parametrize("path", STARTERS, ids=lambda path: path.stem)
def test_the_shadow_of_each_starter(path):
    design = read_preset(path).payload
    meshes = [mesh for lump in vehicle(Raw(design)) for mesh in lump.outside]
    compare(survey(design).parts, meshes)


def part(*solids):
    return Part("attachment", "p", "p", 0.0, 0.0, (0, 0, 0), (0, 0, 0), solids)


@pytest.mark.parametrize("seed", range(12))
def test_rods_in_any_direction(seed):
    """Bars that slant through all three axes show the hull of two ellipses in each view."""
    dice = np.random.default_rng(seed)
    ends = dice.uniform(-0.3, 0.3, (dice.integers(1, 9), 2, 3))
    radii = dice.uniform(0.005, 0.06, len(ends))
    solids = [
        Cylinder(tuple(map(float, a)), tuple(map(float, b)), float(r))
        for (a, b), r in zip(ends, radii, strict=True)
    ]
    meshes = [rod(a * 1e3, b * 1e3, 2e3 * r) for (a, b), r in zip(ends, radii, strict=True)]
    compare([part(*solids)], meshes)


def test_a_disc_and_a_block_by_hand():
    """A disc of 50 mm end on and from the side; a block of 10 x 20 x 30 mm; two that half overlap."""
    disc = Cylinder((0.0, 0.0, 0.0), (0.1, 0.0, 0.0), 0.05)
    found = silhouettes([part(disc)])
    assert found.front == pytest.approx(pi * 0.05**2, rel=1e-7)
    assert found.side == pytest.approx(0.1 * 0.1, rel=1e-9)
    block = Block((0.0, 0.0, 0.0), (0.01, 0.02, 0.03))
    found = silhouettes([part(block)])
    assert (found.front, found.side, found.top) == pytest.approx((6e-4, 3e-4, 2e-4), rel=1e-9)
    half = Block((0.0, 0.05, 0.0), (0.01, 0.1, 0.2))
    assert silhouettes([part(disc, half)]).front == pytest.approx(pi * 0.05**2 / 2 + 0.1 * 0.2, rel=1e-6)


def test_nothing_has_no_shadow():
    found = silhouettes([])
    assert (found.front, found.side, found.top) == (0.0, 0.0, 0.0)
