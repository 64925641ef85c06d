"""Copper wire, the motor's curve and the whole circuit against standards, tables and scipy."""

from math import sqrt

import fluids
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import fsolve

from model.design import Battery, Branch, Power, Pull, Thruster
from model.power.circuit import solve, supply_of
from model.power.motor import curve_of
from model.power.wire import ampacity, awg_area, pair_resistance, resistance_per_m
from model.power.wiring import wired
from tests import worked

IEC_60228_CLASS_5 = {0.5: 39, 0.75: 26, 1: 19.5, 1.5: 13.3, 2.5: 7.98, 4: 4.95, 6: 3.3}
"""Greatest resistance at 20 deg C of flexible plain copper [ohm/km], by mm2 (IEC 60228, table 3)."""
AWG_TABLE = {10: 3.277, 14: 8.286, 18: 20.95, 22: 52.96, 24: 84.22}
"""Solid copper [ohm/km] (ASTM B258 diameters with IEC 60028 resistivity, as printed in wire tables)."""
TETHERS = ((24, 15, 3, 7.58), (18, 15, 6, 3.77), (16, 15, 6, 2.37), (14, 15, 10, 2.49))
"""AWG, one-way m, A, and the drop out and back [V] of solid copper."""
MOTOR = worked.SUPPLIES.motors[0].but(amps=2.0, stalled_amps=8.0)


@pytest.mark.parametrize("number", [10, 12, 14, 16, 18, 20, 22, 24, 26])
def test_gauges_are_those_of_astm_b258(number):
    diameter = fluids.t_from_gauge(number, SI=True, schedule="AWG")
    assert awg_area(number) == pytest.approx(np.pi / 4 * (diameter * 1000) ** 2, rel=6e-3)  # whole mils


@pytest.mark.parametrize(("number", "ohms"), AWG_TABLE.items())
def test_resistance_of_gauges(number, ohms):
    """Stranded wire runs 2 to 5 % higher than the solid wire of the table (common practice)."""
    assert 1.02 <= 1000 * resistance_per_m(awg_area(number)) / ohms <= 1.05


@pytest.mark.parametrize(("area", "most"), IEC_60228_CLASS_5.items())
def test_resistance_stays_under_the_most_that_the_standard_allows(area, most):
    assert 0.85 * most < 1000 * resistance_per_m(area) <= most


@pytest.mark.parametrize(("number", "length", "amps", "drop"), TETHERS)
def test_drops_of_tethers(number, length, amps, drop):
    assert amps * pair_resistance(awg_area(number), length) == pytest.approx(1.03 * drop, rel=3e-3)


def test_copper_grows_with_its_temperature():
    """R(30)/R(20) = 1.0393 (3.93e-3 per deg C, Industrial Power Engineering Handbook, table 30.1)."""
    assert resistance_per_m(1.0, 30) / resistance_per_m(1.0, 20) == pytest.approx(1.0393)


def test_a_wire_has_no_larger_fuse_than_a_thicker_one():
    fuses = [ampacity(area) for area in np.geomspace(0.05, 6, 50)]
    assert fuses == sorted(fuses)
    assert ampacity(awg_area(18)) == pytest.approx(10, abs=0.01)  # common practice: 7.5 to 10 A


def test_the_curve_goes_through_what_was_measured():
    curve = curve_of(MOTOR, None, 3.0, 1000.0)
    assert curve.current(12.0) == pytest.approx(2.0)
    assert curve.stalled(12.0) == pytest.approx(8.0)
    assert curve.pull_share(12.0) == pytest.approx(1.0)


def test_a_pull_test_with_its_own_current_goes_before_the_stock():
    pull = Pull(ahead=4.0, volts=10.0, amps=3.0)
    assert curve_of(MOTOR, pull, 4.0, 1000.0).current(10.0) == pytest.approx(3.0)


def test_a_current_that_nobody_measured_comes_from_momentum_theory():
    """T = (2 rho A (FM P)^2)^(1/3) turned round, merit 0.4, motor 0.45 (from memory)."""
    motor = worked.SUPPLIES.motors[0]
    watts = 3.0**1.5 / (0.4 * sqrt(2 * 1000 * np.pi / 4 * 0.05**2)) / 0.45
    curve = curve_of(motor, None, 3.0, 1000.0)
    assert curve.amps == pytest.approx(watts / 12)
    assert not curve.measured


def test_a_stalled_motor_that_draws_less_than_a_running_one_is_refused():
    with pytest.raises(ValueError, match="found 1 A stalled and 2 A running; a stalled motor draws more"):
        MOTOR.but(stalled_amps=1.0)


