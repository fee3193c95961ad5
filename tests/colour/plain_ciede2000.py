"""CIEDE2000 for one pair as the paper writes it, with Python's own numbers: a slow twin."""

import math
from collections.abc import Sequence

__all__ = ["ciede2000"]


def ciede2000(one: Sequence[float], other: Sequence[float]) -> float:
    """Sharma, Wu and Dalal 2005, equations (2) to (22), angles in degrees."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    mean_c = (math.hypot(a1, b1) + math.hypot(a2, b2)) / 2
    g = 0.5 * (1 - math.sqrt(mean_c**7 / (mean_c**7 + 25**7)))
    a1, a2 = (1 + g) * a1, (1 + g) * a2
    c1, c2 = math.hypot(a1, b1), math.hypot(a2, b2)
    h1 = math.degrees(math.atan2(b1, a1)) % 360 if c1 else 0.0
    h2 = math.degrees(math.atan2(b2, a2)) % 360 if c2 else 0.0
    step, mean_h = 0.0, h1 + h2
    if c1 * c2:
        step, mean_h = h2 - h1, (h1 + h2) / 2
        if abs(step) > 180:
            step += -360 if step > 0 else 360
            mean_h += 180 if h1 + h2 < 360 else -180
    d_h = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(step / 2))
    light, chroma = (l1 + l2) / 2, (c1 + c2) / 2

    def cos(angle: float) -> float:
        return math.cos(math.radians(angle))

    t = 1 - 0.17 * cos(mean_h - 30) + 0.24 * cos(2 * mean_h) + 0.32 * cos(3 * mean_h + 6) - 0.2 * cos(4 * mean_h - 63)
    s_l = 1 + 0.015 * (light - 50) ** 2 / math.sqrt(20 + (light - 50) ** 2)
    s_c, s_h = 1 + 0.045 * chroma, 1 + 0.015 * chroma * t
    turn = 30 * math.exp(-(((mean_h - 275) / 25) ** 2))
    r_t = -2 * math.sqrt(chroma**7 / (chroma**7 + 25**7)) * math.sin(math.radians(2 * turn))
    in_l, in_c, in_h = (l2 - l1) / s_l, (c2 - c1) / s_c, d_h / s_h
    return math.sqrt(max(in_l**2 + in_c**2 + in_h**2 + r_t * in_c * in_h, 0))
