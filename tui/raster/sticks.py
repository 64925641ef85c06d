"""A stick of pipe with its pieces on one line of text, to scale."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

EDGE, REST = "│", "░"


def stick_row(pieces: Sequence[tuple[str, float]], rest: float, cells: int) -> str:
    """The pieces (letter and length), then what is left over, in so many cells.

    >>> stick_row([("A", 0.5), ("B", 0.25)], 0.25, 12)
    '│A    │B │░░│'
    """
    whole = sum(length for _, length in pieces) + rest
    if whole <= 0:
        return EDGE
    edges, at = [0], 0.0
    for length in (*(length for _, length in pieces), rest):
        at += length
        edges.append(round(cells * at / whole))
    spans = [max(0, right - left - 1) for left, right in pairwise(edges)]
    words = [letter[:span].ljust(span) for (letter, _), span in zip(pieces, spans, strict=False)]
    return EDGE + "".join(f"{word}{EDGE}" for word in (*words, REST * spans[-1]))