def circuit(power, count, branches=()):
    """A box with some motors on a wiring."""
    items = tuple(
        Thruster(
            id=f"t{n}", name=f"t{n}", bar="b0", motor="motor",
            offset=(0, -0.3 - 0.2 * n, 0), branch=branches[n] if n < len(branches) else Branch(),
        )
        for n in range(count)
    )  # fmt: skip
    supplies = worked.SUPPLIES.but(motors=(MOTOR,))
    return worked.design(worked.box(thrusters=items, power=power), supplies=supplies)


def kirchhoff(design, stalled=""):
    """Currents by scipy, from the raw numbers: unknown currents and back voltages."""
    run = design.arrangement
    power, copper = run.power, 1.03 / 58
    shared = power.battery.resistance + 2 * power.lead_length * copper / power.lead_area
    shared += 0.1 / power.main_fuse if power.main_fuse else 0.0
    pair = 2 * power.length * copper
    if power.feed == "one pair":
        shared += pair / power.core_area
    ohms = []
    for item in run.thrusters:
        own = 2 * power.plugs * power.contact + (0.1 / item.branch.fuse if item.branch.fuse else 0.0)
        if power.feed == "pair each":
            own += pair / (item.branch.core_area or power.core_area)
        ohms.append(own)
    winding, idle = 12 / 8, 0.2
    load = (2 - idle) / (12 - 2 * winding) ** 2

    def wrong(unknown):
        amps, back = np.split(unknown, 2)
        node = power.battery.volts - shared * amps.sum()
        loop = [node - i * (r + winding) - e for i, r, e in zip(amps, ohms, back, strict=True)]
        motors = [
            e if item.id == stalled else i - idle - load * e**2
            for i, e, item in zip(amps, back, run.thrusters, strict=True)
        ]
        return [*loop, *motors]

    count = len(run.thrusters)
    found = fsolve(wrong, [1.5] * count + [8.0] * count, xtol=1e-12)
    volts = [
        power.battery.volts - shared * found[:count].sum() - i * r
        for i, r in zip(found[:count], ohms, strict=True)
    ]
    return found[:count], volts, (found[count:] / (12 - 2 * winding)) ** 2


@settings(max_examples=40, deadline=None)
@given(
    st.integers(1, 6),
    st.sampled_from((0.22, 0.5, 0.75, 1.5)),
    st.sampled_from((3.0, 10.0, 30.0)),
    st.sampled_from(("pair each", "one pair")),
    st.sampled_from((None, 10.0)),
    st.lists(
        st.builds(Branch, fuse=st.sampled_from((None, 3.0)), core_area=st.sampled_from((None, 1.0))),
        max_size=3,
    ),
    st.booleans(),
)
def test_the_circuit_is_solved_as_a_whole(count, area, length, feed, main, branches, stall):
    power = Power(core_area=area, length=length, feed=feed, main_fuse=main)
    design = circuit(power, count, branches)
    stalled = "t0" if stall else ""
    amps, volts, share = kirchhoff(design, stalled)
    loads = solve(supply_of(design, design.arrangement, power, 1000.0), stalled=stalled)
    assert [load.amps for load in loads] == pytest.approx(list(amps), rel=1e-5)
    assert [load.volts for load in loads] == pytest.approx(list(volts), rel=1e-5)
    if not stall:
        result = wired(design, design.arrangement, power, 1000.0)
        assert list(result.share.values()) == pytest.approx(list(share), rel=1e-4)
        assert result.minutes == pytest.approx(60 * 7.0 * 0.6 / sum(amps), rel=1e-5)
        assert result.lost["t0"] == pytest.approx(1 - volts[0] / 12, rel=1e-4)


def test_a_stalled_motor_starves_the_others():
    design = circuit(Power(feed="one pair", length=15.0), 3)
    result = wired(design, design.arrangement, design.arrangement.power, 1000.0)
    stalled = result.stalled("t0")
    assert stalled[0].stalled
    assert stalled[0].amps > result.loads[0].amps
    assert stalled[1].volts < result.loads[1].volts


@pytest.mark.parametrize("length", [0.0, 500.0])
def test_a_tether_of_nothing_or_of_half_a_kilometre_is_worked_out(length):
    design = circuit(Power(battery=Battery(volts=24.0), length=length), 2)
    result = wired(design, design.arrangement, design.arrangement.power, 1000.0)
    assert all(0 < load.volts <= 24 for load in result.loads)
    assert (result.motor_volts > 20) == (length == 0)


def test_no_motors_draw_nothing():
    design = circuit(Power(), 0)
    result = wired(design, design.arrangement, design.arrangement.power, 1000.0)
    assert result.loads == ()
    assert result.amps == 0
    assert result.minutes is None
    assert result.motor_volts is None
