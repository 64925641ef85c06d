"""Faults planted in the model must turn its tests red.

A fault is a small change of the source.  The changed functions stand in for the right ones while a test
that should notice is called; each of these tests passes without the fault, as the rest of the suite shows.
"""

import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from types import CodeType, FunctionType, ModuleType
from typing import Any

import pytest

from model import extents, review, units
from model.coach import rules_balance
from model.fittings import match
from model.frame import layout, letters
from model.money import bill, sticks
from model.motion import attitude
from model.power import stall
from model.thrust import moves, senses, stream
from model.vehicle import fixed, pipework
from model.water import balance, density
from tests.model import (
    test_balance,
    test_coach,
    test_coach_limits,
    test_frame_worked,
    test_fuses,
    test_money,
    test_one_way,
    test_remedies_in_turn,
    test_units,
    test_vehicle,
)
from tests.model.coach_cases import CASES
from tests.reference import (
    test_archimedes,
    test_fitting_matching,
    test_hidden_room,
    test_spreads,
    test_streams,
    test_trim,
    test_water_density,
)


@dataclass(frozen=True)
class Fault:
    """A fault: what it is, the module, its source before and after, and the test that must notice."""

    what: str
    module: ModuleType
    right: str
    wrong: str
    test: Callable[[], Any]


def limits(name: str, *arguments: Any) -> Callable[[], Any]:
    """A test of the coach's limits with the arguments of one of its cases."""
    return partial(getattr(test_coach_limits, name), *arguments)


def case(code: str) -> Callable[[], Any]:
    """The test of the coach's table on the first case of a finding."""
    chosen = next(case for case in CASES if case.code == code)
    return partial(test_coach.test_a_finding_speaks_with_its_numbers_and_is_silent_beside_it, chosen)


def in_turn(frame: str, stock: str) -> Callable[[], Any]:
    """The test that takes one remedy after the other, from a frame in another range."""
    test = test_remedies_in_turn.test_one_remedy_after_the_other_leads_to_a_better_design
    return partial(test, frame, next(each for each in test_remedies_in_turn.RANGES if each.name == stock))


