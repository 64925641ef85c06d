"""Findings about sawn pieces, the box, passages and shared places: spoken, silent beside, and put right."""

import pytest

from model.coach.sentences import ways_words
from model.design import Brief, HeldPipe, OnHand, Stick
from model.review import after_remedy, proven_remedy, review
from model.vehicle.choices import use_box
from tests import worked
from tests.model.coach_cases import Case, box, ruled
from tests.model.frame_cases import CASES, NO_REMEDY, boxed, sawn


def of(report, code, about):
    return next((f for f in report.findings if f.code == code and (f.about.kind, f.about.id) == about), None)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.code}-{case.about[1]}-{case.severity}")
def test_a_finding_speaks_with_its_numbers_and_is_silent_beside_it(case: Case):
    found = of(review(case.shows), case.code, case.about)
    assert found is not None
    assert found.severity == case.severity
    for words in case.words:
        assert words in found.message
    assert of(review(case.silent), case.code, case.about) is None


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.code}-{case.about[1]}-{case.severity}")
def test_a_remedy_clears_it_without_a_new_must(case: Case):
    report = review(case.shows)
    finding = of(report, case.code, case.about)
    remedy = proven_remedy(report, finding)
    if (case.code, case.about[1]) in NO_REMEDY:
        assert remedy is None
        return
    after = after_remedy(case.shows, remedy)
    assert of(after, case.code, case.about) is None
    assert {f.key for f in after.musts} <= {f.key for f in report.musts}


def test_a_hoop_made_to_measure_lets_the_vehicle_through():
    design = ruled(box(), hoop=0.38)
    report = review(design)
    remedy = proven_remedy(report, next(f for f in report.findings if f.code == "size.hoop-tight"))
    assert remedy.label.startswith("Make it ")
    size = after_remedy(design, remedy).survey.extents.size
    assert size[0] == pytest.approx(report.survey.extents.size[0])


def test_a_bar_longer_than_the_pipe_on_sale_gets_a_coupling():
    """1 m from centre to centre is 961.9 mm of pipe; sticks are 600 mm long: two of 461.9 and a coupling."""
    goods = worked.stock(pipes=(worked.pipe(sticks=(Stick(length=0.6, price=1.0),)),))
    report = review(worked.design(worked.box(length=1.0), stock=goods))
    finding = next(f for f in report.findings if f.code == "stock.bar-long")
    assert "961.9 mm" in finding.message
    remedy = proven_remedy(report, finding)
    assert "coupling in the middle" in remedy.label
    after = after_remedy(report.design, remedy).survey.frame
    # a coupling is 2 x 31.75 mm long here, as all fittings of this stock
    assert after.bars[finding.about.id].cut == pytest.approx(0.5 - 0.0381)


def test_short_pieces_are_judged_on_the_stick_that_is_sawn():
    """A piece of 21.9 mm is nothing to worry about on a stick of three metres."""
    design = worked.design(worked.box(height=0.075))
    assert not any(f.code == "stock.stick-short" for f in review(design).findings)


def test_a_piece_from_the_box_that_fits_is_not_sawn():
    run = worked.box(height=0.12)
    design = boxed(run, pieces=(HeldPipe(pipe="half", length=0.0819, count=4),))
    assert not any(f.code == "stock.stick-short" for f in review(design).findings)


def test_what_a_workshop_clamps_may_be_shorter():
    run = worked.box(height=0.12)
    design = boxed(run, pieces=(HeldPipe(pipe="half", length=0.12),))
    limits = design.brief.thresholds.but(hold_least=0.1)
    assert not any(
        f.code == "stock.stick-short" for f in review(design.but(brief=Brief(thresholds=limits))).findings
    )


def test_the_box_gives_what_it_has_to_joints():
    """Five corners are in the box and the frame has eight: five are picked."""
    design = boxed(only=False, fittings=({"fitting": "corner", "count": 5},))
    joints = tuple(review(design).survey.frame.joints.values())
    picked = [joint.fitting for joint in use_box(design, joints).arrangement.joints if joint.fitting]
    assert picked == ["corner"] * 5


