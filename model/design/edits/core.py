"""Find, replace and check: what every edit is made of.

An edit takes a design and gives a new one, checked as a whole, so that nothing in it can refer to
what is not there.  Where it cannot be done it raises ``EditError`` with one sentence.
"""

from collections.abc import Callable, Iterable
from typing import Any

from msgspec import Struct
from pydantic import ValidationError

from model.design.document import Design, equipment
from model.design.record import Record
from model.errors import EditError

Edit = Callable[[Design], Design]


class Ref(Struct, frozen=True):
    """A piece of a design by its kind and id; ``id`` is empty for what there is only one of."""

    kind: str
    id: str = ""


HOMES: dict[str, tuple[str, str]] = {
    "pipe": ("stock", "pipes"),
    "fitting": ("stock", "fittings"),
    "motor": ("supplies", "motors"),
    "mount": ("supplies", "mounts"),
    "foam": ("supplies", "foams"),
    "station": ("arrangement", "stations"),
    "side": ("arrangement", "sides"),
    "level": ("arrangement", "levels"),
    "joint": ("arrangement", "joints"),
    "bar": ("arrangement", "bars"),
    "thruster": ("arrangement", "thrusters"),
    "float": ("arrangement", "floats"),
    "ballast": ("arrangement", "ballasts"),
    "attachment": ("arrangement", "attachments"),
    "opening": ("arrangement", "openings"),
    "plug": ("arrangement", "plugs"),
}
"""Where the pieces of each kind stand: the record that holds them, and its field."""
ALONE: dict[str, tuple[str, ...]] = {
    "design": (),
    "brief": ("brief",),
    "water": ("brief", "water"),
    "thresholds": ("brief", "thresholds"),
    "stock": ("stock",),
    "pin": ("stock", "pin"),
    "supplies": ("supplies",),
    "washer": ("supplies", "washer"),
    "arrangement": ("arrangement",),
    "tether": ("arrangement", "tether"),
    "power": ("arrangement", "power"),
    "battery": ("arrangement", "power", "battery"),
}
"""The path to each record that there is only one of."""
IDS: dict[str, str] = {
    "thruster": "t",
    "float": "f",
    "ballast": "w",
    "attachment": "a",
    "opening": "o",
    "plug": "s",
    "tether": "c",
    "bar": "b",
    "joint": "j",
    "station": "x",
    "side": "y",
    "level": "z",
}


def fresh_id(prefix: str, taken: Iterable[str]) -> str:
    """An id that is not taken yet: the prefix and the lowest free number.

    >>> fresh_id("b", ["b1", "b3"])
    'b2'
    """
    known, number = set(taken), 1
    while f"{prefix}{number}" in known:
        number += 1
    return f"{prefix}{number}"


def fresh_name(base: str, taken: Iterable[str]) -> str:
    """A name that nothing else of the kind has; a number at the end counts on.

    >>> fresh_name("float", ["float"]), fresh_name("hole 1", ["hole 1", "hole 2"])
    ('float 2', 'hole 3')
    """
    known = set(taken)
    if base not in known:
        return base
    stem = base[:72].rstrip("0123456789").rstrip() or base[:72]
    number = 2
    while f"{stem} {number}" in known:
        number += 1
    return f"{stem} {number}"


def pieces(design: Design, kind: str) -> tuple[Any, ...]:
    """All pieces of a kind, in the order of the document."""
    home, field = HOMES[kind]
    found: tuple[Any, ...] = getattr(getattr(design, home), field)
    return found


def find(design: Design, ref: Ref) -> Any:
    """The record that ``ref`` stands for.

    Raises:
        EditError: it is not there.
    """
    if ref.kind in ALONE:
        record: Any = design
        for step in ALONE[ref.kind]:
            record = getattr(record, step) if record is not None else None
        if record is not None:
            return record
        raise EditError(f"there is no {ref.kind} in this design yet")
    for piece in pieces(design, ref.kind):
        if piece.id == ref.id:
            return piece
    raise EditError(f"the {ref.kind} '{ref.id}' is not in this design any more")


