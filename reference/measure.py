"""Reads the few ways of writing a quantity that the examples use, apart from the program's own reader."""

import re
from fractions import Fraction

UNITS = {
    "ft": 0.3048, "in": 0.0254, "m": 1.0, "mm": 0.001, "cm": 0.01, "km": 1000.0,
    "lb": 0.45359237, "kg": 1.0, "lbf": 4.4482216152605, "N": 1.0, "kN": 1000.0,
    "V": 1.0, "A": 1.0, "mA": 0.001, "Ω": 1.0, "mΩ": 1e-3, "W": 1.0, "s": 1.0, "ms": 0.001, "%": 0.01,
    "ft/s": 0.3048, "m/s": 1.0, "ft/s²": 0.3048, "m/s²": 1.0, "mph": 0.44704, "lb/ft": 0.45359237 / 0.3048,
    "kΩ": 1e3, "ns": 1e-9,
    "°": 1.0, "": 1.0,
}


def number(text: str) -> float:
    return float(sum(Fraction(part) for part in text.split()))


def si(text: str) -> float:
    """The nominal value in SI units: `14 ft 3 1/2 in ± 2 in, measured` → 4.356."""
    nominal = re.split(r"±|\+|,", text)[0].strip()
    sign = -1.0 if nominal.startswith("-") else 1.0
    total = 0.0
    for value, unit in re.findall(r"([\d./]+(?: \d+/\d+)?)\s*([^\d\s.-][^\d\s-]*)?", nominal):
        total += number(value) * UNITS[unit]
    return sign * total
