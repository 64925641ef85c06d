"""Righting, load on the hook, spread: against hand-worked cases."""

from math import atan, degrees, radians, sin, sqrt

import pytest

from model.design import Foam, Load
from model.survey import survey
from model.thrust.moves import Thrust
from model.water.balance import Balance
from model.water.righting import righting_moment, with_load
from model.water.spread import spread
from model.water.stability import righting_curve, stability, tilt_by
from tests import worked

FOUR_KILOS = Balance(4.0, 0.004, 1000.0, (0.0, 0.0, 0.0), (0.0, 0.0, 0.05), 0.05, 0.0, 0.0)
NO_THRUST = Thrust((), 0.0, 0.0, frozenset())


def test_righting_moment_of_four_kilos():
    # W BG sin(theta) of 4 kg with BG 50 mm: 0.0342 N m per degree, 0.3406 at 10 (standard formula, B above G)
    assert righting_moment(FOUR_KILOS, 1) == pytest.approx(4 * 9.80665 * 0.05 * sin(radians(1)))
    assert righting_moment(FOUR_KILOS, 10) == pytest.approx(0.3406, abs=5e-5)


def test_righting_curve_goes_from_nothing_to_nothing():
    curve = dict(righting_curve(FOUR_KILOS))
    assert min(curve) == 0
    assert max(curve) == 180
    assert curve[0] == pytest.approx(0)
    assert curve[180] == pytest.approx(0, abs=1e-12)
    assert max(curve, key=curve.__getitem__) == 90


def test_tilt_by_a_moved_weight():
    # 0.100 kg moved 0.200 m on 4 kg with BG 50 mm: tan(theta) = m x / (M BG), 5.71 degrees
    assert tilt_by(FOUR_KILOS, 0.1, 0.2) == pytest.approx(5.71, abs=0.005)


def test_a_load_ahead_of_the_middle_lifts_the_stern():
    loaded = with_load(FOUR_KILOS, NO_THRUST, 0.1, (0.2, 0.0, 0.0))
    # about G: buoyancy 4 kg at 50 mm up, load 0.1 kg at 200 mm ahead
    assert loaded.pitch == pytest.approx(-degrees(atan(0.1 * 0.2 / (4 * 0.05))))
    assert loaded.roll == pytest.approx(0)
    assert loaded.needed == pytest.approx(0.1 * 9.80665)
    assert loaded.margin == pytest.approx(0)


def test_a_load_to_port_lifts_starboard():
    loaded = with_load(FOUR_KILOS, NO_THRUST, 0.1, (0.0, 0.2, 0.0))
    assert loaded.roll == pytest.approx(-degrees(atan(0.1 * 0.2 / (4 * 0.05))))


def test_thrust_over_the_hook_keeps_it_level():
    thrust = Thrust((((0.2, 0.0, 0.0), (0.0, 0.0, 3.0)),), 3.0, 0.0, frozenset())
    loaded = with_load(FOUR_KILOS, thrust, 0.1, (0.2, 0.0, -0.1))
    assert loaded.pitch == pytest.approx(0)
    assert loaded.margin == pytest.approx(3.0 / (0.1 * 9.80665))


def test_a_load_weighed_in_air_is_lighter_in_water():
    # ballast factor of steel in fresh water: 1 - 998.2 / 7850 = 0.873
    assert Load(mass=0.1, weighed="air").in_water(998.2) == pytest.approx(0.0873, abs=5e-5)
    assert Load(mass=0.1).in_water(998.2) == 0.1


def hung(**changes):
    run = worked.box(**changes)
    design = worked.design(run)
    found = survey(design)
    return design, found


def test_spread_of_foam_alone_is_its_volume_times_its_scatter():
    from model.design import Float

    design, found = hung(floats=(Float(id="f", name="f", foam="noodle", bar="b0", length=0.1),))
    foam: Foam = next(foam for foam in design.supplies.foams if foam.id == "noodle")
    sure = design.but(supplies=design.supplies.but(foams=(foam.but(scatter=0.0),)))
    with_foam = spread(design, found.arrangement, found.parts, found.balance).spare
    without = spread(sure, found.arrangement, found.parts, found.balance).spare
    volume = 3.141592653589793 / 4 * (foam.outside_diameter**2 - foam.hole**2) * 0.1
    assert sqrt(with_foam**2 - without**2) == pytest.approx(volume * foam.scatter)


def test_spread_of_fittings_is_a_quarter_of_their_weight_in_water():
    design, found = hung()
    fittings = [part for part in found.parts if part.kind == "fitting"]
    wet = sum(part.mass - part.volume * found.balance.density for part in fittings)
    assert spread(design, found.arrangement, found.parts, found.balance).spare == pytest.approx(0.25 * wet)


def test_without_a_hook_nothing_hangs():
    design, found = hung()
    calm = stability(design, found.arrangement, found.frame, found.parts, found.balance, found.thrust)
    assert calm.tipped is None
    assert calm.loaded is None
