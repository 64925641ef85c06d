"""From a design to the list of its parts."""

from model.vehicle.vehicle import parts_of

__all__ = ["parts_of"]
