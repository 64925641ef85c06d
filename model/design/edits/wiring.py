"""Edits of the wiring."""

from typing import Any

from model.design.document import Design
from model.design.edits.core import Ref, arranged, changed, find, put
from model.design.wiring import Power


def plan_wiring(design: Design) -> Design:
    """The design with a wiring of usual values, where it has none."""
    if design.arrangement.power is not None:
        return design
    return arranged(design, power=Power())


def drop_wiring(design: Design) -> Design:
    """The design without a wiring."""
    return arranged(design, power=None)


def set_branch(design: Design, thruster: str, **changes: Any) -> Design:
    """The design with the wires of one motor changed.

    Raises:
        EditError: the thruster is not there, or a value is not allowed.
    """
    ref = Ref("thruster", thruster)
    item = find(design, ref)
    return put(design, ref, item.but(branch=changed(item.branch, **changes)))
