"""Who is at the keyboard, and what time it is: for everything that is noted.

The model has no clock; what it notes gets its time and its author from here.
"""

from __future__ import annotations

from datetime import datetime

LONGEST = 120
_here = [""]


def now() -> str:
    """The day and the time, as it is noted."""
    return datetime.now().strftime("%Y-%m-%d %H:%M")


def today() -> str:
    """The day."""
    return now()[:10]


def who() -> str:
    """Who is at the keyboard, or "" where nobody was named."""
    return _here[0]


def set_who(name: str) -> None:
    """Name who is at the keyboard from now on."""
    _here[0] = " ".join(name.split())[:LONGEST]
