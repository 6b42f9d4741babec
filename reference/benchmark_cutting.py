"""Cutting 200 pieces of 20 lengths from 3 stocks, beside mixed-integer programming (scipy, HiGHS) in the same run.

    python reference/benchmark_cutting.py
"""

import json
import random
import sys
import tempfile
import time
from pathlib import Path

from conftest import run
from cutting_by_milp import cost_of, least_cost, random_job, write

JOBS = 12
LIMIT = 60.0  # seconds after which the general solver is stopped


def timed(work):
    begun = time.perf_counter()
    result = work()
    return result, (time.perf_counter() - begun) * 1000.0


def main() -> None:
    print(f"{'prices':<12}{'job':>4}{'gatewright ms':>15}{'HiGHS ms':>12}{'times':>8}  proved, same cost")
    ours, theirs, proved = [], [], 0
    for number in range(JOBS):
        related = number % 2 == 0
        job = random_job(random.Random(1000 + number), kinds=20, pieces=200, stocks=3, related=related)
        with tempfile.TemporaryDirectory() as name:
            folder = write([job], Path(name))
            done, mine = timed(lambda: run("choose", "cuts", str(folder), "--json"))
        (sheet,) = json.loads(done.stdout)
        cost = cost_of(job, sheet["cuts"])
        least, other = timed(lambda: least_cost(job, LIMIT))
        ours.append(mine), theirs.append(other)
        proved += sheet["least"]
        same = "it gave up" if least is None else "yes" if cost == least else f"{cost - least} cents more"
        words = f"{'yes' if sheet['least'] else 'no'}, {same}"
        kind = "by length" if related else "unrelated"
        print(f"{kind:<12}{number:>4}{mine:>15.1f}{other:>12.0f}{other / mine:>8.1f}  {words}")
        sys.stdout.flush()
    print(f"proved {proved} of {JOBS}; all jobs: {sum(ours):.0f} ms, HiGHS {sum(theirs):.0f} ms, {sum(theirs) / sum(ours):.1f} times")
    print("Ours: the whole process, reading included. HiGHS: every pattern listed, then solved; reading not included.")


if __name__ == "__main__":
    main()
