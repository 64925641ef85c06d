"""Port and starboard made alike, and bars moved sideways onto tees of their own."""

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.design import Float, Opening, Plane, Pull, Thruster, TieHole, edits
from model.design.edits import Ref
from model.errors import EditError
from tests.generators import FULL, SUPPLIES, bar_ends, equipment, frame, plane_positions, seeds
from tests.model.edits_designs import rectangle

MIDDLE = 0.1
"""[m] Half-way between the sides of the rectangle, at 0 and 0.2."""


def points(design):
    """Where each bar runs, from its lower to its higher end, worked out from the planes [m]."""
    arrangement = design.arrangement
    at = {p.id: p.at for p in (*arrangement.stations, *arrangement.sides, *arrangement.levels)}
    place = {j.id: tuple(round(at[plane], 9) for plane in j.planes) for j in arrangement.joints}
    return {bar.name: tuple(sorted((place[bar.start], place[bar.end]))) for bar in arrangement.bars}


def mirrored(ends):
    return tuple(sorted((x, round(2 * MIDDLE - y, 9), z) for x, y, z in ends))


def with_skid():
    """The rectangle with a mid side at 50 mm and a bar along it, named to starboard."""
    design = edits.add_plane(rectangle(), "side", at=0.05, name="inner")
    inner = next(plane.id for plane in design.arrangement.sides if plane.name == "inner")
    design = edits.add_bar(design, ("x0", inner, "z0"), ("x1", inner, "z0"))
    return edits.rename(design, Ref("bar", design.arrangement.bars[-1].id), "starboard skid")


def test_a_bar_is_copied_to_the_other_side_with_the_plane_that_it_needs():
    before = with_skid()
    after = edits.copy_bar_across(before, before.arrangement.bars[-1].id)
    new = set(points(after)) - set(points(before))
    assert "port skid" in new
    assert points(after)["port skid"] == mirrored(points(after)["starboard skid"])
    assert len(after.arrangement.sides) == len(before.arrangement.sides) + 1


@pytest.mark.parametrize(("bar", "words"), [("r1", "across the middle"), ("r3", "across the middle")])
def test_a_bar_across_the_middle_has_no_other_side(bar, words):
    with pytest.raises(EditError, match=words):
        edits.copy_bar_across(rectangle(), bar)


def test_a_bar_whose_image_is_there_is_not_doubled():
    with pytest.raises(EditError, match="already runs there"):
        edits.copy_bar_across(rectangle(), "r0")


def test_a_side_is_mirrored_with_what_is_fixed_to_it():
    design = with_skid()
    skid = design.arrangement.bars[-1].id
    design = design.arranged(
        thrusters=(
            Thruster(
                id="t1", name="starboard motor", bar=skid, motor="m1", to="+x+y", offset=(0, -0.04, 0.01)
            ),
        ),
        floats=(Float(id="f1", name="foam", bar=skid, foam="fm1", length=0.1, at=0.3, beside="-y"),),
        openings=(Opening(id="o1", name="hole", bar=skid, at=0.2, face="+y"),),
    )
    after = edits.mirror_sides(design, "starboard")
    assert points(after)["starboard skid"] == points(design)["starboard skid"]
    assert {mirrored(ends) for ends in points(after).values()} == set(points(after).values())
    bars = {bar.id: bar.name for bar in after.arrangement.bars}
    motor = next(item for item in after.arrangement.thrusters if item.id != "t1")
    assert (motor.name, motor.to, motor.offset) == ("port motor", "+x-y", (0, 0.04, 0.01))
    assert bars[motor.bar] == "port skid"
    foam = next(item for item in after.arrangement.floats if item.id != "f1")
    hole = next(item for item in after.arrangement.openings if item.id != "o1")
    assert (foam.beside, hole.face) == ("+y", "-y")
    x = points(after)["port skid"][0][0]
    assert x == points(after)["starboard skid"][0][0]