FAULTS = (
    Fault(
        "a wrong sign in the trim",
        balance, "lever = sub(b, g)", "lever = sub(g, b)",
        test_trim.test_a_small_weight_is_moved_ahead,
    ),
    Fault(
        "port for starboard",
        balance, "atan2(y, z)", "atan2(-y, z)",
        test_trim.test_a_small_weight_is_moved_to_port,
    ),
    Fault(
        "the middle of the weight for the middle of the lift",
        balance, "(part.volume, part.volume_centre)", "(part.mass, part.volume_centre)",
        test_balance.test_two_weights_balance_at_the_lever_rule,
    ),
    Fault(
        "a bore for an outside diameter",
        pipework, "disc(bar.pipe.outside_diameter), disc(bar.pipe.bore)", "disc(bar.pipe.bore), 0.0",
        test_archimedes.test_a_metre_of_half_inch_pipe_flooded_and_sealed,
    ),
    Fault(
        "a sealed pipe that displaces its plastic alone",
        pipework, "(outside if sealed else outside - bore)", "(outside - bore)",
        test_archimedes.test_a_metre_of_half_inch_pipe_flooded_and_sealed,
    ),
    Fault(
        "a triple overlap that is taken off twice",
        pipework, "len(square) - TRIPLE_OVERLAP", "len(square) + TRIPLE_OVERLAP",
        test_hidden_room.test_three_cylinders_that_cross,
    ),
    Fault(
        "no room in an empty socket",
        pipework, "pushed.get(to, 0.0)", "pushed.get(to, socket.depth)",
        test_hidden_room.test_an_elbow_and_an_empty_tee_socket_by_hand,
    ),
    Fault(
        "hubs left out of the size",
        pipework, "match.fitting.hub / 2", "0.001",
        test_vehicle.test_a_bare_box_is_as_large_as_its_hubs,
    ),
    Fault(
        "a forgotten push-in depth",
        layout, "exposed + sum(insertions)", "exposed",
        test_frame_worked.test_the_flat_rectangle_needs_four_cuts_of_4_7_and_two_of_5_65_inches,
    ),
    Fault(
        "the socket depth forgotten in the take-off",
        layout, "exposed = spacing - sum(faces)", "exposed = spacing - sum(faces) / 2",
        test_frame_worked.test_the_flat_rectangle_needs_four_cuts_of_4_7_and_two_of_5_65_inches,
    ),
    Fault(
        "the centre to stop of the wrong socket",
        layout, "joint.match.sockets[to]", "next(iter(joint.match.sockets.values()))",
        test_frame_worked.test_run_and_branch_of_a_tee_take_off_what_each_of_them_measures,
    ),
    Fault(
        "pieces of a frame joined that are not",
        layout, "if small is not large:", "if False:",
        case("frame.groups-apart"),
    ),
    Fault(
        "equal pieces with different letters",
        letters, "round(snap(bar.cut or 0.0), SAME_CUT)", "round(bar.cut or 0.0, SAME_CUT)",
        test_frame_worked.test_equal_pieces_share_a_letter_however_their_places_are_rounded,
    ),
    Fault(
        "a fitting that takes any bar",
        match, "if all(to in position", "if any(to in position",
        test_fitting_matching.test_a_tee_lies_at_45_degrees_about_its_run_and_a_cap_on_a_sloping_bar,
    ),
    Fault(
        "the density of the wrong water",
        density, "return density(water.temperature, water.salinity)", "return density(4.0, water.salinity)",
        test_water_density.test_the_water_of_a_brief_is_the_water_that_counts,
    ),
    Fault(
        "salt that weighs nothing",
        density, "power * s**1.5", "0.0",
        partial(test_water_density.test_sea_water_as_unesco_prints_it, (35, 15), 1025.97275),
    ),
    Fault(
        "weight in water added, not taken off",
        fixed, "(mass - mass_in_water)", "(mass + mass_in_water)",
        test_archimedes.test_a_coin_is_weighed_in_air_and_in_water,
    ),
    Fault(
        "foam without its hole",
        fixed, "(disc(foam.outside_diameter) - disc(foam.hole))", "(disc(foam.outside_diameter))",
        test_archimedes.test_foam_tube_lift,
    ),
    Fault(
        "a propeller before its motor",
        fixed, "scale(along, -PROPELLER_THICKNESS)", "scale(along, PROPELLER_THICKNESS)",
        test_vehicle.test_a_thruster_reaches_to_its_nose_and_to_the_propeller_behind,
    ),
    Fault(
        "a size judged by the half",
        extents, "excess = size - limit", "excess = size - 2 * limit",
        test_vehicle.test_a_part_in_the_size_limit_is_not_over_and_a_micron_over_is_no_matter,
    ),
    Fault(
        "a saw that eats nothing",
        sticks, "if piece + kerf <= left", "if piece <= left",
        test_money.test_the_last_piece_needs_no_cut_behind_it,
    ),
    Fault(
        "what does not count is counted",
        bill, "for line in self.lines if line.counts)", "for line in self.lines)",
        test_money.test_a_bill_by_hand,
    ),
    Fault(
        "half a tube of foam bought",
        bill, "ceil(length / foam.sold_length", "round(length / foam.sold_length",
        test_money.test_foam_is_bought_by_the_whole_tube,
    ),
    Fault(
        "up thrust taken for down thrust",
        moves, "for pull in vertical if pull < 0", "for pull in vertical if pull > 0",
        test_balance.test_up_and_down_thrust_add_up_over_the_thrusters_and_astern_is_weaker,
    ),
    Fault(
        "an on-off switch that reverses",
        senses, "return power is None or thruster.branch.reverses", "return True",
        test_one_way.test_nothing_runs_brakes_or_turns_astern,
    ),
    Fault(
        "a pipe that is in the stream beyond its edge",
        stream, "inside = min(here + step, middle + reach) - max(here, middle - reach)", "inside = step",
        test_streams.test_a_round_body_anywhere_in_the_stream,
    ),
    Fault(
        "a veer whose drag is never unsure",
        attitude, "summed(groups, factors)", "summed(groups)",
        partial(test_spreads.test_the_pull_to_one_side, "one to starboard"),
    ),
    Fault(
        "a main fuse that knows one motor only",
        stall, "(wires.power.main_fuse, total, True)", "(wires.power.main_fuse, mine.amps, True)",
        test_fuses.test_a_main_fuse_blows_by_what_all_motors_draw,
    ),
    Fault(
        "a fraction upside down",
        units, "return top / bottom", "return bottom / top",
        partial(test_units.test_a_length_is_read_as_it_is_written, "3 3/8", 3.375 * 25.4),
    ),
    Fault(
        "a crooked bar held for a straight one",
        layout, "return None if uneven or all(signs)", "return None if all(signs)",
        case("frame.bar-crooked"),
    ),
    Fault(
        "a limit that is passed by what meets it",
        rules_balance, "worst > limits.trim_tip + COMPARISON_SLACK", "worst >= limits.trim_tip",
        limits("test_trim_over_5_degrees_is_a_tip_and_over_10_should_be_put_right", 5.0, -5.0, []),
    ),
    Fault(
        "a vehicle that rolls over and is not told",
        rules_balance, "balance.bg <= 0", "balance.bg < -1",
        limits(
            "test_lift_less_than_20_mm_above_weight_is_tender_and_below_it_rolls_over",
            -0.03, [("balance.order-inverted", "must")],
        ),
    ),
    Fault(
        "a remedy that may bring what is as bad as what it clears",
        review, "(finding.severity)) <= most", "(finding.severity)) < most",
        in_turn("first-afternoon", "half-inch-plumbing"),
    ),
)  # fmt: skip


