"""A box of pipe in motion, worked out again from the raw numbers of its file; nothing of the model is used.

Every cylinder is cut into a hundred slices by numpy, the pull falls as in the B-series (``b_series``), what
stands in a stream is sampled on a dense grid (``streams``), and scipy solves the equations.  Coefficients are
typed again from the sources: cylinders across the flow 1.1 (standard curve), free ends after the
Aeronautical Engineer's Data Book fig. 5.13, skin friction 0.005 and tether 1.2 (from memory).
"""

import tomllib
from copy import copy
from math import cos, pi, sin, sqrt

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from model.design import Design
from model.files import design_text
from tests.reference import streams
from tests.reference.b_series import pull_over_advance

FACE, HUB = 0.03175, 0.02794  # m, of every corner in tests.worked
DISC = 0.010  # m, from the edge of a propeller's disc to the other
FREE = ((0, 1, 2, 5, 10, 20, 40, 80), (0.63, 0.63, 0.68, 0.74, 0.82, 0.89, 0.98, 1.1))
END_ON = ((0, 1, 2, 4, 7), (1.12, 0.91, 0.85, 0.87, 0.99))
ACROSS = ((0, 1.2, 2.5, 5, 9, 30), (0, 0.62, 0.78, 0.90, 0.96, 1))
ALONG = ((0, 1, 2, 5, 10, 20), (1, 1.39, 1.459, 1.516, 1.541, 1.566))
SLICES = 100


def direction(text: str) -> np.ndarray:
    """A direction such as -x+z as a unit vector."""
    way = np.zeros(3)
    for sign, axis in zip(text[::2], text[1::2], strict=True):
        way["xyz".index(axis)] = 1 if sign == "+" else -1
    return way / np.linalg.norm(way)