def test_a_bar_that_runs_the_other_way_takes_its_equipment_at_the_same_place():
    """The port skid is drawn from the bow aft: what sits 90 mm from the stern sits at 0.7 of it, not 0.3."""
    design = edits.mirror_sides(with_skid(), "starboard")
    bars = tuple(
        bar.but(start=bar.end, end=bar.start) if bar.name == "port skid" else bar
        for bar in design.arrangement.bars
    )
    skid = next(bar.id for bar in bars if bar.name == "starboard skid")
    hole = Opening(id="o1", name="hole", bar=skid, at=0.3, face="-z")
    after = edits.mirror_sides(design.arranged(bars=bars, openings=(hole,)), "starboard")
    assert [item.at for item in after.arrangement.openings] == pytest.approx([0.3, 0.7])


def test_a_motor_turns_the_other_hand_and_its_ties_are_drilled_at_the_image():
    """A hole 30 mm towards the stern stays there, also where the image's bar runs the other way."""
    design = edits.mirror_sides(with_skid(), "starboard")
    skid = next(bar.id for bar in design.arrangement.bars if bar.name == "starboard skid")
    hole = TieHole(along=0.03, face="-y", diameter=0.005)
    motor = Thruster(
        id="t1", name="starboard motor", bar=skid, motor="m1", hand="right", tie_holes=(hole,), at=0.4
    )
    for turned in (False, True):
        bars = tuple(
            bar.but(start=bar.end, end=bar.start) if turned and bar.name == "port skid" else bar
            for bar in design.arrangement.bars
        )
        after = edits.mirror_sides(design.arranged(bars=bars, thrusters=(motor,)), "starboard")
        image = next(item for item in after.arrangement.thrusters if item.id != "t1")
        assert image.hand == "left"
        (drilled,) = image.tie_holes
        assert (drilled.face, drilled.diameter) == ("+y", 0.005)
        assert drilled.along == pytest.approx(-0.03 if turned else 0.03)
        assert image.at == pytest.approx(0.6 if turned else 0.4)


@pytest.mark.parametrize(
    ("name", "image"),
    [
        ("support", "support"),
        ("port support", "starboard support"),
        ("Left post", "Right post"),
        ("PORT fin", "STARBOARD fin"),
        ("port tee to starboard tee", "starboard tee to port tee"),
        ("port-side rail", "starboard-side rail"),
        ("upright 2", "upright 2"),
    ],
)
def test_a_name_changes_its_side_word_by_word(name, image):
    assert edits.other_hand(name) == image
    assert edits.other_hand(image) == name


def test_a_pull_test_stays_with_the_motor_that_was_pulled():
    motor = Thruster(id="t1", name="port motor", bar="r0", motor="m1", pull=Pull(ahead=2.2))
    design = rectangle().but(supplies=SUPPLIES).arranged(thrusters=(motor,))
    side = "starboard" if points(design)[bar_name(design, "r0")][0][1] < MIDDLE else "port"
    own, new = edits.mirror_sides(design, side).arrangement.thrusters
    assert own.pull == Pull(ahead=2.2)
    assert new.pull is None
    assert new.name == "starboard motor"


def bar_name(design, id):
    return next(bar.name for bar in design.arrangement.bars if bar.id == id)


def test_a_picked_cap_and_a_cemented_joint_go_to_the_other_side_too():
    """A stub on one side, capped and cemented: its image is closed and held alike, and nothing else."""
    design = edits.add_plane(rectangle().but(stock=FULL[0]), "level", at=0.3)
    side, level = (
        next(p.id for p in group if p.at == at)
        for group, at in ((design.arrangement.sides, 0.0), (design.arrangement.levels, 0.3))
    )
    before = edits.add_bar(design, ("x0", side, "z0"), ("x0", side, level))
    cap = next(fitting.id for fitting in before.stock.fittings if fitting.shape == "cap")
    end = before.arrangement.bars[-1].end
    joints = tuple(
        joint.but(fitting=cap, joining="cemented") if joint.id == end else joint
        for joint in before.arrangement.joints
    )
    before = before.arranged(joints=joints)
    for after in (
        edits.mirror_sides(before, "starboard"),
        edits.copy_bar_across(before, before.arrangement.bars[-1].id),
    ):
        decided = [joint for joint in after.arrangement.joints if joint.fitting or joint.joining]
        assert [(joint.fitting, joint.joining) for joint in decided] == [(cap, "cemented")] * 2
        places = sorted(
            (next(p.at for p in after.arrangement.sides if p.id == joint.side), joint.station, joint.level)
            for joint in decided
        )
        assert places == [(0.0, "x0", level), (2 * MIDDLE, "x0", level)]


