"""All findings of a survey."""

from collections.abc import Callable, Iterator

from model.coach import (
    rules_air,
    rules_balance,
    rules_equipment,
    rules_fittings,
    rules_frame,
    rules_holes,
    rules_load,
    rules_motion,
    rules_passage,
    rules_places,
    rules_power,
    rules_sawn,
    rules_size,
    rules_stock,
    rules_thrust,
)
from model.coach.finding import SEVERITIES, STEPS, Finding
from model.survey import Survey

RULES: tuple[Callable[[Survey], Iterator[Finding]], ...] = (
    rules_frame.no_frame,
    rules_frame.loose_ends,
    rules_frame.groups_apart,
    rules_frame.joints_close,
    rules_frame.joints_together,
    rules_frame.crooked_bars,
    rules_frame.overlapping_bars,
    rules_frame.long_bars,
    rules_sawn.sawn_pieces,
    rules_sawn.held_planes,
    rules_sawn.slipping_pieces,
    rules_stock.wrong_measurements,
    rules_stock.short_box,
    rules_stock.short_sticks,
    rules_frame.disallowed_materials,
    rules_fittings.unmatched_joints,
    rules_fittings.spare_sockets,
    rules_size.over_size,
    rules_passage.near_size,
    rules_passage.tight_hoop,
    rules_places.shared_places,
    rules_equipment.missing_mounts,
    rules_equipment.missing_moves,
    rules_equipment.long_floats,
    rules_holes.openings,
    rules_holes.hole_sizes,
    rules_holes.blind_holes,
    rules_holes.near_sockets,
    rules_air.trapped_air,
    rules_air.tilted_air,
    rules_air.closed_voids,
    rules_air.water_left,
    rules_air.sealed_frame,
    rules_thrust.mounts,
    rules_thrust.unknown_pulls,
    rules_thrust.discs,
    rules_thrust.streams,
    rules_thrust.shallow_discs,
    rules_motion.handling,
    rules_power.no_plan,
    rules_power.supply,
    rules_power.fuses,
    rules_power.volts,
    rules_power.tether_reach,
    rules_power.checks,
    rules_equipment.over_budget,
    rules_balance.spare_buoyancy,
    rules_balance.sinks_at_depth,
    rules_balance.trim,
    rules_load.easily_tipped,
    rules_load.load,
)


def findings(survey: Survey) -> tuple[Finding, ...]:
    """What the coach has to say: what must be put right first, then in the order of the steps."""
    found = [finding for rule in RULES for finding in rule(survey)]
    found.sort(key=lambda finding: (SEVERITIES.index(finding.severity), STEPS.index(finding.step)))
    return tuple(found)
