"""For each finding on thrusters, motion and wires a design that shows it and one beside it that is silent.

The box of ``tests.worked``: 400 x 300 x 200 mm between joint centres, half-inch pipe of 21.336 mm, 31.75 mm
from centre to face; motors with a body of 30 x 60 mm and a propeller of 50 mm that pull 3 N and 2 N.
"""

from dataclasses import dataclass
from typing import Any

from model.design import (
    Attachment,
    Ballast,
    Battery,
    Branch,
    Brief,
    Design,
    Float,
    Mount,
    Opening,
    Power,
    Supplies,
    Tether,
    Thruster,
    TieHole,
)
from tests import worked

MOUNTS = (
    Mount(id="ties", name="two ties", mass=0.004, mass_in_water=0.001),
    Mount(id="clamp", name="a clamp", mass=0.03, mass_in_water=0.015, method="clamp"),
    Mount(id="stub", name="a stub", mass=0.01, mass_in_water=0.003, method="stub"),
)
MOTOR = worked.SUPPLIES.motors[0].but(amps=1.5, stalled_amps=6.0)
SUPPLIES = Supplies(motors=(MOTOR,), mounts=MOUNTS, foams=worked.SUPPLIES.foams)
HOLES = (TieHole(along=-0.018, face="+z"), TieHole(along=0.018, face="+z"))
FUSED = Branch(fuse=3.0)
SETTLED = Power(main_fuse=7.5, strain_relief=True, motor_seal="a sealed case", soak_hours=24.0)


@dataclass(frozen=True)
class Case:
    """A finding: its code, severity and what it is about; a design with it and one without; its numbers."""

    code: str
    severity: str
    about: tuple[str, str]
    shows: Design
    silent: Design
    words: tuple[str, ...] = ()
    remedied: bool = True


def motor(name: str, **changes: Any) -> Thruster:
    """A motor that pushes ahead, 60 mm outside a bar, where nothing is near and nothing in its stream."""
    values = {"bar": "b0", "motor": "motor", "mount": "clamp", "branch": FUSED, **changes}
    return Thruster(**{"id": name, "name": f"{name} motor", **values})


def port(**changes: Any) -> Thruster:
    """Outside the low port rail, half way up."""
    return motor("port", **{"bar": "b2", "offset": (0, 0.06, 0.1), "hand": "left", **changes})


def starboard(**changes: Any) -> Thruster:
    """Outside the low starboard rail, half way up."""
    return motor("starboard", **{"bar": "b0", "offset": (0, -0.06, 0.1), "hand": "right", **changes})


def upright(**changes: Any) -> Thruster:
    """Above the forward cross bar, pushing up; its stream goes down past the bar."""
    return motor("lift", **{"bar": "b1", "offset": (0, 0.15, 0), "to": "+z", **changes})


def tied(*holes: TieHole) -> Design:
    """The box with its port motor held by ties through these holes."""
    return swimmer(port(mount="ties", tie_holes=holes), starboard())


def swimmer(*thrusters: Thruster, brief: Brief | None = None, **items: Any) -> Design:
    """A box that floats upright, with foam on its top rails and weights on its low ones."""
    foam = {"foam": "noodle", "length": 0.17}
    usual = {
        "floats": (
            Float(id="f1", name="starboard float", bar="b1", **foam),
            Float(id="f2", name="port float", bar="b3", **foam),
        ),
        "ballasts": (
            Ballast(id="w1", name="starboard weight", bar="b0", mass=0.15),
            Ballast(id="w2", name="port weight", bar="b2", mass=0.15),
        ),
        "openings": (
            Opening(id="vent", name="vent", bar="b1", face="+z", through=True),
            Opening(id="drain", name="drain", bar="b0", face="-z"),
        ),
        "power": SETTLED,
        **items,
    }
    found = worked.design(worked.box(thrusters=thrusters, **usual), supplies=SUPPLIES)
    return found.but(brief=brief) if brief else found


def wired(power: Power | None, branch: Branch = FUSED, brief: Brief | None = None, **items: Any) -> Design:
    """The box with a pair of motors on some wiring."""
    return swimmer(port(branch=branch), starboard(branch=branch), power=power, brief=brief, **items)


def cable(**changes: Any) -> Tether:
    """A tether on the low aft cross bar."""
    values = {"bar": "b4", "hanging": 1.5, "mass_per_m": 0.06, "mass_in_water_per_m": 0.01, **changes}
    return Tether(**{"id": "c", "name": "tether", "diameter": 0.008, **values})


