"""Random nets of ways, as site files, and the cheapest set that reaches everything by mixed-integer programming."""

import math
import random
from pathlib import Path

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_array

CENTS_PER_METER = 2350


def random_net(chance: random.Random, points: int, goals: int) -> dict:
    """Points in a square of 60 m, ways from each to its nearest few, so that all hang together."""
    places = [(round(chance.uniform(0, 60), 2), round(chance.uniform(0, 60), 2)) for _ in range(points)]
    ways = set()
    for at in range(points):
        order = sorted(range(points), key=lambda other: math.dist(places[at], places[other]))
        ways |= {tuple(sorted((at, other))) for other in order[1 : 1 + chance.randint(2, 3)]}
        if at:
            ways.add((min(range(at), key=lambda other: math.dist(places[at], places[other])), at))
    return {"places": places, "ways": sorted(ways), "goals": sorted(chance.sample(range(points), goals))}


def cents(net: dict, way: tuple[int, int]) -> int:
    """A half goes up, as where the program rounds."""
    length = math.dist(*(net["places"][end] for end in way))
    return math.floor(length * CENTS_PER_METER + 0.5 + 1e-7)


def least_cost(net: dict) -> int:
    """One unit flows from the first goal to each other one, and only through ways that are paid for."""
    ways, (root, *sinks) = net["ways"], net["goals"]
    arcs = [arc for one, other in ways for arc in ((one, other), (other, one))]
    count, flows = len(ways), len(arcs) * len(sinks)
    rows, columns, values, low, high = [], [], [], [], []

    def row(terms, least, most):
        for column, value in terms:
            rows.append(len(low)), columns.append(column), values.append(value)
        low.append(least), high.append(most)

    for sink_at, sink in enumerate(sinks):
        first = count + sink_at * len(arcs)
        for point in range(len(net["places"])):
            terms = [(first + at, 1) for at, arc in enumerate(arcs) if arc[1] == point]
            terms += [(first + at, -1) for at, arc in enumerate(arcs) if arc[0] == point]
            wants = (point == sink) - (point == root)
            row(terms, wants, wants)
        for at in range(len(arcs)):
            row([(first + at, 1), (at // 2, -1)], -np.inf, 0)
    matrix = coo_array((values, (rows, columns)), shape=(len(low), count + flows)).tocsr()
    costs = np.concatenate([[cents(net, way) for way in ways], np.zeros(flows)])
    whole = np.concatenate([np.ones(count), np.zeros(flows)])
    found = milp(costs, constraints=LinearConstraint(matrix, low, high), integrality=whole, bounds=Bounds(0, 1))
    assert found.success, found.message
    return round(found.fun)


def write(net: dict, folder: Path) -> None:
    """The net as a site file."""
    lines = ['[site]\nname = "Random net"\ncode_basis = "eu"\nunits = "si"']
    lines += [f'[[enclosure]]\nid = "box-{goal}"' for goal in net["goals"]]
    lines.append(
        f'[[digging]]\nby = "trench"\nprice = "{CENTS_PER_METER // 100}.{CENTS_PER_METER % 100:02d} EUR"\nprice_length = "1 m"'
    )
    for at, (x, y) in enumerate(net["places"]):
        serves = f'\nserves = ["box-{at}"]' if at in net["goals"] else ""
        lines.append(f'[[way_point]]\nid = "p-{at}"\nat = ["{x} m", "{y} m", "0 m"]{serves}')
    for one, other in net["ways"]:
        lines.append(f'[[way]]\nid = "way-{one}-{other}"\nfrom = "p-{one}"\nto = "p-{other}"\nby = "trench"')
    (folder / "site.toml").write_text("\n".join(lines) + "\n", encoding="utf-8")
