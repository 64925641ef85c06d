"""How the vehicle lies in the water: the attitudes in which its pipes must lose their air."""

from math import cos, radians, sin

from msgspec import Struct

from model.vectors import Vector


class Attitude(Struct, frozen=True):
    """A way to lie in the water.

    Attributes:
        name: in words; also what a brief calls it.
        pitch: bow up [deg].
        roll: port side up [deg].
    """

    name: str
    pitch: float
    roll: float

    @property
    def up(self) -> Vector:
        """The direction of "up" in body axes, length 1.

        >>> [round(step, 3) for step in Attitude("nose up 30", 30, 0).up]
        [0.5, 0.0, 0.866]
        """
        pitch, roll = radians(self.pitch), radians(self.roll)
        return sin(pitch), cos(pitch) * sin(roll), cos(pitch) * cos(roll)

    @property
    def down(self) -> Vector:
        """The direction of "down" in body axes, length 1."""
        x, y, z = self.up
        return -x, -y, -z


LEVEL = Attitude("level", 0, 0)
ATTITUDES = (
    LEVEL,
    Attitude("nose up 30", 30, 0),
    Attitude("nose down 30", -30, 0),
    Attitude("port side up 45", 0, 45),
    Attitude("starboard side up 45", 0, -45),
    Attitude("upside down", 0, 180),
)
"""What a team's hands, a launch and a lift do to a vehicle; rolled to either side."""
SMALL_TILT = 1.0
"""[deg] No pool offers dead level: so much tilt comes and goes by itself (common practice, no source)."""
SMALL_TILTS = tuple(
    Attitude("nearly level", pitch * SMALL_TILT, roll * SMALL_TILT)
    for pitch, roll in ((1, 1), (1, -1), (-1, 1), (-1, -1))
)


def tilt_words(attitude: Attitude) -> str:
    """An attitude in words, without a bare sign.

    >>> tilt_words(Attitude("", 45, -30))
    'nose up 45 degrees, starboard side up 30 degrees'
    """
    words = [
        f"{high if angle > 0 else low} up {abs(angle):.0f} degrees"
        for angle, high, low in (
            (attitude.pitch, "nose", "tail"),
            (attitude.roll, "port side", "starboard side"),
        )
        if angle
    ]
    return ", ".join(words) or "level"
