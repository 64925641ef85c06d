"""Where designs are kept: the team's folder, and what was open last."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path
from typing import Any
from unicodedata import normalize

from msgspec import Struct
from msgspec.structs import asdict

from model.journal import state_folder

DESIGNS_FOLDER_VARIABLE = "POOLWRIGHT_DESIGNS"
"""Names another folder for new designs."""
SUFFIX = ".toml"
"""Of the file of a design."""
MOST = 20
"""How many files are remembered."""


class Recent(Struct, frozen=True):
    """A design that was open before: its file, its title, the step it was left at, the steps seen."""

    path: str
    title: str
    step: str = "brief"
    seen: tuple[str, ...] = ()


def designs_folder() -> Path:
    """Where a new design is saved: ``poolwright`` in the user's documents."""
    named = os.environ.get(DESIGNS_FOLDER_VARIABLE)
    if named:
        return Path(named)
    from platformdirs import user_documents_path

    return user_documents_path() / "poolwright"


def file_name(title: str) -> str:
    """A file name that every system takes, from the title of a design.

    >>> file_name("Äpfel & Birnen 2")
    'apfel-birnen-2.toml'
    """
    plain = normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return (re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60] or "design") + SUFFIX


def free_path(wanted: Path, taken: Iterable[Path] = ()) -> Path:
    """The wanted path, or with the first number at its end that is free."""
    path, number = wanted, 2
    while path.exists() or path in taken:
        path, number = wanted.with_stem(f"{wanted.stem}-{number}"), number + 1
    return path


def recents() -> tuple[Recent, ...]:
    """What was open last, the latest first, each file once; nothing where the list cannot be read."""
    with suppress(OSError, ValueError, TypeError, KeyError):
        entries: list[dict[str, Any]] = json.loads(_list_file().read_text(encoding="utf-8"))
        return _once(_recent(entry) for entry in entries)
    return ()


def remembered(path: str | Path) -> Recent | None:
    """What is remembered of a file, however its path is spelled."""
    return next((each for each in recents() if one_file(each.path) == one_file(path)), None)


def one_file(path: str | Path) -> str:
    """A path as it is the same for every spelling: links are followed, and case where the system has none."""
    return os.path.normcase(os.path.realpath(path))


def _once(listed: Iterable[Recent]) -> tuple[Recent, ...]:
    found: dict[str, Recent] = {}
    for each in listed:
        found.setdefault(one_file(each.path), each)
    return tuple(found.values())


def remember(recent: Recent) -> None:
    """Put a design at the top of the list; a list that cannot be written is let go."""
    kept = _once((recent, *recents()))[:MOST]
    with suppress(OSError):
        state_folder().mkdir(parents=True, exist_ok=True)
        _list_file().write_text(json.dumps([asdict(each) for each in kept], indent=1), encoding="utf-8")


def _list_file() -> Path:
    return state_folder() / "recent.json"


def _recent(entry: dict[str, Any]) -> Recent:
    return Recent(str(entry["path"]), str(entry["title"]), str(entry["step"]), tuple(map(str, entry["seen"])))
