"""Random trees of cables with constant currents, as site files, and their cheapest conductors by mixed-integer programming."""

import math
import random
from pathlib import Path

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

# Greatest resistance of class 2 copper at 20 °C in Ω/km, by cross-section in mm² (IEC 60228, table 2).
OHMS = {1.5: 12.1, 2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83}
VOLTS = 24.0


def random_tree(chance: random.Random, runs: int) -> dict:
    """Runs to joints and devices; each place hangs on the source or on a joint before it; each joint carries something."""
    joints = chance.randint(1, max(1, runs // 2))
    parents = [None if at == 0 else chance.choice([None, *range(at)]) for at in range(joints)]
    childless = [at for at in range(joints) if at not in parents]
    feeds = childless + [chance.choice([None, *range(joints)]) for _ in range(runs - joints - len(childless))]
    lengths = [round(chance.uniform(4, 60), 1) for _ in range(joints + len(feeds))]
    amperes = [round(chance.uniform(0.1, 1.2), 3) for _ in feeds]
    prices = {size: round(60 + 110 * size * chance.uniform(0.8, 1.25)) for size in OHMS}
    tree = {"parents": parents, "feeds": feeds, "lengths": lengths, "amperes": amperes, "prices": prices}
    tree["today"] = [chance.choice(list(OHMS)) for _ in lengths]
    tree["least"] = []
    for device in range(len(feeds)):
        thick, thin = (lost(tree, device, [size] * len(lengths)) for size in (max(OHMS), min(OHMS)))
        share = chance.uniform(0.05, 0.6)
        tree["least"].append(math.floor((VOLTS - thick - share * (thin - thick)) * 1e4) / 1e4)
    return tree


def way(tree: dict, device: int) -> list[int]:
    """The runs from a device back to the source."""
    runs, joint = [len(tree["parents"]) + device], tree["feeds"][device]
    while joint is not None:
        runs.append(joint)
        joint = tree["parents"][joint]
    return runs


def currents(tree: dict) -> list[float]:
    flowing = [0.0] * len(tree["lengths"])
    for device, amperes in enumerate(tree["amperes"]):
        for run in way(tree, device):
            flowing[run] += amperes
    return flowing


def lost(tree: dict, device: int, sizes: list[float]) -> float:
    """Volts lost on the way to a device."""
    flowing = currents(tree)
    return sum(2e-3 * OHMS[sizes[run]] * tree["lengths"][run] * flowing[run] for run in way(tree, device))


def cost(tree: dict, run: int, size: float) -> int:
    """Hundredths, rounded for each cable as on a bill, a half upwards: exact, as prices are whole and lengths have one decimal."""
    tenths = tree["prices"][size] * round(tree["lengths"][run] * 10)
    return (tenths + 5) // 10


def least_cost(tree: dict) -> int | None:
    """The least cost of all sets by HiGHS; nothing where it proves none."""
    runs, sizes, flowing = len(tree["lengths"]), list(OHMS), currents(tree)
    columns = runs * len(sizes)
    costs = [cost(tree, run, size) for run in range(runs) for size in sizes]
    one = np.zeros((runs, columns))
    for run in range(runs):
        one[run, run * len(sizes) : (run + 1) * len(sizes)] = 1
    drops = np.zeros((len(tree["feeds"]), columns))
    for device in range(len(tree["feeds"])):
        for run in way(tree, device):
            for at, size in enumerate(sizes):
                drops[device, run * len(sizes) + at] = 2e-3 * OHMS[size] * tree["lengths"][run] * flowing[run]
    room = VOLTS - np.array(tree["least"])
    rules = [LinearConstraint(one, 1, 1), LinearConstraint(drops, -np.inf, room)]
    options = {"mip_rel_gap": 0.0}
    found = milp(costs, integrality=np.ones(columns), bounds=Bounds(0, 1), constraints=rules, options=options)
    return round(found.fun) if found.success else None


def write(tree: dict, folder: Path) -> None:
    """The tree as a site file with a parts file."""
    parts = [
        f'[[cable]]\nid = "p-{at}"\ncarries = "power"\ncores = 2\nsize = "{size} mm²"\nmetal = "copper"\nstranding = "stranded"\n'
        f'hottest = "20 °C"\nprice = "{tree["prices"][size]}.00 EUR"\nprice_length = "100 m"\n'
        for at, size in enumerate(OHMS)
    ]
    joints = len(tree["parents"])
    site = ['[site]\nname = "Random tree"\ncode_basis = "eu"\nparts = ["parts.toml"]\n']
    site.append(f'[[supply]]\nid = "source"\nkind = "power supply"\nvoltage = "{VOLTS} V"\n')
    site += [f'[[joint]]\nid = "j-{at}"\n' for at in range(joints)]
    for at, amperes in enumerate(tree["amperes"]):
        site.append(
            f'[[device]]\nid = "d-{at}"\nkind = "reader"\nsupply = "source"\ndraws = "constant current"\nvoltage = "24 V"\n'
            f'current = "{amperes} A"\nleast_voltage = "{tree["least"][at]} V"\n'
        )
    before = [*tree["parents"], *tree["feeds"]]
    for run, length in enumerate(tree["lengths"]):
        start = "source" if before[run] is None else f"j-{before[run]}"
        end = f"j-{run}" if run < joints else f"d-{run - joints}"
        part = list(OHMS).index(tree["today"][run])
        site.append(f'[[cable]]\nid = "w-{run}"\npart = "p-{part}"\nfrom = "{start}"\nto = "{end}"\nlength = "{length} m"\n')
    (folder / "parts.toml").write_text("\n".join(parts), encoding="utf-8")
    (folder / "site.toml").write_text("\n".join(site), encoding="utf-8")
