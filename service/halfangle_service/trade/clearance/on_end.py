"""A cone whose axis stands square to the plate's top: its fixture on an upright; one unit.

The frames are those of `turned`: u along the axis, away from the plate.
"""

from halfangle_service.trade.clearance.bodies import Body
from halfangle_service.trade.clearance.on_base import AnglePlate
from halfangle_service.trade.clearance.plate import Plate, TiltedPlate
from halfangle_service.trade.clearance.socket import Socket
from halfangle_service.trade.clearance.turned import Turned


def standing(
    turned: Turned, upright: AnglePlate, plate: Plate, low_stack: float
) -> tuple[list[Body], TiltedPlate]:
    """The cone in its fixture on the upright, which is on the low side, and the plate under it."""
    fixture = turned.fixture
    foot, face = turned.front - fixture.body_length, -fixture.axis_height
    leans, tilted = upright.on(plate, turned.level, foot, face, turned.cone.half_angle, low_stack)
    return [*turned.turning(), turned.body(), leans, *tilted.bodies()], tilted


def standing_socket(
    socket: Socket, upright: AnglePlate, plate: Plate, low_stack: float
) -> tuple[list[Body], TiltedPlate]:
    """The same of a socket, its mouth away from the plate."""
    fixture = socket.fixture
    foot, face = socket.front - fixture.body_length, -fixture.axis_height
    leans, tilted = upright.on(plate, socket.level, foot, face, socket.bore.half_angle, low_stack)
    return [*socket.bodies(), leans, *tilted.bodies()], tilted
