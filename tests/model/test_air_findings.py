"""Air, water, holes and seals: what the coach says, when it is silent, and remedies that really clear it."""

import pytest

from model.design import Brief, Float, Opening, Plug
from model.design.thresholds import Thresholds
from model.explain_air import air_quantities
from model.files import load_design
from model.presets import built_in_folder
from model.review import after_remedy, proven_remedy, review
from model.solve.hole_words import flow_words, millilitres, pocket_words, tilt_line
from tests import worked

OUTSIDE, FACE, BORE = 21.336, 31.75, 15.2908
"""[mm] of the worked half-inch pipe: outside diameter, centre to face, average bore."""
CROWNS = ("b0", "b1", "b2", "b3")


NEWT = load_design(built_in_folder() / "demo" / "newt.toml").design


def hole(name="o", **changes):
    return Opening(**{"id": name, "name": name, "bar": "b0", **changes})


def pipe(*openings, length=0.4, **items):
    """One level pipe along x, capped at both ends."""
    run = worked.arrangement((0.0, length), (0.0,), (0.0,), [((0, 0, 0), (1, 0, 0))])
    return worked.design(run.but(openings=openings, **items))


def portal(*openings, **items):
    """A bar of 400 mm on two capped legs of 250 mm."""
    bars = [((0, 0, 1), (1, 0, 1)), ((0, 0, 0), (0, 0, 1)), ((1, 0, 0), (1, 0, 1))]
    run = worked.arrangement((0.0, 0.4), (0.0,), (0.0, 0.25), bars)
    return worked.design(run.but(openings=openings, **items))


def said(drawn, code):
    """The findings with a code."""
    return [finding for finding in review(drawn).findings if finding.code == code]


def cleared(drawn, code):
    """The report after the proved remedy of the first finding with a code."""
    report = review(drawn)
    finding = next(finding for finding in report.findings if finding.code == code)
    remedy = proven_remedy(report, finding)
    assert remedy is not None, code
    after = after_remedy(drawn, remedy)
    assert finding.key not in {other.key for other in after.findings}
    return after


FOAM = (Float(id="f", name="f", bar="b0", foam="noodle", length=0.1),)
CLEAR = (hole("v"), hole("d", face="-z", at=0.4))
"""A hole on the crown and one below, of a level pipe."""


@pytest.mark.parametrize(
    ("code", "severity", "drawn", "silent", "words"),
    [
        ("opening.face-along", "must", pipe(hole(face="+x")), pipe(hole()), ("front", "bar 0")),
        (
            "opening.face-taken", "must",
            portal(hole(at=0.0, face="-z")), portal(hole(at=0.0, face="+z")), ("underside",),
        ),
        ("opening.face-solid", "must", pipe(hole(at=0.0)), pipe(hole(at=0.5)), ("cap",)),
        (
            "opening.hole-plugged", "should",
            pipe(hole(), hole("x", at=0.3), plugs=(Plug(id="s", name="s", bar="b0", at=0.5),)),
            pipe(hole(), hole("x", at=0.3)), ("plug in bar 0",),
        ),
        (
            "opening.hole-covered", "should", pipe(hole(), hole("x", at=0.2), floats=FOAM),
            pipe(hole(at=0.8), hole("x", at=0.2), floats=FOAM), ("foam", "bar 0"),
        ),
        (
            "opening.hole-large", "tip", pipe(hole(diameter=0.009)), pipe(hole(diameter=0.0085)),
            ("9 mm", "21.3 mm", "40 %"),
        ),
        # 0.688 in of socket, 0.5 in of it with pipe: from 19 to 31.75 mm both walls are there
        (
            "opening.socket-drilled", "should", pipe(hole(at=25 / 400)), pipe(hole(at=17 / 400)),
            ("bar 0", "both walls"),
        ),
        (
            "opening.socket-near", "tip", pipe(hole(at=(FACE + 20) / 400)),
            pipe(hole(at=(FACE + 21.4) / 400)), ("20 mm", "21.3 mm"),
        ),
        (
            "opening.socket-near", "should", pipe(hole(at=(FACE + 10) / 400)),
            pipe(hole(at=(FACE + 22) / 400)), ("10 mm",),
        ),
    ],
)  # fmt: skip
def test_holes_that_are_wrong_are_named_and_put_right(code, severity, drawn, silent, words):
    found = said(drawn, code)
    assert [finding.severity for finding in found] == [severity]
    assert found[0].step == "holes"
    assert found[0].about.kind == "opening"
    assert all(word in found[0].message for word in words)
    assert said(silent, code) == []
    cleared(drawn, code)


def test_holes_at_the_last_place_that_is_allowed_are_silent():
    near = pipe(hole(at=(FACE + OUTSIDE) / 400))
    assert said(near, "opening.socket-near") == []


