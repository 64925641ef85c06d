"""Remedies taken one after the other, as the one key takes them, until none is left.

From every ready-made frame, as it is and after its range was swapped for each of those in stock: a
remedy never brings anything as bad as what it clears, so the walk comes to an end and no remedy is
undone by a later one.
"""

from collections import Counter
from collections.abc import Iterator
from math import hypot

import pytest

from model.design import Design, edits
from model.presets import load_preset, presets
from model.review import Report, proven_remedy, review

FRAMES = {preset.name: preset for kind in ("starter", "demo") for preset in presets(kind)}
RANGES = presets("stock")
LEVEL = 10.0
"""[deg] Over this trim should be put right (DEFAULTS)."""
MOST = 60
TELLS = ("must", "should")
GRAVE = {"must": 2, "should": 1, "tip": 0}


def grave(report: Report) -> dict[object, int]:
    """The worst of each finding of a report, by its code and what it is about."""
    worst: dict[object, int] = {}
    for finding in report.findings:
        worst[finding.key] = max(worst.get(finding.key, 0), GRAVE[finding.severity])
    return worst


def walked(design: Design, tells: tuple[str, ...] = TELLS) -> Iterator[Report]:
    """The report at the start, and after each remedy that is taken."""
    report = review(design)
    yield report
    for _ in range(MOST):
        worth = (f for f in report.to_do if f.severity in tells)
        taken = next(((f, remedy) for f in worth if (remedy := proven_remedy(report, f))), None)
        if taken is None:
            return
        finding, remedy = taken
        after = review(remedy.edit(report.design))
        before, now = grave(report), grave(after)
        assert finding.key not in now, remedy.label
        floor = max(GRAVE[finding.severity], GRAVE["should"])
        new = {key for key, how in now.items() if how >= floor and how > before.get(key, -1)}
        assert not new, f"{remedy.label} brings {new}"
        report = after
        yield report
    pytest.fail("remedies without an end")


def count(report: Report) -> Counter[str]:
    return Counter(finding.severity for finding in report.findings)


def tilt(report: Report) -> float:
    balance = report.survey.balance
    assert balance.pitch is not None
    assert balance.roll is not None
    return hypot(balance.pitch, balance.roll)


@pytest.mark.parametrize("frame", FRAMES)
@pytest.mark.parametrize("stock", [None, *RANGES], ids=lambda stock: stock.name if stock else "as it is")
def test_one_remedy_after_the_other_leads_to_a_better_design(frame, stock):
    design = load_preset(FRAMES[frame])
    if stock is not None:
        design = edits.use_stock(design, load_preset(stock))
    reports = list(walked(design))
    first, last = reports[0], reports[-1]
    musts = [count(report)["must"] for report in reports]
    assert musts == sorted(musts, reverse=True)
    assert musts[-1] == 0
    assert count(last)["should"] <= count(first)["should"]
    assert len({report.design for report in reports}) == len(reports)
    if tilt(first) < LEVEL:
        assert tilt(last) < LEVEL


def test_tips_come_to_an_end_too():
    design = edits.use_stock(load_preset(FRAMES["first-afternoon"]), load_preset(RANGES[-1]))
    reports = list(walked(design, ("must", "should", "tip")))
    assert len(reports) > 10
    assert len({report.design for report in reports}) == len(reports)
    assert count(reports[-1])["must"] + count(reports[-1])["should"] == 0
