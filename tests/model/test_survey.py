"""The survey of generated designs: never raises, adds up, and changes only what it must when all is moved."""

from collections.abc import Iterator
from math import isfinite, pi
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from msgspec import Struct
from pydantic import BaseModel

from model.design import Design
from model.files import design_text, parse_design
from model.review import proven_remedy, review
from model.survey import Survey, motion_of, survey
from tests import worked
from tests.generators import designs, tidy_designs

FEW = settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
FEWER = settings(FEW, max_examples=5)


def numbers(value: Any, seen: set[int]) -> Iterator[float]:
    """Every number inside some results."""
    if isinstance(value, float | int):
        yield value
    elif id(value) in seen or isinstance(value, BaseModel | str):
        return
    seen.add(id(value))
    if isinstance(value, Struct):
        for name in value.__struct_fields__:
            yield from numbers(getattr(value, name), seen)
    elif isinstance(value, dict):
        yield from numbers(list(value.values()), seen)
    elif isinstance(value, list | tuple | frozenset):
        for item in value:
            yield from numbers(item, seen)


@FEW
@given(designs())
def test_no_design_that_loads_is_too_odd_to_be_reviewed(design: Design):
    report = review(design)
    results = (report.survey, report.survey.air, motion_of(report.survey))
    assert all(isfinite(number) for number in numbers(results, set()))
    assert report.verdict == ("fix" if report.musts else "ready")
    for finding in report.findings:
        assert "{" not in finding.message
        assert finding.message == finding.message.strip()
        assert "inf" not in finding.message.split()
        assert "nan" not in finding.message.split()
    keys = [finding.key for finding in report.findings]
    assert len(keys) == len(set(keys))


@FEW
@given(designs())
def test_where_a_cut_cannot_be_known_or_made_the_coach_says_so(design: Design):
    report = review(design)
    bars = report.survey.frame.bars.values()
    if any(bar.cut is None or bar.exposed < -1e-6 for bar in bars):
        steps = {finding.step for finding in report.musts}
        assert steps & {"layout", "fittings"}


@FEWER
@given(designs(most=8))
def test_asking_for_a_remedy_never_fails_and_what_is_offered_clears_its_finding(design: Design):
    report = review(design)
    for finding in report.findings:
        remedy = proven_remedy(report, finding)
        if remedy:
            after = review(remedy.edit(design))
            assert finding.key not in {f.key for f in after.findings}
            assert {f.key for f in after.musts} <= {f.key for f in report.musts}


@FEW
@given(designs())
def test_a_design_comes_back_from_its_file_equal_and_with_the_same_results(design: Design):
    loaded = parse_design(design_text(design), "generated.toml")
    assert loaded.design == design
    assert not loaded.warnings
    assert survey(loaded.design).balance == survey(design).balance


@FEW
@given(designs(odd=0))
def test_the_whole_weighs_what_its_pieces_weigh(design: Design):
    """Pieces weighed from the raw numbers: pi/4 (D^2 - d^2) L for pipe and foam, all else as written."""
    found = survey(design)
    run, supplies = design.arrangement, design.supplies
    mass = 0.0
    for bar in found.frame.bars.values():
        pipe = bar.pipe
        length = max(0.0, bar.cut if bar.cut is not None else sum(bar.insertions) + bar.exposed)
        mass += pi / 4 * (pipe.outside_diameter**2 - pipe.bore**2) * length * pipe.density
    mass += sum(joint.match.fitting.mass for joint in found.frame.joints.values() if joint.match)
    motors = {motor.id: motor.mass for motor in supplies.motors}
    mounts = {mount.id: mount.mass for mount in supplies.mounts}
    mass += sum(motors[item.motor] + (mounts[item.mount] if item.mount else 0) for item in run.thrusters)
    foams = {foam.id: foam for foam in supplies.foams}
    for piece in run.floats:
        foam = foams[piece.foam]
        mass += pi / 4 * (foam.outside_diameter**2 - foam.hole**2) * piece.length * foam.density
    mass += sum(item.mass for item in (*run.ballasts, *run.attachments))
    mass += run.tether.mass_per_m * run.tether.hanging if run.tether else 0.0
    assert found.balance.mass == pytest.approx(mass, rel=1e-9, abs=1e-12)


def moved(design: Design, by: tuple[float, float, float]) -> Design:
    groups = ("stations", "sides", "levels")
    planes = {
        name: tuple(plane.but(at=plane.at + step) for plane in getattr(design.arrangement, name))
        for name, step in zip(groups, by, strict=True)
    }
    return design.arranged(**planes)


whole_mm = st.tuples(*[st.integers(-500, 500)] * 3)


@FEW
@given(designs(odd=0), whole_mm)
def test_moving_the_whole_vehicle_changes_only_where_it_is(design: Design, millimetres):
    by = tuple(mm / 1000 for mm in millimetres)
    a, b = review(design), review(moved(design, by))
    assert [(f.key, f.severity) for f in a.findings] == [(f.key, f.severity) for f in b.findings]
    same_but_for_place(a.survey, b.survey)
    if a.survey.extents.box and a.survey.balance.mass:
        assert b.survey.extents.box.low == pytest.approx(
            tuple(x + step for x, step in zip(a.survey.extents.box.low, by, strict=True)), abs=1e-9
        )
        assert b.survey.balance.g == pytest.approx(
            tuple(x + step for x, step in zip(a.survey.balance.g, by, strict=True)), abs=1e-9
        )


