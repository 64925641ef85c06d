"""Every fitting that fits a joint, 45 degrees and two pipe sizes too."""

import pytest

from model.design import Joint, Plane, Socket
from model.frame.layout import lay_out
from model.vehicle.choices import choices
from tests import worked

HALF_HUB, FACE = 0.01397, 0.03175


def at_joint(design, joint):
    return choices(design, lay_out(design, design.arrangement).joints[joint])


def priced(**prices):
    return tuple(worked.fitting(shape, price=price) for shape, price in prices.items())


def elbow_corner():
    ends = [((0, 0, 0), (1, 0, 0)), ((0, 0, 0), (0, 1, 0))]
    return worked.arrangement((0.0, 0.3), (0.0, 0.3), (0.0,), ends)


def test_the_cheapest_that_leaves_none_spare_stands_first():
    goods = worked.stock(fittings=priced(cross=0.3, corner=0.2, tee=0.1, elbow=2.0))
    design = worked.design(elbow_corner(), stock=goods)
    found = at_joint(design, "j000")
    assert [(c.fitting.id, len(c.spare)) for c in found] == [
        ("elbow", 0), ("tee", 1), ("corner", 1), ("cross", 2)
    ]  # fmt: skip
    assert [c.used for c in found] == [True, False, False, False]


def test_size_and_directions_of_an_elbow():
    """From half a hub behind its centre to the face: 13.97 + 31.75 mm both ways, a hub high."""
    (elbow, *_) = at_joint(worked.design(elbow_corner()), "j000")
    assert elbow.size == pytest.approx((HALF_HUB + FACE, HALF_HUB + FACE, 2 * HALF_HUB))
    assert set(elbow.ways) == {(1, 0, 0), (0, 1, 0)}


def test_what_the_team_picked_and_what_is_in_the_box_is_told():
    run = elbow_corner()
    joints = tuple(j.but(fitting="corner" if j.id == "j000" else None) for j in run.joints)
    held = worked.stock().on_hand.but(fittings=({"fitting": "tee", "count": 4},))
    found = at_joint(worked.design(run.but(joints=joints), stock=worked.stock(on_hand=held)), "j000")
    told = {c.fitting.id: (c.picked, c.used, c.held) for c in found}
    assert told["corner"] == (True, True, 0)
    assert told["tee"] == (False, False, 4)
    assert told["elbow"] == (False, False, 0)


@pytest.mark.parametrize(
    ("away", "plane"),
    [((1, 1, 0), "xy"), ((1, 0, 1), "xz"), ((0, 1, 1), "yz"), ((-1, 1, 0), "xy"), ((0, -1, 1), "yz")],
)
def test_a_bar_at_45_degrees_in_each_main_plane_takes_an_elbow(away, plane):
    """One bar runs straight, the other leaves at 45 degrees from its line."""
    first = next(n for n in range(3) if away[n])
    straight = tuple(-away[n] if n == first else 0 for n in range(3))
    spots = [tuple(1 + 0 * n for n in range(3))]
    spots += [tuple(1 + step for step in way) for way in (straight, away)]
    places = (-0.2, 0.0, 0.2)
    run = worked.arrangement(places, places, places, [(spots[0], spots[1]), (spots[0], spots[2])])
    design = worked.design(run)
    (choice, *_) = at_joint(design, "j111")
    assert choice.fitting.shape == "elbow 45", plane
    assert set(choice.ways) == {straight, away}


def test_a_reducing_tee_joins_two_pipe_sizes():
    """Its run takes three-quarter-inch pipe and its branch half-inch; no plain tee does."""
    wide = worked.pipe("wide", outside_diameter=1.05 * worked.INCH, bore=0.8 * worked.INCH)
    sockets = (
        *(Socket(to=to, laying_length=0.015, depth=0.018, pipe="wide") for to in ("+x", "-x")),
        Socket(to="+z", laying_length=0.017, depth=0.017, pipe="half"),
    )
    reducing = worked.fitting("tee").but(id="reducing", name="reducing tee", sockets=sockets)
    plain = worked.fitting("tee")
    big = plain.but(id="big", sockets=tuple(s.but(pipe="wide") for s in plain.sockets))
    goods = worked.stock(pipes=(worked.pipe(), wide), fittings=(plain, big, reducing))
    ends = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 0, 0)), ((1, 0, 0), (1, 1, 0))]
    run = worked.arrangement((0.0, 0.2, 0.4), (0.0, 0.2), (0.0,), ends)
    bars = tuple(bar.but(pipe=pipe) for bar, pipe in zip(run.bars, ("wide", "wide", None), strict=True))
    design = worked.design(run.but(bars=bars), stock=goods)
    (choice,) = at_joint(design, "j100")
    assert choice.fitting.id == "reducing"
    frame = lay_out(design, design.arrangement)
    assert frame.bars["b2"].faces[0] == pytest.approx(0.034)
    assert frame.bars["b0"].faces[1] == pytest.approx(0.033)


def test_a_crooked_bar_has_no_choice():
    ends = [((0, 0, 0), (1, 1, 0))]
    run = worked.arrangement((0.0, 0.3), (0.0, 0.2), (0.0,), ends)
    assert at_joint(worked.design(run), "j000") == ()


def test_a_joint_without_bars_has_no_choice():
    run = elbow_corner()
    lonely = Joint(id="lonely", name="lonely", station="x0", side="y0", level="up")
    run = run.but(levels=(*run.levels, Plane(id="up", name="up", at=0.2)), joints=(*run.joints, lonely))
    assert at_joint(worked.design(run), "lonely") == ()
