"""Motors on an on-off switch: they never run astern, and nothing counts on it.

The box of ``thrust_cases``: motors of 3 N ahead and 2 N astern, 210 mm to each side of the middle.
"""

import json

import pytest

from model.check import check_document
from model.compare import standing_of_design
from model.design import Attachment, Branch, Brief, Leg, Load, Motor, Power, Thruster, Trial
from model.explain_motion import motion_quantities
from model.pool.corrections import correction
from model.pool.expected import expected
from model.pool.results import results
from model.review import after_remedy, proven_remedies, proven_remedy, review
from model.runs import run_time
from model.survey import motion_of, survey
from model.thrust.around import around
from model.thrust.senses import senses
from tests.model.thrust_cases import port, starboard, swimmer, upright

ONE_WAY = Branch(fuse=3.0, switching="on-off switch")
CONTROLLED = Branch(fuse=3.0, switching="controller")
ACROSS = {"to": "+y", "offset": (0, 0.15, 0.1)}
"""Above everything, pushing to port."""
MOTOR = Motor(
    id="m", name="m", mass=0.1, mass_in_water=0.05, body_diameter=0.03, body_length=0.06,
    propeller_diameter=0.05, thrust_ahead=3.0,
)  # fmt: skip


def pair(one=ONE_WAY, other=ONE_WAY, **items):
    """A motor on each side that pushes ahead."""
    return swimmer(port(branch=one), starboard(branch=other), **items)


def missing(design):
    """The moves of the brief that the coach misses, with what it says."""
    found = review(design).findings
    return {f.about.id: f for f in found if f.code == "thruster.move-missing"}


@pytest.mark.parametrize(
    ("switching", "power", "astern", "ways"),
    [
        ("on-off switch", Power(), None, ("ahead",)),
        ("on-off switch", Power(), 2.0, ("ahead",)),
        ("reversing switch", Power(), None, ("ahead", "astern")),
        ("controller", Power(), 2.0, ("ahead", "astern")),
        ("controller", Power(), 0.0, ("ahead",)),  # measured: its propeller pulls nothing so
        ("on-off switch", None, 2.0, ("ahead", "astern")),  # no wiring, no branch
    ],
)
def test_switch_and_propeller_say_which_ways_a_thruster_runs(switching, power, astern, ways):
    thruster = Thruster(id="t", name="t", bar="b", motor="m", branch=Branch(switching=switching))
    assert senses(thruster, MOTOR.but(thrust_astern=astern), power) == ways


def test_a_pull_test_of_nothing_astern_goes_before_what_the_stock_says():
    own = {"ahead": 2.5, "astern": 0.0}
    thruster = Thruster(id="t", name="t", bar="b", motor="m", pull=own)
    assert senses(thruster, MOTOR.but(thrust_astern=2.0), Power()) == ("ahead",)
    found = survey(swimmer(port(pull=own), starboard(pull=own)))
    assert "astern" not in found.thrust.moves
    pull = next(one for one in motion_quantities(found) if one.name == "pull of port motor")
    assert ("astern", "its propeller pulls nothing") in pull.inputs


@pytest.mark.parametrize(
    ("design", "moves"),
    [
        (pair(Branch(), Branch()), {"ahead", "astern", "turn"}),
        (pair(CONTROLLED, CONTROLLED), {"ahead", "astern", "turn"}),
        (pair(), {"ahead", "turn"}),  # each side turns it to the other
        (pair(power=None), {"ahead", "astern", "turn"}),
        (swimmer(starboard(branch=ONE_WAY)), {"ahead"}),  # to port only
        (swimmer(starboard()), {"ahead", "astern", "turn"}),
        (swimmer(upright(branch=ONE_WAY)), {"up"}),
        (swimmer(upright(branch=ONE_WAY, to="-z")), {"down"}),
        (swimmer(upright(branch=ONE_WAY, **ACROSS)), set()),
        (swimmer(upright(**ACROSS)), {"sideways"}),
        (swimmer(starboard(branch=ONE_WAY), port(branch=ONE_WAY, to="-x")), {"ahead", "astern"}),
    ],
)
def test_the_moves_that_are_left(design, moves):
    assert survey(design).thrust.moves == moves


def test_the_pulls_up_and_down_count_only_the_ways_that_a_motor_runs():
    """The first metre of stream is clear, and the wiring leaves each motor some of its 12 V."""
    up, both = (survey(swimmer(upright(branch=branch))).thrust for branch in (ONE_WAY, Branch(fuse=3.0)))
    assert (up.down, up.up) == (0.0, pytest.approx(both.up))
    assert both.down == pytest.approx(both.up * 2 / 3, rel=0.1)


