"""Where the numbers on thrust, motion and power come from."""

from collections.abc import Iterator

from model.coach.sentences import trim_words
from model.motion.motion import Motion
from model.motion.span import Span
from model.motion.straight import Run
from model.power.stall import fate_words, stall_of
from model.quantity import Quantity
from model.runs import run_time
from model.survey import Survey, motion_of
from model.thrust.drives import Drive
from model.thrust.propeller import ideal_efficiency
from model.water.balance import GRAVITY

DRAG = (
    "cross-flow principle (after Hoerner); cylinder tables of the Aeronautical Engineer's Data Book and DNV"
)
UNSURE = "drag of pipes 25 % less to 10 % more, pull by its source, B-series for how it falls, mass 10 %"
LEVEL = ("ahead", "astern")
SOURCES = {
    "own pull test": "your own pull test",
    "stock": "the stock's value for this kind of motor",
    "shaft power": "momentum theory with a figure of merit of 0.4, from the shaft power",
    "nothing": "nobody has measured it",
}


def motion_quantities(survey: Survey) -> tuple[Quantity, ...]:
    """What drives the vehicle, how it moves, what it draws; what no thruster makes is left out."""
    if not survey.drives:
        return ()
    moving = motion_of(survey)
    return (
        *(_pull(drive) for drive in survey.drives),
        *_runs(survey, moving),
        *_turning(moving),
        *_tilts(moving),
        *_course(survey),
        *_power(survey),
    )


def _pull(drive: Drive) -> Quantity:
    percent = round(100 * drive.spread)
    astern = f"{drive.astern:.2f} N astern" if "astern" in drive.senses else "none astern"
    return Quantity(
        f"pull of {drive.name}",
        f"{drive.ahead:.2f} N ahead, {astern}",
        "pull of its test, times the square of its back voltage over the test's, less what its stream loses",
        (
            ("pull of the test", f"{drive.rated.ahead:.2f} N at {drive.rated.volts:g} V"),
            ("volts that arrive", f"{drive.volts:.1f} V"),
            ("pull is gone at", f"{drive.ahead_gone:.2f} m/s"),
            *((("astern", drive.one_way),) if drive.one_way else ()),
        ),
        SOURCES[drive.rated.source],
        f"{percent} % either way ahead",
    )


def _runs(survey: Survey, moving: Motion) -> Iterator[Quantity]:
    runs = {"ahead": moving.ahead, "astern": moving.astern, "up": moving.up, "down": moving.down}
    for way, run in runs.items():
        if run:
            yield _top(way, run, survey)
    if moving.laden:
        yield _top("up with the load", moving.laden, survey)
    if moving.ahead:
        yield _start(moving.ahead)
        yield _stop(moving.ahead)


def _top(way: str, run: Run, survey: Survey) -> Quantity:
    push = run.push
    inputs = [
        (f"pull held still{'' if way in LEVEL else ', with what floats it up'}", f"{push.still:.2f} N"),
        ("mass with the water that moves along", f"{push.mass:.2f} kg"),
    ]
    if way == "ahead" and push.top > 0:
        inputs.append(("of the power, at best", f"{_efficiency(survey, push.top):.0%} drives it"))
    return Quantity(
        f"top speed {way}",
        run.top.text("m/s"),
        "where the pull, which falls with speed, is no more than the drag of all parts and the tether",
        tuple(inputs),
        DRAG,
        UNSURE,
    )


def _efficiency(survey: Survey, speed: float) -> float:
    """Momentum theory's best efficiency at a speed [m/s] of the thruster that pulls most."""
    drive = max(survey.drives, key=lambda drive: drive.ahead)
    return (
        ideal_efficiency(drive.ahead, speed, drive.diameter, survey.balance.density) if drive.ahead else 0.0
    )


def _start(run: Run) -> Quantity:
    return Quantity(
        "time to 90 % of top speed ahead",
        run.time.text("s"),
        "mass times change of speed is pull less drag, solved in closed form",
        (("distance meanwhile", run.distance.text("m")),),
        "textbook mechanics; added mass: DNV-RP-C205",
        UNSURE,
    )


def _stop(run: Run) -> Quantity:
    braked = run.stop.text("m") if run.stop else "the motors cannot brake"
    return Quantity(
        "distance to stop from top speed ahead",
        braked,
        "full astern against what the mass carries on, helped by the drag",
        (("rolling out to a tenth with the motors off", run.coast.text("m")),),
        "textbook mechanics",
        UNSURE,
    )


def _turning(moving: Motion) -> Iterator[Quantity]:
    turn = moving.slower_turn
    if turn:
        yield Quantity(
            "quarter turn on the spot",
            turn.quarter.text("s"),
            "inertia times change of rate is the thrusters' moment less the drag of each strip at its speed",
            (
                ("rate in the end", turn.rate.text("deg/s", 0)),
                ("inertia with water", f"{turn.push.mass:.3f} kg m2"),
                ("off its spot at its end", moving.drift.text("m") if moving.drift else "it slides away"),
            ),
            DRAG,
            UNSURE,
        )


