"""How long money and sheets take: a class-size cutting plan, the published instance of 73, all sheets.

Run by hand: ``.venv/bin/python tests/benchmarks/bench_money.py``.
"""

import sys
from pathlib import Path
from random import Random
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from model.design import Pipe, Stick
from model.money.cutting_plan import cutting_plan
from model.money.cutting_task import Source
from model.presets import load_preset, presets
from model.review import review
from model.sheets.pack import sheet_files

ROLLS = (1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200)
DEMANDS = (22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20)


def pipe(*sticks: tuple[float, float]) -> Pipe:
    """A pipe in some lengths [m] at some prices."""
    return Pipe(
        id="p", name="pipe", material="PVC", outside_diameter=0.0213, bore=0.0153, insertion=0.015,
        sticks=tuple(Stick(length=length, price=price) for length, price in sticks),
    )  # fmt: skip


def timed(name: str, *task: object) -> float:
    """Plans once and says how long it took [s]."""
    start = perf_counter()
    plan = cutting_plan(*task)  # type: ignore[arg-type]
    seconds = perf_counter() - start
    print(f"{name}: {plan.cost if plan else None}, proven {plan and plan.proven}, {seconds * 1000:.0f} ms")
    return seconds


def main() -> None:
    """Prints the slowest of fifty class-size lists and the published instance."""
    slowest = 0.0
    for seed in range(50):
        dice = Random(seed)
        lengths = [dice.uniform(0.08, 0.45) for _ in range(12)]
        cuts = [dice.choice(lengths) for _ in range(40)]
        held = [Source(0.5, count=2), Source(0.31, count=1)]
        three = pipe((3.048, 4.0), (1.524, 2.5), (0.61, 1.2))
        slowest = max(slowest, timed(f"class list {seed}", three, cuts, 0.001, held))
    print(f"slowest class list {slowest * 1000:.0f} ms (wanted: 500)")
    rolls = [roll / 1000 for roll, demand in zip(ROLLS, DEMANDS, strict=True) for _ in range(demand)]
    timed("paper rolls of 5600 (wanted: 73 in 10 s)", pipe((5.6, 1.0)), rolls, 0.0)
    report = review(load_preset(presets("demo")[0]))
    for paper in ("A4", "Letter"):
        start = perf_counter()
        files = sheet_files(report, paper)
        print(f"all sheets, {paper}: {len(files)} files, {perf_counter() - start:.2f} s (wanted: 3)")


if __name__ == "__main__":
    main()
