"""How long motion and power take: python tests/benchmarks/bench_motion.py, by hand, on a quiet machine.

Motion and power of the demo inside 5 ms beside its survey, a size sweep of 13 points under 150 ms.  The
times are those of the processor, so that a busy machine misleads less.
"""

import sys
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import process_time

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from model.motion.motion import motion
from model.power.wiring import wiring
from model.presets import find_preset, load_preset
from model.runs import run_time
from model.solve.sweep import size_sweep
from model.solve.wires import longer_tether
from model.survey import survey
from model.thrust.clear import clearances
from model.thrust.depth import propeller_depths
from model.thrust.mounts import mount_plans

ROUNDS = 15


def milliseconds(call: Callable[[], object]) -> float:
    """The median processor time of a call [ms]."""
    times = []
    for _ in range(ROUNDS):
        start = process_time()
        call()
        times.append(process_time() - start)
    return median(times) * 1000


def main() -> None:
    """Print the medians."""
    design = load_preset(find_preset("demo", "newt"))
    found = survey(design)
    run, frame, parts = found.arrangement, found.frame, found.parts
    calls: dict[str, Callable[[], object]] = {
        "survey": lambda: survey(design),
        "  of it room and streams": lambda: clearances(run, frame, parts),
        "  of it wiring": lambda: wiring(design, run, found.balance.density),
        "motion": lambda: motion(design, run, frame, parts, found.balance, found.drives),
        "mounts": lambda: mount_plans(design, run, frame, parts),
        "propeller depths": lambda: propeller_depths(parts, found.balance),
        "motion with its drift": lambda: motion(design, run, frame, parts, found.balance, found.drives).drift,
        "run on paper": lambda: run_time(found),
        "five metres more tether": lambda: longer_tether(found),
        "size sweep of 13 points": lambda: size_sweep(found),
    }
    for name, call in calls.items():
        print(f"{name:<26}{milliseconds(call):8.2f} ms")


if __name__ == "__main__":
    main()
