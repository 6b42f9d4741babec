"""How long it takes to move a leaf through its travel, side by side: ours against scipy's solve_ivp, in one run.

Run with `python reference/benchmark_travel.py` after `cargo build --release --package sim --example travel`. Nothing here
passes or fails: it prints both times and their ratio. Ours steps a thousandth of a second; scipy steps at most a hundredth.
"""

import os
import statistics
import time

from test_travel import CASES, ours, scipy_travel

TIMES = 200


def main() -> None:
    print(f"{os.cpu_count()} processors, load {os.getloadavg()[0]:.1f}")
    for name, case in CASES.items():
        mean = next(line for line in ours(*case, repeat=TIMES).splitlines() if line.startswith("mean "))
        here = float(mean.split()[1])
        theirs = []
        for _ in range(3):
            start = time.perf_counter()
            scipy_travel(*case)
            theirs.append(time.perf_counter() - start)
        there = statistics.median(theirs)
        print(f"  {name:<26} ours {here * 1000:8.3f} ms   scipy {there * 1000:9.1f} ms   {there / here:8.0f} times as long")


if __name__ == "__main__":
    main()
