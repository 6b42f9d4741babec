"""How many people past a leaf are worked in a second: ours against NumPy stepping the same world, in one run.

Run with `python reference/benchmark_walk.py` after `cargo build --release --package sim --example walk`; it takes a minute or two.
Nothing here passes or fails: it prints both rates and their ratio, by the clock and by processor time, which stays true on a busy
machine. NumPy steps all its people at once, a two-hundredth of a second at a time, on one processor; what is behind a body that a
swinging leaf touches is left out of its work, to its good.
"""

import os
import resource
import statistics
import subprocess
import time

import numpy as np
import test_walk
import test_walk_swing
from test_walk import EXAMPLE

STEP = 0.005
TIMES = 3
WORLDS = {
    # World: scenarios of ours, of NumPy, whether the leaf slides.
    "trial": (10_000_000, 4000, True),
    "full": (10_000_000, 3000, True),
    "single": (4_000_000, 3000, False),
    "double": (1_000_000, 1000, False),
}


def processor_of_children() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def here(world: str, count: int) -> tuple[float, float]:
    """Scenarios of our sweep on all processors, for a second by the clock and for a second of one processor."""
    by_clock, by_processor = [], []
    for _ in range(TIMES):
        before = processor_of_children()
        done = subprocess.run([EXAMPLE, f"world={world}", "time=1", f"count={count}"], capture_output=True, check=True, encoding="utf-8")
        seconds = next(line for line in done.stdout.splitlines() if line.startswith("seconds "))
        by_clock.append(count / float(seconds.split()[1]))
        by_processor.append(count / (processor_of_children() - before))
    return statistics.median(by_clock), statistics.median(by_processor)


def there(world: str, count: int, slides: bool) -> tuple[float, float]:
    """Scenarios of the stepped ones, for a second by the clock and for a second of one processor."""
    known, rows = (test_walk if slides else test_walk_swing).asked(world, count)
    clock, processor = time.perf_counter(), time.process_time()
    if slides:
        test_walk.stepped(known, rows)
    else:
        for at, path in enumerate(known["passes"]):
            test_walk_swing.stepped(known, path, [row for row in rows if int(row["pass"]) == at])
    return count / (time.perf_counter() - clock), count / (time.process_time() - processor)


def main() -> None:
    test_walk.STEP = test_walk_swing.STEP = STEP
    test_walk_swing.rooms = lambda *_: (np.inf, np.inf)
    print(f"{os.cpu_count()} processors, load {os.getloadavg()[0]:.1f}, steps of {STEP * 1000:g} ms")
    for world, (many, few, slides) in WORLDS.items():
        ours, theirs = here(world, many), there(world, few, slides)
        for word, mine, other in zip(("clock", "processor"), ours, theirs):
            print(f"  {world:<6} by {word:<9} ours {mine / 1e6:6.2f} million a second   NumPy {other:7.0f} a second   {mine / other:6.0f} times as many")


if __name__ == "__main__":
    main()
