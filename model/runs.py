"""A run on paper: the time over the brief's course, from the same equations as the top speeds.

Each leg begins and ends at rest.  A straight length is driven at full thrust and braked with the motors
turned round, a turn likewise; where they cannot brake, it is driven to the end of its leg.
"""

from collections.abc import Iterator
from math import radians

from msgspec import Struct

from model.design import Leg
from model.motion.body import AHEAD, AS_RECKONED, OTHERWISE, UP, Body
from model.motion.drag import weighted
from model.motion.motion import DOWN
from model.motion.span import Span, spanned
from model.motion.speed import Push, stopping
from model.motion.straight import pushes_along
from model.motion.turning import turn_pushes
from model.survey import Survey, motion_of
from model.vectors import Vector, scale

CASES = (AS_RECKONED, *OTHERWISE)
CRUISE = 0.995
"""Of the top speed: as near as it is taken to come."""
HALVINGS = 50


class LegTime(Struct, frozen=True):
    """One leg: in words, and its time [s]; None where the thrusters cannot do it, and then why."""

    words: str
    time: Span | None
    problem: str = ""


class RunTime(Struct, frozen=True):
    """The whole course: each leg, and the time over all [s]; None where a leg cannot be done."""

    legs: tuple[LegTime, ...]
    total: Span | None


class Effort(Struct, frozen=True):
    """A push, what can brake it [N or N m], and the drag alone while it does."""

    push: Push
    brake: float
    drag: float

    def time(self, way: float) -> float | None:
        """Time over a way from rest to rest [s]; None where nothing pushes."""
        if way <= 0:
            return 0.0
        if self.push.still <= 0:
            return None
        if self.brake <= 0:
            return self.push.time_over(way)
        fastest = CRUISE * self.push.top
        if self._length(fastest) <= way:
            return self._duration(fastest) + (way - self._length(fastest)) / fastest
        low, high = 0.0, fastest
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            if self._length(middle) > way:
                high = middle
            else:
                low = middle
        return self._duration(low)

    def _length(self, peak: float) -> float:
        return self.push.distance(peak) + self._stop(peak)[1]

    def _duration(self, peak: float) -> float:
        return self.push.time(peak) + self._stop(peak)[0]

    def _stop(self, peak: float) -> tuple[float, float]:
        return stopping(self.push.mass, peak, self.brake, self.drag)


def run_time(found: Survey) -> RunTime:
    """The time over the course of the brief; without a course there are no legs and no time."""
    body, load = motion_of(found).body, found.design.brief.load
    weight = load.in_water(found.balance.density) if load else 0.0
    legs, totals = [], [0.0] * len(CASES)
    possible = bool(found.design.brief.course)
    for leg in found.design.brief.course:
        times, problem = _leg(body, leg, weight if leg.loaded else 0.0)
        words = leg_words(leg)
        if problem:
            legs.append(LegTime(words, None, problem))
            possible = False
            continue
        legs.append(LegTime(words, spanned(times[0], times[1:])))
        totals = [total + time for total, time in zip(totals, times, strict=True)]
    return RunTime(tuple(legs), spanned(totals[0], totals[1:]) if possible else None)


def leg_words(leg: Leg) -> str:
    """A leg in words.

    >>> leg_words(Leg(ahead=3.0, turn=90, climb=-1.5, wait=10))
    '3 m ahead, a turn of 90 degrees, 1.5 m down, 10 s there'
    """
    words = [
        f"{leg.ahead:g} m ahead" if leg.ahead else "",
        f"a turn of {leg.turn:g} degrees" if leg.turn else "",
        f"{abs(leg.climb):g} m {'up' if leg.climb > 0 else 'down'}" if leg.climb else "",
        f"{leg.wait:g} s there" if leg.wait else "",
        "with the load" if leg.loaded else "",
    ]
    return ", ".join(word for word in words if word) or "nothing"


def _leg(body: Body, leg: Leg, load: float) -> tuple[list[float], str]:
    """The time of a leg in each case [s], or what cannot be done."""
    times = [leg.wait] * len(CASES)
    for way, efforts, problem in _parts(body, leg, load):
        if way <= 0:
            continue
        found = [effort.time(way) for effort in efforts]
        if found[0] is None:
            return [], problem
        usual = found[0]
        times = [time + (usual if one is None else one) for time, one in zip(times, found, strict=True)]
    return times, ""


def _parts(body: Body, leg: Leg, load: float) -> Iterator[tuple[float, list[Effort], str]]:
    yield leg.ahead, _straight(body, AHEAD, load), "no thruster drives it ahead"
    sides = [_turning(body, to_port) for to_port in (True, False)]
    slower, faster = sorted(sides, key=lambda efforts: efforts[0].push.still)
    helpless = faster[0].push.still <= 0
    problem = f"the thrusters {'cannot turn it' if helpless else 'turn it to one side only'}"
    yield radians(leg.turn), slower, problem
    up = leg.climb > 0
    problem = "the thrusters cannot lift it" if up else "the thrusters cannot push it down"
    yield abs(leg.climb), _straight(body, UP if up else DOWN, load), problem


def _straight(body: Body, along: Vector, load: float) -> list[Effort]:
    drag = body.resistances(along)
    back = pushes_along(body, scale(along, -1), load)
    return [
        Effort(push, brake.still, weighted(drag, case.drag))
        for push, brake, case in zip(pushes_along(body, along, load), back, CASES, strict=True)
    ]


def _turning(body: Body, to_port: bool) -> list[Effort]:
    back = turn_pushes(body, not to_port)
    return [
        Effort(push, brake.still, weighted(body.drag_turn, case.drag))
        for push, brake, case in zip(turn_pushes(body, to_port), back, CASES, strict=True)
    ]