def test_nothing_runs_brakes_or_turns_astern():
    moving = motion_of(survey(pair()))
    usual = motion_of(survey(pair(Branch(fuse=3.0), Branch(fuse=3.0))))
    assert (moving.astern, moving.ahead.stop) == (None, None)
    assert moving.ahead.coast.value == pytest.approx(usual.ahead.coast.value)
    assert moving.ahead.top == usual.ahead.top
    assert moving.port.push.still == pytest.approx(usual.port.push.still * 3 / 5, rel=0.02)
    assert moving.port.rate.value < usual.port.rate.value
    single = motion_of(survey(swimmer(starboard(branch=ONE_WAY))))
    assert single.port is not None
    assert (single.starboard, single.slower_turn) == (None, None)


def test_the_task_needs_what_the_switches_forbid():
    lift = upright(branch=ONE_WAY)
    rules = Brief(moves=("ahead", "astern", "up", "down", "turn"))
    design = swimmer(port(branch=ONE_WAY), starboard(branch=ONE_WAY), lift, brief=rules)
    found = missing(design)
    assert set(found) == {"astern", "down"}
    assert all((f.severity, f.step) == ("must", "wires") for f in found.values())
    assert found["astern"].message == (
        "The task needs the vehicle to go astern, but no thruster does that: port motor and starboard motor "
        "would, but their switches only turn them on and off."
    )
    assert found["down"].message == (
        "The task needs the vehicle to dive, but no thruster does that: lift motor would, but its switch "
        "only turns it on and off."
    )


def test_a_vehicle_that_turns_to_one_side_only():
    design = swimmer(starboard(branch=ONE_WAY), brief=Brief(moves=("ahead", "turn")))
    (found,) = missing(design).values()
    assert found.message == (
        "The task needs the vehicle to turn, but no thruster turns it to starboard: starboard motor would, "
        "but its switch only turns it on and off."
    )
    sideways = swimmer(upright(branch=ONE_WAY, **ACROSS), brief=Brief(moves=("sideways",)))
    assert "no thruster pushes it to starboard: lift motor would" in missing(sideways)["sideways"].message


@pytest.mark.parametrize(
    "design",
    [
        pair(brief=Brief(moves=("ahead", "turn"))),
        pair(CONTROLLED, CONTROLLED, brief=Brief(moves=("ahead", "astern", "turn"))),
        pair(Branch(fuse=3.0), brief=Brief(moves=("ahead", "astern", "turn"))),  # one of the two reverses
        pair(power=None, brief=Brief(moves=("astern",))),
    ],
)
def test_it_is_silent_where_nothing_is_missing(design):
    assert missing(design) == {}


def test_a_direction_that_no_switch_would_give_blames_none():
    found = missing(pair(brief=Brief(moves=("up",))))["up"]
    assert found.step == "thrusters"
    assert found.message.endswith("but no thruster does that.")


@pytest.mark.parametrize(
    ("pulls", "move", "why"),
    [
        ({"thrust_ahead": 0.0, "thrust_astern": None}, "ahead",
         ": nobody has measured how hard port motor and starboard motor pull."),
        ({"thrust_astern": 0.0}, "astern",
         ": port motor and starboard motor would, but pull nothing that way."),
        ({"thrust_astern": 0.0}, "up", "no thruster does that."),
    ],
)  # fmt: skip
def test_motors_that_pull_nothing_are_named_where_they_point_the_right_way(pulls, move, why):
    design = swimmer(port(), starboard(), brief=Brief(moves=(move,)))
    motor = design.supplies.motors[0].but(**pulls)
    design = design.but(supplies=design.supplies.but(motors=(motor,)))
    assert missing(design)[move].message.endswith(why)


def test_a_reversing_switch_is_offered_and_clears_it():
    """In one branch it is enough to go astern; to turn both ways with a single motor as well."""
    for design, moves in (
        (pair(brief=Brief(moves=("ahead", "astern"))), {"ahead", "astern", "turn"}),
        (swimmer(starboard(branch=ONE_WAY), brief=Brief(moves=("turn",))), {"ahead", "astern", "turn"}),
    ):
        report = review(design)
        found = next(f for f in report.findings if f.code == "thruster.move-missing")
        remedies = [remedy for remedy, _ in zip(proven_remedies(report, found), range(3), strict=False)]
        assert remedies[0].label.startswith("Put a reversing switch in the branch of ")
        after = after_remedy(design, remedies[0])
        assert after.survey.thrust.moves == moves
        switches = [item.branch.switching for item in after.design.arrangement.thrusters]
        assert switches.count("reversing switch") == 1
    both = "Put reversing switches in the branches of port motor and starboard motor"
    report = review(pair(brief=Brief(moves=("astern",))))
    found = next(f for f in report.findings if f.code == "thruster.move-missing")
    assert both in [remedy.label for remedy in found.propose()]


