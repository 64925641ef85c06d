"""How to hold the ruler: a small drawing, with a sentence or two beside it, for each thing to measure.

No line is wider than a page on a large screen, which is 52 letters.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from model.design.readings import What

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


def how_to(what: What) -> str:
    """The drawing with its sentences."""
    return HOW[what].strip("\n")
