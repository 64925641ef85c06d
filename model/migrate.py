"""Files of older formats, made into the present one before they are checked.

A migration works on the raw tables, never on the models, so that it stays right for ever.  A
default is part of the format: whoever changes one writes a migration that fills in the old value.
"""

from collections.abc import Callable, Mapping
from typing import Any

from model.design import FORMAT

Raw = dict[str, Any]
Migration = Callable[[Raw], Raw]

MIGRATIONS: dict[int, Migration] = {}
"""From each old format to the next; format 1 is the first."""


def migrated(
    raw: Raw, number: int, *, to: int = FORMAT, migrations: Mapping[int, Migration] = MIGRATIONS
) -> Raw:
    """Raw tables of format ``number`` in the format ``to``; those of a newer format as they are."""
    for step in range(number, to):
        raw = {**migrations[step](raw), "format": step + 1}
    return raw