def test_mirroring_twice_changes_nothing_more():
    once = edits.mirror_sides(with_skid(), "starboard")
    assert edits.mirror_sides(once, "starboard") == once
    assert edits.mirror_sides(once, "port") == once


def test_an_odd_bar_is_named_and_nothing_is_lost():
    design = with_skid()
    with pytest.raises(EditError, match=r"^'starboard skid', "):
        edits.mirror_sides(design, "port")
    assert design == with_skid()


def test_an_odd_bar_across_the_middle_is_named():
    design = edits.add_plane(rectangle(), "side", at=0.15, name="inner")
    inner = next(plane.id for plane in design.arrangement.sides if plane.name == "inner")
    design = edits.add_bar(design, ("x0", "y0", "z1"), ("x0", inner, "z1"))
    for hand in ("port", "starboard"):
        with pytest.raises(EditError, match="no partner"):
            edits.mirror_sides(design, hand)


def one_side():
    """The rectangle with nothing but its rail at 0 left; the side at 200 mm is empty."""
    design = rectangle()
    for bar in ("r1", "r3", "r2"):
        design = edits.remove_bar(design, bar)
    return design


def test_one_side_alone_is_copied_to_the_empty_one():
    after = edits.mirror_sides(one_side(), "starboard")
    assert sorted(points(after).values()) == [
        ((0.0, 0.0, 0.0), (0.3, 0.0, 0.0)),
        ((0.0, 0.2, 0.0), (0.3, 0.2, 0.0)),
    ]


def test_an_empty_side_is_not_copied():
    with pytest.raises(EditError, match="nothing is on the port side yet; take the starboard side"):
        edits.mirror_sides(one_side(), "port")


def test_a_frame_with_one_plane_has_no_other_side():
    design = edits.remove_plane(one_side(), "side", "y1")
    with pytest.raises(EditError, match="two sides"):
        edits.mirror_sides(design, "starboard")
    with pytest.raises(EditError, match="bars on one side"):
        edits.mirror_sides(edits.remove_bar(design, "r0"), "starboard")


def test_a_side_is_copied_beside_a_keel_in_the_middle():
    """The side at 0 and a keel at 100 mm are drawn, the side at 200 mm is empty."""
    design = edits.add_plane(one_side(), "side", at=MIDDLE, name="keel")
    keel = design.arrangement.sides[-1].id
    design = edits.add_plane(design, "level", at=-0.1)
    low = design.arrangement.levels[-1].id
    design = edits.add_bar(design, ("x0", keel, low), ("x1", keel, low))
    after = edits.mirror_sides(design, "starboard")
    assert sorted(points(after).values()) == [
        ((0.0, 0.0, 0.0), (0.3, 0.0, 0.0)),
        ((0.0, 0.1, -0.1), (0.3, 0.1, -0.1)),
        ((0.0, 0.2, 0.0), (0.3, 0.2, 0.0)),
    ]


def free_of_joints(planes, ends):
    """Those ends of bars between which no other joint lies, as edits would draw them."""
    at = {spot: (planes[0][spot[0]], planes[2][spot[2]]) for pair in ends for spot in pair}

    def free(pair):
        (x, z), (u, w) = (at[spot] for spot in pair)
        return not any(
            abs((a - x) * (w - z) - (b - z) * (u - x)) < 1e-9
            and 0 < (a - x) * (u - x) + (b - z) * (w - z) < (u - x) ** 2 + (w - z) ** 2 - 1e-9
            for a, b in at.values()
        )

    return [pair for pair in ends if free(pair)]


