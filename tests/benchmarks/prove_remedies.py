"""Every remedy over every ready-made frame with every mistake, by hand: how many findings one key puts right.

    python -m tests.benchmarks.prove_remedies [part of a frame's name ...]

Takes some minutes.  Stops with an error where a remedy that was offered does not clear its finding.
"""

import sys
from collections import Counter
from pathlib import Path
from time import perf_counter

from model.files import load_design
from model.review import Report, proven_remedy, review
from tests.model.mutations import mutations

PRESETS = Path(__file__).parent.parent.parent / "presets"
Key = tuple[str, str]


def main(names: list[str]) -> None:
    """Print a line for each kind of finding."""
    found: Counter[Key] = Counter()
    helped: Counter[Key] = Counter()
    spent: Counter[Key] = Counter()
    for path in sorted([*(PRESETS / "starters").glob("*.toml"), *(PRESETS / "demo").glob("*.toml")]):
        if names and not any(name in path.stem for name in names):
            continue
        print(path.stem, flush=True)
        for mistake, design in mutations(load_design(path).design):
            _prove(f"{path.stem}, {mistake}", design, found, helped, spent)
    print(f"{sum(helped.values())} of {sum(found.values())} in {sum(spent.values()):.0f} s")
    for key in sorted(found):
        share = helped[key] / found[key]
        each = 1e3 * spent[key] / found[key]
        print(f"{key[0]:7}{key[1]:28}{found[key]:5}{helped[key]:5}{share:6.0%}{each:8.0f} ms")


def _grave(report: Report, severity: str) -> set[Key]:
    """What a remedy for a finding of that severity may not bring."""
    barred = ("must",) if severity == "must" else ("must", "should")
    return {(f.code, str(f.about)) for f in report.findings if f.severity in barred}


def _prove(where: str, design, found: Counter[Key], helped: Counter[Key], spent: Counter[Key]) -> None:
    report = review(design)
    for finding in report.findings:
        key = finding.severity, finding.code
        start = perf_counter()
        remedy = proven_remedy(report, finding)
        spent[key] += perf_counter() - start
        found[key] += 1
        if remedy:
            helped[key] += 1
            after = review(remedy.edit(design))
            broken = _grave(after, finding.severity) - _grave(report, finding.severity)
            if broken or finding.key in {f.key for f in after.findings}:
                raise SystemExit(f"{where}: '{remedy.label}' does not clear {finding.code}; new: {broken}")


if __name__ == "__main__":
    main(sys.argv[1:])
