"""TOML as a person likes to read and edit it: short lists of small tables take one line each.

Quoting, keys and numbers are written by tomli_w; only the layout is ours.
"""

import re
from collections.abc import Mapping
from functools import lru_cache
from typing import Any

import tomli_w

WIDTH = 110  # of a line that holds a whole small table or list
INDENT = "    "
_PLAIN = re.compile(r"[^\x00-\x1f\x7f\"\\]*")
"""Text in which nothing is escaped, so that a large design is written fast."""


def toml_text(table: Mapping[str, Any]) -> str:
    """A table as TOML text, which ``tomllib.loads`` reads back to an equal table.

    >>> print(toml_text({"size": [3, 4.5], "bars": [{"id": "b1"}, {"id": "b2"}]}), end="")
    size = [3, 4.5]
    bars = [
        { id = "b1" },
        { id = "b2" },
    ]
    """
    return "\n".join(_table_lines(table, "")).lstrip("\n") + "\n"


def _table_lines(table: Mapping[str, Any], path: str) -> list[str]:
    """The lines of a table without its header: plain values first, as TOML wants it, then tables."""
    lines: list[str] = []
    later: list[tuple[str, Any]] = []
    for key, value in table.items():
        if isinstance(value, str):
            lines.append(f"{_key(key)} = {_text(value, lines=True)}")
        elif isinstance(value, Mapping):
            later.append((key, value))
        elif not isinstance(value, list | tuple):
            lines.append(f"{_key(key)} = {_scalar(value)}")
        elif (items := _items(value)) is None:
            later.append((key, value))
        else:
            lines += _list_lines(_key(key), items, long=len(value) > 1 and isinstance(value[0], Mapping))
    for key, value in later:
        lines += _header_lines(f"{path}.{_key(key)}" if path else _key(key), value)
    return lines


def _header_lines(name: str, value: Any) -> list[str]:
    if isinstance(value, Mapping):
        # a table that only holds tables is named by their headers
        only_tables = value and all(isinstance(item, Mapping) for item in value.values())
        return [*(() if only_tables else ("", f"[{name}]")), *_table_lines(value, name)]
    return [line for item in value for line in ("", f"[[{name}]]", *_table_lines(item, name))]


def _list_lines(key: str, items: list[str], *, long: bool) -> list[str]:
    """A list on one line, or on a line for each item where it is long."""
    line = f"{key} = [{', '.join(items)}]"
    if len(line) <= WIDTH and not long:
        return [line]
    return [f"{key} = [", *(f"{INDENT}{item}," for item in items), "]"]


def _items(values: list[Any] | tuple[Any, ...]) -> list[str] | None:
    """The items of a list, each on one line; None for tables that do not all take one line."""
    tables = all(isinstance(item, Mapping) for item in values)
    items = []
    for item in values:
        if tables and not _is_small(item):
            return None
        items.append(_inline(item))
        if tables and len(items[-1]) > WIDTH:
            return None
    return items


def _is_small(table: Mapping[str, Any]) -> bool:
    """Whether it is kind to read a table on one line: no text of several lines, no tables inside."""
    return not any(_is_big(value) for value in table.values())


def _is_big(value: Any) -> bool:
    if isinstance(value, str):
        return "\n" in value
    if isinstance(value, list | tuple):
        return any(isinstance(item, Mapping) for item in value)
    return isinstance(value, Mapping)


def _inline(value: Any) -> str:
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, Mapping):
        pairs = ", ".join([f"{_key(key)} = {_inline(item)}" for key, item in value.items()])
        return f"{{ {pairs} }}" if pairs else "{}"
    if isinstance(value, list | tuple):
        return f"[{', '.join([_inline(item) for item in value])}]"
    return _scalar(value)


def _scalar(value: Any) -> str:
    if type(value) in (int, float):
        return str(value)
    return tomli_w.dumps({"v": value})[len("v = ") : -1]


def _text(text: str, *, lines: bool = False) -> str:
    """A text in quotes; with ``lines`` over several where it has them, but for one with a carriage return."""
    return f'"{text}"' if _PLAIN.fullmatch(text) else _escaped(text, lines and "\r" not in text)


@lru_cache(maxsize=4096)
def _escaped(text: str, lines: bool) -> str:
    """The same of any text; kept, for most texts stand in the next save too."""
    return tomli_w.dumps({"v": text}, multiline_strings=lines)[len("v = ") : -1]


@lru_cache(maxsize=1024)
def _key(key: str) -> str:
    return tomli_w.dumps({key: 0})[: -len(" = 0\n")]
