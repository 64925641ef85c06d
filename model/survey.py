"""Everything that is worked out from one design: numbers only, and nothing that can fail."""

from functools import cached_property

from msgspec import Struct

from model.design import Arrangement, Design
from model.extents import Extents, extents
from model.frame.layout import Frame, lay_out
from model.frame.letters import CutGroup, cut_list
from model.money.bill import Bill, bill
from model.money.on_hand import InBox, in_box
from model.motion.motion import Motion, motion
from model.motion.shares import Share, drag_shares
from model.parts import Part
from model.power.wiring import Wiring, wiring
from model.thrust.around import Around, around
from model.thrust.clear import Clearance, clearances
from model.thrust.drives import Drive, drives_of
from model.thrust.moves import Thrust, thrust
from model.vehicle import parts_of
from model.water.air.air import Air, air_of
from model.water.balance import Balance, balance
from model.water.density import water_density
from model.water.spread import Spread, spread
from model.water.trim_kit import TrimKit, trim_kit


class Survey(Struct, frozen=True, dict=True):  # the dict keeps what is worked out on demand
    """The results of one arrangement of a design."""

    design: Design
    arrangement: Arrangement
    frame: Frame
    cuts: tuple[CutGroup, ...]
    parts: tuple[Part, ...]
    extents: Extents
    balance: Balance
    spread: Spread
    kit: TrimKit
    clear: tuple[Clearance, ...]
    drives: tuple[Drive, ...]
    thrust: Thrust
    wiring: Wiring | None
    in_box: InBox
    bill: Bill

    @cached_property
    def air(self) -> Air:
        """The air that stays in the pipes."""
        return air_of(self.design, self.arrangement, self.frame, self.balance)

    @cached_property
    def around(self) -> tuple[Around, ...]:
        """What is around each propeller, beside what is asked for."""
        limits = self.design.brief.thresholds
        return around(limits, self.arrangement, self.frame, self.parts, self.balance)

    @cached_property
    def shares(self) -> tuple[Share, ...]:
        """What each part drags, and the water that it moves along."""
        return drag_shares(self.arrangement, self.frame, self.parts, self.balance.density)


def survey(design: Design) -> Survey:
    """The results of the first arrangement.  Never raises on a design that loads."""
    arrangement = design.arrangement
    frame = lay_out(design, arrangement)
    parts = parts_of(design, arrangement, frame)
    held = in_box(design, arrangement, frame)
    water = water_density(design.brief.water)
    floating = balance(parts, water)
    wires = wiring(design, arrangement, water)
    clear = clearances(arrangement, frame, parts)
    drives = drives_of(design, arrangement, frame, clear, water, wires)
    unsure = spread(design, arrangement, parts, floating)
    kit = trim_kit(design, arrangement, unsure.spare, floating.density)
    return Survey(
        design=design,
        arrangement=arrangement,
        frame=frame,
        cuts=cut_list(frame.bars.values()),
        parts=parts,
        extents=extents(parts, design.brief.size_limit),
        balance=floating,
        spread=unsure,
        kit=kit,
        clear=clear,
        drives=drives,
        thrust=thrust(drives, floating.g),
        wiring=wires,
        in_box=held,
        bill=bill(design, arrangement, frame, held, kit),
    )


_motions: tuple[tuple[Survey, Motion], ...] = ()
MOTIONS_KEPT = 4


def motion_of(found: Survey) -> Motion:
    """How the vehicle of a survey moves; worked out when it is first asked for, and kept a while."""
    global _motions
    for known, result in _motions:
        if known is found:
            return result
    made = motion(found.design, found.arrangement, found.frame, found.parts, found.balance, found.drives)
    _motions = ((found, made), *_motions[: MOTIONS_KEPT - 1])
    return made
