"""F3 leads to the section of its page in which a finding is put right: every code of the coach."""

from functools import cache

import pytest

from model.coach.finding import About, Finding
from model.coach.sentences import SENTENCES
from model.design.edits.evidence import note_expense
from model.review import Report, review
from tests.model import coach_cases, thrust_cases
from tests.model.mutations import mutations
from tests.tui.pages_app import SIZES, PageApp, demo
from tui.places import SECTIONS, section_of
from tui.steps import BY_KEY, page_of

RIGHT = {
    "stock": {
        "Range": "material.pipe-disallowed",
        "Measure": "stock.measure-wrong",
        "In the box": "stock.box-short",
        "Pipe": "stock.stick-short stock.push-deep",
    },
    "layout": {
        "Bars": "frame.bars-none frame.end-loose frame.groups-apart frame.joints-close frame.joints-together "
        "frame.bar-crooked frame.bars-overlap frame.sawn-short frame.sawn-misfit frame.piece-slips "
        "stock.bar-long",
        "Planes": "frame.plane-held",
        "Size": "size.limit-over size.hoop-tight size.gate-tight",
        "Tolerance": "size.limit-near",
        "Runs": "arrangement.frame-differs",
    },
    "fittings": {"Joints": "fitting.joint-unmatched fitting.pick-wrong fitting.socket-spare"},
    "thrusters": {
        "Thrusters": "thruster.mount-missing thruster.move-missing thruster.body-inside thruster.mount-hub "
        "thruster.stub-homeless thruster.pull-unknown thruster.disc-touching thruster.disc-near "
        "thruster.tether-near thruster.stream-blocked thruster.disc-shallow motion.thrust-pitches "
        "motion.climb-tips motion.thrust-aside motion.hands-alike load.lift-weak",
        "Tie holes": "thruster.holes-unplanned thruster.tie-alone thruster.tie-along thruster.tie-wide "
        "thruster.tie-aside "
        "thruster.tie-large thruster.tie-small",
    },
    "gear": {
        "Parts": "load.hook-missing load.trim-off place.part-shared",
        "Tether": "tether.hanging-none",
    },
    "wires": {
        "Supply": "power.plan-missing power.supply-over power.main-missing power.fuse-far",
        "Motors": "power.motor-over power.fuse-missing power.fuse-blows power.fuse-stalled power.fuse-large "
        "power.fuse-small",
        "Cable": "power.volts-lost power.tether-missing power.tether-short",
        "Checks": "power.checks-open",
    },
    "floats": {
        "Foam": "float.bar-short float.foam-heavy float.end-over balance.order-inverted balance.bg-small "
        "balance.weight-tips",
        "Weights": "place.solids-shared place.foam-squeezed",
        "Solve": "balance.weight-over balance.lift-little balance.lift-over balance.thrust-taken "
        "balance.thrust-beaten balance.thrust-sunk balance.foam-squeezed balance.trim-off",
    },
    "holes": {
        "Holes": "opening.in-sealed opening.hole-small opening.hole-large opening.face-along "
        "opening.face-taken opening.face-solid opening.hole-plugged opening.hole-covered "
        "opening.socket-drilled opening.socket-near opening.hole-wide",
        "Air": "opening.none-flooded opening.drain-missing opening.valley-undrained air.pocket-trapped "
        "air.pocket-tilted air.void-closed",
        "Pipes": "sealing.leak-sinks opening.socket-open",
        "Plugs": "air.void-plugged",
    },
    "money": {
        "To buy": "money.limit-over money.commitments-over",
        "Ledger": "money.receipt-missing money.receipt-twice",
    },
    "build": {"Pieces": "build.piece-off", "Work": "build.joint-loose build.foam-late"},
    "pool": {"Trials": "trial.weight-off trial.trim-off trial.spare-off"},
}
"""Where each is put right, by page and section."""
WHERE = {
    code: (page, section)
    for page, rows in RIGHT.items()
    for section, codes in rows.items()
    for code in codes.split()
}
ELSEWHERE = {
    ("place.solids-shared", "thruster"): ("thrusters", "Thrusters"),
    ("place.solids-shared", "float"): ("floats", "Foam"),
    ("place.foam-squeezed", "float"): ("floats", "Foam"),
    ("place.solids-shared", "bar"): ("layout", "Bars"),
    ("thruster.move-missing", "wires"): ("wires", "Motors"),
    ("power.fuse-large", "power"): ("wires", "Supply"),
    ("power.fuse-small", "power"): ("wires", "Supply"),
}
"""Where a code leads to another place, by what it is about or the page that it stands on."""


@cache
def sections(page: str):
    return [(title, maker()) for title, maker in BY_KEY[page].page_class()().makers()]


