"""The air in the pipes: cases that can be worked out by hand, and what must hold for any frame."""

from math import acos, atan2, degrees, hypot, pi, sqrt

import pytest

from model.design import Opening, Plug
from model.frame.layout import lay_out
from model.survey import survey
from model.water.air.attitudes import ATTITUDES, LEVEL, Attitude, tilt_words
from model.water.air.network import network_of
from model.water.air.orifice import hold_up
from model.water.air.pockets import caught
from tests.model.air_designs import random_design
from tests.worked import arrangement, design, fitting, stock

INCH = 0.0254
BORE, PIPE = 0.301 * INCH, 0.42 * INCH
"""Radii of half-inch pipe [m]: average bore 0.602 in, outside 0.840 in."""
WALL, DEPTH, PUSHED = 0.562 * INCH, 0.688 * INCH, 0.5 * INCH
"""Of the caps and elbows of the worked stock: centre to stop, socket depth, push-in depth [m]."""
LENGTH = 0.3
ML = 1e6


def segment(height, radius):
    """Area of a circle above a chord, from the angle that it spans."""
    half = acos(max(-1.0, min(1.0, height / radius)))
    return radius**2 * half - height * sqrt(max(0.0, radius**2 - height**2))


def hole(bar="b0", at=0.5, face="+z", diameter=0.006, through=False, name="o"):
    return Opening(id=name, name=name, bar=bar, at=at, face=face, diameter=diameter, through=through)


def straight(*openings, plugs=()):
    """One level pipe along x, capped at both ends."""
    run = arrangement((0.0, LENGTH), (0.0,), (0.0,), [((0, 0, 0), (1, 0, 0))])
    return design(run.but(openings=openings, plugs=plugs))


def portal(*openings, stand=0.2):
    """A level bar along x on two legs with caps at their feet."""
    bars = [((0, 0, 1), (1, 0, 1)), ((0, 0, 0), (0, 0, 1)), ((1, 0, 0), (1, 0, 1))]
    return design(arrangement((0.0, LENGTH), (0.0,), (0.0, stand), bars).but(openings=openings))


def air(drawn, attitude=LEVEL):
    """What is caught by geometry."""
    run = drawn.arrangement
    return caught(network_of(lay_out(drawn, run), run.openings, run.plugs), attitude.up)


def bore_length():
    """From end wall to end wall of the capped pipe [m]."""
    return LENGTH - 2 * WALL


def ring_area_above(height):
    """Of the ring between bore and socket, above a level over the axis [m2]."""
    return segment(height, PIPE) - segment(height, BORE)


def test_a_hole_on_the_crown_lets_all_air_out_but_what_the_sockets_keep():
    """Above the crown of the bore each socket keeps the top of its ring, 0.188 in long."""
    left = air(straight(hole()))
    assert left.pockets == ()
    assert left.grooves == pytest.approx(2 * (DEPTH - PUSHED) * ring_area_above(BORE), rel=1e-9)


def test_a_hole_in_the_side_keeps_the_upper_part_of_the_bore():
    """The top of its rim is half a diameter over the axis; the rings keep air from there too."""
    left = air(straight(hole(face="+y")))
    expected = segment(0.003, BORE) * bore_length() + ring_area_above(0.003) * 2 * (DEPTH - PUSHED)
    assert left.total == pytest.approx(expected, rel=1e-9)
    assert len(left.pockets) == 1


def test_a_hole_below_keeps_nearly_all():
    """The rim of a hole from below is a little over the lowest line: sqrt(R^2 - (d/2)^2) under the axis."""
    left = air(straight(hole(face="-z")))
    rim = -sqrt(BORE**2 - 0.003**2)
    expected = segment(rim, BORE) * bore_length() + ring_area_above(rim) * 2 * (DEPTH - PUSHED)
    assert left.total == pytest.approx(expected, rel=1e-9)


def test_an_upright_pipe_is_a_measuring_glass():
    """Hung by the nose, the half above the hole stays full of air, from the top of its rim."""
    left = air(straight(hole()), Attitude("nose up 90", 90, 0))
    above = bore_length() / 2 - 0.003
    ring = pi * (PIPE**2 - BORE**2) * (DEPTH - PUSHED)
    assert left.volume == pytest.approx(pi * BORE**2 * above + ring, rel=1e-6)


