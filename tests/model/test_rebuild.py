"""Joints that no fitting fits, built from what there is: distances from raw sockets, counts by hand."""

import tomllib

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from model.design import OnHand
from model.presets import built_in_folder
from model.review import after_remedy, proven_remedies, proven_remedy, review
from tests import worked
from tests.generators import stock as range_of
from tests.generators import tidy_designs
from tests.model.coach_cases import thruster

CODE = "fitting.joint-unmatched"
PLUMBING = worked.stock(
    fittings=tuple(
        worked.fitting(shape, price=price) for shape, price in (("elbow", 0.5), ("tee", 0.6), ("cap", 0.4))
    )
)
FACE = 0.03175


def unmatched(report):
    return [finding for finding in report.findings if finding.code == CODE]


def box(goods=PLUMBING, **more):
    return worked.design(worked.box(**more), stock=goods)


def test_a_corner_of_a_plumbing_range_becomes_a_tee_beside_an_elbow():
    """Face to face the two are 2 x 31.75 mm from centre to centre, with 25.4 mm of pipe inside them."""
    report = review(box())
    assert len(unmatched(report)) == 8
    remedy = proven_remedy(report, unmatched(report)[0])
    after = after_remedy(report.design, remedy)
    assert len(unmatched(after)) == 6
    short = [bar for bar in after.survey.frame.bars.values() if bar.cut and bar.spacing < 0.1]
    assert [bar.spacing for bar in short] == pytest.approx([2 * FACE] * 2, abs=1e-9)
    assert [bar.cut for bar in short] == pytest.approx([0.0254] * 2, abs=1e-8)
    assert all(bar.exposed > -1e-9 for bar in after.survey.frame.bars.values())


def test_what_it_takes_is_told_before_it_is_taken():
    """Two elbows at 0.50 and two tees at 0.60 come in; pipe is one stick before and after."""
    report = review(box())
    remedy = proven_remedy(report, unmatched(report)[0])
    pieces, cost, size = remedy.details
    assert "2 x elbow" in pieces
    assert "2 x tee" in pieces
    assert "2 x 25.4 mm" in pieces
    known = after_remedy(report.design, remedy).survey
    gained = known.bill.spent - report.survey.bill.spent
    assert cost == f"Costs {gained:.2f} units"
    assert "The vehicle gets" in size or "stays" in size


def test_every_corner_can_be_rebuilt_at_once():
    report = review(box())
    ways = list(proven_remedies(report, unmatched(report)[0]))
    whole = [way for way in ways if way.label.startswith("Rebuild every such joint: move 4 ")]
    assert whole
    for way in whole:
        after = after_remedy(report.design, way)
        assert not unmatched(after)
        assert len(after.survey.frame.bars) == 12 + 8
        assert not any(f.code in ("frame.joints-close", "frame.groups-apart") for f in after.findings)


def test_unequal_sockets_give_the_shortest_legal_spacing():
    """The tee's branch is longer than its run: 31.75 + 38.1 mm where the branch faces the elbow."""
    fittings = (worked.fitting("elbow"), worked.fitting("tee", branch=0.812))
    report = review(box(worked.stock(fittings=fittings)))
    after = after_remedy(report.design, proven_remedy(report, unmatched(report)[0]))
    faces = {round(face, 9) for bar in after.survey.frame.bars.values() for face in bar.faces if face}
    assert faces == {0.03175, 0.0381}
    short = [bar for bar in after.survey.frame.bars.values() if bar.cut and bar.spacing < 0.1]
    assert all(bar.spacing == pytest.approx(sum(bar.faces), abs=1e-9) for bar in short)


ARMS = ((0, 1, 1), (2, 1, 1), (1, 0, 1), (1, 2, 1), (1, 1, 0), (1, 1, 2))


@pytest.mark.parametrize("count", [4, 5, 6])
def test_a_star_of_many_bars_is_taken_apart(count):
    """Four to six bars in one place, with elbows, tees and flat crosses: one or two of them move."""
    places = (-0.3, 0.0, 0.3)
    run = worked.arrangement(places, places, places, [((1, 1, 1), arm) for arm in ARMS[:count]])
    caps = tuple(j.but(fitting="cap") if j.id != "j111" else j for j in run.joints)
    goods = worked.stock("elbow", "tee", "cross", "cap") if count > 4 else PLUMBING
    report = review(worked.design(run.but(joints=caps), stock=goods))
    (finding,) = unmatched(report)
    after = after_remedy(report.design, proven_remedy(report, finding))
    assert not unmatched(after)
    assert {joint.match.fitting.id for joint in after.survey.frame.joints.values()} <= {"tee", "cross", "cap"}
    assert len(after.survey.frame.joints) > len(run.joints)


