"""Fuses against what runs through them, with the propellers free and with one held fast.

A wiring that loses nothing but in its fuses (0.1 V at their rating): motors of 1.5 A at 12 V, 6 A held fast.
"""

import pytest

from model.coach.finding import About
from model.design import Battery, Branch, Power, Tether
from model.explain_motion import motion_quantities
from model.power.diagram import wiring_lines
from model.power.stall import stall_of, stall_words
from model.review import after_remedy, proven_remedy, review
from model.survey import survey
from tests.model.thrust_cases import MOTOR, SETTLED, SUPPLIES, port, starboard, swimmer

LOSSLESS = SETTLED.but(
    battery=Battery(resistance=0.0), lead_length=0.0, lead_area=2.5, length=0.0, plugs=0, contact=0.0,
    main_fuse=None,
)  # fmt: skip
CODES = (
    "power.fuse-blows",
    "power.fuse-small",
    "power.fuse-large",
    "power.fuse-stalled",
    "power.fuse-missing",
)


def pair(fuse, motor=MOTOR, **power):
    """Two motors, each with its own fuse or none."""
    branch = Branch(fuse=fuse)
    thrusters = (port(branch=branch), starboard(branch=branch))
    return swimmer(*thrusters, power=LOSSLESS.but(**power)).but(supplies=SUPPLIES.but(motors=(motor,)))


def heard(design):
    """What the coach says of fuses: code, severity and thruster."""
    return {
        (f.code, f.severity, f.about.id)
        for f in review(design).findings
        if f.code in CODES and f.about.id != "starboard"
    }


def said(design, code):
    return next(f for f in review(design).findings if f.code == code)


@pytest.mark.parametrize(
    ("fuse", "main", "found"),
    [
        (1.0, None, {("power.fuse-blows", "must", "port")}),
        (1.4, None, {("power.fuse-blows", "must", "port")}),
        (1.6, None, {("power.fuse-small", "should", "port")}),  # 1.25 x 1.5 A is 1.9 A
        (2.0, None, set()),
        (3.0, None, set()),
        (5.0, None, set()),  # 5 A blow with 6 A
        (7.5, None, {("power.fuse-stalled", "tip", "port")}),  # 0.75 mm2 may have 9.3 A
        (10.0, None, {("power.fuse-large", "must", "port")}),
        (3.0, 2.0, {("power.fuse-blows", "must", "")}),  # 3 A run through it
        (3.0, 3.2, {("power.fuse-small", "should", "")}),
        (3.0, 5.0, set()),
        (None, 5.0, set()),  # 7.5 A with one held fast
        (None, 7.5, {("power.fuse-stalled", "tip", "port")}),
    ],
)
def test_when_the_coach_speaks_of_a_fuse(fuse, main, found):
    assert heard(pair(fuse, main_fuse=main)) == found


@pytest.mark.parametrize(
    ("fuse", "wires", "bare"),
    [
        (3.0, {"lead_length": 1.0}, "the lead from the battery"),
        (3.0, {"length": 10.0, "feed": "one pair"}, "the pair in the tether"),
        (3.0, {"length": 10.0}, None),  # each pair has its fuse at the control box
        (3.0, {"lead_length": 1.0, "main_fuse": 5.0}, None),
        (None, {"lead_length": 1.0}, None),  # that no motor has a fuse is told of each
        (3.0, {}, None),  # no wire between the battery and the fuses
    ],
)
def test_wires_before_the_fuses_of_the_motors_need_a_main_fuse(fuse, wires, bare):
    report = review(pair(fuse, **wires))
    found = [f for f in report.findings if f.code == "power.main-missing"]
    assert [f.severity for f in found] == ["must"] * (bare is not None)
    if bare:
        assert f"come only behind {bare}:" in found[0].message
        remedy = proven_remedy(report, found[0])
        assert remedy.label == "Fit a main fuse of 5 A"  # two of 1.5 A, a quarter more: over 3 A
        assert after_remedy(report.design, remedy).design.arrangement.power.main_fuse == 5.0


def test_a_fuse_under_what_runs_through_it_blows_and_the_sentence_says_so():
    message = said(pair(1.0), "power.fuse-blows").message
    assert message == (
        "The fuse of port motor is 1 A, and 1.5 A run through it with all motors on: it blows and the motor "
        "stops. A fuse of 2 A carries that and still protects its wire."
    )
    main = said(pair(3.0, main_fuse=2.0), "power.fuse-blows").message
    assert (
        "The main fuse is 2 A, and 2.9 A run through it with all motors on: it blows and all motors stop."
        in main
    )