class Swimmer:
    """A box made by ``tests.worked`` with thrusters, threaded floats and a tether; sealed or flooded."""

    def __init__(self, design: Design, density: float) -> None:
        tables = tomllib.loads(design_text(design))
        assert tables["units"] == "mm"
        self.rho, self.run, self.tables = density, tables["arrangements"][0], tables
        planes = {p["id"]: p["at"] / 1000 for k in ("stations", "sides", "levels") for p in self.run[k]}
        self.at = {
            j["id"]: np.array([planes[j[k]] for k in ("station", "side", "level")])
            for j in self.run["joints"]
        }
        self.bars = {b["id"]: (self.at[b["start"]], self.at[b["end"]]) for b in self.run["bars"]}
        self.pipe = tables["stock"]["pipes"][0]
        self.lumps: list[tuple[float, np.ndarray]] = []  # mass, place
        self.cylinders: list[tuple[np.ndarray, np.ndarray, float, bool]] = []  # ends, d, free
        self.discs: list[tuple[np.ndarray, np.ndarray, float]] = []  # ends, d
        self._frame()
        self._floats()
        self._thrusters()
        total = sum(mass for mass, _ in self._masses())
        self.mass = total
        self.g = sum(mass * place for mass, place in self._masses()) / total
        self.slices = [piece for cylinder in self.cylinders for piece in self._sliced(*cylinder)]
        self._tether()
        counts = [len(points) for points, *_ in self.slices]
        self.points = np.concatenate([points for points, *_ in self.slices])
        ways, across, along = ([slice[column] for slice in self.slices] for column in (1, 2, 3))
        self.ways = np.repeat(np.array(ways), counts, axis=0)
        self.across, self.along_it = np.repeat(across, counts)[:, None], np.repeat(along, counts)[:, None]
        kinds = ["bodies" if free else "pipes" for *_, free in self.cylinders]
        kinds += ["tether"] * (len(counts) - len(kinds))
        self.kinds = np.repeat(kinds, counts)

    def otherwise(self, pull: float = 1.0, gone: float = 1.0, **drag: float) -> "Swimmer":
        """The same with its drag (pipes, bodies, tether), pulls and the speeds where they end changed."""
        other = copy(self)
        factors = np.array([drag.get(kind, 1.0) for kind in self.kinds])[:, None]
        other.across, other.along_it = factors * self.across, factors * self.along_it
        other.drives = [
            (centre, way, [pull * each for each in pulls], [gone * each for each in speeds])
            for centre, way, pulls, speeds in self.drives
        ]
        return other

    def place(self, item: dict) -> np.ndarray:
        """Where something sits on its bar [m]."""
        start, end = self.bars[item["bar"]]
        return start + item.get("at", 0.5) * (end - start)

    def _frame(self) -> None:
        od, bore = self.pipe["outside_diameter"] / 1000, self.pipe["bore"] / 1000
        push = self.pipe["insertion"] / 1000
        ends: dict[str, list[np.ndarray]] = {}
        for bar in self.run["bars"]:
            a, b = self.bars[bar["id"]]
            way = (b - a) / np.linalg.norm(b - a)
            self.cylinders.append((a + FACE * way, b - FACE * way, od, False))
            length = np.linalg.norm(b - a) - 2 * FACE + 2 * push
            self.lumps.append((pi / 4 * (od**2 - bore**2) * length * self.pipe["density"], (a + b) / 2))
            ends.setdefault(bar["start"], []).append(way)
            ends.setdefault(bar["end"], []).append(-way)
        for joint, ways in ends.items():
            centre = self.at[joint]
            for way in ways:
                self.cylinders.append((centre, centre + FACE * way, HUB, False))
            self.lumps.append((0.025, centre + sum(ways) * FACE / 2 / len(ways)))

    def _floats(self) -> None:
        foams = {foam["id"]: foam for foam in self.tables["supplies"]["foams"]}
        od = self.pipe["outside_diameter"] / 1000
        for piece in self.run.get("floats", []):
            foam = foams[piece["foam"]]
            outer, hole = foam["outside_diameter"] / 1000, foam["hole"] / 1000
            wide = sqrt(outer**2 - hole**2 + max(hole, od) ** 2)
            a, b = self.bars[piece["bar"]]
            way, middle, length = (b - a) / np.linalg.norm(b - a), self.place(piece), piece["length"] / 1000
            self.cylinders.append((middle - way * length / 2, middle + way * length / 2, wide, True))
            self.lumps.append((pi / 4 * (outer**2 - hole**2) * length * foam["density"], middle))

    def _thrusters(self) -> None:
        motors = {motor["id"]: motor for motor in self.tables["supplies"]["motors"]}
        items = self.run.get("thrusters", [])
        kinds = [motors[item["motor"]] for item in items]
        places = [
            (
                self.place(item) + np.array(item.get("offset", [0, 0, 0])) / 1000,
                direction(item.get("to", "+x")),
            )
            for item in items
        ]
        for (centre, way), motor in zip(places, kinds, strict=True):
            reach, wide = way * motor["body_length"] / 2000, motor["propeller_diameter"] / 1000
            self.cylinders.append((centre - reach, centre + reach, motor["body_diameter"] / 1000, True))
            self.discs.append((centre - reach - DISC * way, centre - reach, wide))
            self.lumps.append((motor["mass"] / 1000, centre))
        self.drives = []
        for number, (item, motor) in enumerate(zip(items, kinds, strict=True)):
            pulls = [motor["thrust_ahead"], 0.0 if self._one_way(item) else motor["thrust_astern"]]
            area = pi / 4 * (motor["propeller_diameter"] / 1000) ** 2
            gone = [2.05 * sqrt(pull / (2 * self.rho * area)) for pull in pulls]
            left = [pull * (1 - self.lost(number, sense)) for pull, sense in zip(pulls, (1, -1), strict=True)]
            self.drives.append((*places[number], left, gone))

    def _one_way(self, item: dict) -> bool:
        """Whether a motor hangs on a switch that only turns it on and off."""
        return "power" in self.run and item.get("branch", {}).get("switching") == "on-off switch"

    def lost(self, number: int, sense: int) -> float:
        """What all that stands in the stream of one propeller costs it, running ahead or astern."""
        a, b, wide = self.discs[number]
        way = (a - b) / DISC * sense  # of the water
        own = len(self.cylinders) - len(self.discs) + number
        others = [c[:3] for n, c in enumerate(self.cylinders) if n != own]
        others += [disc for n, disc in enumerate(self.discs) if n != number]
        return min(1.0, sum(streams.lost((a + b) / 2, way, wide / 2, *one) for one in others))

    def _masses(self) -> list[tuple[float, np.ndarray]]:
        tether = self.run.get("tether")
        extra = (
            [(tether["mass_per_m"] / 1000 * tether["hanging"] / 1000, self.place(tether))] if tether else []
        )
        return self.lumps + extra

    def _sliced(self, a: np.ndarray, b: np.ndarray, d: float, free: bool) -> list[tuple]:
        length = np.linalg.norm(b - a)
        way, slender = (b - a) / length, length / d
        drag = np.interp(slender, *FREE) if free else 1.1
        across = self.rho / 2 * drag * d * length / SLICES
        along = self.rho / 2 * 0.005 * pi * d * length / SLICES
        if free:
            along += self.rho / 2 * np.interp(slender, *END_ON) * pi / 4 * d**2 / SLICES
        shares = (np.arange(SLICES) + 0.5) / SLICES
        return [(a + np.outer(shares, b - a), way, across, along)]

    def _tether(self) -> None:
        tether = self.run.get("tether")
        if tether:
            d, length = tether["diameter"] / 1000, tether["hanging"] / 1000
            across, along = self.rho / 2 * 1.2 * d * length, self.rho / 2 * 0.005 * pi * d * length
            self.slices.append((self.place(tether)[None, :], np.array([0, 0, 1.0]), across, along))

    def drag(self, velocity: np.ndarray, spin: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Force and moment about G of the water, at a speed of G and a rate."""
        arm = self.points - self.g
        speed = velocity + np.cross(spin, arm)
        tangent = (speed * self.ways).sum(axis=1, keepdims=True)
        normal = speed - tangent * self.ways
        size = np.linalg.norm(normal, axis=1, keepdims=True)
        push = -(self.across * size * normal + self.along_it * np.abs(tangent) * tangent * self.ways)
        return push.sum(axis=0), np.cross(arm, push).sum(axis=0)

    def thrust(self, order, velocity, spin) -> tuple[np.ndarray, np.ndarray]:
        """Force and moment about G of the thrusters; ``order`` tells each 1, -1 or 0."""
        force, moment = np.zeros(3), np.zeros(3)
        for (centre, way, pulls, gone), sense in zip(self.drives, order, strict=True):
            one = 0 if sense > 0 else 1
            if sense and gone[one]:
                speed = sense * float(way @ (velocity + np.cross(spin, centre - self.g)))
                push = sense * way * pulls[one] * pull_over_advance(speed / gone[one])
                force, moment = force + push, moment + np.cross(centre - self.g, push)
        return force, moment

    def added(self, way: np.ndarray) -> float:
        """Added mass along a direction [kg]."""
        total = 0.0
        for a, b, d, free in self.cylinders:
            length, axis = np.linalg.norm(b - a), (b - a) / np.linalg.norm(b - a)
            across = np.interp(length / d, *ACROSS) if free else 1.0
            ends = np.interp(length / d, *ALONG) * 8 / 3 * (d / 2) ** 3 if free else 0.0
            facing = (axis @ way) ** 2
            total += self.rho * (across * pi / 4 * d**2 * length * (1 - facing) + ends * facing)
        tether = self.run.get("tether")
        if tether:
            volume = pi / 4 * (tether["diameter"] / 1000) ** 2 * tether["hanging"] / 1000
            total += self.rho * volume * (1 - way[2] ** 2)
        return total

    def orders(self, way: np.ndarray) -> list[int]:
        """Each thruster the way that helps along a direction, off where it hardly does."""
        return [int(np.sign(drive[1] @ way)) if abs(drive[1] @ way) > 0.1 else 0 for drive in self.drives]

    def along(self, way: np.ndarray, speed: float, net: float) -> float:
        """All force along a direction at a speed along it [N]."""
        velocity, still = speed * way, np.zeros(3)
        pull = self.thrust(self.orders(way), velocity, still)[0] @ way
        return float(pull + self.drag(velocity, still)[0] @ way + net * way[2])

    def top(self, way: np.ndarray, net: float = 0.0) -> float:
        """Top speed along a direction [m/s]."""
        return brentq(lambda speed: self.along(way, speed, net), 1e-6, 5.0)

    def to_ninety(self, way: np.ndarray, mass: float) -> tuple[float, float]:
        """Time and distance to 90 % of top speed."""
        goal = 0.9 * self.top(way)

        def there(_, state):
            return state[1] - goal

        there.terminal = True
        run = solve_ivp(
            lambda _, s: [s[1], self.along(way, s[1], 0.0) / mass],
            (0, 60),
            [0, 0],
            events=there,
            max_step=0.05,
        )
        return run.t[-1], run.y[0][-1]

    def quarter(self, inertia: float, to_port: bool) -> float:
        """Time through a quarter turn with the pivot held."""
        order = []
        for centre, way, _, _ in self.drives:
            arm = np.cross(centre - self.g, way)[2]
            order.append(0 if abs(arm) <= 0.01 else (1 if (arm > 0) == to_port else -1))
        sign = 1 if to_port else -1

        def rates(_, state):
            spin = np.array([0, 0, state[1]])
            moment = self.drag(np.zeros(3), spin)[1] + self.thrust(order, np.zeros(3), spin)[1]
            return [state[1], moment[2] / inertia]

        def there(_, state):
            return sign * state[0] - pi / 2

        there.terminal = True
        return solve_ivp(rates, (0, 120), [0, 0], events=there, max_step=0.05).t[-1]

    def couple(self, way: np.ndarray, net: float = 0.0) -> np.ndarray:
        """Moment about G at top speed [N m]."""
        velocity, still = self.top(way, net) * way, np.zeros(3)
        return self.drag(velocity, still)[1] + self.thrust(self.orders(way), velocity, still)[1]

    def planar(self, order, masses: tuple[float, float, float], seconds: float) -> np.ndarray:
        """x, y, heading, u, v, r after some seconds from rest (Kirchhoff's equations)."""
        return self._planar(order, masses, seconds).y[:, -1]

    def drift(self, to_port: bool, masses: tuple[float, float, float], seconds: float) -> float | None:
        """How far off its spot a quarter turn ends [m], pivot free; None where it takes over some seconds."""
        order = []
        for centre, way, _, _ in self.drives:
            arm = np.cross(centre - self.g, way)[2]
            order.append(0 if abs(arm) <= 0.01 else (1 if (arm > 0) == to_port else -1))

        def there(_, state):
            return abs(state[2]) - pi / 2

        there.terminal = True
        run = self._planar(order, masses, seconds, there)
        return float(np.hypot(*run.y[:2, -1])) if run.status == 1 else None

    def _planar(self, order, masses, seconds, events=None):
        mx, my, inertia = masses

        def rates(_, s):
            _, _, h, u, v, r = s
            velocity, spin = np.array([u, v, 0]), np.array([0, 0, r])
            force, moment = (
                a + b
                for a, b in zip(self.drag(velocity, spin), self.thrust(order, velocity, spin), strict=True)
            )
            return [
                u * cos(h) - v * sin(h),
                u * sin(h) + v * cos(h),
                r,
                (force[0] + my * v * r) / mx,
                (force[1] - mx * u * r) / my,
                (moment[2] + (mx - my) * u * v) / inertia,
            ]

        return solve_ivp(rates, (0, seconds), [0] * 6, rtol=1e-7, atol=1e-9, events=events)
