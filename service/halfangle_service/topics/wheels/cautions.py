"""Cautions of the wheel. They defer to markings, local codes and qualified people; none may soften.

Regulation cited: 29 CFR 1910.215 (abrasive wheel machinery), read in public reprints; ANSI B7.1 and
EN 12413 are recalled from memory.
"""

from halfangle_service.operation import caution

DEFERENCE = (
    "The wheel's and the machine's own markings, local codes and qualified people come first."
)

OPTICAL_CHECK = caution(
    "dressed-angle-unproved",
    "The stack proves the dresser's setting, not the wheel: diamond height, diamond wear and "
    "wheel wear all turn the flank. Check the ground angle by itself, optically or over rolls.",
)
DRESSING_SAFETY = caution(
    "dressing-safety",
    "Guard closed, eye protection on, coolant or dust extraction running. Stay at or below the "
    f"speed marked on the wheel. {DEFERENCE}",
)
MAGNETIC_HOLDING = caution(
    "magnetic-holding",
    "A plate or fixture on a magnetic chuck holds by its contact area: clean, burr-free, blocked "
    f"against the wheel's push, and proved by hand before the wheel is started. {DEFERENCE}",
)