def test_a_dead_end_behind_a_dry_hump_keeps_all_its_air():
    """Open at one foot only: water cannot cross the bar on top, and the other leg stays dry to its foot."""
    drawn = portal(hole("b1", at=0.25, face="+y"))
    left = air(drawn)
    frame = lay_out(drawn, drawn.arrangement)
    room = network_of(frame).volume
    foot = 0.25 * 0.2 + 0.003 - WALL
    wet_ring = pi * (PIPE**2 - BORE**2) * (DEPTH - PUSHED)
    assert left.total == pytest.approx(room - pi * BORE**2 * foot - wet_ring, rel=1e-6)
    assert left.pockets[0].dry
    assert {stretch.bar for stretch in left.pockets[0].stretches} == {"b0", "b1", "b2"}


def test_with_both_feet_open_water_stands_to_the_holes():
    drawn = portal(hole("b1", at=0.25, face="+y", name="o1"), hole("b2", at=0.25, face="+y", name="o2"))
    left = air(drawn)
    room = network_of(lay_out(drawn, drawn.arrangement)).volume
    foot = 0.25 * 0.2 + 0.003 - WALL
    wet_ring = pi * (PIPE**2 - BORE**2) * (DEPTH - PUSHED)
    assert left.total == pytest.approx(room - 2 * (pi * BORE**2 * foot + wet_ring), rel=1e-6)
    assert not left.pockets[0].dry


def test_a_valley_lets_its_air_out_but_keeps_its_water():
    """A trough between two vented legs: nothing is caught level, and lifted out the trough stays full."""
    bars = [((0, 0, 0), (1, 0, 0)), ((0, 0, 0), (0, 0, 1)), ((1, 0, 0), (1, 0, 1))]
    run = arrangement((0.0, LENGTH), (0.0,), (0.0, 0.2), bars)
    vents = [hole(bar, at=0.75, face="+y", name=bar) for bar in ("b1", "b2")]
    found = survey(design(run.but(openings=tuple(vents)))).air
    below = [pocket for pocket in found.water_left.pockets if not pocket.closed]
    assert len(below) == 1
    assert found.water_left.volume > 0.6 * found.room
    assert {stretch.bar for stretch in below[0].stretches} == {"b0", "b1", "b2"}


def test_a_plug_parts_a_bore_and_the_part_without_a_hole_is_a_void():
    left = air(straight(hole(at=0.25), plugs=(Plug(id="s", name="plug", bar="b0", at=0.5, length=0.02),)))
    closed = [pocket for pocket in left.pockets if pocket.closed]
    assert len(closed) == 1
    ring = pi * (PIPE**2 - BORE**2) * (DEPTH - PUSHED)
    assert left.closed == pytest.approx(pi * BORE**2 * (LENGTH / 2 - 0.01 - WALL) + ring, rel=1e-6)
    assert left.volume == 0


def test_no_opening_means_that_all_the_room_is_a_void():
    drawn = portal()
    left = air(drawn)
    assert left.closed == pytest.approx(network_of(lay_out(drawn, drawn.arrangement)).volume, rel=1e-9)
    assert left.volume == 0


def test_the_top_of_an_upright_leg_leads_out_through_the_crown_of_the_bar():
    """A branch that comes from below meets the bar along its whole crown, so that nothing stays."""
    tee = [((0, 0, 1), (1, 0, 1)), ((1, 0, 1), (2, 0, 1)), ((1, 0, 0), (1, 0, 1))]
    run = arrangement((0.0, 0.15, 0.3), (0.0,), (0.0, 0.15), tee)
    left = air(design(run.but(openings=(hole("b1"), hole("b2", at=0.3, face="+y", name="low")))))
    assert left.volume * ML < 0.001


def test_one_degree_of_tilt_can_let_out_most_of_what_dead_level_keeps():
    """Low holes at the bow end of a long level pipe: with the bow up all air runs to them."""
    drawn = straight(hole(at=0.85, face="-z"), hole(at=0.85, face="+y", name="side"))
    found = survey(drawn).air
    least, most = found.spread
    assert least < 0.7 * found.level.caught.volume < 0.7 * most


