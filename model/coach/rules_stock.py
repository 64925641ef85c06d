"""Findings about the stock: measurements, what is in the box, and sticks too short to hold."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding
from model.coach.remedies import stock as remedy
from model.coach.say import WHOLE, say
from model.coach.sentences import length, listed
from model.design import COMPARISON_SLACK, slips
from model.money.sawing import LastCut, last_cuts
from model.survey import Survey
from model.water.air.sockets import socket_of

NAMES_SHOWN = 4


def wrong_measurements(survey: Survey) -> Iterator[Finding]:
    """Measurements of one of the team's own parts that cannot be right."""
    reasons: dict[tuple[str, str], list[str]] = {}
    for kind, id, why in slips(survey.design.stock):
        reasons.setdefault((kind, id), []).append(why)
    for (kind, id), whys in reasons.items():
        propose = partial(remedy.forget, kind, id)
        sentence = "; ".join(whys)
        sentence = sentence[:1].upper() + sentence[1:]
        yield say("stock.measure-wrong", "should", "stock", About(kind, id), propose, why=sentence)


def deep_pushes(survey: Survey) -> Iterator[Finding]:
    """A push-in depth that no socket of the frame has room for; told once for each pipe."""
    unit = survey.design.units
    told = {id for kind, id, _ in slips(survey.design.stock) if kind == "pipe"}
    joints = survey.frame.joints
    ends = ((bar, joints[joint]) for bar in survey.frame.bars.values() for joint in bar.joints)
    for bar, joint in ends:
        socket = socket_of(joint, bar.id)
        if joint.match is None or socket is None or bar.pipe.id in told:
            continue
        if bar.pipe.insertion > socket.depth + COMPARISON_SLACK:
            told.add(bar.pipe.id)
            values = {
                "pipe": bar.pipe.name,
                "push": length(bar.pipe.insertion, unit),
                "fitting": joint.match.fitting.name,
                "depth": length(socket.depth, unit),
            }
            propose = partial(remedy.push_less, survey, bar.pipe.id, socket.depth)
            yield say("stock.push-deep", "should", "stock", About("pipe", bar.pipe.id), propose, **values)


def short_box(survey: Survey) -> Iterator[Finding]:
    """Too few pieces in the box, where nothing more can be bought."""
    if not survey.design.stock.on_hand.only or not survey.in_box.short:
        return
    unit = survey.design.units
    missing = [f"{item.missing} x {item.name}" for item in survey.in_box.fittings if item.missing]
    names = {pipe.id: pipe.name for pipe in survey.design.stock.pipes}
    for pipe, cuts in survey.in_box.to_buy.items():
        if cuts:
            missing.append(f"{length(sum(cuts), unit)} of {names[pipe]} in {len(cuts)} pieces")
    shown = missing[:NAMES_SHOWN] + (["more"] if len(missing) > NAMES_SHOWN else [])
    propose = partial(remedy.fill_box, survey)
    yield say("stock.box-short", "must", "stock", WHOLE, propose, missing=listed(shown))


def short_sticks(survey: Survey) -> Iterator[Finding]:
    """A stick that is too short to hold when its last piece is sawn off."""
    least = survey.design.brief.thresholds.hold_least
    cuts = last_cuts(survey.design, survey.frame, survey.in_box)
    short = [cut for cut in cuts if cut.held < least - COMPARISON_SLACK]
    for pipe in dict.fromkeys(cut.pipe for cut in short):
        worst = min((cut for cut in short if cut.pipe == pipe), key=lambda cut: cut.held)
        yield _short_stick(survey, worst, length(least, survey.design.units))


def _short_stick(survey: Survey, cut: LastCut, least: str) -> Finding:
    unit = survey.design.units
    values = {
        "piece": length(cut.piece, unit),
        "stick": length(cut.stick, unit),
        "held": length(cut.held, unit),
        "least": least,
    }
    propose = partial(remedy.longer_stick, survey, cut)
    return say("stock.stick-short", "should", "stock", About("pipe", cut.pipe), propose, **values)
