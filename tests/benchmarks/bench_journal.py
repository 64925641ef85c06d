"""How long an edit takes to be written down: python tests/benchmarks/bench_journal.py, by hand.

The demo with 300 decisions in its log, in words of a length that teams write: the text of the design after
one more edit, which the session waits for before it goes on, and the line of the journal on the disk.
"""

import os
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from time import perf_counter, process_time

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from model.design import Design
from model.design.evidence import Decision
from model.files import design_text
from model.journal import STATE_FOLDER_VARIABLE, Entry, claim
from model.presets import find_preset, load_preset

ROUNDS = 30
DECISIONS = 300
WHYS = {
    "no reasons": "",
    "a sentence each": "the float sat too far aft, so we moved it and will try again on Friday.",
    "three with quotes": 'it "rolled" to port in the trial; the float sat too far aft, so we moved it. ' * 3,
    "two lines each": "the float sat too far aft.\nNext: try it again on Friday.",
}


def decided(number: int, why: str) -> Decision:
    """A decision of the log."""
    words = why and f"{number}: {why}"
    return Decision(id=f"d{number}", when="2026-11-29 10:00", what=f"station {number} moved", why=words)


def edits(design: Design, why: str) -> Iterator[Design]:
    """The design after some edits, each with its decision."""
    for number in range(ROUNDS):
        first, *others = design.arrangement.stations
        design = design.arranged(stations=(first.but(at=first.at - 1e-4), *others))
        log = (*design.evidence.log, decided(DECISIONS + number, why))
        design = design.but(evidence=design.evidence.but(log=log))
        yield design


def main() -> None:
    """Print the medians."""
    demo = load_preset(find_preset("demo", "newt"))
    with tempfile.TemporaryDirectory() as folder:
        os.environ[STATE_FOLDER_VARIABLE] = folder
        journal = claim(Path(folder) / "design.toml")
        for name, why in WHYS.items():
            log = tuple(decided(number, why) for number in range(DECISIONS))
            texts, lines, size = [], [], 0
            for design in edits(demo.but(evidence=demo.evidence.but(log=log)), why):
                start = process_time()
                text = design_text(design)
                texts.append(process_time() - start)
                started = perf_counter()
                journal.record(Entry("2026-11-29T10:00:00", name, text))
                lines.append(perf_counter() - started)
                size = len(text)
            print(
                f"{name:<18} {size // 1000:4} kB: text {1e3 * median(texts):5.2f} ms of the processor, "
                f"line on the disk {1e3 * median(lines):5.2f} ms"
            )
        journal.release()


if __name__ == "__main__":
    main()
