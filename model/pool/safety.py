"""What is gone through before a dive, and what an adult looks at and signs (common practice, no source)."""

from model.building.fitting_steps import threaded
from model.survey import Survey

PRE_DIVE = (
    "A lifeguard or a responsible adult is there; the pool's own rules were asked about and are kept.",
    "One named tether handler, one driver, one at the battery; nobody works alone.",
    "Battery, control box and plugs are dry, two metres back, and cannot fall or be pulled in.",
    "The fuse is in, at the battery; no mains voltage anywhere at the poolside.",
    "Every plug is out: nothing turns until the vehicle is in the water and hands are clear.",
    "Tug test done again: joints, mounts, floats, tether.",
    "Propellers turn free by hand, their guards are on, hair and cords are tied back.",
    "No cut tie tail or sharp edge; nothing loose that could come off in the pool.",
    "Nobody is in the water, unless the pool's rules allow it and the plug is out.",
    "The tether lies clear, in a figure of eight, not round a foot.",
    "All know: in trouble cut the power first, do not jump in; where the emergency number hangs.",
    "Let it soak and tip it both ways until no more bubbles come; then plug in.",
)
AFTER_DIVE = (
    "Unplug before anything is touched.",
    "Lift it out slowly, let it drain, by the frame; two people if it is heavy.",
    "Rinse it, dry the plugs, collect every tie tail and crumb of foam.",
    "Charge in a dry room, in moving air, never left alone.",
)


def inspection(survey: Survey) -> tuple[str, ...]:
    """What an adult looks at before the first dive, for this vehicle."""
    run = survey.arrangement
    checks = [
        "All joints hold a firm tug; none is left dry that should be pinned or cemented.",
        "All edges are deburred; no cut tie tail can scratch; no cracked pipe or fitting.",
    ]
    if run.thrusters:
        checks.append(f"{len(run.thrusters)} thrusters are tight on their mounts, guarded, and turn free.")
        checks.append("Motors are sealed, and were soaked before they are run in the water.")
    if survey.wiring is None:
        checks.append("Wiring: battery of 12 V or less, fuse at its positive pole, no bare wire, no mains.")
    else:
        power = survey.wiring.power
        fuse = f"{power.main_fuse:g} A" if power.main_fuse else "NONE PLANNED"
        checks.append(f"Battery {power.battery.volts:g} V, terminals covered; main fuse {fuse}.")
        checks.append("No bare wire; every plug fits one way; strain relief at both ends of the tether.")
    if run.floats or threaded(survey):
        checks.append("Floats and weights cannot slide off or turn round.")
    if run.ballasts:
        checks.append("Weights are coated steel or enclosed, no bare lead.")
    if run.tether:
        checks.append("The tether is tied to the frame, takes the pull, and is long enough for the pool.")
    if run.bores == "sealed":
        checks.append("Sealed pipes: never heated, opened slowly; a leak makes it heavier.")
    checks.append("The team has gone through the pre-dive list aloud.")
    return tuple(checks)