GOOD = swimmer(port(), starboard())
CASES = (
    Case(
        "thruster.body-inside",
        "must",
        ("thruster", "lift"),
        swimmer(upright(bar="b5", offset=(0, 0, 0))),
        swimmer(upright(bar="b5", offset=(0.0357, 0, 0))),  # 15 + 10.7 mm is just beside it
        ("lift motor", "bar 5"),
    ),
    Case(
        "thruster.mount-hub",
        "should",
        ("thruster", "port"),
        swimmer(port(at=0.06), starboard()),
        GOOD,
        ("port motor", "a clamp"),
    ),
    Case(
        "thruster.stub-homeless",
        "must",
        ("thruster", "port"),
        swimmer(port(mount="stub"), starboard()),
        GOOD,
        ("port motor",),
    ),
    Case(
        "thruster.holes-unplanned",
        "should",
        ("thruster", "port"),
        swimmer(port(mount="ties"), starboard()),
        swimmer(port(mount="ties", tie_holes=HOLES), starboard()),
        ("port motor",),
    ),
    Case(
        "thruster.tie-alone",
        "should",
        ("thruster", "port"),
        tied(HOLES[0]),
        tied(*HOLES),
        ("port motor", "bar 2"),
    ),
    Case(
        "thruster.tie-aside",
        "should",
        ("thruster", "port"),
        tied(HOLES[0].but(along=0.012), HOLES[1].but(along=0.03)),
        tied(HOLES[0].but(along=-0.001), HOLES[1].but(along=0.03)),
        ("port motor", "12 mm"),
    ),
    Case(
        "thruster.tie-along",
        "must",
        ("thruster", "port"),
        tied(HOLES[0], HOLES[1].but(face="-x")),  # bar 2 runs ahead
        tied(HOLES[0], HOLES[1].but(face="-y")),
        ("port motor", "an end of bar 2"),
    ),
    Case(
        "thruster.tie-wide",
        "must",
        ("thruster", "port"),
        tied(HOLES[0], HOLES[1].but(diameter=0.021336)),
        tied(HOLES[0], HOLES[1].but(diameter=0.0213)),
        ("21.3 mm wide", "only 21.3 mm"),
    ),
    Case(
        "thruster.tie-large",
        "should",
        ("thruster", "port"),
        tied(HOLES[0], HOLES[1].but(diameter=0.0086)),  # 0.4 x 21.336 mm is 8.53 mm
        tied(HOLES[0], HOLES[1].but(diameter=0.0085)),
        ("8.6 mm", "40 %"),
    ),
    Case(
        "thruster.tie-small",
        "should",
        ("thruster", "port"),
        tied(HOLES[0], HOLES[1].but(diameter=0.0047)),  # a usual tie is 4.8 mm wide
        tied(HOLES[0], HOLES[1].but(diameter=0.0048)),
        ("4.7 mm", "4.8 mm"),
    ),
    Case(
        "thruster.disc-near",
        "should",
        ("thruster", "port"),
        swimmer(port(offset=(0, 0.0417, 0)), starboard()),  # 41.7 - 25 - 10.7 leaves 6.0 mm
        swimmer(port(offset=(0, 0.0459, 0)), starboard()),  # 10.2 mm
        ("6 mm", "10 mm"),
    ),
    Case(
        "thruster.disc-touching",
        "must",
        ("thruster", "port"),
        swimmer(port(offset=(0, 0.034, 0)), starboard()),
        GOOD,
        ("10 mm",),
    ),
    Case(
        "thruster.tether-near",
        "should",
        ("thruster", "lift"),
        swimmer(upright(bar="b4", at=0.4, offset=(0.06, 0, 0)), tether=cable()),
        swimmer(upright(bar="b4", at=0.4, offset=(0.06, 0, 0), guard=True), tether=cable()),
        ("50 mm",),
    ),
    Case(
        "thruster.stream-blocked",
        "should",
        ("thruster", "lift"),
        swimmer(upright(bar="b1", offset=(0, 0, -0.04))),
        swimmer(upright()),
        ("lift motor",),
        remedied=False,
    ),
    Case(
        "motion.thrust-pitches",
        "should",
        ("design", ""),
        swimmer(port(offset=(0, 0.06, -0.06)), starboard(offset=(0, -0.06, -0.06))),
        GOOD,
        ("bow up",),
    ),
    Case(
        "motion.climb-tips",
        "should",
        ("design", ""),
        swimmer(upright(offset=(0.15, 0.15, 0))),
        swimmer(upright()),
        ("bow up",),
    ),
    Case(
        "motion.thrust-aside",
        "should",
        ("design", ""),
        swimmer(starboard()),
        GOOD,
        ("port", "100 %"),
    ),
    Case(
        "power.plan-missing",
        "tip",
        ("power", ""),
        wired(None),
        GOOD,
    ),
    Case(
        "power.supply-over",
        "must",
        ("power", ""),
        wired(SETTLED.but(battery=Battery(volts=24.0)), brief=Brief(supply_limit=12.0)),
        wired(SETTLED, brief=Brief(supply_limit=12.0)),  # nominal counts, not 12.7 V when full
        ("24 V", "12 V"),
    ),
    Case(
        "power.motor-over",
        "should",
        ("thruster", "port"),
        wired(SETTLED.but(battery=Battery(volts=24.0), main_fuse=10.0), Branch(fuse=5.0)),
        GOOD,
        ("12 V",),
    ),
    Case(
        "power.fuse-missing",
        "must",
        ("thruster", "port"),
        wired(SETTLED.but(main_fuse=None), Branch()),
        GOOD,
        ("port motor",),
    ),
    Case(
        "power.main-missing",
        "must",
        ("power", ""),
        wired(SETTLED.but(main_fuse=None, feed="one pair")),
        wired(SETTLED.but(feed="one pair")),
        ("the lead from the battery and the pair in the tether",),
    ),
    Case(
        "power.fuse-large",
        "must",
        ("thruster", "port"),
        wired(SETTLED.but(core_area=0.205), Branch(fuse=5.0)),  # 0.205 mm2 carries 3 A (common practice)
        wired(SETTLED.but(core_area=0.205), Branch(fuse=3.0)),
        ("5 A", "3.0 A"),
    ),
    Case(
        "power.fuse-blows",
        "must",
        ("thruster", "port"),
        wired(SETTLED, Branch(fuse=1.0)),
        wired(SETTLED, Branch(fuse=2.0)),
        ("1 A", "A fuse of 2 A"),
    ),
    Case(
        "power.fuse-small",
        "should",
        ("thruster", "port"),
        wired(SETTLED, Branch(fuse=1.6)),
        wired(SETTLED, Branch(fuse=2.0)),  # 1.25 x 1.5 A is 1.9 A
        ("1.6 A", "A fuse of 2 A"),
    ),
    Case(
        "power.fuse-stalled",
        "tip",
        ("thruster", "port"),
        wired(SETTLED, Branch(fuse=7.5)),  # 6 A with its propeller held fast, less what the way takes
        wired(SETTLED, Branch(fuse=3.0)),
        ("held fast", "7.5 A", "burns out"),
    ),
    Case(
        "power.fuse-far",
        "should",
        ("power", ""),
        wired(SETTLED.but(fuse_distance=0.2)),
        wired(SETTLED.but(fuse_distance=0.175)),
        ("200 mm", "175 mm"),
    ),
    Case(
        "power.volts-lost",
        "tip",
        ("power", "cable"),
        wired(SETTLED.but(core_area=0.205, length=20.0)),
        wired(SETTLED.but(core_area=0.75, length=20.0)),
        ("12 V",),
    ),
    Case(
        "power.tether-short",
        "should",
        ("power", "cable"),
        wired(SETTLED.but(length=1.0), tether=cable()),
        wired(SETTLED.but(length=2.0), tether=cable()),
        ("1 m", "1.5 m"),
    ),
    Case(
        "power.tether-missing",
        "should",
        ("power", "cable"),
        wired(SETTLED.but(length=0.0)),
        wired(SETTLED.but(length=0.5)),
        ("a tether of 0 m",),
    ),
    Case(
        "tether.hanging-none",
        "tip",
        ("tether", "c"),
        wired(SETTLED, tether=cable(hanging=0.0)),
        wired(SETTLED, tether=cable(hanging=0.1)),
        ("Nothing of tether",),
        remedied=False,
    ),
    Case(
        "power.checks-open",
        "tip",
        ("power", "checks"),
        wired(SETTLED.but(soak_hours=0.0)),
        GOOD,
        ("soak test",),
        remedied=False,
    ),
    Case(
        "thruster.pull-unknown",
        "tip",
        ("thruster", "port"),
        swimmer(port(), starboard()).but(
            supplies=SUPPLIES.but(motors=(MOTOR.but(thrust_ahead=0.0, thrust_astern=None),))
        ),
        GOOD,
        ("port motor",),
        remedied=False,
    ),
    Case(
        "thruster.disc-shallow",
        "should",
        ("thruster", "port"),
        swimmer(port(bar="b3", offset=(0, 0.06, 0)), starboard(bar="b1", offset=(0, -0.06, 0))),
        GOOD,
        ("50 mm",),
    ),
)
HANDS = swimmer(port(hand="right"), starboard(), brief=Brief(thresholds={"hand_roll": 0.5}))
INNER = motor("inner", bar="b2", offset=(0, 0.06, 0.16), hand="left")
OUTER = motor("outer", bar="b0", offset=(0, -0.06, 0.16), hand="left")
OUTDONE, EVEN = (
    swimmer(port(), starboard(), INNER, OUTER.but(hand=hand), brief=Brief(thresholds={"hand_roll": 0.5}))
    for hand in ("left", "right")
)
"""Four motors ahead: three of one hand and one of the other, then two of each."""
BOTH_HANDS = swimmer(port(hand="left"), starboard(), brief=Brief(thresholds={"hand_roll": 0.5}))
ONE_WAY = Branch(fuse=3.0, switching="on-off switch")
TASK = Brief(moves=("ahead", "astern"))
CASES += (
    Case(
        "thruster.move-missing",
        "must",
        ("move", "astern"),
        wired(SETTLED, ONE_WAY, TASK),
        wired(SETTLED, ONE_WAY.but(switching="controller"), TASK),
        ("go astern", "port motor and starboard motor", "only turn them on and off"),
    ),
    Case(
        "motion.hands-alike", "tip", ("design", ""), HANDS, BOTH_HANDS, ("All", "right-handed", "starboard")
    ),
    Case("motion.hands-alike", "tip", ("design", ""), OUTDONE, EVEN, ("The left-handed", "port side up")),
)
HOOKED = Attachment(
    id="h", name="hook", bar="b2", kind="hook", offset=(0.045, 0.06, 0.1), size=(0.02, 0.02, 0.02), mass=0.01,
    mass_in_water=0.005,
)  # fmt: skip
"""Its box reaches from 35 to 55 mm ahead of the middle of the port motor's rail, level with the motor."""
HUNG = {"offset": (0, 0.06, 0.1), "to": "-x"}  # its propeller is ahead of it: 30 to 40 mm from its middle
CASES += (
    Case(  # half of the hub of 28 mm and of the clamp: 38 mm from the corner there is bare pipe for it
        "thruster.mount-hub",
        "should",
        ("thruster", "port"),
        swimmer(port(at=0.07), starboard()),
        swimmer(port(at=0.095), starboard()),
        ("port motor", "j010"),
    ),
    Case(
        "thruster.disc-near",
        "must",
        ("thruster", "port"),
        swimmer(port(offset=(0, 0.0377, 0)), starboard()),  # 37.7 - 25 - 10.67 leaves 2.0 mm
        swimmer(port(offset=(0, 0.0459, 0)), starboard()),
        ("2 mm", "10 mm"),
    ),
    Case(
        "thruster.disc-touching",
        "must",
        ("thruster", "port"),
        swimmer(port(**HUNG), starboard(), attachments=(HOOKED,)),
        swimmer(port(**HUNG), starboard(), attachments=(HOOKED.but(offset=(0.065, 0.06, 0.1)),)),
        ("hook",),
    ),
    Case(  # foam of 64 mm behind a propeller of 50 mm
        "thruster.stream-blocked",
        "tip",
        ("thruster", "port"),
        swimmer(port(bar="b3", at=0.9, offset=(0.03, 0.035, 0)), starboard()),
        swimmer(port(bar="b3", at=0.9, offset=(0.03, 0.075, 0)), starboard()),
        ("port float", "port motor", "ahead"),
        remedied=False,
    ),
    Case(
        "motion.thrust-pitches",
        "should",
        ("design", ""),
        swimmer(port(bar="b3", offset=(0, 0.06, 0.1)), starboard(bar="b1", offset=(0, -0.06, 0.1))),
        GOOD,
        ("Full thrust ahead turns it right over", "above"),
    ),
    Case(
        "motion.thrust-pitches",
        "tip",
        ("design", ""),
        swimmer(port(offset=(0, 0.06, 0.17)), starboard(offset=(0, -0.06, 0.17))),
        GOOD,
        ("brings the stern up", "above"),
    ),
    Case(
        "motion.climb-tips",
        "should",
        ("design", ""),
        swimmer(upright(offset=(0.5, 0.15, 0))),
        swimmer(upright()),
        ("Climbing at full thrust turns it right over",),
    ),
    Case(
        "power.fuse-large",
        "must",
        ("thruster", "port"),  # the main fuse is all that there is: 0.205 mm2 carries 3 A
        wired(SETTLED.but(main_fuse=5.0, core_area=0.205), Branch()),
        wired(SETTLED.but(main_fuse=5.0, core_area=0.5), Branch()),
        ("The main fuse, all that protects port motor, is 5 A", "3.0 A"),
    ),
    Case(
        "power.fuse-large",
        "must",
        ("power", ""),
        wired(SETTLED.but(main_fuse=20.0)),  # 1.5 mm2 carries 15 (4/3)^(ln(1.5/1.309)/ln(2.081/1.309)) A
        wired(SETTLED.but(main_fuse=15.0)),
        ("The main fuse is 20 A", "16.3 A"),
    ),
    Case(
        "power.volts-lost",
        "should",
        ("power", "cable"),
        wired(SETTLED.but(core_area=0.205, length=40.0)),
        wired(SETTLED.but(core_area=1.5, length=40.0)),
        ("12 V", "port motor"),
    ),
)
