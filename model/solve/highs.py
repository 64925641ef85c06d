"""Linear and whole-number programs, solved by HiGHS through its C interface.

HiGHS comes as a bare library in the package highsbox, without numpy; it is loaded when first asked.
"""

import ctypes
import os
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path

from msgspec import Struct

from model.errors import PoolwrightError

OPTIMAL = 7
"""HiGHS model status: optimal (highs_c_api.h, kHighsModelStatusOptimal)."""
ROW_WISE = 2
"""HiGHS matrix format: row by row (kHighsMatrixFormatRowwise)."""
MINIMISE = 1
LIBRARIES = ("lib/libhighs.so", "lib/libhighs.dylib", "bin/highs.dll")


class SolverMissing(PoolwrightError):
    """The solver's library cannot be loaded on this computer."""


class Row(Struct, frozen=True):
    """A constraint: low <= sum of coefficient x variable <= high, with variables by number."""

    terms: tuple[tuple[int, float], ...]
    low: float = float("-inf")
    high: float = float("inf")


class Solution(Struct, frozen=True):
    """The best values of the variables, their cost, and the dual value of each row (none if whole)."""

    values: tuple[float, ...]
    cost: float
    duals: tuple[float, ...]


def minimise(costs: Sequence[float], rows: Sequence[Row], *, whole: bool) -> Solution | None:
    """The cheapest values of variables of zero or more, in whole numbers or not; None if there are none.

    Raises:
        SolverMissing: the library is not there.
    """
    library = _library()
    starts, terms = [0], [term for row in rows for term in row.terms]
    for row in rows:
        starts.append(starts[-1] + len(row.terms))
    columns, count = len(costs), len(rows)
    values, duals = _doubles([0.0] * columns), _doubles([0.0] * count)
    status = ctypes.c_int(0)
    problem = (
        ctypes.c_int(columns),
        ctypes.c_int(count),
        ctypes.c_int(len(terms)),
        ctypes.c_int(ROW_WISE),
        ctypes.c_int(MINIMISE),
        ctypes.c_double(0.0),
        _doubles(costs),
        _doubles([0.0] * columns),
        _doubles([float("inf")] * columns),
        _doubles([row.low for row in rows]),
        _doubles([row.high for row in rows]),
        _integers(starts),
        _integers([number for number, _ in terms]),
        _doubles([value for _, value in terms]),
    )
    if whole:
        activity = _doubles([0.0] * count)
        library.Highs_mipCall(*problem, _integers([1] * columns), values, activity, ctypes.byref(status))
    else:
        spare = (_doubles([0.0] * columns), _doubles([0.0] * count))
        bases = (_integers([0] * columns), _integers([0] * count))
        library.Highs_lpCall(
            *problem, values, spare[0], spare[1], duals, bases[0], bases[1], ctypes.byref(status)
        )
    if status.value != OPTIMAL:
        return None
    cost = sum(cost * value for cost, value in zip(costs, values, strict=True))
    return Solution(tuple(values), cost, tuple(duals))


@lru_cache(maxsize=1)
def _library() -> ctypes.CDLL:
    try:
        import highsbox
    except ImportError as problem:
        raise SolverMissing("the solver highsbox is not installed; install poolwright again") from problem
    folder = Path(highsbox.highs_dist_dir())
    for name in LIBRARIES:
        if (folder / name).is_file():
            try:
                return ctypes.CDLL(os.fspath(folder / name))
            except OSError as problem:
                raise SolverMissing(f"the solver cannot be loaded here: {problem}") from problem
    raise SolverMissing(f"the solver's library is not in {folder}; install poolwright again")


def _doubles(values: Sequence[float]) -> "ctypes.Array[ctypes.c_double]":
    return (ctypes.c_double * len(values))(*values)


def _integers(values: Sequence[int]) -> "ctypes.Array[ctypes.c_int]":
    return (ctypes.c_int * len(values))(*values)
