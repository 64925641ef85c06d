"""What a change of a design was, in words for the notebook: what, from what, to what."""

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from model.design.document import Design
from model.design.edits.evidence import log_decision, with_changed
from model.design.record import Record
from model.units import METRES, Unit, format_length, format_mass

SHOWN_MOST = 3
"""Of the single changes that one edit makes."""
WORD_MOST = 120


class Change(Struct, frozen=True):
    """One thing that is different: what it is, what it was and what it is now; "" where it was not there."""

    what: str
    before: str
    after: str


def logged(before: Design, after: Design, label: str, when: str, who: str = "", why: str = "") -> Design:
    """The design after an edit, with the decision in its log; the same where no decision was changed.

    An edit made again within the minute, such as a float moved along step by step, goes on with its entry.

    Args:
        label: what the edit was called on screen.
    """
    found = list(changes(before, after))
    if not found:
        return after
    what = _short(label)
    was = _listed([_said(change.what, change.before) for change in found if change.before])
    now = _listed([_said(change.what, change.after) for change in found if change.after])
    last = after.evidence.log[-1] if after.evidence.log else None
    if last and last.stands and (last.what, last.when, last.who, last.after) == (what, when, who, was):
        return with_changed(after, "log", last.id, after=now)
    return log_decision(after, what, when, who=who, why=why, before=was, after=now)


def changes(before: Design, after: Design) -> Iterator[Change]:
    """Everything that was decided differently, in the order of the document; evidence is left out."""
    for name in type(before).model_fields:
        if name != "evidence":
            yield from _between(name, getattr(before, name), getattr(after, name), after.units, before, after)


def _between(what: str, old: Any, new: Any, unit: Unit, was: Record, now: Record) -> Iterator[Change]:
    if old == new:
        return
    if isinstance(old, Record) and isinstance(new, Record):
        yield from _fields(what, old, new, unit)
    elif isinstance(old, tuple) and isinstance(new, tuple) and _named(old) and _named(new):
        yield from _items(old, new, unit)
    else:
        field = what.split(": ")[-1].replace(" ", "_")
        yield Change(what.replace("_", " "), _value(was, field, old, unit), _value(now, field, new, unit))


def _fields(what: str, old: Record, new: Record, unit: Unit) -> Iterator[Change]:
    name = getattr(new, "name", what)
    for field in type(new).model_fields:
        if field not in ("id", "notes"):
            where = f"{name}: {field.replace('_', ' ')}"
            yield from _between(where, getattr(old, field, None), getattr(new, field), unit, old, new)


def _items(old: tuple[Any, ...], new: tuple[Any, ...], unit: Unit) -> Iterator[Change]:
    known = {item.id: item for item in old}
    for item in new:
        there = known.pop(item.id, None)
        if there is None:
            yield Change(item.name, "", "added")
        else:
            yield from _fields(item.name, there, item, unit)
    for item in known.values():
        yield Change(item.name, "there", "taken away")


def _named(items: tuple[Any, ...]) -> bool:
    return all(isinstance(item, Record) and hasattr(item, "id") and hasattr(item, "name") for item in items)


def _value(holder: Record, field: str, value: Any, unit: Unit) -> str:
    """A value as people read it: a length, a weight, a word."""
    known = field in type(holder).model_fields and isinstance(value, int | float | tuple)
    # in a file that is in inches a length is another number than in memory, and so is a weight
    shown = holder.model_dump(include={field}, context={"unit": "in"})[field] if known else value
    return _read(value, shown, unit)


def _read(value: Any, shown: Any, unit: Unit) -> str:
    if value is None or value == "" or value == ():
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(_read(item, other, unit) for item, other in zip(value, shown, strict=True))
    if isinstance(value, Record):
        return str(getattr(value, "name", "set"))
    if not isinstance(value, float):
        return str(value)
    if not isinstance(shown, int | float) or shown == value:
        return f"{value:g}"
    inches = abs(shown * METRES["in"] - value) < abs(value) * 1e-3
    return format_length(value, unit) if inches else format_mass(value)


def _said(what: str, value: str) -> str:
    return f"{what} {value}"


def _listed(words: list[str]) -> str:
    more = len(words) - SHOWN_MOST
    return _short("; ".join(words[:SHOWN_MOST]) + (f"; and {more} more" if more > 0 else ""))


def _short(words: str) -> str:
    return words if len(words) <= WORD_MOST else words[: WORD_MOST - 3] + "..."