def test_air_caught_level_speaks_with_its_numbers():
    """A side hole keeps more than a third of a bore of 0.37 m: 25 ml, worked out in test_air_pockets."""
    drawn = pipe(hole(face="+y"))
    (found,) = said(drawn, "air.pocket-trapped")
    level = review(drawn).survey.air.level
    assert found.severity == "should"
    assert millilitres(level.caught.volume) in found.message
    assert f"{level.lift * 1000:.0f} g" in found.message
    assert "bar 0" in found.message
    assert said(pipe(*CLEAR), "air.pocket-trapped") == []
    assert cleared(drawn, "air.pocket-trapped").survey.air.level.caught.volume < 1e-6


@pytest.mark.parametrize(
    ("rules", "severity"),
    [
        ({"air_tip": 100.0, "air_should": 200.0, "air_share": 1e6, "air_trim": 90.0}, None),
        ({"air_tip": 10.0, "air_should": 200.0, "air_share": 1e6, "air_trim": 90.0}, "tip"),
        ({"air_tip": 10.0, "air_should": 12.0, "air_share": 1e6, "air_trim": 90.0}, "should"),
        ({"air_tip": 100.0, "air_should": 200.0, "air_share": 1e6, "air_trim": 0.5}, "should"),
        ({"air_tip": 100.0, "air_should": 200.0, "air_share": 10.0, "air_trim": 90.0}, "should"),
    ],
)
def test_each_threshold_speaks_alone(rules, severity):
    """Some 14 ml of air towards the bow, on a pipe that floats with a piece of foam towards the stern."""
    foam = Float(id="f", name="f", bar="b0", at=0.3, foam="noodle", length=0.045, beside="+z")
    plug = Plug(id="s", name="s", bar="b0", at=0.2)
    drawn = pipe(hole(at=0.8, face="+y"), hole("v", at=0.15), floats=(foam,), plugs=(plug,))
    found = said(drawn.but(brief=Brief(thresholds=Thresholds(**rules))), "air.pocket-trapped")
    assert [finding.severity for finding in found] == ([severity] if severity else [])


def test_half_of_a_small_spare_buoyancy_is_too_much():
    """The same air beside a large spare buoyancy is a tip, and beside a small one should be let out."""
    foam = Float(id="f", name="f", bar="b0", at=0.3, foam="noodle", length=0.06)
    drawn = pipe(hole(at=0.7, face="+y"), floats=(foam,))
    report = review(drawn)
    lift, spare = report.survey.air.level.lift, report.survey.balance.spare
    for share, severity in ((lift / spare * 90, "should"), (lift / spare * 110, "tip")):
        rules = Thresholds(air_share=share, air_tip=5.0, air_should=1000.0, air_trim=90.0)
        found = said(drawn.but(brief=Brief(thresholds=rules)), "air.pocket-trapped")
        assert [finding.severity for finding in found] == [severity]


def test_air_caught_in_another_attitude_names_the_worst():
    """Holes in the middle let all out level; with the nose up half the pipe is above them."""
    drawn = pipe(*CLEAR)
    (found,) = said(drawn, "air.pocket-tilted")
    airs = review(drawn).survey.air.attitudes
    worst = max(airs[1:], key=lambda air: air.caught.volume)
    assert worst.attitude.name in found.message
    assert millilitres(worst.caught.volume) in found.message
    after = cleared(drawn, "air.pocket-tilted").survey.air
    assert all(air.caught.volume < 1e-6 for air in after.attitudes)


def test_only_the_attitudes_that_the_brief_names_are_judged():
    only_level = pipe(*CLEAR).but(brief=Brief(attitudes=("level",)))
    assert said(only_level, "air.pocket-tilted") == []
    assert [air.attitude.name for air in review(only_level).survey.air.attitudes if air.cared] == ["level"]
    no_level = pipe(hole(face="+y")).but(brief=Brief(attitudes=("upside down",)))
    assert said(no_level, "air.pocket-trapped") == []


def test_a_room_without_an_opening_is_named_and_drilled():
    """Two pipes that do not touch, holes in one only."""
    ends = [((0, 0, 0), (1, 0, 0)), ((0, 1, 0), (1, 1, 0))]
    run = worked.arrangement((0.0, 0.4), (0.0, 0.2), (0.0,), ends)
    drawn = worked.design(run.but(openings=CLEAR))
    (found,) = said(drawn, "air.void-closed")
    assert found.about.id == "b1"
    assert found.severity == "should"
    room = review(drawn).survey.air.voids[0].volume
    assert millilitres(room) in found.message
    assert said(cleared(drawn, "air.void-closed").design, "air.void-closed") == []


def test_a_room_that_plugs_close_is_a_tip_and_floods_without_them():
    drawn = pipe(hole(at=0.2), plugs=(Plug(id="s", name="s", bar="b0"),))
    (found,) = said(drawn, "air.void-plugged")
    assert found.severity == "tip"
    assert said(pipe(hole(at=0.2)), "air.void-plugged") == []
    assert [remedy.label for remedy in found.propose()] == ["Leave s out"]
    assert cleared(drawn, "air.void-plugged").survey.arrangement.plugs == ()


def test_no_opening_at_all_is_one_finding_not_many():
    codes = {finding.code for finding in review(pipe()).findings if finding.step == "holes"}
    assert codes == {"opening.none-flooded"}
    after = cleared(pipe(), "opening.none-flooded")
    assert after.survey.air.level.caught.volume < 1e-6


