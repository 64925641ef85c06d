"""Foam that softens with depth: what its lift comes to at the bottom of the run."""

from collections.abc import Iterable

from model.parts import Part
from model.water.balance import Balance


def spare_at_depth(parts: Iterable[Part], balance: Balance, squeeze: float) -> float:
    """Spare buoyancy [kg] when every float has lost a part of its room [%]; its weight stays.

    Soft foam loses a few per cent at 3 to 4 m (from memory): weigh a piece down and try.
    """
    foam = sum(part.volume for part in parts if part.kind == "float")
    return balance.spare - foam * squeeze / 100 * balance.density
