"""The air in the pipes: what is caught in each attitude, and the fewest holes that let it out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.solve.hole_words import drilling_words, flow_words, millilitres, pocket_words, tilt_line
from model.solve.holes import fewest
from model.units import format_mass
from tui.forms.proposal import Offer, ProposalSection, Way

if TYPE_CHECKING:
    from model.review import Report
    from model.survey import Survey
    from model.water.air.air import Air

SHOWN = 2
"""So many pockets of an attitude are named."""


def air_section() -> ProposalSection:
    """What is caught, and holes that let it out."""
    ways = (
        Way("more", "Fewest more holes", lambda report: _holes(report, keep=True)),
        Way("anew", "Fewest holes, drilled anew", lambda report: _holes(report, keep=False)),
    )
    return ProposalSection("Air", air_facts, ways, ("pocket", "attitude", "void"))


def air_facts(report: Report) -> str:
    """Air caught in each attitude, what it does, and how long filling and draining take."""
    found = report.survey
    air = found.air
    if air.seal is not None:
        return _sealed(air)
    if not air.attitudes:
        return "There is no pipe yet for air to be caught in."
    return "\n".join([*_attitudes(found), *_flows(air)])


def _attitudes(found: Survey) -> list[str]:
    air = found.air
    lines = [f"Air that cannot get out, of {millilitres(air.room)} of room in the pipes:"]
    for each in air.attitudes:
        caught = each.caught
        name = each.attitude.name if each.cared else f"({each.attitude.name})"
        lifts = f", lifts {format_mass(each.lift)}, turns it {each.turned:.0f}°" if each.lift > 0.0005 else ""
        lines.append(f"{name:<22} {millilitres(caught.volume):>7}{lifts}")
        big = [pocket for pocket in caught.pockets if pocket.volume >= 1e-6 and pocket.stretches]
        lines += [f"   {millilitres(p.volume)} in {pocket_words(found, p)}" for p in big[:SHOWN]]
    least, most = air.spread
    lines.append(f"Level, give or take a degree: {millilitres(least)} to {millilitres(most)}")
    lines.append(f"The water's skin may hold back up to {millilitres(air.level.held)} more when level")
    return lines


def _flows(air: Air) -> list[str]:
    lines = [flow_words(air.flooding.seconds, "fills"), flow_words(air.draining.seconds, "drains")]
    lines.append(f"Lifted out level, {millilitres(air.water_left.volume)} of water stay in")
    tilt = tilt_line(air)
    return [*(line[:1].upper() + line[1:] for line in lines), *([tilt] if tilt else [])]


def _sealed(air: Air) -> str:
    seal = air.seal
    if seal is None:
        return ""
    lines = [
        f"Sealed for good: the air shut in lifts {format_mass(seal.lift)}.",
        f"Whole, it {_floats(seal.spare)}; after a leak that floods it, it {_floats(seal.leaked)}.",
    ]
    lines += [
        f"At {each.depth:g} m the water presses with {each.per_cm2:.2f} kg on each square centimetre."
        for each in seal.pressures
    ]
    return "\n".join(lines)


def _floats(spare: float) -> str:
    return f"{'floats up with' if spare >= 0 else 'sinks with'} {format_mass(abs(spare))}"


def _holes(report: Report, *, keep: bool) -> Offer:
    drilling = fewest(report.survey, keep=keep)
    if drilling is None:
        return Offer("", "No hole helps: the pipes are sealed, there are none, or too many.", None)
    lines = drilling_words(report.survey, drilling)
    words = "\n".join(line[:1].upper() + line[1:] for line in lines)
    changed = drilling.apply(report.design)
    return Offer("holes worked out", words, changed if changed != report.design else None)
