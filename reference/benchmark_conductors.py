"""How long the cheapest conductors take, side by side: the program as a whole process against HiGHS through scipy, in one run.

Run with `python reference/benchmark_conductors.py` from anywhere. Nothing here passes or fails: it prints medians. The
program also reads the site, works every voltage before and after, and asks again whatever hangs on cables; HiGHS gets the
matrix of a linear problem made ready.
"""

import os
import random
import statistics
import tempfile
import time
from pathlib import Path

from conductors_by_milp import least_cost, random_tree, write
from conftest import ROOT, run

RUNS = 7


def median(work) -> float:
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def main() -> None:
    print(f"load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores; medians of {RUNS} runs")
    for count in (10, 20, 60):
        for seed in (1, 2, 3):
            tree = random_tree(random.Random(1000 * count + seed), count)
            with tempfile.TemporaryDirectory() as folder:
                write(tree, Path(folder))
                ours = median(lambda folder=folder: run("choose", "conductors", folder, "--json"))
            theirs = median(lambda tree=tree: least_cost(tree))
            print(f"{count:3} runs, tree {seed}: program {ours * 1e3:7.1f} ms, HiGHS {theirs * 1e3:7.1f} ms")
    for site in ("boatyard", "vineyard", "quarry", "clinic"):
        folder = str(ROOT / "examples" / site)
        print(f"{site}: program {median(lambda folder=folder: run('choose', 'conductors', folder)) * 1e3:.1f} ms")


if __name__ == "__main__":
    main()
