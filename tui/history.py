"""Undo and redo as a list of designs: an edit makes a new design, so going back is picking an old one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

if TYPE_CHECKING:
    from model.design import Design

MOST = 500
"""How many steps back are kept."""


class Moment(Struct, frozen=True):
    """A design, and what was done to get it."""

    label: str
    design: Design


class History(Struct, frozen=True):
    """The design on screen, those before it, and those that were undone (the nearest last)."""

    now: Moment
    past: tuple[Moment, ...] = ()
    future: tuple[Moment, ...] = ()

    def edited(self, label: str, design: Design) -> History:
        """After an edit; what had been undone before it is gone."""
        return History(Moment(label, design), (*self.past, self.now)[-MOST:])

    def undone(self) -> History:
        """One edit back; the same where there is nothing to undo."""
        if not self.past:
            return self
        return replace(self, now=self.past[-1], past=self.past[:-1], future=(*self.future, self.now))

    def redone(self) -> History:
        """One edit forward again; the same where nothing was undone."""
        if not self.future:
            return self
        return replace(self, now=self.future[-1], past=(*self.past, self.now), future=self.future[:-1])

    def standing(self, design: Design) -> History:
        """The same, with another design in the place of the one on screen."""
        return replace(self, now=replace(self.now, design=design))