def _tilts(moving: Motion) -> Iterator[Quantity]:
    steady = moving.body.balance.mass * GRAVITY * moving.body.balance.bg
    if moving.driven:
        yield _tilt("pitch under full thrust ahead", moving.driven.pitch, steady)
    if moving.climbing:
        yield _tilt("pitch when it climbs at full thrust", moving.climbing.pitch, steady)
    if moving.veer:
        unlike = f"{UNSURE}; two motors of one kind differ by 10 % (common practice)"
        yield Quantity(
            "pull to one side under full thrust",
            side_words(moving.veer),
            "the couple of pull and drag is held by the drag of turning at speed",
            (("top speed", moving.ahead.top.text("m/s")),) if moving.ahead else (),
            DRAG,
            f"{moving.veer.sides('to port', 'to starboard', 'degrees')}: {unlike}",
        )
    if moving.hand_roll:
        causes = "torque 0.09 to 0.14, pull by its source, BG 3 mm either way"
        yield Quantity(
            "roll from the propellers' torque",
            trim_words(0.0, moving.hand_roll.value),
            "what the propellers of both hands leave of their torque, against weight times BG",
            (("weight times BG", f"{steady:.2f} N·m"),),
            "B-series: torque is 0.115 of pull times diameter at rest",
            f"{moving.hand_roll.sides('port side up', 'starboard side up', 'degrees', 1)}: {causes}",
        )


def side_words(veer: Span) -> str:
    """How far it turns in each metre, in words.

    >>> side_words(Span(-12.4, -20.0, -5.0)), side_words(Span(0.2, -8.0, 8.0))
    ('12 degrees to starboard in each metre', 'straight, give or take 8 degrees in each metre')
    """
    if abs(veer.value) < 1:
        most = max(abs(veer.low), abs(veer.high))
        return f"straight, give or take {most:.0f} degrees in each metre"
    side = "port" if veer.value > 0 else "starboard"
    return f"{abs(veer.value):.0f} degrees to {side} in each metre"


def tilt_text(tilt: Span | None) -> str:
    """A pitch in words; None is more than rights it.

    >>> tilt_text(Span(-3.6, -4.3, -2.2)), tilt_text(None)
    ('stern up 3.6 degrees', 'it turns over')
    """
    if tilt is None:
        return "it turns over"
    if abs(tilt.value) < 0.05:
        return "level"
    return f"{'bow' if tilt.value > 0 else 'stern'} up {abs(tilt.value):.1f} degrees"


def _tilt(name: str, tilt: Span | None, steady: float) -> Quantity:
    spread = f"{tilt.sides('bow up', 'stern up', 'degrees', 1)}: {UNSURE}; BG 3 mm either way" if tilt else ""
    return Quantity(
        name,
        tilt_text(tilt),
        "the couple of the thrust line and the drag, against weight times BG times the sine of the tilt",
        (("weight times BG", f"{steady:.2f} N·m"),),
        "textbook statics; righting moment of a submerged body",
        spread,
    )


def _course(survey: Survey) -> Iterator[Quantity]:
    result = run_time(survey)
    if result.legs:
        yield Quantity(
            "time over the course",
            result.total.text("s", 0) if result.total else "not with these thrusters",
            "each leg from rest to rest, at full thrust and braked",
            tuple((leg.words, leg.time.text("s", 1) if leg.time else leg.problem) for leg in result.legs),
            "the same equations as the top speeds",
            "a pilot who looks and aims takes longer: time yours",
        )


def _power(survey: Survey) -> Iterator[Quantity]:
    wires = survey.wiring
    if wires is None or not wires.loads:
        return
    names = {drive.thruster: drive.name for drive in survey.drives}
    guessed = any(not branch.curve.measured for branch in wires.supply.branches)
    spread = "currents are worked out from the pulls: measure them" if guessed else "currents as measured"
    yield Quantity(
        "current with all motors on",
        f"{wires.amps:.1f} A",
        "battery, lead, fuses, plugs, tether and motor curves solved together, propellers held still",
        tuple((names[load.thruster], f"{load.volts:.1f} V, {load.amps:.1f} A") for load in wires.loads),
        "Ohm and Kirchhoff; copper: IEC 60028; brushed motor: textbook",
        spread,
    )
    for load in wires.loads:
        held = stall_of(survey.arrangement, wires, load.thruster)
        yield Quantity(
            f"current of {names[load.thruster]} held fast",
            f"{held.amps:.1f} A",
            "what its winding and the way to it let through when the propeller cannot turn",
            (("volts at it", f"{held.volts:.1f} V"), ("fuse", fate_words(held))),
            "Ohm; a fuse below this current is wanted: common practice, no source",
            spread,
        )
    if wires.minutes is not None:
        battery = wires.power.battery
        yield Quantity(
            "minutes with all motors on",
            f"{wires.minutes:.0f} min",
            "capacity times the share that can be used, over the current",
            (("capacity", f"{battery.capacity:g} Ah"), ("usable", f"{battery.usable:.0%}")),
            "common practice, no source",
            spread,
        )
