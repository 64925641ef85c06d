"""Findings about the air and the water in the pipes, and about sealing them."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding, Severity
from model.coach.remedies import air as remedy
from model.coach.say import WHOLE, say
from model.coach.sentences import grams
from model.design import COMPARISON_SLACK
from model.solve.hole_words import millilitres, pocket_words
from model.survey import Survey
from model.water.air.air import AttitudeAir
from model.water.air.pockets import Pocket
from model.water.air.seal import pressure
from model.water.balance import GRAVITY

CLEAR = 1e-6
"""[m3] Less air than this is none: what holes are asked to leave."""
DEEP = 3.0
"""[m] The depth that sentences speak of: the floor of a deep school pool (common practice, no source)."""


def trapped_air(survey: Survey) -> Iterator[Finding]:
    """Air that stays when the vehicle lies level, where it lifts and leaks out while it drives."""
    air = survey.air.level
    if air is None or not air.cared or not survey.air.network.mouths:
        return
    severity = _severity(survey, air)
    if severity is None:
        return
    least, most = survey.air.spread
    yield say(
        "air.pocket-trapped",
        severity,
        "holes",
        WHOLE,
        partial(remedy.let_out, survey),
        air=millilitres(air.caught.volume),
        where=pocket_words(survey, _largest(air)),
        lift=grams(air.lift),
        turned=f"{air.turned:.1f}",
        least=millilitres(least),
        most=millilitres(most),
    )


def tilted_air(survey: Survey) -> Iterator[Finding]:
    """Air that stays when it goes in, or is held, in the worst of the other attitudes."""
    others = [air for air in survey.air.attitudes[1:] if air.cared]
    if not others or not survey.air.network.mouths:
        return
    worst = max(others, key=lambda air: air.caught.volume)
    limits, amount = survey.design.brief.thresholds, worst.caught.volume * 1e6
    if amount <= limits.air_tip + COMPARISON_SLACK:
        return
    yield say(
        "air.pocket-tilted",
        "should" if amount > limits.air_should + COMPARISON_SLACK else "tip",
        "holes",
        WHOLE,
        partial(remedy.let_out, survey),
        attitude=worst.attitude.name,
        air=millilitres(worst.caught.volume),
        where=pocket_words(survey, _largest(worst)),
        lift=grams(worst.lift),
    )


def _severity(survey: Survey, air: AttitudeAir) -> Severity | None:
    limits, spare = survey.design.brief.thresholds, survey.balance.spare
    amount = air.caught.volume * 1e6
    if air.caught.volume < CLEAR:
        return None
    much = amount > limits.air_should + COMPARISON_SLACK
    beside_spare = spare > 0 and air.lift > spare * limits.air_share / 100
    if much or beside_spare or air.turned > limits.air_trim + COMPARISON_SLACK:
        return "should"
    return "tip" if amount > limits.air_tip + COMPARISON_SLACK else None


def _largest(air: AttitudeAir) -> Pocket:
    return next(pocket for pocket in air.caught.pockets if not pocket.closed)


def closed_voids(survey: Survey) -> Iterator[Finding]:
    """A room without any opening, in a frame that floods: it floats until it leaks.

    Of several that begin in one bar the first is told; the next comes when it is put right.
    """
    if not survey.air.network.mouths:
        return  # another finding says that there is no opening at all
    plugged = {plug.bar for plug in survey.arrangement.plugs}
    told: set[About] = set()
    for void in survey.air.voids:
        first = void.stretches[0]
        about = About("bar", first.bar) if first.bar else About("joint", first.joint)
        if about in told:
            continue
        told.add(about)
        meant = any(stretch.bar in plugged for stretch in void.stretches)
        values = {
            "where": pocket_words(survey, void),
            "air": millilitres(void.volume),
            "lift": grams(void.volume * survey.balance.density),
        }
        if meant:
            yield say(
                "air.void-plugged", "tip", "holes", about, partial(remedy.unplug, survey, void), **values
            )
        else:
            yield say("air.void-closed", "should", "holes", about, partial(remedy.let_out, survey), **values)


def water_left(survey: Survey) -> Iterator[Finding]:
    """Water that stays in the pipes when the vehicle is lifted out level."""
    air, limits = survey.air, survey.design.brief.thresholds
    if not air.attitudes or not air.network.mouths:
        return
    valleys = [pocket for pocket in air.water_left.pockets if not pocket.closed]
    if not valleys:
        return
    values = {
        "water": millilitres(air.water_left.volume),
        "room": millilitres(air.room),
        "where": pocket_words(survey, valleys[0]),
    }
    if air.water_left.volume >= air.room / 2:
        yield say("opening.drain-missing", "should", "holes", WHOLE, partial(remedy.drain, survey), **values)
    elif valleys[0].volume * 1e6 > limits.water_left + COMPARISON_SLACK:
        about = About("bar", valleys[0].stretches[0].bar)
        yield say("opening.valley-undrained", "tip", "holes", about, partial(remedy.drain, survey), **values)


def sealed_frame(survey: Survey) -> Iterator[Finding]:
    """What sealing gains, what presses on it, and what a leak does: said before it is glued."""
    seal = survey.air.seal
    if seal is None or not survey.frame.bars:
        return
    lost = seal.leaked < 0 and -seal.leaked > survey.thrust.up / GRAVITY
    deep = pressure(DEEP, survey.balance.density)
    yield say(
        "sealing.leak-sinks",
        "should" if lost else "tip",
        "holes",
        WHOLE,
        partial(remedy.flood, survey),
        lift=grams(seal.lift),
        depth=f"{DEEP:g} m",
        press=f"{deep.per_cm2:.1f} kg",
        leaked=f"{'sinks' if seal.leaked < 0 else 'still floats'} with {grams(seal.leaked)}",
        rescue=", more than the thrusters can lift" if lost else "",
    )
