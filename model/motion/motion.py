"""How the vehicle moves: runs, turns, tilts and veer of one arrangement, each with its spread."""

from collections.abc import Sequence
from functools import cached_property

from msgspec import Struct

from model.design import Arrangement, Design
from model.frame.layout import Frame
from model.motion.attitude import Attitude, attitude, couples, hand_roll, veer
from model.motion.body import AHEAD, UP, Body, body_of
from model.motion.path import drift
from model.motion.span import Span
from model.motion.straight import Run, run
from model.motion.turning import Turn, turn, turn_pushes
from model.parts import Part
from model.thrust.drives import Drive
from model.vectors import Vector
from model.water.balance import Balance

ASTERN: Vector = (-1.0, 0.0, 0.0)
DOWN: Vector = (0.0, 0.0, -1.0)


class Motion(Struct, frozen=True, dict=True):  # the dict keeps what is worked out on demand
    """The results of motion; None where the thrusters do not make a move.

    Attributes:
        body: what went in.
        laden: up with the brief's heaviest load; None also where there is none.
        driven, climbing: the tilt under full thrust ahead and up.
        port, starboard: turns on the spot.
        veer: to port in each metre under full thrust ahead [deg/m].
        hand_roll: port side up, from propellers of one hand [deg]; None where a hand is not known.
    """

    body: Body
    ahead: Run | None
    astern: Run | None
    up: Run | None
    down: Run | None
    laden: Run | None
    driven: Attitude | None
    climbing: Attitude | None
    port: Turn | None
    starboard: Turn | None
    veer: Span | None
    hand_roll: Span | None

    @property
    def slower_turn(self) -> Turn | None:
        """The slower of the turns to port and to starboard."""
        if self.port is None or self.starboard is None:
            return None
        return max(self.port, self.starboard, key=lambda turn: turn.quarter.value)

    @property
    def held_straight(self) -> float:
        """What holding it straight under full thrust takes, as a share of what turns it; 1 at the most."""
        steering = min(turn_pushes(self.body, to_port)[0].still for to_port in (True, False))
        return min(1.0, abs(couples(self.body, AHEAD)[0][2]) / steering) if steering > 0 else 1.0

    @cached_property
    def drift(self) -> Span | None:
        """How far off its pivot the slower quarter turn ends [m]; worked out when it is first asked for."""
        turn = self.slower_turn
        return drift(self.body, turn is self.port, turn.quarter.value) if turn else None


def motion(
    design: Design,
    arrangement: Arrangement,
    frame: Frame,
    parts: Sequence[Part],
    balance: Balance,
    drives: tuple[Drive, ...],
) -> Motion:
    """How one arrangement moves."""
    body = body_of(arrangement, frame, parts, balance, drives)
    load = design.brief.load
    ahead, up = run(body, AHEAD), run(body, UP)
    return Motion(
        body=body,
        ahead=ahead,
        astern=run(body, ASTERN),
        up=up,
        down=run(body, DOWN),
        laden=run(body, UP, load.in_water(balance.density)) if load else None,
        driven=attitude(body, AHEAD) if ahead else None,
        climbing=attitude(body, UP) if up else None,
        port=turn(body, to_port=True),
        starboard=turn(body, to_port=False),
        veer=veer(body, ahead) if ahead else None,
        hand_roll=hand_roll(body),
    )
