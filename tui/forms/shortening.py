"""Texts cut to the width of a column so that those which differ can still be told apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache
from os.path import commonprefix

MARK = "…"


def told_apart(texts: Sequence[str], width: int) -> list[str]:
    """Each text in at most so many letters: its beginning, where another one begins so too its two ends,
    and where these are taken its beginning and a place where it differs from others.

    >>> told_apart(["port rail, vent", "port rail, drain", "keel"], 10)
    ['port …vent', 'port …rain', 'keel']
    """
    short = _told_apart(tuple(dict.fromkeys(texts)), width)
    return [short[text] for text in texts]


@lru_cache(64)
def _told_apart(texts: tuple[str, ...], width: int) -> dict[str, str]:
    short = {text: _beginning(text, width) for text in texts}
    counts = Counter(short.values())
    taken = {cut for cut in counts if counts[cut] == 1}
    for text in texts:
        if short[text] not in taken:
            ways = _ways(text, width, texts)
            short[text] = next((way for way in ways if way not in taken), short[text])
            taken.add(short[text])
    return short


def _ways(text: str, width: int, texts: tuple[str, ...]) -> Iterator[str]:
    """Ways to cut a text, the best first."""
    others = [other for other in texts if other != text]
    if all(_ends(other, width) != _ends(text, width) for other in others):
        yield _ends(text, width)
    places = {len(commonprefix([text, other])) for other in others}  # noqa: RUF071  of letters
    for place in sorted(places, reverse=True):
        yield _from(text, width, place)


def _beginning(text: str, width: int) -> str:
    return text if len(text) <= width else text[: max(0, width - 1)] + MARK


def _ends(text: str, width: int) -> str:
    tail = (width - 1) // 2
    return text[: width - 1 - tail] + MARK + text[len(text) - tail :]


def _from(text: str, width: int, place: int) -> str:
    """Its beginning, and what follows from the word at a place."""
    head = text[: max(1, (width - 1) // 3)]
    room = width - len(head) - 1
    word = text.rfind(" ", 0, place) + 1
    start = word if place - word < room // 2 else place
    start = max(len(head), min(start, len(text) - room))
    return head + MARK + _beginning(text[start:], room)
