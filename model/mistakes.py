"""What pydantic finds wrong with a file, in words for people: the place, what is there, what should be."""

from collections.abc import Callable, Iterable, Mapping
from datetime import date, datetime, time
from difflib import get_close_matches
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from model.errors import FileProblem

SHOWN = 40  # characters of a wrong value
NEAR = 0.7  # how much alike two names must be, as difflib measures it
Place = tuple[int | str, ...]

_EXPECTED: dict[str, Callable[[dict[str, Any]], str]] = {
    "expected": lambda ctx: str(ctx["expected"]),
    "string_type": lambda ctx: "text in quotes",
    "string_too_short": lambda ctx: "text that is not empty",
    "string_too_long": lambda ctx: f"at most {ctx['max_length']} characters",
    "string_pattern_mismatch": lambda ctx: "only letters, digits, '.', '_' and '-'",
    "float_type": lambda ctx: "a number",
    "int_type": lambda ctx: "a whole number",
    "int_from_float": lambda ctx: "a whole number",
    "bool_type": lambda ctx: "true or false",
    "tuple_type": lambda ctx: "a list in square brackets",
    "model_type": lambda ctx: "a table of keys",
    "finite_number": lambda ctx: "a finite number",
    "literal_error": lambda ctx: f"one of {str(ctx['expected']).replace(' or ', ', ')}",
    "greater_than": lambda ctx: f"more than {ctx['gt']:g}",
    "greater_than_equal": lambda ctx: f"{ctx['ge']:g} or more",
    "less_than_equal": lambda ctx: f"{ctx['le']:g} or less",
    "too_short": lambda ctx: f"at least {ctx['min_length']}",
    "too_long": lambda ctx: f"at most {ctx['max_length']}",
}


class FileMistake(FileProblem):
    """A mistake whose sentence says both what is there and what should be: ``found; expected``."""

    def __init__(self, file: str, place: str, sentence: str) -> None:
        found, _, expected = sentence.partition("; ")
        super().__init__(file, place, found.removeprefix("found "), expected.removeprefix("expected "))
        where = f"{file}: {place}" if place else file
        self.args = (f"{where}: {sentence}",)


def file_problem(error: ValidationError, raw: Mapping[str, Any], file: str) -> FileProblem:
    """The first mistake of a file, with how many more there are.

    Args:
        error: what pydantic found.
        raw: the tables as they were read.
        file: the name of the file, as the user wrote it.
    """
    details = _root_mistakes(error.errors(include_url=False))
    problem = _one(details[0], raw, file)
    if len(details) > 1:
        more = len(details) - 1
        problem.args = (f"{problem} ({more} more mistake{'s' if more > 1 else ''} in this file)",)
    return problem


def place_text(place: Place) -> str:
    """Where a value stands, lists counted from 1.

    >>> place_text(("arrangements", 0, "bars", 2, "start"))
    'arrangements[1].bars[3].start'
    """
    text = ""
    for step in place:
        text += f"[{step + 1}]" if isinstance(step, int) else f".{step}"
    return text.removeprefix(".")


def nearest(name: str, known: Iterable[str]) -> str | None:
    """The known name that looks most like another, or None where none does."""
    return next(iter(get_close_matches(name, list(known), 1, NEAR)), None)


def value_text(value: Any) -> str:
    """A value as a person would name it, shortened.

    >>> value_text(True), value_text("bow"), value_text({"a": 1})
    ('true', "'bow'", 'a table')
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}"
    if isinstance(value, date | datetime | time):
        return f"the date or time {value}"
    shown = repr(value) if isinstance(value, str | float) else _whole_text(value)
    return shown if len(shown) <= SHOWN else f"{shown[:SHOWN]}..."


def _whole_text(value: int) -> str:
    return str(value) if abs(value) < 10**SHOWN else "a whole number of many digits"


def _root_mistakes(details: list[ErrorDetails]) -> list[ErrorDetails]:
    """Without the complaints that a list is short because its entries are wrong."""
    places = [detail["loc"] for detail in details]
    inside = {place[:end] for place in places for end in range(len(place))}
    return [detail for detail in details if detail["type"] != "too_short" or detail["loc"] not in inside]


def _one(detail: ErrorDetails, raw: Mapping[str, Any], file: str) -> FileProblem:
    kind, place, ctx = detail["type"], detail["loc"], detail.get("ctx", {})
    where = place_text(place) + _owner(place, raw)
    if kind == "missing":
        return _missing(detail, raw, file)
    if kind == "unreadable":
        return FileMistake(file, where, str(ctx["sentence"]))
    if kind == "value_error" and not place:
        return FileMistake(file, "", str(ctx["error"]))
    value = _value_at(raw, place)
    found = value_text(value)
    if kind == "value_error" and isinstance(value, Mapping):  # what does not go together, with its values
        return FileMistake(file, where, str(ctx["error"]))
    if kind == "value_error":
        return FileMistake(file, where, f"found {found}; {ctx['error']}")
    return FileProblem(file, where, found, _EXPECTED[kind](ctx) if kind in _EXPECTED else detail["msg"])


def _missing(detail: ErrorDetails, raw: Mapping[str, Any], file: str) -> FileProblem:
    *above, key = detail["loc"]
    table = tuple(above)
    where = place_text(table) + _owner((*table, key), raw)
    value = _value_at(raw, table)
    if isinstance(key, int):
        return FileProblem(file, where, value_text(value), f"at least {key + 1}")
    similar = nearest(key, value) if isinstance(value, Mapping) else None
    found = f"'{similar}', but no key '{key}'" if similar else f"no key '{key}'"
    return FileProblem(file, where, found, f"a key '{key}'")


def _owner(place: Place, raw: Mapping[str, Any]) -> str:
    """The id of the innermost numbered entry that a place lies in, since counting lines is no fun."""
    for end in range(len(place), 0, -1):
        if isinstance(place[end - 1], int):
            entry = _value_at(raw, place[:end])
            if isinstance(entry, Mapping) and isinstance(entry.get("id"), str):
                return f" ({value_text(entry['id'])})"
    return ""


def _value_at(raw: Any, place: Place) -> Any:
    for step in place:
        try:
            raw = raw[step]
        except (LookupError, TypeError):
            return "nothing"
    return raw
