"""TOML as a person likes to read and edit it: short lists of small tables take one line each.

Quoting, keys and numbers are written by tomli_w; only the layout is ours.
"""

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import Any

import tomli_w

WIDTH = 110  # of a line that holds a whole small table or list
INDENT = "    "
_PLAIN = re.compile(r"[A-Za-z0-9 .,+()_-]*")
"""Text that needs no quoting, so that a large design is written fast."""


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


def _table_lines(table: Mapping[str, Any], path: str) -> Iterator[str]:
    """The lines of a table without its header: plain values first, as TOML wants it, then tables."""
    later: list[tuple[str, Any]] = []
    for key, value in table.items():
        if isinstance(value, Mapping) or not _fits_inline(value):
            later.append((key, value))
        else:
            yield from _value_lines(_key(key), value)
    for key, value in later:
        name = f"{path}.{_key(key)}" if path else _key(key)
        yield from _header_lines(name, value)


def _header_lines(name: str, value: Any) -> Iterator[str]:
    if isinstance(value, Mapping):
        # a table that only holds tables is named by their headers
        if not value or any(not isinstance(item, Mapping) for item in value.values()):
            yield from ("", f"[{name}]")
        yield from _table_lines(value, name)
        return
    for item in value:
        yield from ("", f"[[{name}]]")
        yield from _table_lines(item, name)


def _value_lines(key: str, value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield f"{key} = {_block(value)}"
        return
    line = f"{key} = {_inline(value)}"
    if not isinstance(value, list | tuple) or (len(line) <= WIDTH and not _is_long_list(value)):
        yield line
        return
    yield f"{key} = ["
    yield from (f"{INDENT}{_inline(item)}," for item in value)
    yield "]"


def _is_long_list(value: list[Any] | tuple[Any, ...]) -> bool:
    return len(value) > 1 and isinstance(value[0], Mapping)


def _fits_inline(value: Any) -> bool:
    """Whether a value is no list of tables, or one whose tables all take one line."""
    if not isinstance(value, list | tuple) or not value:
        return True
    if not all(isinstance(item, Mapping) for item in value):
        return True
    return all(_is_small(item) and len(_inline(item)) <= WIDTH for item in value)


def _is_small(table: Mapping[str, Any]) -> bool:
    """Whether it is kind to read a table on one line: no text of several lines, no tables inside."""
    return not any(_is_big(value) for value in table.values())


def _is_big(value: Any) -> bool:
    if isinstance(value, list | tuple):
        return any(isinstance(item, Mapping) for item in value)
    return isinstance(value, Mapping) or (isinstance(value, str) and "\n" in value)


def _inline(value: Any) -> str:
    if isinstance(value, Mapping):
        pairs = ", ".join(f"{_key(key)} = {_inline(item)}" for key, item in value.items())
        return f"{{ {pairs} }}" if pairs else "{}"
    if isinstance(value, list | tuple):
        return f"[{', '.join(_inline(item) for item in value)}]"
    return _scalar(value)


def _scalar(value: Any) -> str:
    if type(value) in (int, float):
        return str(value)
    if isinstance(value, str) and _PLAIN.fullmatch(value):
        return f'"{value}"'
    return tomli_w.dumps({"v": value})[len("v = ") : -1]


def _block(text: str) -> str:
    """A text, over several lines where it has them; a carriage return survives only in one line."""
    if "\n" not in text or "\r" in text:
        return _scalar(text)
    return tomli_w.dumps({"v": text}, multiline_strings=True)[len("v = ") : -1]


@lru_cache(maxsize=1024)
def _key(key: str) -> str:
    return tomli_w.dumps({key: 0})[: -len(" = 0\n")]