@settings(max_examples=60, deadline=None)
@given(seeds, st.booleans())
def test_any_side_alone_is_copied_with_all_that_is_fixed_to_it(seed, to_port):
    """A frame in one plane, the other plane 120 mm beside it and empty."""
    dice = Random(seed)
    drawn, empty = (0.0, 0.12) if to_port else (0.12, 0.0)
    planes = (plane_positions(dice, 5, unique=True), (drawn,), plane_positions(dice, 4, unique=True))
    ends = free_of_joints(planes, bar_ends(dice, planes, 12))
    arrangement = frame(planes, ends, **equipment(dice, len(ends), 3))
    arrangement = arrangement.but(sides=(*arrangement.sides, Plane(id="y9", name="y plane 9", at=empty)))
    before = rectangle().but(stock=FULL[0], supplies=SUPPLIES, arrangements=(arrangement,))
    if not ends:
        return
    after = edits.mirror_sides(before, "starboard" if to_port else "port")
    was, now = points(before), points(after)
    across = [tuple(sorted((x, round(0.12 - y, 9), z) for x, y, z in each)) for each in was.values()]
    assert sorted(now.values()) == sorted([*was.values(), *across])
    assert all(now[name] == where for name, where in was.items())
    for kind in ("thrusters", "floats", "ballasts", "attachments", "openings"):
        old, new = getattr(arrangement, kind), getattr(after.arrangement, kind)
        assert new[: len(old)] == old
        assert len(new) == 2 * len(old), kind
    assert len(after.arrangement.joints) == 2 * len(arrangement.joints)


def test_a_bar_moves_sideways_onto_tees():
    """The bar at 300 mm comes 60 mm inboard: the rails that it joined are split for tees there."""
    after = edits.shift_bar(rectangle(), "r1", 0, -0.06)
    ends = points(after)
    assert ends["rail 1"] == ((0.24, 0.0, 0.0), (0.24, 0.2, 0.0))
    assert len(after.arrangement.bars) == 6
    assert ((0.24, 0.0, 0.0), (0.3, 0.0, 0.0)) in ends.values()


def test_a_bar_moves_sideways_on_short_pieces():
    """Moved up by 50 mm, the bar hangs on two short risers at its old corners."""
    after = edits.shift_bar(rectangle(), "r1", 2, 0.05)
    ends = points(after)
    assert ends["rail 1"] == ((0.3, 0.0, 0.05), (0.3, 0.2, 0.05))
    assert ((0.3, 0.0, 0.0), (0.3, 0.0, 0.05)) in ends.values()
    assert len(after.arrangement.bars) == 6


def test_a_bar_does_not_move_along_itself():
    with pytest.raises(EditError, match="only be moved sideways"):
        edits.shift_bar(rectangle(), "r1", 1, 0.05)


def test_a_slanting_bar_takes_the_way_of_45_degrees():
    """100 mm up over 100 mm ahead is 45 degrees; the same over 300 mm is not."""
    design = edits.add_plane(rectangle(), "station", at=0.1)
    here = next(plane.id for plane in design.arrangement.stations if plane.at == 0.1)
    design = edits.add_bar(design, ("x0", "y0", "z0"), (here, "y0", "z1"))
    assert ((0.0, 0.0, 0.0), (0.1, 0.0, 0.1)) in points(design).values()
    with pytest.raises(EditError, match="45 degrees only"):
        edits.add_bar(design, ("x0", "y0", "z0"), ("x1", "y0", "z1"))
    with pytest.raises(EditError, match="not all three"):
        edits.add_bar(design, ("x0", "y0", "z0"), ("x1", "y1", "z1"))


def test_a_joint_set_on_a_slanting_bar_splits_it():
    design = edits.add_plane(rectangle(), "station", at=0.1)
    here = design.arrangement.stations[-1].id
    design = edits.add_bar(design, ("x0", "y0", "z0"), (here, "y0", "z1"))
    design = edits.add_plane(edits.add_plane(design, "station", at=0.04), "level", at=0.04)
    half, up = design.arrangement.stations[-1].id, design.arrangement.levels[-1].id
    after = edits.with_joint(design, (half, "y0", up))
    assert ((0.0, 0.0, 0.0), (0.04, 0.0, 0.04)) in points(after).values()
    assert ((0.04, 0.0, 0.04), (0.1, 0.0, 0.1)) in points(after).values()
