"""What must be settled before water and current meet."""

from msgspec import Struct

from model.design import Power


class Check(Struct, frozen=True):
    """One thing: its name, what it is in full, and whether it is settled."""

    name: str
    words: str
    done: bool


def checks_of(power: Power) -> tuple[Check, ...]:
    """Strain relief, motor seal, soak test."""
    return (
        Check("strain relief", "strain relief at both ends of the tether", power.strain_relief),
        Check("motor seal", "how the motors are sealed", bool(power.motor_seal.strip())),
        Check("soak test", "a soak test of the sealed motors", power.soak_hours > 0),
    )