def taken_ids(design: Design, kind: str) -> set[str]:
    """The ids that a new piece of this kind must not have."""
    arrangement = design.arrangement
    if kind in ("station", "side", "level"):
        return {plane.id for name in ("station", "side", "level") for plane in pieces(design, name)}
    if kind in ("joint", "bar") or HOMES.get(kind, ("",))[0] in ("stock", "supplies"):
        return {piece.id for piece in pieces(design, kind)}
    return {item.id for item in equipment(arrangement)}


def changed(record: Record, **changes: Any) -> Any:
    """A record with some fields changed and checked.

    Raises:
        EditError: a new value is not allowed.
    """
    try:
        return record.but(**changes)
    except ValidationError as problem:
        raise EditError(plain(problem)) from problem


def arranged(design: Design, **changes: Any) -> Design:
    """The design with some fields of its arrangement changed."""
    arrangement = changed(design.arrangement, **changes)
    result: Design = changed(design, arrangements=(arrangement, *design.arrangements[1:]))
    return result


def put(design: Design, ref: Ref, record: Record) -> Design:
    """The design with ``record`` in the place of ``ref``."""
    if ref.kind in HOMES:
        find(design, ref)
        return put_all(design, ref.kind, (record if p.id == ref.id else p for p in pieces(design, ref.kind)))
    return _put_along(design, ALONE[ref.kind], record)


def put_all(design: Design, kind: str, records: Iterable[Record]) -> Design:
    """The design with these as all its pieces of the kind."""
    home, field = HOMES[kind]
    if home == "arrangement":
        return arranged(design, **{field: tuple(records)})
    return _put_along(design, (home,), changed(getattr(design, home), **{field: tuple(records)}))


def _put_along(design: Design, path: tuple[str, ...], record: Any) -> Design:
    for depth in range(len(path) - 1, -1, -1):
        holder: Any = design
        for step in path[:depth]:
            holder = getattr(holder, step)
        if path[depth] == "arrangement":
            record = changed(design, arrangements=(record, *design.arrangements[1:]))
        else:
            record = changed(holder, **{path[depth]: record})
    whole: Design = record
    return whole


def set_field(design: Design, ref: Ref, field: str, value: Any) -> Design:
    """One field of one record set to a new value.

    Raises:
        EditError: the record is gone, or the value is not allowed.
    """
    return put(design, ref, changed(find(design, ref), **{field: value}))


def set_part(design: Design, ref: Ref, field: str, number: int, value: Any) -> Design:
    """One number of a field that holds three: 0 along x, 1 along y, 2 along z."""
    parts = list(getattr(find(design, ref), field))
    parts[number] = value
    return set_field(design, ref, field, tuple(parts))


def set_inner(design: Design, ref: Ref, holder: str, field: str, value: Any) -> Design:
    """One field set of a record that another record holds, such as the branch of a thruster.

    Raises:
        EditError: the record is gone, or the value is not allowed.
    """
    inner = getattr(find(design, ref), holder)
    return set_field(design, ref, holder, changed(inner, **{field: value}))


_LIMITS = {
    "greater_than": "must be more than {gt:g}",
    "greater_than_equal": "must be {ge:g} or more",
    "less_than_equal": "must be {le:g} or less",
    "string_too_short": "must not be empty",
    "string_too_long": "is too long; at most {max_length} letters fit",
    "finite_number": "must be a finite number",
    "missing": "is missing",
}


_SAID = {"insertion": "push-in depth", "laying length": "centre to stop"}
"""What a field is called on screen, where the file has the trade's shorter word."""


def plain(problem: ValidationError) -> str:
    """The first complaint of a validation as one sentence for people."""
    first = problem.errors()[0]
    if first["type"] == "value_error":
        return str(first["ctx"]["error"])
    names = [str(step).replace("_", " ") for step in first["loc"] if not isinstance(step, int)]
    who = _SAID.get(names[-1], names[-1]) if names else "the value"
    words = _LIMITS.get(first["type"])
    if words is None:
        return f"{who} cannot be {first['input']!r}: {first['msg'][:1].lower()}{first['msg'][1:]}"
    return f"{who} {words.format(**first.get('ctx', {}))}"