def functions(namespace: dict[str, Any], module: str) -> Iterator[tuple[str, FunctionType]]:
    """The functions and methods of a module's own, by their full name."""
    for name, thing in namespace.items():
        if isinstance(thing, FunctionType) and thing.__module__ == module:
            yield name, inspect.unwrap(thing)
        elif inspect.isclass(thing) and thing.__module__ == module:
            for part, member in vars(thing).items():
                inner = getattr(member, "fget", None) or getattr(member, "func", None) or member
                if isinstance(inner, FunctionType):
                    yield f"{name}.{part}", inner


def changed(fault: Fault) -> dict[FunctionType, CodeType]:
    """The functions that the fault changes, each with its faulty code."""
    source = inspect.getsource(fault.module)
    assert source.count(fault.right) == 1, f"'{fault.right}' stands {source.count(fault.right)} times"
    namespace = {"__name__": fault.module.__name__, "__file__": fault.module.__file__}
    exec(compile(source.replace(fault.right, fault.wrong), fault.module.__file__ or "", "exec"), namespace)
    faulty = dict(functions(namespace, fault.module.__name__))
    right = dict(functions(vars(fault.module), fault.module.__name__))
    differ = {
        function: faulty[name].__code__
        for name, function in right.items()
        if name in faulty and function.__code__ != faulty[name].__code__
    }
    assert differ, "nothing was changed"
    return differ


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.what)
def test_a_planted_fault_is_noticed(fault: Fault):
    codes = changed(fault)
    kept = {function: function.__code__ for function in codes}
    match.catalogue.cache_clear()
    try:
        for function, code in codes.items():
            function.__code__ = code
        with pytest.raises((AssertionError, LookupError)):
            fault.test()
    finally:
        for function, code in kept.items():
            function.__code__ = code
        match.catalogue.cache_clear()
