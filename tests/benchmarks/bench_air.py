"""How long the air in the pipes takes: python tests/benchmarks/bench_air.py, by hand, on a quiet machine.

For the demo: the six attitudes and the lift-out as the survey asks for them, new and remembered, what a page
asks for besides, and the fewest holes (under 1 s).  Then a lattice of about 500 bars, and of 2,000.
"""

import sys
from collections.abc import Callable
from itertools import product
from pathlib import Path
from statistics import median
from time import process_time

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from model.design import Design, Opening
from model.presets import find_preset, load_preset
from model.solve import holes
from model.survey import Survey, survey
from model.water.air import air, fill
from model.water.air.recent import Recent
from tests import worked


def milliseconds(call: Callable[[], object], rounds: int) -> float:
    """The median processor time of a call [ms], so that a busy machine matters less."""
    times = []
    for _ in range(rounds):
        start = process_time()
        call()
        times.append(process_time() - start)
    return median(times) * 1000


def lattice(x: int, y: int, z: int) -> Design:
    """All bars between the joints of a lattice of 200 mm, with one hole in ten bars on the crown or below."""
    ends = []
    for spot in product(range(x), range(y), range(z)):
        for axis, count in enumerate((x, y, z)):
            if spot[axis] + 1 < count:
                ends.append((spot, tuple(place + (k == axis) for k, place in enumerate(spot))))
    lines = [tuple(0.2 * k for k in range(count)) for count in (x, y, z)]
    upright = {n for n, (a, b) in enumerate(ends) if a[2] != b[2]}
    drilled = [
        Opening(id=f"o{n}", name=f"hole {n}", bar=f"b{n}", face="+x" if n in upright else "+z", through=True)
        for n in range(0, len(ends), 10)
    ]
    return worked.design(worked.arrangement(*lines, ends, openings=tuple(drilled)))


def anew(found: Survey) -> None:
    """The air with nothing remembered."""
    air._remembered = Recent(8)
    fill._overlap_above.cache_clear()
    air.air_of(found.design, found.arrangement, found.frame, found.balance)


def proposal(found: Survey, *, keep: bool) -> None:
    """The fewest holes with nothing remembered."""
    holes._remembered = Recent(4)
    fill._overlap_above.cache_clear()
    holes.fewest(found, keep=keep)


def timed(name: str, design: Design, rounds: int) -> None:
    """Print the medians of one design."""
    found = survey(design)
    print(f"{name}, {len(found.frame.bars)} bars")
    print(f"  survey's share, anew: {milliseconds(lambda: anew(found), rounds):.2f} ms")
    again = milliseconds(
        lambda: air.air_of(design, found.arrangement, survey(design).frame, found.balance), rounds
    )
    print(f"  a whole survey and the air remembered: {again:.2f} ms")
    for topic in ("spread", "flooding", "draining", "tilt"):
        fresh = air.air_of(design, found.arrangement, found.frame, found.balance)
        print(f"  {topic}: {milliseconds(lambda fresh=fresh, topic=topic: getattr(fresh, topic), 1):.1f} ms")
    for keep in (True, False):
        asked = milliseconds(lambda keep=keep: proposal(found, keep=keep), 1)
        print(f"  fewest holes, {'added' if keep else 'anew'}: {asked:.0f} ms")


def main() -> None:
    """Print the times."""
    timed("demo", load_preset(find_preset("demo", "newt")), 50)
    timed("lattice", lattice(6, 6, 5), 3)
    timed("lattice", lattice(9, 9, 9), 1)


if __name__ == "__main__":
    main()
