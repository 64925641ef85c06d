"""The document: what the team decided.  Import its pieces from here."""

from model.design.arrangement import Arrangement, Bar, Joint, Plane
from model.design.brief import Brief, Leg, Load, Move, Water
from model.design.document import BARS_MOST, FORMAT, Design, equipment, plane_groups
from model.design.equipment import (
    Attachment,
    Ballast,
    Float,
    OnBar,
    Opening,
    Plug,
    Pull,
    Tether,
    Thruster,
    TieHole,
)
from model.design.evidence import Decision, Evidence, Expense, MeasuredCut, Noted, Tick, Trial, TrialKind
from model.design.in_hand import in_hand, slips
from model.design.joining import Joining, Pin
from model.design.on_hand import HeldFittings, HeldPipe, OnHand
from model.design.own_parts import DryJoint, MeasuredFitting, MeasuredPipe, OwnParts
from model.design.record import Record
from model.design.stock import Fitting, Pipe, Socket, Stick, Stock
from model.design.supplies import Bought, Foam, Motor, Mount, Supplies, Washer
from model.design.thresholds import COMPARISON_SLACK, Thresholds
from model.design.wiring import Battery, Branch, Power

__all__ = [
    "BARS_MOST",
    "COMPARISON_SLACK",
    "FORMAT",
    "Arrangement",
    "Attachment",
    "Ballast",
    "Bar",
    "Battery",
    "Bought",
    "Branch",
    "Brief",
    "Decision",
    "Design",
    "DryJoint",
    "Evidence",
    "Expense",
    "Fitting",
    "Float",
    "Foam",
    "HeldFittings",
    "HeldPipe",
    "Joining",
    "Joint",
    "Leg",
    "Load",
    "MeasuredCut",
    "MeasuredFitting",
    "MeasuredPipe",
    "Motor",
    "Mount",
    "Move",
    "Noted",
    "OnBar",
    "OnHand",
    "Opening",
    "OwnParts",
    "Pin",
    "Pipe",
    "Plane",
    "Plug",
    "Power",
    "Pull",
    "Record",
    "Socket",
    "Stick",
    "Stock",
    "Supplies",
    "Tether",
    "Thresholds",
    "Thruster",
    "Tick",
    "TieHole",
    "Trial",
    "TrialKind",
    "Washer",
    "Water",
    "equipment",
    "in_hand",
    "plane_groups",
    "slips",
]