def test_a_load_that_only_a_switch_keeps_from_rising():
    """A motor that pushes down and cannot pull up: the switch is the first remedy."""
    hook = Attachment(
        id="h", name="hook", bar="b0", kind="hook", offset=(0, 0.15, 0), size=(0.02, 0.02, 0.02), mass=0.01,
        mass_in_water=0.005,
    )  # fmt: skip
    rules = Brief(load=Load(name="crate", mass=0.41))
    design = swimmer(upright(branch=ONE_WAY, to="-z"), brief=rules, attachments=(hook,))
    report = review(design)
    weak = next(f for f in report.findings if f.code == "load.lift-weak")
    assert weak.severity == "must"
    assert proven_remedy(report, weak).label == "Put a reversing switch in the branch of lift motor"


def test_a_stream_that_never_flows_costs_nothing():
    """A bar close before the propeller is in its stream astern, and in none where it only runs ahead."""
    close = {"bar": "b1", "offset": (0, 0, 0.1), "at": 0.5, "to": "-z"}  # throws its water up, ahead
    both, one = (swimmer(upright(branch=branch, **close)) for branch in (Branch(fuse=3.0), ONE_WAY))
    blocked = survey(both).clear[0]
    assert blocked.astern.lost > 0.2
    assert "thruster.stream-blocked" in {f.code for f in review(both).findings}
    assert "thruster.stream-blocked" not in {f.code for f in review(one).findings}
    found = survey(one)
    limits = found.design.brief.thresholds
    (each,) = around(limits, found.arrangement, found.frame, found.parts, found.balance)
    assert (each.clear.astern.lost, each.clear.astern.losses) == (0.0, ())


def test_a_course_that_it_cannot_turn_on():
    legs = (Leg(ahead=1.0, turn=90),)
    one = run_time(survey(swimmer(starboard(branch=ONE_WAY), brief=Brief(course=legs))))
    assert (one.total, one.legs[0].problem) == (None, "the thrusters turn it to one side only")
    none = run_time(survey(swimmer(upright(), brief=Brief(course=(Leg(turn=90),)))))
    assert none.legs[0].problem == "the thrusters cannot turn it"
    both = run_time(survey(pair(brief=Brief(course=legs))))
    usual = run_time(survey(pair(Branch(fuse=3.0), Branch(fuse=3.0), brief=Brief(course=legs))))
    assert both.total.value > usual.total.value  # half the pull to turn with


def test_no_trial_is_expected_to_pull_astern_and_none_corrects_it():
    found = survey(pair())
    assert expected(found, "pull astern") is None
    assert expected(found, "pull ahead") == pytest.approx(sum(drive.ahead for drive in found.drives))
    design = swimmer(starboard(), port(branch=ONE_WAY, to="-x"))
    measured = 0.8 * expected(survey(design), "pull ahead")
    trial = Trial(id="p", kind="pull ahead", value=measured, when="2026-01-01")
    noted = survey(design.but(evidence=design.evidence.but(trials=(trial,))))
    fixed = correction(noted, results(noted)[0]).edit(noted.design).arrangement.thrusters
    assert [item.pull is None for item in fixed] == [False, True]  # the one astern did not take part


def test_numbers_say_so_and_the_document_has_none():
    report = review(swimmer(port(branch=ONE_WAY), starboard(branch=ONE_WAY), upright(branch=ONE_WAY)))
    told = {one.name: one for one in motion_quantities(report.survey)}
    assert told["pull of port motor"].text.endswith("N ahead, none astern")
    assert ("astern", "its switch only turns it on and off") in told["pull of port motor"].inputs
    assert told["distance to stop from top speed ahead"].text == "the motors cannot brake"
    assert "top speed astern" not in told
    document = json.loads(json.dumps(check_document(report, "x.toml")))
    assert document["motion"]["up_m_s"] > 0
    assert document["motion"]["down_m_s"] is None
    assert document["motion"]["turn90_s"] > 0
    single = review(swimmer(starboard(branch=ONE_WAY)))
    assert check_document(single, "x.toml")["motion"]["turn90_s"] is None


def test_a_comparison_has_no_quarter_turn_of_what_turns_to_one_side():
    assert standing_of_design(swimmer(starboard(branch=ONE_WAY))).quarter is None
    assert standing_of_design(swimmer(starboard())).quarter is not None
