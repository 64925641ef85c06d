"""Findings about thrusters, floats and money."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding, Step
from model.coach.remedies import floats as float_remedy
from model.coach.remedies import thrusters as thruster_remedy
from model.coach.remedies.money import cheaper
from model.coach.say import WHOLE, say
from model.coach.sentences import length, listed, money
from model.design import COMPARISON_SLACK, Float, Move
from model.frame.layout import BarPlace
from model.survey import Survey
from model.thrust.moves import NEEDS, Way, powerless, stuck

MOVE_WORDS: dict[Move, str] = {
    "ahead": "go ahead",
    "astern": "go astern",
    "up": "climb",
    "down": "dive",
    "turn": "turn",
    "sideways": "go sideways",
}
WAY_WORDS: dict[Way, str] = {
    "to port": "pushes it to port",
    "to starboard": "pushes it to starboard",
    "turn to port": "turns it to port",
    "turn to starboard": "turns it to starboard",
}
"""What a thruster does towards one side."""


def missing_mounts(survey: Survey) -> Iterator[Finding]:
    """A thruster that nothing holds."""
    for thruster in survey.arrangement.thrusters:
        if thruster.mount is None:
            about = About("thruster", thruster.id)
            propose = partial(thruster_remedy.hold, survey, thruster)
            yield say("thruster.mount-missing", "must", "thrusters", about, propose, thruster=thruster.name)


def missing_moves(survey: Survey) -> Iterator[Finding]:
    """A direction that the task needs and no thruster serves, and the switches that are to blame."""
    for move in survey.design.brief.moves:
        lacks = survey.thrust.lacks(move)
        if not lacks:
            continue
        held = stuck(survey.drives, survey.balance.g, lacks)
        propose = partial(thruster_remedy.drive, survey, move, tuple(drive.thruster for drive in held))
        values = {
            "move": MOVE_WORDS[move],
            "lacks": WAY_WORDS[lacks[0]] if len(lacks) < len(NEEDS[move]) else "does that",
            "why": _switches([drive.name for drive in held]) or _idle(survey, lacks),
        }
        step: Step = "wires" if held else "thrusters"
        yield say("thruster.move-missing", "must", step, About("move", move), propose, **values)


def _switches(names: list[str]) -> str:
    """The switches that only turn something on and off, in words; nothing where there are none."""
    if not names:
        return ""
    switches = "its switch only turns it" if len(names) == 1 else "their switches only turn them"
    return f": {listed(names)} would, but {switches} on and off"


def _idle(survey: Survey, lacks: tuple[Way, ...]) -> str:
    """The motors that push the right way and pull nothing then, in words; nothing where there are none."""
    idle = powerless(survey.drives, survey.balance.g, lacks)
    names, several = [drive.name for drive in idle], len(idle) > 1
    if not idle:
        return ""
    if all(drive.rated.source == "nothing" for drive in idle):
        return f": nobody has measured how hard {listed(names)} {'pull' if several else 'pulls'}"
    return f": {listed(names)} would, but {'pull' if several else 'pulls'} nothing that way"


def long_floats(survey: Survey) -> Iterator[Finding]:
    """A float longer than the pipe that shows on its bar, or past its end."""
    unit = survey.design.units
    for piece in survey.arrangement.floats:
        bar = survey.frame.bars[piece.bar]
        about = About("float", piece.id)
        values = {"item": piece.name, "bar": bar.name}
        if piece.length > bar.exposed + COMPARISON_SLACK:
            values |= {"length": length(piece.length, unit), "room": length(max(0.0, bar.exposed), unit)}
            propose = partial(float_remedy.shorten, survey, piece)
            yield say("float.bar-short", "must", "floats", about, propose, **values)
        elif (over := reach_past(piece, bar)) > COMPARISON_SLACK:
            propose = partial(float_remedy.slide_in, survey, piece)
            yield say("float.end-over", "must", "floats", about, propose, **values, over=length(over, unit))


def heavy_foam(survey: Survey) -> Iterator[Finding]:
    """Foam in use that is heavier than the water: it sinks instead of lifting."""
    foams = {foam.id: foam for foam in survey.design.supplies.foams}
    used = {piece.foam: piece for piece in reversed(survey.arrangement.floats)}
    for id, first in used.items():
        if foams[id].density >= survey.balance.density:
            propose = partial(float_remedy.lighter_foam, survey, id)
            values = {
                "foam": foams[id].name,
                "density": f"{foams[id].density:.0f} kg/m3",
                "water": f"{survey.balance.density:.0f} kg/m3",
            }
            yield say("float.foam-heavy", "should", "floats", About("float", first.id), propose, **values)


def reach_past(piece: Float, bar: BarPlace) -> float:
    """How far a float reaches past the pipe that shows on its bar [m]; 0 or less where it fits."""
    middle = piece.at * bar.spacing
    low, high = middle - piece.length / 2, middle + piece.length / 2
    return max(bar.faces[0] - low, high - (bar.spacing - bar.faces[1]))


def over_budget(survey: Survey) -> Iterator[Finding]:
    """The spending limit broken."""
    bill = survey.bill
    if bill.limit is not None and bill.left is not None and bill.over:
        yield say(
            "money.limit-over",
            "must",
            "money",
            WHOLE,
            partial(cheaper, survey),
            spent=money(bill.spent, bill.currency),
            over=money(-bill.left, bill.currency),
            limit=money(bill.limit, bill.currency),
        )
