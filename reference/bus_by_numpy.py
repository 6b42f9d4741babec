"""A reader bus and a supervised loop by other routes: nodes and conductances, bits one by one, every corner."""

import itertools

import numpy as np

UNIT_LOAD = 12_000.0


def idle(supply: float, bias: float, places: list[dict], per_meter: float) -> list[float]:
    """Voltage across the pair at each place: two wires of nodes, one conductance matrix, solved whole.

    A place has `along`, `loads`, and where there are any `end` and `biased`.
    """
    count = len(places)
    matrix, currents = np.zeros((2 * count, 2 * count)), np.zeros(2 * count)

    def between(one: int, other: int, ohms: float):
        matrix[one, one] += 1 / ohms
        matrix[other, other] += 1 / ohms
        matrix[one, other] -= 1 / ohms
        matrix[other, one] -= 1 / ohms

    for at, place in enumerate(places):
        upper, lower = at, count + at
        if place.get("end"):
            between(upper, lower, place["end"])
        if place["loads"]:
            between(upper, lower, UNIT_LOAD / place["loads"])
        if place.get("biased"):
            matrix[upper, upper] += 1 / bias
            currents[upper] += supply / bias
            matrix[lower, lower] += 1 / bias
        if at:
            ohms = max(per_meter * (place["along"] - places[at - 1]["along"]), 1e-9)
            between(at - 1, at, ohms)
            between(count + at - 1, count + at, ohms)
    volts = np.linalg.solve(matrix, currents)
    return list(volts[:count] - volts[count:])


def crc(data: bytes) -> bytes:
    """CRC-16 with the polynomial 0x1021 and the start 0x1D0F, low byte first."""
    value = 0x1D0F
    for byte in data:
        value ^= byte << 8
        for _ in range(8):
            value = (value << 1 ^ 0x1021) & 0xFFFF if value & 0x8000 else value << 1
    return value.to_bytes(2, "little")


def message(address: int, control: int, code: int, data: bytes, secure: bool) -> bytes:
    """One OSDP message as it stands on the line; in the secure channel with its data filled up to whole blocks."""
    block, tail = b"", b""
    if secure:
        block, tail = bytes([2, 0x17 if data else 0x15]), bytes(4)
        if data:
            data = data + b"\x80"
            data = data + bytes(-len(data) % 16)
    whole = 5 + len(block) + 1 + len(data) + len(tail) + 2
    head = bytes([0x53, address]) + whole.to_bytes(2, "little") + bytes([control])
    frame = head + block + bytes([code]) + data + tail
    return frame + crc(frame)


def seconds(frames: list[bytes], rate: int, reply: float) -> float:
    """A question and its answer, bit by bit: two characters of silence, start, eight, stop."""
    bits = 2 * 10
    for frame in frames:
        for _ in frame:
            bits += 1 + 8 + 1
    return bits / rate + reply


def bands(series, parallel, wire, contact, insulation) -> dict[str, tuple[float, float]]:
    """Least and greatest resistance that the input reads in each state, over every corner; each argument is (least, greatest)."""

    def beside(one, other):
        return 1 / (1 / one + 1 / other) if one and other else 0.0

    found = {"short": [], "closed": [], "open": [], "cut": []}
    for s, p, w, c, damp, at_device in itertools.product(series, parallel, (0.0, wire), (0.0, contact), (insulation, 1e15), (0, 1)):
        reads = {"short": 0.0, "closed": s + beside(c, p), "open": s + p, "cut": 1e15}
        for state, ohms in reads.items():
            # Damp may join the wires at the device or at the input.
            found[state].append(w + beside(ohms, damp) if at_device else beside(w + ohms, damp))
    return {state: (min(all_), max(all_)) for state, all_ in found.items()}