@pytest.mark.parametrize(("limit", "volts"), [(None, 12), (12.0, 12), (9.0, 9)])
def test_what_a_battery_of_too_many_volts_sends_is_no_reason_for_a_larger_fuse(limit, volts):
    """24 V on motors of 12 V: the current grows, and so does what burns the motors."""
    design = pair(3.0, main_fuse=5.0, battery=Battery(volts=24.0, resistance=0.0))
    report = review(design.but(brief=design.brief.but(supply_limit=limit)))
    found = next(f for f in report.findings if f.code == "power.fuse-blows" and f.about.id == "")
    assert found.message.endswith(f"A battery of {volts} V sends less through it.")
    remedy = proven_remedy(report, found)
    assert remedy.label == f"Use a battery of {volts} V"
    after = after_remedy(report.design, remedy)
    assert [item.branch.fuse for item in after.design.arrangement.thrusters] == [3.0, 3.0]
    assert not [f for f in after.findings if f.code in (*CODES, "power.supply-over", "power.motor-over")]


def test_a_tether_for_which_no_wire_is_thick_enough_is_made_shorter():
    """Half a kilometre of 6 mm2: 3 ohms, 1.5 A and more on 12 V; 10 m of 0.75 mm2 lose 0.7 V."""
    report = review(pair(3.0, main_fuse=5.0, length=500.0))
    found = next(f for f in report.findings if f.code == "power.volts-lost")
    remedy = proven_remedy(report, found)
    assert remedy.label == "Make the tether 10 m long"
    assert after_remedy(report.design, remedy).design.arrangement.power.length == 10.0


def test_a_tether_that_hangs_further_than_anything_can_carry_hangs_less():
    """Half a kilometre of it weighs 5 kg in water: no longer cable puts that right, but 5 of its 10 m do."""
    tether = Tether(
        id="c", name="cable", bar="b5", diameter=0.008, hanging=500.0, mass_per_m=0.06,
        mass_in_water_per_m=0.01,
    )  # fmt: skip
    design = pair(3.0, main_fuse=5.0, length=10.0)
    report = review(design.arranged(tether=tether))
    found = next(f for f in report.findings if f.code == "power.tether-short")
    remedy = proven_remedy(report, found)
    assert remedy.label.startswith("Let 5 m of it hang in the water")  # and the foam is cut to suit
    assert after_remedy(report.design, remedy).design.arrangement.tether.hanging == 5.0


def test_volts_that_are_lost_and_still_too_many_are_not_told_as_pull_that_is_left():
    thin = pair(3.0, main_fuse=5.0, length=20.0, core_area=0.22, battery=Battery(volts=24.0))
    message = said(thin, "power.volts-lost").message
    assert "though that is still more than in its test" in message
    assert "% of its pull" not in message


def test_a_current_that_is_worked_out_does_not_make_a_must():
    """From 3 N by momentum theory, with a figure of merit and a motor that nobody measured."""
    guessed = MOTOR.but(amps=None, stalled_amps=None)
    found = said(pair(1.0, motor=guessed), "power.fuse-blows")
    assert found.severity == "should"
    assert "worked out from the pull, so measure it" in found.message


def test_a_remedy_is_the_next_fuse_that_does_both():
    report = review(pair(1.0))
    remedy = proven_remedy(report, said(pair(1.0), "power.fuse-blows"))
    assert remedy.label == "Fit a fuse of 2 A for port motor"
    after = after_remedy(report.design, remedy)
    assert [item.branch.fuse for item in after.design.arrangement.thrusters] == [2.0, 1.0]
    main = review(pair(3.0, main_fuse=2.0))
    remedy = proven_remedy(main, said(main.design, "power.fuse-blows"))
    assert remedy.label == "Fit a main fuse of 5 A"
    assert after_remedy(main.design, remedy).design.arrangement.power.main_fuse == 5.0


