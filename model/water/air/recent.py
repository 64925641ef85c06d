"""A small memory of results, for what is worked out again and again from what seldom changes."""

from collections.abc import Callable
from typing import Generic, TypeVar

Key = TypeVar("Key")
Result = TypeVar("Result")


class Recent(Generic[Key, Result]):
    """The last few results, looked up by comparing keys: for keys without a hash, and cheap to compare."""

    def __init__(self, size: int) -> None:
        self._size = size
        self._kept: tuple[tuple[Key, Result], ...] = ()

    def get(self, key: Key, make: Callable[[], Result]) -> Result:
        """The result for a key, made now if it is not among the last few."""
        for known, result in self._kept:
            if known == key:
                return result
        result = make()
        self._kept = ((key, result), *self._kept[: self._size - 1])
        return result
