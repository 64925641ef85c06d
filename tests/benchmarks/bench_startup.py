"""Start-up against an empty Textual app, in turn: first paint within 1.25 times, the demo usable within 2.0.

Run by hand: ``.venv/bin/python -m tests.benchmarks.bench_startup [RUNS]``.
"""

import os
import statistics
import sys
import tempfile
from pathlib import Path

from tests.terminal import Terminal

EMPTY = """
from textual.app import App
from textual.widgets import Static

class Empty(App):
    def compose(self):
        yield Static("nothing else")

Empty().run()
"""
PROGRAM = str(Path(sys.executable).parent / "poolwright")
MOSTS = {"first paint": ("Poolwright", 1.25), "demo usable": ("F10 Quit", 2.0)}


def once(command, text, state):
    """Seconds from the start of a program to the first frame that has a text."""
    terminal = Terminal(command, 120, 40, {"POOLWRIGHT_STATE": state})
    try:
        return terminal.wait_for(text)
    finally:
        terminal.kill()


def main(runs=15):
    with tempfile.TemporaryDirectory() as folder:
        empty = Path(folder, "empty.py")
        empty.write_text(EMPTY)
        good = True
        for name, (text, most) in MOSTS.items():
            ratios, times = [], []
            for number in range(runs + 1):
                bare = once([sys.executable, str(empty)], "nothing else", folder)
                ours = once([PROGRAM, "demo"], text, folder)
                if number:  # the first fills the caches
                    ratios.append(ours / bare)
                    times.append(ours)
            ratio = statistics.median(ratios)
            good &= ratio <= most
            middle = statistics.median(times) * 1000
            print(f"{name:12} {middle:5.0f} ms, {ratio:.2f} times an empty app (most {most})")
        return 0 if good else 1


if __name__ == "__main__":
    os.environ.setdefault("TEXTUAL_ANIMATIONS", "none")
    raise SystemExit(main(*map(int, sys.argv[1:])))
