"""A frame worked out again from the raw numbers of its file, by code that shares nothing with the model.

Lengths in mm, weights in g, matrices instead of direction texts.  Fittings are matched by trying
every way to put bars into sockets and asking numpy whether one rotation does it.
"""

import tomllib
from functools import cache
from itertools import permutations
from typing import Any

import numpy as np

from model.design import Design
from model.files import design_text

MILLIMETRES = {"mm": 1.0, "in": 25.4}
Assignment = tuple[int, ...]
"""For each bar of a joint, the number of the socket that takes it."""


class Raw:
    """The tables of a design file, with its lengths brought to mm on request."""

    def __init__(self, design: Design) -> None:
        self.tables = tomllib.loads(design_text(design))
        self.factor = MILLIMETRES[self.tables["units"]]
        self.run = self.tables["arrangements"][0]
        self.pipes = {pipe["id"]: pipe for pipe in self.tables["stock"]["pipes"]}
        self.fittings = self.tables["stock"].get("fittings", [])
        self.at = self._places()
        self.bars = {bar["id"]: bar for bar in self.run.get("bars", [])}

    def mm(self, value: float) -> float:
        """A length of the file in mm."""
        return value * self.factor

    def _places(self) -> dict[str, np.ndarray]:
        lines = ("stations", "sides", "levels")
        planes = {p["id"]: self.mm(p["at"]) for line in lines for p in self.run.get(line, [])}
        return {
            joint["id"]: np.array([planes[joint[key]] for key in ("station", "side", "level")])
            for joint in self.run.get("joints", [])
        }

    def pipe(self, bar: str) -> dict[str, Any]:
        """The pipe that a bar is made of; the first of the stock where none is named."""
        return self.pipes[self.bars[bar].get("pipe") or next(iter(self.pipes))]

    def arms(self, joint: str) -> list[tuple[str, np.ndarray]]:
        """The bars at a joint, each with its direction away from the joint."""
        found = []
        for bar in self.bars.values():
            for here, there in ((bar["start"], bar["end"]), (bar["end"], bar["start"])):
                if here == joint:
                    step = self.at[there] - self.at[here]
                    found.append((bar["id"], step / np.linalg.norm(step)))
        return found

    def candidates(self, joint: str) -> list[tuple[dict[str, Any], list[Assignment]]]:
        """The fittings that fit a joint and every way they do: fewest spare sockets, then the cheapest."""
        arms = self.arms(joint)
        ways = tuple((tuple(np.round(to, 9)), self.pipe(bar)["id"]) for bar, to in arms)
        fits = []
        for fitting in self.fittings:
            sockets = tuple((vector(s["to"]), s["pipe"]) for s in fitting["sockets"])
            if found := assignments(ways, sockets):
                fits.append((fitting, found))
        spare = len(arms)
        fits.sort(key=lambda fit: (len(fit[0]["sockets"]) - spare, fit[0].get("price", 0), fit[0]["mass"]))
        return fits

    def centre_to_face(self, socket: dict[str, Any]) -> float:
        """[mm]"""
        return self.mm(socket["laying_length"] + socket["depth"])

    def push_in(self, bar: str, socket: dict[str, Any]) -> float:
        """How far a bar goes into a socket [mm]: never past the stop."""
        return self.mm(min(self.pipe(bar)["insertion"], socket["depth"]))


@cache
def vector(direction: str) -> tuple[float, float, float]:
    """A direction such as +x or -y+z as a unit vector."""
    parts = [0.0, 0.0, 0.0]
    for sign, axis in zip(direction[::2], direction[1::2], strict=True):
        parts["xyz".index(axis)] = 1.0 if sign == "+" else -1.0
    length = sum(part * part for part in parts) ** 0.5
    return parts[0] / length, parts[1] / length, parts[2] / length


@cache
def assignments(ways: tuple[Any, ...], sockets: tuple[Any, ...]) -> list[Assignment]:
    """Every way to put the bars into sockets of their pipe size so that one rotation lays all of them."""
    found = []
    for chosen in permutations(range(len(sockets)), len(ways)):
        pairs = [(sockets[k], way) for k, way in zip(chosen, ways, strict=True)]
        if all(socket[1] == way[1] for socket, way in pairs) and same_angles(pairs):
            before, after = np.array([socket[0] for socket, _ in pairs]), np.array([w[0] for _, w in pairs])
            if rotation(before, after) is not None:
                found.append(chosen)
    return found


def same_angles(pairs: list[tuple[Any, Any]]) -> bool:
    """Whether the sockets stand to each other as the bars do; mirror images still pass."""
    return all(
        abs(dot(a[0], b[0]) - dot(v[0], w[0])) < 1e-6 for n, (a, v) in enumerate(pairs) for b, w in pairs[:n]
    )


def dot(a: Any, b: Any) -> float:
    """The cosine between two unit vectors."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def rotation(before: np.ndarray, after: np.ndarray) -> np.ndarray | None:
    """The rotation that turns some unit vectors into others, or None (Kabsch 1976, by singular values)."""
    u, _, v = np.linalg.svd(before.T @ after)
    flip = np.sign(np.linalg.det(v.T @ u.T))
    turn = v.T @ np.diag([1, 1, flip]) @ u.T
    return turn if np.allclose(before @ turn.T, after, atol=1e-6) else None
