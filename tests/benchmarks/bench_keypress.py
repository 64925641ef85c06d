"""A key press to the repainted screen at 120 x 40, in a pseudo-terminal: the median within 33 ms.

Run by hand: ``.venv/bin/python -m tests.benchmarks.bench_keypress [RUNS]``.
"""

import os
import statistics
import sys
import tempfile
import time
from itertools import cycle, islice
from pathlib import Path

from tests.terminal import Terminal

PROGRAM = str(Path(sys.executable).parent / "poolwright")
MOST_MS = 33.0
NEXT, BEFORE = "\x1b[20~", "\x1b[19~"
PAGES = 12
STOCK, THRUSTERS = 1, 4
"""Steps from the first page to one with fields, and to the table of thrusters, which has the focus there."""
KEYS = {
    "move a thruster": (("\x1b[C", "\x1b[D"), THRUSTERS),
    "turn the drawing": (("\x1bOS",), STOCK),
    "next field": (("\t",), STOCK),
    "type a letter": (("a",), STOCK),
}
"""What is pressed in turn, and after how many steps from the first page."""
REST = 0.7
"""[s] Between two presses, by when the remedies of an edit are proved and the file is saved."""
QUIET = 0.012
"""[s] A frame has ended when nothing more comes for this long, which is not counted.  A tick later Textual
paints the scroll bars once more, as they are."""


def press(terminal, keys, rest=0.15):
    """Seconds from a key to the last byte of the frame that it causes."""
    until = time.perf_counter() + rest
    while (left := until - time.perf_counter()) > 0:
        terminal.read(left)
    terminal.seen = b""
    started = last = time.perf_counter()
    os.write(terminal.master, keys.encode())
    terminal.read(5.0)
    last = time.perf_counter()
    while terminal.read(QUIET):
        last = time.perf_counter()
    return last - started


def main(runs=30):
    good = True
    with tempfile.TemporaryDirectory() as folder:
        terminal = Terminal([PROGRAM, "demo"], 120, 40, {"POOLWRIGHT_STATE": folder})
        terminal.wait_for("F10 Quit")
        go(terminal, NEXT, PAGES - 1)  # every page once, so that none is made while we time
        for name, key in (("step before", BEFORE), ("next step", NEXT)) * 2:
            good &= tell(name, [press(terminal, key) for _ in range(PAGES - 1)])
        here = PAGES - 1
        for name, (keys, steps) in KEYS.items():
            go(terminal, BEFORE, here - steps + 1)
            go(terminal, NEXT, 1)  # by which the page has the focus where its work begins
            here = steps
            turns = islice(cycle(keys), runs)
            good &= tell(name, [press(terminal, key, REST) for key in turns])
        terminal.kill()
    return 0 if good else 1


def go(terminal, key, steps):
    """Press a key some times, untimed."""
    for _ in range(steps):
        press(terminal, key)


def tell(name, times):
    """Print the median; whether it is within the most."""
    median, worst = statistics.median(times) * 1000, max(times) * 1000
    print(f"{name:18} median {median:5.1f} ms, worst {worst:5.1f} ms (most {MOST_MS:.0f})")
    return median <= MOST_MS


if __name__ == "__main__":
    raise SystemExit(main(*map(int, sys.argv[1:])))