def leads_to(report: Report, finding: Finding) -> tuple[str, str]:
    """The page and section that F3 opens."""
    page = page_of(finding.step)
    named = section_of(finding)
    fits = [title for title, section in sections(page) if section.finds(report, finding.about)]
    assert named or fits, f"{finding.code} about {finding.about} leads nowhere"
    return page, named or fits[0]


def expected(finding: Finding) -> tuple[str, str]:
    for key in ((finding.code, finding.about.kind), (finding.code, page_of(finding.step))):
        if key in ELSEWHERE:
            return ELSEWHERE[key]
    return WHERE[finding.code]


@cache
def shown() -> tuple[Report, ...]:
    """Designs of the coach's tables, and the demo with every mistake."""
    tables = (case.shows for case in (*coach_cases.CASES, *thrust_cases.CASES))
    return tuple(review(design) for design in (*tables, *(design for _, design in mutations(demo()))))


def by_hand() -> tuple[Report, list[Finding]]:
    """The demo with a receipt and a second run, and findings that no table shows, on what is there."""
    design = note_expense(demo(), "2026-03-14", "pipe", 8.6)
    design = design.but(arrangements=(design.arrangement, design.arrangement.but(id="other", name="other")))
    run, report = design.arrangement, review(design)
    bar, hole = About("bar", run.bars[0].id), About("opening", run.openings[0].id)
    line, plane = About("expense", design.evidence.ledger[-1].id), About("station", run.stations[0].id)
    part, whole, pipe = About("attachment", run.attachments[0].id), About("design"), design.stock.pipes[0].id
    things = {
        "layout": [
            *((code, bar) for code in ("frame.sawn-short", "frame.sawn-misfit", "frame.piece-slips")),
            ("frame.plane-held", plane),
            ("size.limit-near", About("axis", "y")),
            ("size.hoop-tight", About("hoop")),
            ("size.gate-tight", About("gate", "z")),
            ("arrangement.frame-differs", About("arrangement", design.arrangements[-1].id)),
        ],
        "stock": [
            ("stock.stick-short", About("pipe", pipe)),
            ("stock.box-short", whole),
            ("stock.measure-wrong", About("pipe", pipe)),
        ],
        "gear": [("place.part-shared", part)],
        "floats": [("balance.foam-squeezed", whole)],
        "holes": [
            *(
                (f"opening.{what}", hole)
                for what in ("hole-large", "face-along", "face-taken", "face-solid", "hole-plugged")
            ),
            ("air.void-closed", bar),
            ("air.void-plugged", bar),
        ],
        "money": [
            ("money.commitments-over", whole),
            ("money.receipt-missing", line),
            ("money.receipt-twice", line),
        ],
        "build": [("build.piece-off", bar), ("build.joint-loose", whole), ("build.foam-late", whole)],
        "pool day": [(f"trial.{what}-off", whole) for what in ("weight", "trim", "spare")],
    }
    return report, [
        Finding(code, "should", step, about, "") for step, rows in things.items() for code, about in rows
    ]


def test_every_code_has_its_section():
    assert set(WHERE) == set(SENTENCES)
    for page, rows in RIGHT.items():
        assert set(rows) <= {title for title, _ in sections(page)}
    for page, rows in SECTIONS.items():
        assert set(rows.values()) <= {title for title, _ in sections(page)}


def test_each_finding_leads_to_its_section():
    met = set()
    for report in shown():
        for finding in report.findings:
            assert leads_to(report, finding) == expected(finding), (finding.code, finding.about)
            met.add(finding.code)
    report, rest = by_hand()
    for finding in rest:
        assert leads_to(report, finding) == expected(finding), (finding.code, finding.about)
        met.add(finding.code)
    assert met == set(SENTENCES)


@pytest.mark.parametrize(
    ("code", "step", "about", "section"),
    [
        ("size.limit-near", "layout", About("axis", "y"), "Tolerance"),
        ("size.limit-over", "layout", About("axis", "z"), "Size"),
        ("opening.none-flooded", "holes", About("design"), "Air"),
    ],
)
async def test_the_section_is_opened_whatever_was_open_before(code, step, about, section):
    app = PageApp(step, demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        await app.page.open_section(len(sections(step)) - 1)
        app.page.focus_about(about, section_of(Finding(code, "tip", step, about, "")))
        await pilot.pause()
        await pilot.pause()
        assert app.page.section.title == section
        assert app.page.section in app.focused.ancestors
        row = {"Size": "2:", "Tolerance": "size:1"}.get(section)
        if row:
            assert app.page.section.table.chosen.startswith(row), "the row of the size that it speaks of"