@pytest.mark.parametrize(("diameter", "share"), [(0.003, 0.68), (0.006, 0.28)])
def test_surface_tension_holds_two_thirds_behind_3_mm_and_a_quarter_behind_6_mm(diameter, share):
    """4 sigma / (rho g d) under the crown of a level half-inch bore, as a share of the bore."""
    found = survey(straight(hole(diameter=diameter)))
    depth = 4 * 0.0728 / (found.balance.density * 9.80665 * diameter)
    assert hold_up(diameter, found.balance.density) == pytest.approx(depth)
    bore = segment(BORE - depth, BORE) * bore_length()
    assert bore / (pi * BORE**2 * bore_length()) == pytest.approx(share, abs=0.02)
    assert found.air.level.held == pytest.approx(bore, rel=0.1)  # the rings in the sockets add a little
    assert found.air.level.caught.volume == 0


@pytest.mark.parametrize("seed", range(12))
def test_the_air_never_exceeds_the_room_and_a_hole_never_adds_any(seed):
    drawn = random_design(seed, holes=3)
    run = drawn.arrangement
    frame = lay_out(drawn, run)
    fewer, more = network_of(frame, run.openings[:2], run.plugs), network_of(frame, run.openings, run.plugs)
    for attitude in ATTITUDES:
        left = caught(more, attitude.up).total
        assert 0 <= left <= caught(fewer, attitude.up).total + 1e-9 <= fewer.volume + 2e-9


def turned_over(drawn):
    """The same design with every height and every face upside down."""
    run = drawn.arrangement
    levels = tuple(plane.but(at=-plane.at) for plane in run.levels)
    faces = {o.face: o.face.replace("+z", "!z").replace("-z", "+z").replace("!z", "-z") for o in run.openings}
    openings = tuple(o.but(face=faces[o.face]) for o in run.openings)
    return drawn.arranged(levels=levels, openings=openings)


@pytest.mark.parametrize("seed", range(8))
def test_a_frame_built_upside_down_keeps_upside_down_what_it_kept_level(seed):
    drawn = random_design(seed)
    other = turned_over(drawn)
    for attitude, mirrored in ((ATTITUDES[0], ATTITUDES[5]), (ATTITUDES[1], Attitude("", 30, 180))):
        assert air(other, mirrored).total == pytest.approx(air(drawn, attitude).total, rel=1e-6, abs=1e-9)


@pytest.mark.parametrize("seed", range(8))
def test_what_stays_after_the_lift_is_what_air_would_do_upside_down(seed):
    drawn = random_design(seed)
    found = survey(drawn).air
    upside_down = next(one for one in found.attitudes if one.attitude.name == "upside down")
    assert found.water_left.total == pytest.approx(upside_down.caught.total, abs=1e-9)


def test_air_lifts_and_turns_the_vehicle():
    """Moments by hand: B moves towards the air by its share of all that lifts."""
    found = survey(portal(hole("b1", at=0.25, face="+y")))
    level, balance = found.air.level, found.balance
    pocket = level.caught.pockets[0]
    assert level.lift == pytest.approx(pocket.volume * balance.density)
    whole = balance.displaced + pocket.volume
    moved = [
        (b * balance.displaced + a * pocket.volume) / whole for b, a in zip(balance.b, pocket.at, strict=True)
    ]
    lever = [m - g for m, g in zip(moved, balance.g, strict=True)]
    pitch = level.trim[0]
    assert pitch is not None
    assert pitch == pytest.approx(degrees(atan2(lever[0], hypot(lever[1], lever[2]))), abs=1e-6)


def test_tilts_in_words():
    assert tilt_words(Attitude("", -45, 0)) == "tail up 45 degrees"
    assert tilt_words(Attitude("", 0, 0)) == "level"


def test_caps_of_the_worked_stock():
    """What the expected values above are made of."""
    cap = fitting("cap").sockets[0]
    assert (cap.laying_length, cap.depth) == pytest.approx((WALL, DEPTH))
    assert stock().pipes[0].insertion == pytest.approx(PUSHED)