def test_a_frame_that_cannot_drain_is_named():
    """Vents on top alone: lifted out, nearly all stays in; a hole below lets it out."""
    drawn = portal(hole("v", at=0.3), hole("w", at=0.7))
    (found,) = said(drawn, "opening.drain-missing")
    assert found.severity == "should"
    survey = review(drawn).survey
    assert millilitres(survey.air.room) in found.message
    assert survey.air.water_left.volume > survey.air.room / 2
    assert cleared(drawn, "opening.drain-missing").survey.air.water_left.volume < survey.air.room / 2


def test_a_valley_that_cannot_drain_is_named():
    """One leg drains at its foot, the other keeps 30 ml below the bar."""
    drawn = portal(hole("v"), hole("low", bar="b1", at=0.2, face="+y"))
    (found,) = said(drawn, "opening.valley-undrained")
    assert found.severity == "tip"
    assert found.about.id == "b2"
    assert "bar 2" in found.message
    both = portal(
        hole("v"), hole("low", bar="b1", at=0.2, face="+y"), hole("l2", bar="b2", at=0.2, face="+y")
    )
    assert said(both, "opening.valley-undrained") == []
    cleared(drawn, "opening.valley-undrained")


def test_a_sealed_frame_is_told_what_it_gains_and_risks():
    """Lift by hand: all the room times the density; 3 m of water press with 0.3 kg on a square centimetre."""
    drawn = pipe(bores="sealed")
    (found,) = said(drawn, "sealing.leak-sinks")
    survey = review(drawn).survey
    seal = survey.air.seal
    assert seal.lift == pytest.approx(survey.air.room * survey.balance.density)
    flooded = review(pipe()).survey.balance.spare
    assert seal.leaked == pytest.approx(flooded, abs=1e-6)
    assert "0.3 kg" in found.message
    assert "3 m" in found.message
    assert f"sinks with {-seal.leaked * 1000:.0f} g" in found.message
    assert found.severity == "should"  # there is no thruster to bring it up
    assert said(pipe(), "sealing.leak-sinks") == []


def test_a_sealed_frame_may_be_flooded_instead_with_holes_and_the_lift_made_up_for():
    after = cleared(NEWT.arranged(bores="sealed", openings=()), "sealing.leak-sinks")
    assert after.survey.arrangement.bores == "flooded"
    assert after.survey.arrangement.openings
    assert after.musts == ()


def test_a_good_box_has_nothing_to_say_about_holes():
    corners = review(worked.design(worked.box()))
    holes = [f for f in corners.findings if f.code.startswith("air.") or f.code == "opening.valley-undrained"]
    assert holes == [] or all(f.code == "air.pocket-tilted" for f in holes)
    after = cleared(worked.design(worked.box(openings=())), "opening.none-flooded")
    assert [f for f in after.findings if f.step == "holes" and f.severity != "tip"] == []


def test_places_are_told_in_words():
    survey = review(portal(hole("low", bar="b1", at=0.2, face="+y"))).survey
    assert pocket_words(survey, survey.air.level.caught.pockets[0]).startswith("bar 0")
    nose_up = next(air for air in review(pipe(*CLEAR)).survey.air.attitudes if air.attitude.pitch > 0)
    assert pocket_words(review(pipe(*CLEAR)).survey, nose_up.caught.pockets[0]) == "bar 0 near j100"


def test_the_pool_card_says_how_to_hold_it():
    """A crown hole near the bow: with the nose up nearly all comes out, and no skin of water holds it."""
    air = review(pipe(hole(at=0.85), hole("d", at=0.85, face="-z"))).survey.air
    line = tilt_line(air)
    assert line is not None
    assert "nose up" in line
    assert air.tilt.volume + air.tilt.held < air.level.caught.volume + air.level.held
    assert tilt_line(review(pipe(bores="sealed")).survey.air) is None


def test_times_in_words():
    assert flow_words(None, "drains").startswith("hardly drains")
    assert flow_words(0.4, "fills") == "fills in about 1 second"


def test_any_number_about_air_says_where_it_comes_from():
    """Every number has a formula and a source; the caught air is that of the survey."""
    survey = review(pipe(*CLEAR)).survey
    told = {quantity.name: quantity for quantity in air_quantities(survey)}
    worst = next(air for air in survey.air.attitudes if air.attitude.name == "nose up 30")
    assert told["air caught, nose up 30"].text.startswith(millilitres(worst.caught.volume))
    assert told["time to flood"].text == flow_words(survey.air.flooding.seconds, "fills")
    assert all(quantity.formula and quantity.source for quantity in told.values())
    assert "76 % at 3 m" not in told["air caught, nose up 30"].spread  # 101.3 / (101.3 + 29.3) = 77.6 %
    assert "78 % at 3 m" in told["air caught, nose up 30"].spread
    sealed = {quantity.name for quantity in air_quantities(review(pipe(bores="sealed")).survey)}
    assert "lift of the sealed pipes" in sealed
    assert air_quantities(review(pipe()).survey) == ()
