"""How to hold the ruler: a small drawing, with a sentence or two beside it, for each thing to measure.

No line is wider than a page on a large screen, which is 52 letters.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from model.design.readings import What
    from model.design.stock import Shape

HUB = """
 │◄── hub ──►│
 ┌─┬───────┬─┐   Lay the ruler across the outside
 │ │       │ │   of a socket, where it is widest.
 └─┘       └─┘
"""
DEPTH = """
 ┌─┬─────┬─┐ ─┬─       Stand a thin stick in the
 │ │     │ │ depth     socket, mark it at the face,
 │ └─────┘ │ ─┴─       measure from end to mark.
"""
RUN = """
 │◄─ face to face ─►│
 ╞═══╗          ╔═══╡   Lay it flat. Hold the ruler
 ╞═══╝          ╚═══╡   along the two sockets in one
 └─────┐      ┌─────┘   line, from face to face.
       └──────┘
"""
BRANCH = """
 │◄ face to far side►│
 ╞═══╗         ┌─────┐   From the face of one socket
 ╞═══╝         │     │   straight on to the far side
 └─────────────┤     │   of what lies across it.
               └┬───┬┘   Measure the hub first.
"""
BENT = """
 ──────────── ─┬─        Stand it on one face. Lay a
    /  \\      far        board level on top. Measure
   |   /      side       from table to board.
   |___|      ─┴─        Measure the hub first.
"""
CAP = """
 ┌─────────┐ ─┬─         Stand it on its open face.
 │ ┌─────┐ │ far         Measure from the table up
 │ │     │ │ side        to the highest point of
 └─┘     └─┘ ─┴─         its closed end.
"""
JOINT = """
 │◄───── the whole ─────►│   Measure two pieces. Push
 ┌───────┬───────┬───────┐   them in, dry, as hard as
 │piece 1│fitting│piece 2│   you will on the day.
 └───────┴───────┴───────┘   Then measure the whole.
"""
HOW: dict[What, str] = {
    "hub": HUB,
    "socket depth": DEPTH,
    "face to face": RUN,
    "face to far side": BRANCH,
    "dry joint": JOINT,
}
FAR_SIDES: dict[Shape, str] = {"elbow 45": BENT, "cap": CAP}
"""Shapes whose far side is measured in another way."""


def how_to(what: What, shape: Shape | None = None) -> str:
    """The drawing with its sentences."""
    other = FAR_SIDES.get(shape) if shape and what == "face to far side" else None
    return (other or HOW[what]).strip("\n")
