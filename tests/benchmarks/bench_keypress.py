"""A key press to the repainted screen at 120 x 40, in a pseudo-terminal: the median within 33 ms.

Run by hand: ``.venv/bin/python -m tests.benchmarks.bench_keypress [RUNS]``.
"""

import os
import statistics
import sys
import tempfile
import time
from pathlib import Path

from tests.terminal import Terminal

PROGRAM = str(Path(sys.executable).parent / "poolwright")
MOST_MS = 33.0
KEYS = {
    "next step": ("\x1b[20~", "Next:"),
    "step before": ("\x1b[19~", "Next:"),
    "turn the drawing": ("\x1bOS", ":"),
    "next field": ("\t", ""),
}
QUIET = 0.012
"""[s] A frame has ended when nothing more comes for this long; it is not counted."""


def press(terminal, keys):
    """Seconds from a key to the last byte of the frame that it causes."""
    terminal.settle()
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
        for _ in range(8):  # every page once, so that none is made while we time
            press(terminal, KEYS["next step"][0])
        for _ in range(8):
            press(terminal, KEYS["step before"][0])
        for name, (keys, _) in KEYS.items():
            times = []
            for number in range(runs):
                if name.endswith(("step", "before")) and number % 8 == 0:
                    _rewind(terminal, name)
                times.append(press(terminal, keys) * 1000)
            median = statistics.median(times)
            good &= median <= MOST_MS
            print(f"{name:18} median {median:5.1f} ms, worst {max(times):5.1f} ms (most {MOST_MS:.0f})")
        terminal.kill()
    return 0 if good else 1


def _rewind(terminal, name):
    """Go to the end from which the keys can be pressed again."""
    for _ in range(8):
        press(terminal, KEYS["step before" if name == "next step" else "next step"][0])


if __name__ == "__main__":
    raise SystemExit(main(*map(int, sys.argv[1:])))
