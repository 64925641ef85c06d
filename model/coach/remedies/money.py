"""Remedies for a bill over the limit."""

from collections.abc import Iterator, Sequence
from functools import partial

from model.coach.finding import Remedy
from model.coach.sentences import money
from model.design import Design, Foam, Motor, Mount
from model.fittings.match import catalogue
from model.frame.layout import ways
from model.survey import Survey

LEAST_SAVED = 0.01
"""A change that saves less is none."""


def cheaper(survey: Survey) -> tuple[Remedy, ...]:
    """Cheaper fittings, mounts, motors and foam of what the team has listed, or a thing left out."""
    return (*_fittings(survey), *_supplies(survey), *_left_out(survey))


def _fittings(survey: Survey) -> Iterator[Remedy]:
    catalog = catalogue(survey.design.stock)
    for joint in survey.frame.joints.values():
        needed = ways(joint.arms)
        best = catalog.match(needed, None) if needed else None
        if joint.match and best and best.fitting.price < joint.match.fitting.price:
            yield Remedy("Use the cheapest fitting at every joint", _unpicked)
            return


def _unpicked(design: Design) -> Design:
    return design.arranged(joints=tuple(joint.but(fitting=None) for joint in design.arrangement.joints))


def _supplies(survey: Survey) -> Iterator[Remedy]:
    """Every thruster or float with the cheaper of two that are listed; the proof says if it still serves."""
    supplies, run = survey.design.supplies, survey.arrangement
    groups: tuple[tuple[str, str, Sequence[Mount | Motor | Foam], set[str | None]], ...] = (
        ("thrusters", "mount", supplies.mounts, {item.mount for item in run.thrusters}),
        ("thrusters", "motor", supplies.motors, {item.motor for item in run.thrusters}),
        ("floats", "foam", supplies.foams, {item.foam for item in run.floats}),
    )
    for group, field, goods, used in groups:
        for dear in (item for item in goods if item.id in used and item.counts):
            for other in goods:
                if other.price < dear.price - LEAST_SAVED:
                    edit = partial(_replaced, group=group, field=field, old=dear.id, new=other.id)
                    yield Remedy(f"Use {other.name} instead of {dear.name}", edit)


def _replaced(design: Design, group: str, field: str, old: str, new: str) -> Design:
    items = getattr(design.arrangement, group)
    changed = tuple(item.but(**{field: new}) if getattr(item, field) == old else item for item in items)
    return design.arranged(**{group: changed})


def _left_out(survey: Survey) -> Iterator[Remedy]:
    """Gear that has a price and is no hook, the least dear first."""
    gear = [item for item in survey.arrangement.attachments if item.kind != "hook" and item.counts]
    for item in sorted((item for item in gear if item.price >= LEAST_SAVED), key=lambda item: item.price):
        saved = money(item.price, survey.bill.currency)
        yield Remedy(f"Leave {item.name} out, which saves {saved}", partial(_without, item=item.id))


def _without(design: Design, item: str) -> Design:
    return design.arranged(
        attachments=tuple(other for other in design.arrangement.attachments if other.id != item)
    )
