"""A report as plain data, for programs: the document that ``check --json`` prints.

The shape is a contract: keys may be added, and are never changed without raising ``FORMAT``.  What
cannot be worked out is None.  Lengths are in mm, masses in kg, volumes in litres, forces in newtons,
angles in degrees, whatever the unit of the file.
"""

from collections.abc import Iterator
from typing import Any, Literal

from model.coach.finding import Finding, Remedy
from model.fittings.match import Match
from model.frame.layout import Frame
from model.review import Report, proven_remedy
from model.silhouette import silhouettes
from model.survey import Survey, motion_of
from model.vectors import Vector
from model.water.air.air import AttitudeAir
from model.water.balance import Balance

FORMAT = 1
PROOFS_LEAST, PROOFS_BARS = 10, 10_000
"""Remedies are proved for this many findings, or as many as keep findings x bars below the second."""
MM = 1000.0
LITRES = 1000.0
MILLILITRES = 1e6


def check_document(report: Report, file: str) -> dict[str, Any]:
    """The document of one design; every remedy in it is proved.

    Args:
        report: of the design.
        file: the name of its file, as the user wrote it.
    """
    design, survey = report.design, report.survey
    return {
        "format": FORMAT,
        "file": file,
        "title": design.title,
        "units": design.units,
        "verdict": report.verdict,
        "overall": _overall(report),
        "cuts": [
            {
                "length_mm": round(group.cut * MM, 2),
                "quantity": len(group.bars),
                "bars": [bar.name for bar in group.bars],
                "pipe": group.pipe.name,
            }
            for group in survey.cuts
        ],
        "fittings": [
            {"kind": match.fitting.name, "quantity": len(joints), "joints": joints}
            for match, joints in fittings_used(survey.frame)
        ],
        "balance": _balance(survey.balance),
        "air": [_air(state) for state in survey.air.attitudes],
        "flood_s": _rounded(survey.air.flooding.seconds, 1) if survey.air.flooding.volume else None,
        "motion": _motion(survey),
        "power": _power(survey),
        "money": {
            "currency": survey.bill.currency,
            "spent": survey.bill.spent,
            "limit": survey.bill.limit,
            "left": survey.bill.left,
        },
        "findings": [_finding(finding, remedy) for finding, remedy in proved(report)],
    }


def proved(report: Report) -> Iterator[tuple[Finding, Remedy | Literal["not tried"] | None]]:
    """Each finding with its proved remedy, the gravest first; None where none clears it.

    A proof reviews the whole design anew, so that a large frame with something wrong at every joint
    would take hours: there the findings at the end are not tried.
    """
    room = max(PROOFS_LEAST, PROOFS_BARS // max(1, len(report.survey.frame.bars)))
    for number, finding in enumerate(report.findings):
        yield finding, proven_remedy(report, finding) if number < room else "not tried"


def fittings_used(frame: Frame) -> list[tuple[Match, list[str]]]:
    """Each fitting in use with the names of its joints, the most used first."""
    used: dict[str, tuple[Match, list[str]]] = {}
    for joint in frame.joints.values():
        if joint.match:
            used.setdefault(joint.match.fitting.id, (joint.match, []))[1].append(joint.name)
    return sorted(used.values(), key=lambda one: -len(one[1]))


def _overall(report: Report) -> dict[str, Any]:
    extents = report.survey.extents
    return {
        "size_mm": _mm(extents.size) if extents.box else None,
        "limit_mm": _mm(extents.limit) if extents.limit else None,
        "over_mm": _mm(extents.over),
    }


def _balance(balance: Balance) -> dict[str, Any]:
    something = balance.mass > 0 and balance.displaced > 0
    return {
        "mass_kg": round(balance.mass, 5),
        "displaced_l": round(balance.displaced * LITRES, 5),
        "net_n": round(balance.net, 4),
        "cg_mm": _mm(balance.g) if balance.mass > 0 else None,
        "cb_mm": _mm(balance.b) if balance.displaced > 0 else None,
        "bg_mm": round(balance.bg * MM, 2) if something else None,
        "pitch_deg": None if balance.pitch is None else _tidy(balance.pitch),
        "roll_deg": None if balance.roll is None else _tidy(balance.roll),
    }


def _air(state: AttitudeAir) -> dict[str, Any]:
    """The air [ml] that stays in an attitude, with that in closed voids; rings in the sockets left out."""
    caught = state.caught
    return {
        "attitude": {"pitch_deg": state.attitude.pitch, "roll_deg": state.attitude.roll},
        "trapped_ml": round((caught.volume + caught.closed) * MILLILITRES, 2),
        "pockets": [
            {"at_mm": _mm(pocket.at), "ml": round(pocket.volume * MILLILITRES, 2), "closed": pocket.closed}
            for pocket in caught.pockets
        ],
    }


def _motion(survey: Survey) -> dict[str, float | None]:
    """Speeds in m/s, times in s; bow up above zero.  None where no thruster makes the move."""
    moving = motion_of(survey)
    turn, pitch = moving.slower_turn, moving.driven.pitch if moving.driven else None
    tops = {"ahead": moving.ahead, "up": moving.up, "down": moving.down}
    return {
        **{f"{way}_m_s": round(run.top.value, 3) if run else None for way, run in tops.items()},
        "t90_s": round(moving.ahead.time.value, 2) if moving.ahead else None,
        "turn90_s": round(turn.quarter.value, 2) if turn else None,
        "thrust_pitch_deg": _tidy(pitch.value) if pitch else None,
        "front_area_cm2": round(silhouettes(survey.parts).front * 1e4, 1) if survey.parts else None,
    }


def _power(survey: Survey) -> dict[str, float | None]:
    """The least volts at a motor, the current [A] and how long the battery lasts [min], all motors on."""
    wires = survey.wiring
    volts, minutes = (wires.motor_volts, wires.minutes) if wires else (None, None)
    return {
        "motor_v": _rounded(volts, 2),
        "current_a": round(wires.amps, 2) if wires and wires.loads else None,
        "run_min": _rounded(minutes, 1),
    }


def _finding(finding: Finding, remedy: Remedy | str | None) -> dict[str, Any]:
    return {
        "code": finding.code,
        "severity": finding.severity,
        "step": finding.step,
        "about": {"kind": finding.about.kind, "id": finding.about.id},
        "message": finding.message,
        "remedy": None if isinstance(remedy, str) else remedy is not None,
    }


def _mm(metres: Vector) -> list[float]:
    return [_tidy(side * MM) for side in metres]


def _rounded(number: float | None, digits: int) -> float | None:
    return None if number is None else round(number, digits)


def _tidy(number: float) -> float:
    return round(number, 2) + 0.0  # no minus zero
