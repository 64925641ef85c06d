"""How long a survey and a review take of the processor, by hand: python -m tests.benchmarks.bench_survey

The survey of the demo is to take under 5 ms, of a frame of 500 bars under 100 ms.
"""

from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path
from statistics import median
from time import process_time

from model.design import Design
from model.files import load_design
from model.review import review
from model.survey import survey
from tests import worked

DEMO = Path(__file__).parent.parent.parent / "presets" / "demo"
ROUNDS = 15


def lattice() -> Design:
    """A lattice of 500 bars on 7 x 6 x 5 planes, 120 mm apart."""
    size = (7, 6, 5)
    ends = []
    for spot in product(*(range(count) for count in size)):
        for axis in range(3):
            there = tuple(place + (k == axis) for k, place in enumerate(spot))
            if there[axis] < size[axis]:
                ends.append((spot, (there[0], there[1], there[2])))
    x, y, z = (tuple(0.12 * k for k in range(count)) for count in size)
    return worked.design(worked.arrangement(x, y, z, ends[:500]))


def variants(design: Design) -> Iterator[Design]:
    """The design with its first plane moved a little each time, as an edit does."""
    first, *others = design.arrangement.stations
    for number in range(ROUNDS):
        yield design.arranged(stations=(first.but(at=first.at - number * 1e-4), *others))


def timed(what: Callable[[Design], object], design: Design) -> float:
    """The median time over some variants [ms]."""
    times = []
    for variant in variants(design):
        start = process_time()
        what(variant)
        times.append(1e3 * (process_time() - start))
    return median(times)


def yardstick() -> float:
    """The time of a loop of a million steps [ms]: 50 on a quiet desktop of 2023, three times that if not."""
    start, total = process_time(), 0
    for number in range(1_000_000):
        total += number
    return 1e3 * (process_time() - start)


def main() -> None:
    """Print the medians, and how fast the machine is while they are taken."""
    print(f"a loop of a million steps: {median(yardstick() for _ in range(5)):.0f} ms")
    demo = load_design(next(DEMO.glob("*.toml"))).design
    for name, design in (("demo", demo), ("500 bars", lattice())):
        bars = len(design.arrangement.bars)
        times = timed(survey, design), timed(review, design)
        print(f"{name}, {bars} bars: survey {times[0]:.1f} ms, review {times[1]:.1f} ms")


if __name__ == "__main__":
    main()