def test_a_box_that_is_all_there_is_and_enough_is_no_finding_and_costs_nothing():
    pieces = tuple(HeldPipe(pipe="half", length=cut, count=4) for cut in (0.3619, 0.2619, 0.1619))
    design = boxed(only=True, fittings=({"fitting": "corner", "count": 8},), pieces=pieces)
    report = review(design)
    assert not any(f.code == "stock.box-short" for f in report.findings)
    assert report.survey.bill.spent == 0


def test_sawn_pieces_that_agree_are_no_finding():
    report = review(sawn(b0=0.35, b1=0.35, b2=0.35, b3=0.35))
    assert not any(f.code.startswith("frame.sawn") for f in report.findings)
    assert report.survey.frame.bars["b0"].spacing == pytest.approx(0.35 + 0.0381)


def test_nothing_on_hand_is_the_usual_case():
    assert review(box()).design.stock.on_hand == OnHand()


def test_two_slanting_bars_that_cross_are_joined_on_planes_of_their_own():
    """An X in the x-z plane, its arms capped: a cross turned by 45 degrees takes all four halves."""
    ends = [((0, 0, 0), (1, 0, 1)), ((1, 0, 0), (0, 0, 1))]
    run = worked.arrangement((0.1, 0.5), (0.0,), (-0.3, 0.1), ends)
    run = run.but(joints=tuple(joint.but(fitting="cap") for joint in run.joints))
    design = worked.design(run)
    report = review(design)
    finding = next(each for each in report.findings if each.code == "place.solids-shared")
    remedy = proven_remedy(report, finding)
    assert remedy.label == "Join bar 0 and bar 1 with a cross where they meet"
    after = after_remedy(design, remedy)
    frame = after.survey.frame
    (middle,) = [joint for joint in frame.joints.values() if len(joint.arms) == 4]
    assert middle.at == pytest.approx((0.3, 0.0, -0.1))
    assert middle.match.fitting.shape == "cross"
    assert [bar.spacing for bar in frame.bars.values()] == pytest.approx([0.2 * 2**0.5] * 4)
    assert not {"place.solids-shared", "frame.groups-apart"} & {each.code for each in after.findings}


def test_bars_that_only_pass_each_other_are_not_joined():
    """15 mm above each other they share room, but have no place in common."""
    ends = [((0, 1, 0), (2, 1, 0)), ((1, 0, 1), (1, 2, 1))]
    run = worked.arrangement((0.0, 0.2, 0.4), (-0.2, 0.0, 0.2), (0.0, 0.015), ends)
    report = review(worked.design(run))
    finding = next(each for each in report.findings if each.code == "place.solids-shared")
    assert list(finding.propose()) == []


def test_a_size_near_its_limit_is_made_smaller_by_what_the_build_may_be_off_or_built_to_marks():
    """427.9 mm in 430 mm, off by sqrt(1.6^2 + 2 x 3^2) = 4.53 mm: 425 mm stays inside, and so does a scatter
    of 1 mm at each end, with which it is off by sqrt(1.6^2 + 2) = 2.14 mm in 2.06 mm of room - not quite."""
    design = ruled(box(), size_limit=(0.43, 1, 1))
    report = review(design)
    finding = of(report, "size.limit-near", ("axis", "x"))
    smaller, marked = finding.propose()
    assert smaller.label == "Make it 425 mm long overall"
    assert review(smaller.edit(design)).survey.extents.size[0] == pytest.approx(0.425)
    assert proven_remedy(report, finding).label == smaller.label
    still = of(review(marked.edit(design)), "size.limit-near", ("axis", "x"))
    assert "2.1 mm off (3.6 mm at worst)" in still.message, "more care alone is not enough here"


def test_ways_at_45_degrees_can_be_told_apart_in_a_list():
    """Ahead, and ahead and up at once, are two ways; "ahead and ahead and up" could be three."""
    assert ways_words([(1, 0, 0), (1, 0, 1), (0, -1, 0)]) == "slanting ahead-up, ahead and to starboard"
