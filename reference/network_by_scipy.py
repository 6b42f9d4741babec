"""Random low-voltage networks, and their voltages by scipy: nodal equations by a dense hybrid root finder."""

import random

import numpy as np
from scipy.optimize import root

NETWORKS = 200


def random_network(chance: random.Random) -> dict:
    """A tree of 4 to 60 places with up to five rings; loads of constant power, constant current and resistance."""
    places = chance.randint(4, 60)
    branches = [(chance.randrange(at), at, chance.uniform(0.02, 1.5)) for at in range(1, places)]
    for _ in range(chance.randint(0, 5)):
        one, other = chance.randrange(places), chance.randrange(places)
        if one != other:
            branches.append((one, other, chance.uniform(0.02, 1.5)))
    second = chance.random() < 0.3
    held = {0: chance.uniform(11.0, 29.0)}
    if second:
        held[places] = held[0] * chance.uniform(0.95, 1.05)
        branches.append((places, chance.randrange(1, places), chance.uniform(0.1, 1.0)))
    scale = chance.uniform(0.2, 1.5) / places
    loads = []
    for at in range(1, places):
        kind = chance.choice(["power", "current", "resistance", "none"])
        amperes = scale * chance.random()
        if kind == "power":
            loads.append((kind, at, amperes * held[0]))
        elif kind == "current":
            loads.append((kind, at, amperes))
        elif kind == "resistance":
            loads.append((kind, at, held[0] / (amperes + 1e-3)))
    return {"places": places + second, "held": held, "branches": branches, "loads": loads}


def with_loads_at(network: dict, share: float) -> dict:
    """The same network with all powers and currents at a share of themselves."""
    loads = [(kind, at, value if kind == "resistance" else value * share) for kind, at, value in network["loads"]]
    return {**network, "loads": loads}


def as_lines(network: dict) -> str:
    lines = []
    for at in range(network["places"]):
        lines.append(f"held {at} {network['held'][at]!r}" if at in network["held"] else f"node {at}")
    lines += [f"branch {a} {b} {ohms!r}" for a, b, ohms in network["branches"]]
    lines += [f"{kind} {at} {value!r}" for kind, at, value in network["loads"]]
    return "\n".join([*lines, "end"])


def solved(network: dict) -> np.ndarray | None:
    """Voltages by Kirchhoff's current law at each free place; nothing where the root finder gives up."""
    places = network["places"]
    matrix = np.zeros((places, places))
    for a, b, ohms in network["branches"]:
        matrix[[a, b], [a, b]] += 1 / ohms
        matrix[[a, b], [b, a]] -= 1 / ohms
    power, current = np.zeros(places), np.zeros(places)
    for kind, at, value in network["loads"]:
        if kind == "power":
            power[at] += value
        elif kind == "current":
            current[at] += value
        else:
            matrix[at, at] += 1 / value
    volts = np.zeros(places)
    held = sorted(network["held"])
    free = [at for at in range(places) if at not in network["held"]]
    for at in held:
        volts[at] = network["held"][at]

    def unbalanced(values: np.ndarray) -> np.ndarray:
        volts[free] = values
        return (matrix @ volts)[free] + current[free] + power[free] / values

    start = np.full(len(free), max(network["held"].values()))
    found = root(unbalanced, start, method="hybr", tol=1e-13)
    if np.max(np.abs(unbalanced(found.x))) > 1e-8 or np.min(found.x) <= 0:
        return None
    volts[free] = found.x
    return volts
