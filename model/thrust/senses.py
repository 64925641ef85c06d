"""Which ways a thruster can run: its switch and its propeller decide.

An on-off switch only joins and parts the wires; to run astern the two cores of a brushed motor have to
change places, which takes a switch with two poles and two ways, or a controller (textbook).
"""

from typing import Literal

from model.design import Motor, Power, Thruster

Sense = Literal["ahead", "astern"]


def turned_round(thruster: Thruster, power: Power | None) -> bool:
    """Whether its switch can turn a motor round; without a wiring there is no switch that forbids it."""
    return power is None or thruster.branch.reverses


def senses(thruster: Thruster, motor: Motor, power: Power | None) -> tuple[Sense, ...]:
    """The ways that a thruster can run.

    Ahead always; astern where its switch can turn it round, and nobody has measured that it pulls nothing so.
    """
    measured = thruster.pull.astern if thruster.pull else None
    if measured is None:
        measured = motor.thrust_astern
    both = turned_round(thruster, power) and measured != 0
    return ("ahead", "astern") if both else ("ahead",)
