"""How many people past a sliding leaf are worked in a second, side by side: ours against NumPy stepping the same world.

Run with `python reference/benchmark_walk.py` after `cargo build --release --package sim --example walk`. Nothing here passes
or fails: it prints both rates and their ratio. NumPy steps all its people at once, a two-hundredth of a second at a time.
"""

import os
import statistics
import subprocess
import time

import test_walk
from test_walk import EXAMPLE, asked, stepped

STEP = 0.005
OURS, THEIRS = 10_000_000, 4000


def here(world: str) -> float:
    """Scenarios a second of our sweep on all processors, as it prints its own time."""
    rates = []
    for _ in range(3):
        done = subprocess.run([EXAMPLE, f"world={world}", "time=1", f"count={OURS}"], capture_output=True, check=True, encoding="utf-8")
        seconds = next(line for line in done.stdout.splitlines() if line.startswith("seconds "))
        rates.append(OURS / float(seconds.split()[1]))
    return statistics.median(rates)


def there(world: str) -> float:
    """Scenarios a second of the stepped ones."""
    known, rows = asked(world, THEIRS)
    start = time.perf_counter()
    stepped(known, rows)
    return THEIRS / (time.perf_counter() - start)


def main() -> None:
    test_walk.STEP = STEP
    print(f"{os.cpu_count()} processors, load {os.getloadavg()[0]:.1f}, steps of {STEP * 1000:g} ms")
    for world in ("trial", "full"):
        ours, theirs = here(world), there(world)
        print(f"  {world:<6} ours {ours / 1e6:8.2f} million a second   NumPy {theirs:9.0f} a second   {ours / theirs:8.0f} times as many")


if __name__ == "__main__":
    main()
