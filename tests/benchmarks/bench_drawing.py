"""How long a drawing takes: python tests/benchmarks/bench_drawing.py, by hand, on a quiet machine.

Three dimensioned views and the oblique one, scene and rows, at 100 x 40 cells: to stay under 4 ms.
"""

import gc
import sys
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from model.drawing.oblique import oblique_scene
from model.drawing.views import three_views
from model.presets import find_preset, load_preset
from model.survey import Survey, survey
from tests.drawing_designs import box_design, random_design
from tui.app import GARBAGE_THRESHOLDS
from tui.raster.drawing import sheet_panel

ROUNDS = 300


def four_views(results: Survey) -> None:
    """What the panel does for one frame of the large screen."""
    sheet_panel(three_views(results), 100, 40, beside=oblique_scene(results))


def milliseconds(call: Callable[[], object]) -> float:
    """The median time of a call [ms]."""
    times = []
    for _ in range(ROUNDS):
        start = perf_counter()
        call()
        times.append(perf_counter() - start)
    return median(times) * 1000


def main() -> None:
    """Print the medians, with garbage collected as the session does."""
    gc.freeze()
    gc.set_threshold(*GARBAGE_THRESHOLDS)
    box, large = survey(box_design()), survey(random_design(0, planes=6, most=400))
    demo = survey(load_preset(find_preset("demo", "newt")))
    print(f"demo, {len(demo.frame.bars)} bars: {milliseconds(lambda: four_views(demo)):.2f} ms")
    print(f"box with equipment, {len(box.frame.bars)} bars: {milliseconds(lambda: four_views(box)):.2f} ms")
    print(f"  scenes alone: {milliseconds(lambda: (three_views(box), oblique_scene(box))):.2f} ms")
    print(f"random frame, {len(large.frame.bars)} bars: {milliseconds(lambda: four_views(large)):.2f} ms")


if __name__ == "__main__":
    main()
