"""Findings about pieces that are sawn already, and about pieces too short to stay in their sockets."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding, Severity
from model.coach.remedies import sawn as remedy
from model.coach.say import say
from model.coach.sentences import length, listed
from model.design import COMPARISON_SLACK, plane_groups
from model.frame.layout import BarPlace
from model.survey import Survey

NAMES_SHOWN = 3
WAYS = {
    "station": ("ahead of the zero point", "aft of the zero point"),
    "side": ("to port of the zero point", "to starboard of the zero point"),
    "level": ("above the zero point", "below the zero point"),
}


def sawn_pieces(survey: Survey) -> Iterator[Finding]:
    """A sawn piece that is shorter than its sockets need, or that others do not let fit."""
    unit, most = survey.design.units, survey.design.brief.thresholds.plan_error
    for bar in survey.frame.bars.values():
        if bar.sawn is None or bar.cut is None:
            continue
        about, off = About("bar", bar.id), abs(bar.misfit)
        values = {"bar": bar.name, "sawn": length(bar.sawn, unit)}
        if bar.sawn < sum(bar.insertions) - COMPARISON_SLACK:
            least = length(sum(bar.insertions), unit)
            propose = partial(remedy.new_piece, survey, bar)
            yield say("frame.sawn-short", "must", "layout", about, propose, **values, least=least)
        elif off > most / 2 + COMPARISON_SLACK:
            severity: Severity = "should" if off > most + COMPARISON_SLACK else "tip"
            values |= {"needed": length(bar.sawn + bar.misfit, unit), "off": length(off, unit)}
            values["others"] = listed(_others(survey, bar))
            propose = partial(remedy.new_piece, survey, bar)
            yield say("frame.sawn-misfit", severity, "layout", about, propose, **values)


def _others(survey: Survey, bar: BarPlace) -> list[str]:
    """The sawn pieces that lie along the same axis as a bar."""
    names = [
        other.name
        for other in survey.frame.bars.values()
        if other.sawn is not None
        and other.id != bar.id
        and any(abs(a) > 0.1 and abs(b) > 0.1 for a, b in zip(bar.along, other.along, strict=True))
    ]
    return names[:NAMES_SHOWN] + (["others"] if len(names) > NAMES_SHOWN else [])


def held_planes(survey: Survey) -> Iterator[Finding]:
    """A plane that is not where it is drawn, because sawn pieces hold it."""
    at = survey.frame.planes
    least = survey.design.brief.thresholds.plan_error / 2
    for kind, group in zip(WAYS, plane_groups(survey.arrangement), strict=True):
        for plane in group:
            if abs(at[plane.id] - plane.at) > least + COMPARISON_SLACK:
                about, propose = About(kind, plane.id), remedy.settle
                values = {"drawn": _where(survey, kind, plane.at), "held": _where(survey, kind, at[plane.id])}
                yield say("frame.plane-held", "tip", "layout", about, propose, plane=plane.name, **values)


def _where(survey: Survey, kind: str, at: float) -> str:
    """A position in words."""
    return f"{length(abs(at), survey.design.units)} {WAYS[kind][at < 0]}"


def slipping_pieces(survey: Survey) -> Iterator[Finding]:
    """A piece no longer than a socket at its end is deep: it can slide in whole."""
    unit = survey.design.units
    for bar in survey.frame.bars.values():
        depth = max(socket_depths(survey, bar), default=0.0)
        if bar.cut is not None and bar.exposed >= -COMPARISON_SLACK and bar.cut <= depth + COMPARISON_SLACK:
            values = {"bar": bar.name, "cut": length(bar.cut, unit), "depth": length(depth, unit)}
            propose = partial(remedy.longer_piece, survey, bar, depth)
            yield say("frame.piece-slips", "should", "layout", About("bar", bar.id), propose, **values)


def socket_depths(survey: Survey, bar: BarPlace) -> list[float]:
    """The depths [m] of the sockets at the ends of a bar."""
    depths = []
    for joint in bar.joints:
        place = survey.frame.joints[joint]
        to = next((arm.to for arm in place.arms if arm.bar == bar.id), None)
        if place.match and to:
            depths.append(place.match.sockets[to].depth)
    return depths