def test_where_no_fuse_does_both_it_says_so_and_takes_thicker_cores():
    """5.5 A need 6.9 A: 7.5 A; cores of 0.5 mm2 may have 6.8 A at most, of 0.75 mm2 9.3 A."""
    strong = MOTOR.but(amps=5.5, stalled_amps=22.0)
    design = pair(5.0, motor=strong, core_area=0.5)
    report = review(design)
    found = next(f for f in report.findings if f.code == "power.fuse-blows")
    assert (
        "No fuse on sale carries that and still protects its wire (6.8 A at most): it needs thicker wire."
        in (found.message)
    )
    remedy = proven_remedy(report, found)
    after = after_remedy(design, remedy)
    assert "thicker" in remedy.label
    assert after.design.arrangement.power.core_area == 0.75
    assert {item.branch.fuse for item in after.design.arrangement.thrusters} == {7.5}
    assert not [f for f in after.findings if f.code in CODES]


def test_a_lead_that_is_too_thin_for_its_main_fuse_is_made_thicker():
    """Two of 5.5 A are 11 A and need 13.8 A: 15 A; a lead of 1 mm2 may have 12 A."""
    strong = MOTOR.but(amps=5.5, stalled_amps=22.0)
    design = pair(7.5, motor=strong, core_area=0.75, main_fuse=10.0, lead_area=1.0)
    report = review(design)
    found = next(f for f in report.findings if f.code == "power.fuse-blows")
    assert found.about == About("power")
    after = after_remedy(design, proven_remedy(report, found))
    assert (after.design.arrangement.power.lead_area, after.design.arrangement.power.main_fuse) == (1.5, 15.0)


def test_a_fuse_is_never_taken_out_where_none_suits():
    from model.coach.remedies.power import fused

    design = pair(5.0, motor=MOTOR.but(amps=5.5, stalled_amps=22.0), core_area=0.5)
    assert {item.branch.fuse for item in fused(design).arrangement.thrusters} == {5.0}


@pytest.mark.parametrize(
    ("fuse", "main", "amps", "fate", "words"),
    [
        (2.0, None, 2.0, "blows", "its fuse of 2 A blows and spares the motor"),
        (3.0, 7.5, 3.0, "blows", "its fuse of 3 A blows and spares the motor"),
        (5.0, None, 5.0, "slow", "its fuse of 5 A may take minutes to blow: switch off at once"),
        (7.5, None, 7.5, "holds",
         "its fuse of 7.5 A does not blow: switch off at once, or the motor burns out"),
        (None, 5.0, 5.0, "blows", "the main fuse of 5 A blows and all motors stop"),
        (None, 10.0, 10.0, "holds",
         "the main fuse of 10 A does not blow: switch off at once, or the motor burns out"),
        (None, None, None, "holds", "no fuse is there to blow: switch off at once, or the motor burns out"),
    ],
)  # fmt: skip
def test_what_a_propeller_that_is_held_fast_does_to_its_fuse(fuse, main, amps, fate, words):
    """6 A over the rating: 1.35 blows a blade fuse within ten minutes (ISO 8820-3, from memory)."""
    wires = survey(pair(fuse, main_fuse=main)).wiring
    found = stall_of(survey(pair(fuse, main_fuse=main)).arrangement, wires, "port")
    assert found.amps == pytest.approx(6.0, rel=0.03)
    assert (found.fuse, found.fate) == (amps, fate)
    assert stall_words(found).endswith(words)


def test_a_main_fuse_blows_by_what_all_motors_draw():
    """6 A held fast and 1.5 A running: 7.5 A, 1.5 times a main fuse of 5 A; 6 A alone are 1.2 times."""
    design = pair(None, main_fuse=5.0)
    found = stall_of(design.arrangement, survey(design).wiring, "port")
    assert (found.main, found.fate) == (True, "blows")


def test_the_wiring_in_words_and_the_origins_of_numbers_tell_of_it():
    design = pair(3.0)
    found = survey(design)
    lines = wiring_lines(found.arrangement, found.wiring, "mm")
    assert len(lines) == len({*lines})
    assert any(
        line.startswith("port motor held fast: 11.8 V and 5.9 A, its fuse of 3 A blows") for line in lines
    )
    told = {one.name: one for one in motion_quantities(found)}
    assert told["current of port motor held fast"].text == "5.9 A"
    assert ("fuse", "its fuse of 3 A blows and spares the motor") in told[
        "current of port motor held fast"
    ].inputs


def test_power_without_thrusters_has_no_fuse_to_speak_of():
    assert heard(swimmer(power=Power())) == set()