def same_but_for_place(a: Survey, b: Survey) -> None:
    assert b.extents.size == pytest.approx(a.extents.size, abs=1e-9)
    assert b.extents.over == pytest.approx(a.extents.over, abs=1e-9)
    assert b.balance.mass == pytest.approx(a.balance.mass)
    assert b.balance.net == pytest.approx(a.balance.net, abs=1e-9)
    assert b.balance.bg == pytest.approx(a.balance.bg, abs=1e-9)
    cuts_a = {name: bar.cut for name, bar in a.frame.bars.items()}
    cuts_b = {name: bar.cut for name, bar in b.frame.bars.items()}
    assert cuts_a.keys() == cuts_b.keys()
    assert all(
        cuts_b[name] == (cut if cut is None else pytest.approx(cut, abs=1e-9)) for name, cut in cuts_a.items()
    )
    assert [line.quantity for line in b.bill.lines] == [line.quantity for line in a.bill.lines]
    assert b.thrust.up == pytest.approx(a.thrust.up, rel=1e-5)


def flipped(direction: str | None) -> str | None:
    return direction and direction.replace("+y", "?").replace("-y", "+y").replace("?", "-y")


def mirrored(design: Design) -> Design:
    """Port and starboard changed over."""
    run = design.arrangement

    def across(item):
        changes = {}
        if hasattr(item, "offset"):
            x, y, z = item.offset
            changes["offset"] = (x, -y, z)
        for name in ("to", "beside", "face"):
            if hasattr(item, name):
                changes[name] = flipped(getattr(item, name))
        return item.but(**changes)

    groups = ("thrusters", "floats", "ballasts", "attachments", "openings")
    fixed = {name: tuple(across(item) for item in getattr(run, name)) for name in groups}
    return design.arranged(sides=tuple(side.but(at=-side.at) for side in run.sides), **fixed)


@FEW
@given(tidy_designs())
def test_changing_port_and_starboard_over_changes_only_the_sign_of_what_is_athwart(design: Design):
    """With a stock whose sockets are alike, since a three-way corner has a left and a right hand."""
    design = design.but(stock=worked.stock())
    assume(not any(j.match and j.match.spare for j in survey(design).frame.joints.values()))
    a, b = survey(design), survey(mirrored(design))
    same_but_for_place(a, b)
    (x, y, z), (u, v, w) = a.balance.g, b.balance.g
    assert (u, v, w) == pytest.approx((x, -y, z), abs=1e-9)
    if a.balance.pitch is not None and a.balance.roll is not None and a.balance.bg > 1e-4:
        assert b.balance.pitch == pytest.approx(a.balance.pitch, abs=1e-6)
        assert b.balance.roll == pytest.approx(-a.balance.roll, abs=1e-6)


@FEW
@given(tidy_designs())
def test_everything_twice_as_large_is_twice_as_long_and_displaces_eight_times_as_much(design: Design):
    """The frame alone, sealed so that bores and hidden rooms count as well."""
    bare = dict.fromkeys(("thrusters", "floats", "ballasts", "attachments", "openings"), ())
    design = design.but(stock=worked.stock()).arranged(tether=None, bores="sealed", **bare)
    twice = enlarged(design)
    a, b = survey(design), survey(twice)
    assert b.extents.size == pytest.approx(tuple(2 * size for size in a.extents.size), abs=1e-8)
    assert b.balance.displaced == pytest.approx(8 * a.balance.displaced, rel=1e-6)
    assert b.balance.mass == pytest.approx(8 * a.balance.mass, rel=1e-6)
    for name, bar in a.frame.bars.items():
        assert b.frame.bars[name].exposed == pytest.approx(2 * bar.exposed, abs=1e-8)
        assert (b.frame.bars[name].cut is None) == (bar.cut is None)
        assert b.frame.bars[name].cut is None or b.frame.bars[name].cut == pytest.approx(
            2 * bar.cut, abs=1e-8
        )


def enlarged(design: Design) -> Design:
    """The frame and its stock at twice the size, eight times the weight."""
    pipes = tuple(
        pipe.but(outside_diameter=2 * pipe.outside_diameter, bore=2 * pipe.bore, insertion=2 * pipe.insertion)
        for pipe in design.stock.pipes
    )
    fittings = tuple(
        fitting.but(
            hub=2 * fitting.hub,
            mass=8 * fitting.mass,
            sockets=tuple(
                socket.but(laying_length=2 * socket.laying_length, depth=2 * socket.depth)
                for socket in fitting.sockets
            ),
        )
        for fitting in design.stock.fittings
    )
    run = design.arrangement
    planes = {
        name: tuple(plane.but(at=2 * plane.at) for plane in getattr(run, name))
        for name in ("stations", "sides", "levels")
    }
    return design.but(stock=design.stock.but(pipes=pipes, fittings=fittings)).arranged(**planes)
