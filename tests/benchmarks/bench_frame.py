"""How long the frame takes: python tests/benchmarks/bench_frame.py, by hand, on a quiet machine.

Finding the fittings of a frame of 500 joints: to stay under 50 ms, with a stock that was never seen before.
"""

import sys
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from model.clashes import clashes
from model.design import Design
from model.fittings.match import Catalogue
from model.frame.layout import lay_out, ways
from model.hoop import smallest_hoop
from model.presets import find_preset, load_preset
from model.silhouette import silhouettes
from model.survey import Survey, survey
from model.tolerance import rectangles, size_errors
from tests import worked
from tests.drawing_designs import stock

ROUNDS = 15
SIDE = 8
"""Joints along each side of the lattice: 8 x 8 x 8 = 512 joints, 1344 bars."""


def lattice() -> Design:
    """A lattice of cubes, with every fitting up to the six-way."""
    places = tuple(n / 10 for n in range(SIDE))
    spots = [(x, y, z) for x in range(SIDE) for y in range(SIDE) for z in range(SIDE)]
    ends = [
        (spot, tuple(at + (n == axis) for n, at in enumerate(spot)))
        for spot in spots
        for axis in range(3)
        if spot[axis] + 1 < SIDE
    ]
    return worked.design(worked.arrangement(places, places, places, ends), stock=stock())


def milliseconds(call: Callable[[], object]) -> float:
    """The median time of a call [ms]."""
    times = []
    for _ in range(ROUNDS):
        start = perf_counter()
        call()
        times.append(perf_counter() - start)
    return median(times) * 1000


def search(design: Design, found: Survey) -> None:
    """Every joint matched with a catalogue made anew."""
    catalogue = Catalogue(design.stock)
    for joint in found.frame.joints.values():
        needed = ways(joint.arms)
        assert needed is not None
        assert catalogue.match(needed, None) is not None


def main() -> None:
    """Print the medians."""
    large = lattice()
    found = survey(large)
    print(f"{len(found.frame.joints)} joints, {len(found.frame.bars)} bars")
    print(f"fitting search: {milliseconds(lambda: search(large, found)):.1f} ms (to stay under 50)")
    print(f"frame laid out: {milliseconds(lambda: lay_out(large, large.arrangement)):.1f} ms")
    demo = load_preset(find_preset("demo", "newt"))
    results = survey(demo)
    limits = demo.brief.thresholds
    calls: dict[str, Callable[[], object]] = {
        "silhouettes": lambda: silhouettes(results.parts),
        "hoop": lambda: smallest_hoop(results.parts),
        "size errors": lambda: size_errors(
            results.arrangement, results.frame, results.parts, results.extents, limits
        ),
        "rectangles": lambda: rectangles(results.frame, limits),
        "clashes": lambda: clashes(results.arrangement, results.frame, results.parts, limits),
    }
    for name, call in calls.items():
        print(f"demo, {name}: {milliseconds(call):.2f} ms")


if __name__ == "__main__":
    main()
