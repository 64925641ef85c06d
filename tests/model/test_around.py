"""What is around a propeller however far away, beside what is asked, from raw numbers."""

import pytest
from scipy.spatial import cKDTree

from model.coach.coach import findings
from model.design import Attachment, Brief, Thresholds
from model.survey import survey
from model.thrust.around import around
from tests.model.test_thrust_places import surface
from tests.model.thrust_cases import CASES, GOOD, cable, port, starboard, swimmer, upright


def told(design, name="port"):
    """What is around one propeller."""
    found = survey(design)
    made = around(design.brief.thresholds, found.arrangement, found.frame, found.parts, found.balance)
    return next(each for each in made if each.clear.thruster == name)


def far_out(**changes):
    """The port motor 200 mm outside the low port rail, level with it."""
    return swimmer(port(offset=(0, 0.2, 0), **changes), starboard())


def test_room_is_told_beyond_what_the_coach_looks_at():
    """200 - 25 - 21.336/2 mm to the rail."""
    near = told(far_out()).clear.near
    assert near.room * 1000 == pytest.approx(200 - 25 - 21.336 / 2, abs=0.01)
    assert survey(far_out()).clear[0].near is None


@pytest.mark.parametrize("offset", [(0.45, 0.0, 0.0), (-0.5, 0.1, 0.1), (0.0, 0.05, 0.4)])
def test_the_nearest_part_is_found_wherever_it_stands(offset):
    """Against points spread over the disc and over every other part."""
    found = survey(swimmer(port(offset=offset), starboard()))
    each = told(found.design).clear
    (disc,) = (part.solids[1] for part in found.parts if part.kind == "thruster" and part.id == "port")
    spread = cKDTree(surface(disc))
    rooms = {
        part.name: min(spread.query(surface(solid))[0].min() for solid in part.solids)
        for part in found.parts
        if part.solids and (part.kind, part.id) != ("thruster", "port")
    }
    assert each.near.room == pytest.approx(min(rooms.values()), abs=0.012)
    assert rooms[each.near.part.name] == pytest.approx(min(rooms.values()), abs=0.012)


@pytest.mark.parametrize(("diameter", "asked"), [(None, 10.0), (0.1, 15.0)])
def test_asked_is_the_larger_of_ten_millimetres_and_a_share_of_the_propeller(diameter, asked):
    """10 mm or 15 % of the propeller, which is 50 mm wide or 100."""
    design = GOOD
    if diameter:
        motor = design.supplies.motors[0].but(propeller_diameter=diameter)
        design = design.but(supplies=design.supplies.but(motors=(motor,)))
    each = told(design)
    assert each.asked * 1000 == pytest.approx(asked)
    assert each.depth_asked == pytest.approx(diameter or 0.05)


def test_a_brief_may_ask_for_more():
    strict = GOOD.but(brief=Brief(thresholds=Thresholds(disc_should=0.05, depth_least=3.0, disc_tether=0.2)))
    each = told(strict)
    assert (each.asked, each.depth_asked) == (0.05, pytest.approx(0.15))
    assert each.tether_asked is None, "there is no tether"
    assert told(strict.arranged(tether=cable())).tether_asked == 0.2


def test_a_guard_keeps_the_tether_off():
    for guard, asked in ((False, 0.05), (True, None)):
        each = told(swimmer(port(guard=guard), starboard(), tether=cable()))
        assert (each.guard, each.tether_asked) == (guard, asked)


def test_the_hook_is_found_behind_other_parts():
    """A cube of 20 mm in the middle of the low port rail, 300 mm ahead: the port motor's disc is far nearer
    to its rail."""
    hook = Attachment(
        id="h", name="hook", kind="hook", bar="b2", at=0.5, offset=(0.3, 0.2, 0.0), size=(0.02, 0.02, 0.02),
        mass=0.02, mass_in_water=0.01,
    )  # fmt: skip
    each = told(swimmer(port(offset=(0, 0.2, 0)), starboard(), attachments=(hook,)))
    disc = next(part for part in survey(far_out()).parts if part.id == "port").solids[1]
    ahead = max(disc.start[0], disc.end[0])
    middle = survey(far_out()).frame.bars["b2"].point(0.5)[0]
    assert each.hook.part.name == "hook"
    assert each.hook.room == pytest.approx(middle + 0.3 - 0.01 - ahead, abs=1e-5)
    assert told(far_out()).hook is None


def test_each_part_in_the_stream_is_told_with_its_share_the_most_first():
    """The lift motor's stream goes past the cross bar; all losses add up to the whole."""
    each = told(swimmer(upright(bar="b1", offset=(0, 0, -0.04))), "lift").clear
    losses = (*each.ahead.losses, *each.astern.losses)
    assert losses
    for stream in (each.ahead, each.astern):
        shares = [loss.lost for loss in stream.losses]
        assert shares == sorted(shares, reverse=True)
        assert stream.lost == pytest.approx(min(1.0, sum(shares)))
        assert len({(loss.part.kind, loss.part.id) for loss in stream.losses}) == len(shares)


LACKING = {
    "thruster.disc-near": "part",
    "thruster.disc-touching": "part",
    "thruster.tether-near": "tether",
    "thruster.disc-shallow": "depth",
}


@pytest.mark.parametrize("case", [case for case in CASES if case.code in LACKING], ids=lambda case: case.code)
def test_what_is_too_little_is_what_the_coach_speaks_of(case):
    for design in (case.shows, case.silent):
        found = survey(design)
        spoken = {
            (LACKING[finding.code], finding.about.id)
            for finding in findings(found)
            if finding.code in LACKING
        }
        made = around(design.brief.thresholds, found.arrangement, found.frame, found.parts, found.balance)
        assert {(what, each.clear.thruster) for each in made for what in each.lacks} == spoken
