"""Findings about drilled openings: where they are, and how wide."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding, Severity
from model.coach.remedies import holes as remedy
from model.coach.say import WHOLE, say
from model.coach.sentences import length
from model.design import COMPARISON_SLACK, Opening
from model.frame.layout import BarPlace
from model.solve.hole_words import face_words
from model.survey import Survey
from model.water.air.sockets import socket_of


def openings(survey: Survey) -> Iterator[Finding]:
    """Openings missing from a flooded frame, or standing in a sealed one."""
    arrangement = survey.arrangement
    if arrangement.bores == "sealed":
        for item in arrangement.openings:
            propose = partial(remedy.stop_up, survey, item)
            yield say(
                "opening.in-sealed", "must", "holes", About("opening", item.id), propose, item=item.name
            )
    elif survey.frame.bars and not survey.air.network.mouths:
        yield say("opening.none-flooded", "must", "holes", WHOLE, partial(remedy.let_water_in, survey))


def hole_sizes(survey: Survey) -> Iterator[Finding]:
    """A hole wider than its pipe, so wide that it weakens it, or too small to let air pass."""
    unit, limits = survey.design.units, survey.design.brief.thresholds
    for item in survey.arrangement.openings:
        outside = survey.frame.bars[item.bar].pipe.outside_diameter
        propose = partial(remedy.redrill, survey, item)
        values = {"item": item.name, "diameter": length(item.diameter, unit), "pipe": length(outside, unit)}
        found: tuple[str, Severity] | None = None
        if item.diameter >= outside:
            found = ("opening.hole-wide", "must")
        elif item.diameter < limits.hole_least - COMPARISON_SLACK:
            found, values["least"] = ("opening.hole-small", "tip"), length(limits.hole_least, unit)
        elif item.diameter > outside * limits.hole_most / 100 + COMPARISON_SLACK:
            found, values["most"] = ("opening.hole-large", "tip"), f"{limits.hole_most:g} %"
        if found:
            yield say(found[0], found[1], "holes", About("opening", item.id), propose, **values)


def blind_holes(survey: Survey) -> Iterator[Finding]:
    """A hole that opens nothing: it cannot be drilled so, or something closes it."""
    for item in survey.arrangement.openings:
        why = survey.air.faults.get(item.id)
        if why is None:
            continue
        about, bar = About("opening", item.id), survey.frame.bars[item.bar]
        propose = partial(remedy.open_up, survey, item)
        values = {"item": item.name, "bar": bar.name, "face": face_words(item.face)}
        if why in ("along", "socket", "wall"):
            yield say(f"opening.face-{WRONG[why]}", "must", "holes", about, propose, **values)
        else:
            yield say(f"opening.hole-{CLOSED[why]}", "should", "holes", about, propose, **values)


WRONG = {"along": "along", "socket": "taken", "wall": "solid"}
CLOSED = {"plug": "plugged", "covered": "covered"}


def near_sockets(survey: Survey) -> Iterator[Finding]:
    """A hole so near to a socket that the pipe breaks there, or through socket and pipe together."""
    unit, limits = survey.design.units, survey.design.brief.thresholds
    for item in survey.arrangement.openings:
        bar = survey.frame.bars[item.bar]
        outside = bar.pipe.outside_diameter
        propose = partial(remedy.away_from_socket, survey, item)
        values = {"item": item.name, "bar": bar.name}
        about = About("opening", item.id)
        room = room_to_face(survey, bar, item)
        if room is None:
            continue
        if room < 0:
            yield say("opening.socket-drilled", "should", "holes", about, propose, **values)
        elif room < outside * limits.face_tip - COMPARISON_SLACK:
            severity: Severity = "should" if room < outside * limits.face_should - COMPARISON_SLACK else "tip"
            values |= {"room": length(room, unit), "least": length(outside * limits.face_tip, unit)}
            yield say("opening.socket-near", severity, "holes", about, propose, **values)


def room_to_face(survey: Survey, bar: BarPlace, item: Opening) -> float | None:
    """From a hole to the nearest face of a socket [m]; below zero where socket and pipe overlap.

    None where the hole goes through the fitting alone, or no fitting is known.
    """
    offset, rooms = item.at * bar.spacing, []
    for end, distance in ((0, offset), (1, bar.spacing - offset)):
        joint = survey.frame.joints[bar.joints[end]]
        socket = socket_of(joint, bar.id)
        if socket is None:
            continue
        if distance < bar.faces[end] - bar.insertions[end]:
            return None
        rooms.append(distance - bar.faces[end])
    return min(rooms, default=None)