def test_a_brace_from_corner_to_corner_gets_tees_of_its_own_beside_the_corners():
    """A slanting bar in the starboard side of a cube: no corner has a socket for it.  It moves inboard onto
    tees on the two cross bars, from the middle of a corner to that of a tee 2 x 31.75 mm."""
    ends = [*worked.BOX, ((0, 0, 0), (1, 0, 1))]
    side = (-0.15, 0.15)
    design = worked.design(worked.arrangement(side, side, side, ends), stock=worked.stock("corner", "tee"))
    report = review(design)
    assert {finding.about.id for finding in unmatched(report)} == {"j000", "j101"}
    after = after_remedy(design, proven_remedy(report, unmatched(report)[0]))
    assert not unmatched(after)
    frame = after.survey.frame
    brace = frame.bars[design.arrangement.bars[-1].id]
    assert brace.start == pytest.approx((-0.15, -0.15 + 2 * FACE, -0.15))
    assert brace.end == pytest.approx((0.15, -0.15 + 2 * FACE, 0.15))
    assert [frame.joints[joint].match.fitting.id for joint in brace.joints] == ["tee", "tee"]
    assert brace.cut == pytest.approx(0.3 * 2**0.5 - 2 * FACE + 0.0254)


def test_where_nothing_helps_nothing_is_offered():
    """No range has fittings for pipe of 30 mm, nor can anything be bought where the box is all there is."""
    poor = worked.stock("cap")
    wide = poor.but(pipes=(poor.pipes[0].but(outside_diameter=0.03),))
    shut = poor.but(on_hand=OnHand(only=True))
    for goods in (wide, shut):
        report = review(box(goods))
        assert proven_remedy(report, unmatched(report)[0]) is None


def test_the_fitting_that_another_range_has_for_the_same_pipe_comes_last_with_what_it_costs():
    """Eight corners at what the range of furniture fittings asks, read from its file."""
    report = review(box())
    path = built_in_folder() / "stocks" / "half-inch-furniture.toml"
    fittings = tomllib.loads(path.read_text(encoding="utf-8"))["stock"]["fittings"]
    price = next(each["price"] for each in fittings if each["shape"] == "corner")
    *others, last = proven_remedies(report, unmatched(report)[0])
    assert others
    assert not any(way.label.startswith("Get ") for way in others)
    assert last.label == "Get a three-way corner, which other ranges have for the same pipe"
    assert "8 x three-way corner" in last.details[0]
    after = after_remedy(report.design, last)
    assert not unmatched(after)
    assert len(after.survey.frame.bars) == 12
    line = next(line for line in after.survey.bill.lines if line.kind == "fitting")
    assert (line.quantity, line.each) == (8, price)


def test_equipment_goes_with_its_bar_and_stays_where_it_is_along_it():
    """The motor sits in the middle of an upright: at its height, whichever piece carries it afterwards."""
    report = review(box(thrusters=(thruster(bar="b8", offset=(0, 0.05, 0)),)))
    for way in proven_remedies(report, unmatched(report)[0]):
        survey = after_remedy(report.design, way).survey
        item = survey.arrangement.thrusters[0]
        bar = survey.frame.bars[item.bar]
        assert bar.name.startswith("bar")
        assert abs(bar.along[2]) > 0.9
        assert bar.point(item.at)[2] == pytest.approx(0.0, abs=1e-9)


@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(tidy_designs(most=14), st.integers(0, 100))
def test_on_any_frame_a_proven_way_leaves_no_fitting_short_of_room(design, number):
    """Whatever is offered clears the joint, keeps the frame in one piece and lets no fittings collide."""
    pipe = design.stock.pipes[0]
    poor = design.but(stock=range_of(pipe, shapes=("elbow", "tee", "cap")))
    report = review(poor)
    found = unmatched(report)
    assume(found)
    finding = found[number % len(found)]
    remedy = proven_remedy(report, finding)
    assume(remedy is not None)
    after = after_remedy(poor, remedy)
    assert finding.key not in {other.key for other in after.findings}
    old = {f.key for f in report.musts}
    assert {f.key for f in after.musts} <= old
    assert len(after.survey.frame.groups) <= len(report.survey.frame.groups)
    assert len(after.survey.frame.bars) >= len(report.survey.frame.bars)
